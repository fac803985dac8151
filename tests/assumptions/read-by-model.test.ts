import { readdirSync, readFileSync } from "node:fs";
import { join, sep } from "node:path";
import { describe, expect, it } from "vitest";
import { typicalAssumptions } from "../../src/assumptions/typical.js";
import { shortTypicals } from "../../src/assumptions/typical-short.js";
import { register } from "../../src/model/register/register.js";
import { projectRoot } from "../../src/project-root.js";
import { comparedRun } from "../../src/study/compared/compared.js";
import { readStudyText } from "../../src/study/reading/read.js";
import { editedText } from "../study/example.js";
import { realSet } from "./real.js";

const filesIn = (folder: string) =>
  readdirSync(join(projectRoot, "src", folder), { recursive: true, encoding: "utf8" })
    .filter((name) => name.endsWith(".ts"))
    .map((name) => {
      const text = readFileSync(join(projectRoot, "src", folder, name), "utf8");
      return { name: join(folder, name), code: text.replace(/\/\*[\s\S]*?\*\/|\/\/.*$/gm, "") };
    });

const set = realSet();
const ids = [...set.entries.keys()];
const families = new Set(ids.map((id) => id.split(".")[0] ?? ""));
const isOfFamily = (text: string) => families.has(text.split(".")[0] ?? "");

const registerFolder = join("model", "register") + sep;
const readers = filesIn("model").filter(({ name }) => !name.startsWith(registerFolder));
const textsOf = (code: string) => [...code.matchAll(/"([^"\n]*)"/g)].map(([, text = ""]) => text);
// How far typed quantities may be off is read where studies are drawn: the model takes them as they come.
const readOfStudies = filesIn(join("study", "typed"));
const readByModel = new Set([...readers, ...readOfStudies].flatMap(({ code }) => textsOf(code)));

describe("an assumption of the register", () => {
  it.each(Object.keys(register))("is found where it is read by searching for its whole id: %s", (id) => {
    expect(readByModel).toContain(id);
  });

  it("stands in the files, as all that they hold stands in the register, with a plan or beside a field", () => {
    const named = set.plans.flatMap(({ numbers }) => Object.values<string>(numbers));
    const offered = Object.keys({ ...typicalAssumptions, ...shortTypicals });
    expect(new Set(ids)).toEqual(new Set([...Object.keys(register), ...named, ...offered]));
  });
});

describe("an id of an assumption", () => {
  const folders = ["model", "study", "assumptions", "report", "forms", "web", "odds"];
  const code = folders.flatMap(filesIn);

  /** Template strings that some id fits, with letters beside a dot in what stands fast of them. */
  const templatesIn = (text: string) =>
    [...text.matchAll(/`([^`\n]*\$\{[^`\n]*)`/g)]
      .map(([, template = ""]) => template.split(/\$\{[^{}]*\}/))
      .filter((parts) => parts.some((part) => /[a-z]\.|\.[a-z]/.test(part)))
      .filter((parts) => {
        const fits = new RegExp(`^${parts.map((part) => part.replace(/[^\w-]/g, "\\$&")).join(".+")}$`);
        return ids.some((id) => fits.test(id));
      })
      .map((parts) => parts.join("…"));

  /** Texts that an id begins or ends with and that are no words by themselves: "oxidant.", "kill-hours.cold". */
  const piecesIn = (text: string) =>
    textsOf(text).filter((piece) => {
      const begins = /[a-z][.-]$/.test(piece) && isOfFamily(piece);
      const ends = /^\.[a-z]/.test(piece) || /^[a-z0-9-]+\.[a-z0-9.-]+$/.test(piece);
      return ids.some(
        (id) => id !== piece && ((begins && id.startsWith(piece)) || (ends && id.endsWith(piece))),
      );
    });

  it.each(code)("is never put together in $name", ({ code: text }) => {
    expect(templatesIn(text)).toEqual([]);
    expect(piecesIn(text)).toEqual([]);
  });

  it.each(readers)("is never joined of its words in $name", ({ code: text }) => {
    expect(text).not.toContain('join(".")');
  });

  it("would be found if it were put together", () => {
    const hole = ["$", "{name}"].join("");
    expect(templatesIn(`assumed(\`oxidant.kill-hours.${hole}\`)`)).toEqual(["oxidant.kill-hours.…"]);
    expect(templatesIn(`assumed(\`${hole}.largest-layer\`)`)).toEqual(["….largest-layer"]);
    expect(piecesIn('"oxidant." + name')).toEqual(["oxidant."]);
    expect(piecesIn('["kill-hours.cold"].map(ofOxidant)')).toEqual(["kill-hours.cold"]);
    expect(piecesIn('assumed("oxidant.kill-hours.cold")')).toEqual([]);
  });
});

describe("what the model reads", () => {
  it("is registered if it is written like an id", () => {
    const likeIds = [...readByModel].filter((text) => /^[a-z-]+\.[a-z0-9.-]+$/.test(text));
    const strangers = likeIds.filter((id) => isOfFamily(id) && !Object.hasOwn(register, id));
    expect(strangers).toEqual([]);
  });

  it.each([
    ["lake.species", "zebra"],
    ["lake.species", "quagga"],
    ["lake.depthType", "deep"],
    ["lake.depthType", "shallow"],
    ["lake.calciumScheme", "whittier"],
    ["lake.calciumScheme", "mackie-claudi"],
    ["structures[intake].rack.barShape", "rectangular"],
    ["structures[intake].rack.barShape", "rounded-upstream"],
    ["structures[intake].rack.barShape", "rounded-both"],
    ["structures[intake].rack.barShape", "round"],
    ...["meusburger", "reclamation", "clark", "kirschmer"].map((formula) => [
      "structures[intake].rack.formula",
      formula,
    ]),
  ])("is found for a study with %s = %s", (place, value) => {
    const study = readStudyText(editedText([[place, value]]), "study.yaml");
    expect(() => comparedRun(study, set).comparison).not.toThrow();
  });
});

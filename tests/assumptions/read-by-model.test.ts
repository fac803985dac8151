import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { compareStudy } from "../../src/study/compute.js";
import { readStudyText } from "../../src/study/read.js";
import { editedText } from "../study/example.js";
import { realSet } from "./real.js";

const modelFolder = fileURLToPath(new URL("../../src/model", import.meta.url));
const code = readdirSync(modelFolder, { recursive: true, encoding: "utf8" })
  .filter((name) => name.endsWith(".ts"))
  .map((name) => readFileSync(join(modelFolder, name), "utf8"))
  .join("\n");

const set = realSet();
const ids = [...set.entries.keys()];
const families = [...new Set(ids.map((id) => id.split(".")[0] ?? ""))];

const captured = (pattern: RegExp) => [
  ...new Set([...code.matchAll(pattern)].map((match) => match[1] ?? "")),
];

/** Ids given to a reader of assumptions as they stand. */
const readAsTheyStand = captured(/\b(?:assumed|source)\(\s*"([^"]+)"/g);
/** Every text of the code that is written like an id of a known family, for instance in lists of ids. */
const likeIds = captured(/"([a-z-]+\.[a-z0-9.-]+)"/g).filter((id) =>
  families.includes(id.split(".")[0] ?? ""),
);
/** Ids put together from a pattern such as cleaning.${subject}.rate. */
const patterns = captured(/`([a-z-]+\.[^`\s]*\$\{[^`\s]*)`/g)
  .filter((text) => families.includes(text.split(".")[0] ?? ""))
  .map((text) => ({ text, fits: patternOf(text) }));

function patternOf(text: string): RegExp {
  const fixed = text.split(/\$\{[^}]*\}/).map((part) => part.replaceAll(".", "\\."));
  return new RegExp(`^${fixed.join("[a-z0-9.-]+")}$`);
}

describe("an assumption that the model reads", () => {
  it("stands in the files", () => {
    expect(readAsTheyStand.length).toBeGreaterThan(0);
    expect(readAsTheyStand.filter((id) => !set.entries.has(id))).toEqual([]);
  });

  it("stands in the files if a list of ids names it", () => {
    expect(likeIds.filter((id) => !set.entries.has(id))).toEqual([]);
  });

  it("has ids in the files for every pattern of ids", () => {
    const empty = patterns.filter(({ fits }) => !ids.some((id) => fits.test(id)));
    expect(empty.map(({ text }) => text)).toEqual([]);
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
    expect(() => compareStudy(study, set)).not.toThrow();
  });
});

describe("an assumption in the files", () => {
  it("is read by the model", () => {
    const used = (id: string) => likeIds.includes(id) || patterns.some(({ fits }) => fits.test(id));
    expect(ids.filter((id) => !used(id))).toEqual([]);
  });
});

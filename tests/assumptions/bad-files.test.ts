import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { AssumptionError, assumptionFiles, readAssumptions } from "../../src/assumptions/load.js";
import { assumptionsFolder } from "./real.js";

const badFolder = fileURLToPath(new URL("../bad/assumptions", import.meta.url));
const shipped = assumptionFiles(assumptionsFolder);

/** The shipped files with those of a folder: its sources beside the others, its entries in place of those of their ids. */
function filesWith(folder: string): Map<string, string> {
  const files = new Map(shipped);
  const readIn = (name: string) => readFileSync(`${folder}/${name}`, "utf8");
  const names = readdirSync(folder).filter((name) => name !== "sources.yaml");
  const ids = names.flatMap((name) => [...readIn(name).matchAll(/id: ([a-z0-9.-]+),/g)].map(([, id]) => id));
  for (const [name, text] of files) {
    const kept = text.split("\n").filter((line) => !ids.some((id) => line.startsWith(`- { id: ${id},`)));
    files.set(name, kept.join("\n"));
  }
  for (const name of names) files.set(name, readIn(name));
  return files.set("sources.yaml", `${shipped.get("sources.yaml")}\n${readIn("sources.yaml")}`);
}

/** The problems with which files are refused; fails if they are read, or if the error is not for an engineer. */
function problemsOf(mistake: string): readonly string[] {
  try {
    readAssumptions(filesWith(`${badFolder}/${mistake}`));
  } catch (error) {
    if (error instanceof AssumptionError) return error.problems;
    throw error;
  }
  throw new Error("the files were read without problems");
}

interface Mistake {
  /** Folder under tests/bad/assumptions. */
  readonly name: string;
  readonly file: string;
  /** The entry, or the line where no entry can be named. */
  readonly entry: string;
  /** What was found wrong. */
  readonly found: readonly string[];
  readonly remedy: string;
  /** Problems told beside it, where one slip makes several. */
  readonly others?: readonly RegExp[];
}

const layer = { file: "conduits.yaml", entry: "conduit.largest-layer" };
const rate = { file: "cleaning.yaml", entry: "cleaning.rack.rate" };

const mistakes: readonly Mistake[] = [
  { ...rate, name: "missing-source", found: ["source", "is missing"], remedy: "Add" },
  { ...rate, name: "missing-title", found: ["title", "is missing"], remedy: "Add" },
  {
    ...rate,
    name: "source-unknown",
    found: ['"a-friend"', "sources.yaml"],
    remedy: "Add the citation there",
  },
  {
    ...rate,
    name: "value-above-high",
    found: ["is 400", "allowed 20 to 200 $/m2"],
    remedy: "Correct the value or widen the range with a source",
  },
  {
    ...rate,
    name: "low-above-value",
    found: ["is 60", "allowed 90 to 200 $/m2"],
    remedy: "Correct the value or widen the range with a source",
  },
  {
    ...rate,
    name: "unknown-key",
    found: ['"comment"', "id, value, unit, low, high"],
    remedy: "Correct or remove it",
  },
  { ...rate, name: "duplicate-entry", found: ["a second time"], remedy: "Keep one of the two" },
  { ...rate, name: "missing-unit", found: ["unit is missing", "$/m2"], remedy: "Add" },
  { ...rate, name: "unknown-unit", found: ['unit is "$/tile"', "allowed: $/m2"], remedy: "Correct the unit" },
  {
    ...rate,
    name: "unknown-basis",
    found: ['"guessed"', "published, operator record"],
    remedy: "correct it",
  },
  { ...rate, name: "value-as-text", found: ['"60 dollars"', "number"], remedy: "correct it" },
  { ...rate, name: "price-without-year", found: ["priceYear"], remedy: "Add the year of its prices" },
  {
    file: "cleaning.yaml",
    entry: "Cleaning.Rack",
    name: "id-in-capitals",
    found: ['"Cleaning.Rack"', "allowed: lower-case words"],
    remedy: "correct it",
  },
  {
    file: "cleaning.yaml",
    entry: "",
    name: "not-a-list",
    found: ["no list of assumptions"],
    remedy: 'Write each as "- { id: …',
  },
  { file: "cleaning.yaml", entry: "line 3", name: "broken-yaml", found: ["}"], remedy: "Correct the file" },
  {
    file: "labour.yaml",
    entry: "labour.maintenance-rate",
    name: "wrong-unit",
    found: ['unit is "$/kg"', "allowed: $/h, or a unit that can be converted to it"],
    remedy: "Correct the unit, and the values with it",
  },
  {
    ...layer,
    name: "unconvertible-unit",
    found: ['unit is "s"', "allowed: m, or a unit"],
    remedy: "Correct the unit",
  },
  {
    file: "docks.yaml",
    entry: "dock.submerged-share",
    name: "share-above-one",
    found: ["high is 1.2 share", "allowed: at least 0 and at most 1"],
    remedy: "Correct it or its unit",
  },
  {
    ...layer,
    name: "value-outside-bounds",
    found: ["value is 15 m", "allowed: above 0 and at most 1 m"],
    remedy: "Correct it or its unit",
    others: [/high is 40 m; allowed: above 0 and at most 1 m/],
  },
  {
    ...layer,
    name: "low-outside-bounds",
    found: ["low is 0 mm (0 m)", "allowed: above 0 and at most 1 m"],
    remedy: "Correct it or its unit",
  },
  {
    file: "conduits.yaml",
    entry: "conduit.larges-layer",
    name: "unknown-id",
    found: ["is read by nothing", "allowed: an id that the model reads", "conduit.largest-layer"],
    remedy: "Correct the id or remove the entry",
  },
  {
    file: "money.yaml",
    entry: "money.other-rate.high",
    name: "missing-id",
    found: ["is missing, here and elsewhere", "allowed: at least 0 and at most 1 1/yr, with the unit 1/yr"],
    remedy: "Add an entry for it",
  },
  {
    file: "coatings.yaml",
    entry: "plan.foul-release.capital",
    name: "plan-number-in-wrong-unit",
    found: ['unit is "$/(m3/s)"', "allowed: $/m2", "for the capital of the plan foul-release"],
    remedy: "Correct the unit",
  },
  {
    file: "coatings.yaml",
    entry: "plan.foul-release.life",
    name: "plan-number-outside-bounds",
    found: ["low is 0 yr", "allowed: above 0 and at most 200 yr, for the life of the plan foul-release"],
    remedy: "Correct it or its unit",
  },
  {
    file: "sources.yaml",
    entry: "contractor-2025",
    name: "source-without-citation",
    found: ["citation", "is missing"],
    remedy: "Add",
  },
];

describe("a folder of assumptions with one mistake", () => {
  it.each(mistakes)(
    "is refused, by file, entry, value and remedy: $name",
    ({ name, file, entry, found, remedy, others = [] }) => {
      const [problem = "", ...more] = problemsOf(name);
      expect(problem.startsWith(`${file}: `)).toBe(true);
      for (const words of [entry, ...found, remedy]) expect(problem).toContain(words);
      expect(problem).toMatch(/\.$/);
      expect(problem.split("\n")).toHaveLength(1);
      expect(more).toEqual(others.map((words) => expect.stringMatching(words)));
    },
  );

  it("is tried for every malformed folder there is", () => {
    expect(mistakes.map(({ name }) => name).sort()).toEqual(readdirSync(badFolder).sort());
  });

  it("is told under one heading, a line for each problem", () => {
    const { message } = new AssumptionError(["a.yaml: one.", "b.yaml: two."]);
    expect(message.split("\n")).toEqual([
      "The assumptions cannot be used.",
      "  a.yaml: one.",
      "  b.yaml: two.",
    ]);
  });
});

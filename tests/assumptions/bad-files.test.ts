import { readdirSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { AssumptionError, loadAssumptions } from "../../src/assumptions/load.js";

const badFolder = fileURLToPath(new URL("../bad/assumptions", import.meta.url));

/** The problems with which a folder is refused; fails if it is read, or if the error is not for an engineer. */
function problemsOf(mistake: string): readonly string[] {
  try {
    loadAssumptions(`${badFolder}/${mistake}`);
  } catch (error) {
    if (error instanceof AssumptionError) return error.problems;
    throw error;
  }
  throw new Error("the folder was read without problems");
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
}

const rate = { file: "cleaning.yaml", entry: "cleaning.rack.rate" };

const mistakes: readonly Mistake[] = [
  { ...rate, name: "missing-source", found: ["source", "is missing"], remedy: "Add" },
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
  { ...rate, name: "unknown-unit", found: ['"$/acre"', "$/m2"], remedy: "correct it" },
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
    ({ name, file, entry, found, remedy }) => {
      const [problem = "", ...more] = problemsOf(name);
      expect(problem.startsWith(`${file}: `)).toBe(true);
      for (const words of [entry, ...found, remedy]) expect(problem).toContain(words);
      expect(problem).toMatch(/\.$/);
      expect(problem.split("\n")).toHaveLength(1);
      // a source that is not read is missed by the entry that names it
      expect(more.length).toBe(file === "sources.yaml" ? 1 : 0);
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

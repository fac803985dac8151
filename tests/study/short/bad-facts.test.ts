import { describe, expect, it } from "vitest";
import { InputError } from "../../../src/study/reading/problems.js";
import { readFacts, shortFactsOf } from "../../../src/study/short/read-facts.js";
import { entries, shortExample } from "./facts.js";

const problemsOf = (typed: unknown) => readFacts(typed, entries).problems;

/** Every field of an example by itself, with its place. */
function places(tree: unknown, path: readonly (string | number)[] = []): (readonly (string | number)[])[] {
  if (typeof tree !== "object" || tree === null) return [path];
  return Object.entries(tree).flatMap(([key, item]) =>
    places(item, [...path, Array.isArray(tree) ? Number(key) : key]),
  );
}

function withValue(tree: unknown, path: readonly (string | number)[], value: unknown): unknown {
  const [key, ...rest] = path;
  if (key === undefined) return value;
  const copy = Array.isArray(tree) ? [...tree] : { ...Object(tree) };
  Reflect.set(copy, key, withValue(Reflect.get(Object(tree), key), rest, value));
  return copy;
}

const example = shortExample("sorrel-bend");
const fields = places(example).filter(([key]) => key !== "name");

describe("a short fact that cannot be", () => {
  it.each(fields.map((path) => [path.join(" "), path] as const))(
    "is told with its place, what was found and what is allowed: %s",
    (_name, path) => {
      const [problem, ...others] = problemsOf(withValue(example, path, "nonsense"));
      expect(others).toEqual([]);
      expect(problem?.at).toEqual(path);
      expect(problem?.found).toBe('"nonsense"');
      expect(problem?.allowed).not.toBe("");
      expect(problem?.remedy).not.toBe("");
    },
  );

  it.each(["\u0007", "\u202e", "\u2066"])("is a name with a character that nobody sees: %j", (unseen) => {
    const [problem, ...others] = problemsOf({ name: `Mill${unseen}pond`, intakes: [{ name: "City" }] });
    expect(others).toEqual([]);
    expect(problem?.at).toEqual(["name"]);
    expect(problem?.found).toContain("at character 5");
    expect(problem?.remedy).toBe("Take that character out.");
  });

  it("is too warm, in both systems of units: 60 °C are 60·1.8 + 32 = 140 °F", () => {
    const [problem] = problemsOf({ warmestMonth: "200" });
    expect(problem?.allowed).toBe("a temperature of at most 60 °C, 140 °F");
  });

  it.each([
    ["summerLevel", "651,2 m"],
    ["depth", "23,5"],
    ["warmestMonth", "24,4 degC"],
    ["fromAway", "5,5 %"],
  ])("is a decimal comma, which is told how to write: %s %s", (key, value) => {
    const [problem] = problemsOf({ [key]: value });
    expect(problem).toMatchObject({ path: key, remedy: "Write decimals with a point: 3.5, not 3,5." });
  });

  it.each([
    [{ launches: "26.600" }, "launches", "Write 26,600, or 26.6 if a fraction is meant."],
    [{ wanted: { cost: "154.000" } }, "wanted.cost", "Write 154,000, or 154 if a fraction is meant."],
    [{ area: "1.234.500 acres" }, "area", "Write 1,234,500."],
  ])("is a point between thousands, which may be a fraction too: %j", (typed, path, remedy) => {
    expect(problemsOf(typed)).toMatchObject([{ path, remedy }]);
  });

  it.each([
    ["launches: 9.000", "Write 9,000, or 9 if a fraction is meant."],
    ["wanted:\n  cost: 154.000", "Write 154,000, or 154 if a fraction is meant."],
    ['{"launches": 90.000}', "Write 90,000, or 90 if a fraction is meant."],
  ])("is a point between thousands of a number in a file: %s", (text, remedy) => {
    expect(() => shortFactsOf(text, "lake.short.yaml", entries)).toThrow(remedy);
  });

  it("is no number with a fraction in a file", () => {
    const text = "depth: 23.5\nlaunches: 9000\nfromAway: 0.250 %\nexchangeRate: 1.25\n";
    expect(shortFactsOf(text, "lake.short.yaml", entries)).toMatchObject({ exchangeRate: 1.25 });
  });

  it("is no number with a fraction, nor a currency in small letters", () => {
    const typed = { depth: "23.5 m", summerLevel: "651.25 m", fromAway: "0.250 %", currency: "usd" };
    expect(problemsOf(typed)).toEqual([]);
  });

  it.each([
    ["nothing", "", "nothing"],
    ["a spreadsheet with semicolons", "summerLevel;2136\nramps;3\n", "a text without fields"],
    ["a list", "- 1\n- 2\n", "a list of 2"],
    ["an unknown fact", "lunches: 8000\n", "an unknown key"],
  ])("may be the whole file: %s", (_what, text, found) => {
    const read = () => shortFactsOf(text, "lake.short.yaml", entries);
    expect(read).toThrow(InputError);
    expect(read).toThrow(found);
  });

  it.each([
    [{ summerLevel: "100 m", winterLevel: "80 m", depth: "15 m" }, "depth"],
    [{ summerLevel: "100 m", winterLevel: "80 m", plant: { head: "15 m" } }, "plant.head"],
    [{ summerLevel: "100 m", winterLevel: "90 m", intakes: [{ depth: "5 m" }] }, "intakes[0].depth"],
    [{ depth: "10 m", intakes: [{ depth: "15 m" }] }, "intakes[0].depth"],
    // 1 m³/s in 100 mm: 1/(π·0.05²) = 127 m/s
    [{ intakes: [{ flow: "1 m3/s", pipe: "100 mm" }] }, "intakes[0].pipe"],
    [{ wanted: { from: "oct", until: "mar" } }, "wanted.until"],
    [{ currency: "CHF" }, "exchangeRate"],
    // At least 26.6 million/365 days/3 lanes: 24,000 a day at each.
    [{ ramps: "1", launches: "26,600,000" }, "launches"],
  ])("may be two facts that cannot be together: %j", (typed, path) => {
    expect(problemsOf(typed).map((each) => each.path)).toEqual([path]);
  });

  it.each([
    [{ wanted: { cost: "154k" } }, "Write 154,000 if that is meant."],
    [{ wanted: { cost: "$1.5 million" } }, "Write 1,500,000 if that is meant."],
    [{ launches: "9K" }, "Write 9,000 if that is meant."],
    [{ area: "5k" }, "Correct this value."],
  ])("is a number with a letter for thousands, told in full where no unit is meant: %j", (typed, remedy) => {
    expect(problemsOf(typed)).toMatchObject([{ remedy }]);
  });

  it.each(["constructor", "toString", "__proto__"])(
    "is a field by a name that every object has, once an error of the program: %s",
    (name) => {
      const typed: unknown = JSON.parse(`{ "${name}": "2,136 ft" }`);
      expect(problemsOf(typed)).toMatchObject([{ path: name, found: "an unknown key" }]);
      expect(problemsOf(typed)[0]?.allowed).toMatch(/^one of name, units, .*launches, fromAway/);
    },
  );

  it("is no fact that was left empty", () => {
    expect(problemsOf({ name: " ", depth: "", plant: { power: "" }, intakes: [{ flow: "" }] })).toEqual([]);
  });

  it("takes a plain number in the field's unit, but asks where it could be two", () => {
    const { facts } = readFacts({ units: "si", depth: 20, wanted: { cost: "90,000" } }, entries);
    expect(facts?.depth?.text).toBe("20 m");
    expect(facts?.wanted?.cost?.text).toBe("USD 90,000/yr");
    expect(problemsOf({ nearestInfested: "5" }).map((each) => each.path)).toEqual(["nearestInfested"]);
    expect(problemsOf({ fromAway: 0.54 }).map((each) => each.path)).toEqual(["fromAway"]);
  });
});

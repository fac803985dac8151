import { describe, expect, it } from "vitest";
import { stringify } from "yaml";
import {
  absent,
  editedDocument,
  editedText,
  exampleDocument,
  placeIn,
  problemsIn,
  wordsOfTheProgram,
} from "./example.js";

type Edit = readonly [place: string, value: unknown, found: string | RegExp, allowed: string | RegExp];

const missing = "nothing";

/** One mistake each: where, the value put there, and words of what the message finds and allows. */
const quantities: readonly Edit[] = [
  ["lake.maximumElevation", absent, missing, 'an elevation such as "1,240 ft"'],
  ["lake.maximumElevation", "12 kg", '"12 kg"', 'an elevation such as "1,240 ft"'],
  ["lake.maximumElevation", 640, "640", "a unit is missing"],
  ["lake.maximumElevation", null, "nothing", 'an elevation such as "1,240 ft"'],
  ["lake.maximumElevation", true, "true", 'an elevation such as "1,240 ft"'],
  ["lake.maximumElevation", ["640 m"], "a list of 1", 'an elevation such as "1,240 ft"'],
  ["structures[intake].demand.jul", absent, missing, 'a flow such as "450 cfs"'],
  ["structures[intake].demand.jul", "-3 cfs", '"-3 cfs"', "a flow of at least 0"],
  ["structures[intake].demand", "30 cfs", '"30 cfs"', "a group of fields"],
  ["structures[intake].rack.width", "0 ft", '"0 ft"', "a length above zero"],
  ["structures[intake].rack.width", "5 s", '"5 s"', 'a length such as "42 in"'],
  ["structures[intake].rack.angle", "95 deg", '"95 deg"', "at most 90 deg"],
  ["structures[intake].rack", "wide", '"wide"', "a group of fields"],
  ["structures[hydropower].energyPrice.jul", absent, missing, 'money per energy such as "$0.08/kWh"'],
  ["structures[hydropower].energyPrice.jul", "62/MWh", '"62/MWh"', 'money per energy such as "$0.08/kWh"'],
  ["structures[hydropower].energyPrice", "62", '"62"', 'money per energy such as "$0.08/kWh"'],
  ["structures[hydropower].energyPrice", absent, missing, 'money per energy such as "$0.08/kWh"'],
  ["structures[hydropower].efficiency", "0 %", '"0 %"', "an efficiency above 0"],
  ["structures[ramp].slope", "0 %", '"0 %"', "a slope above 0"],
  ["lake.humidity.jan", "120 %", '"120 %"', "at most 100 %"],
  ["boats.launches.feb", -60, "-60", "of at least 0"],
  ["boats.otherWays[0].chance", "3 yr", '"3 yr"', 'a yearly rate such as "2.5 %/yr"'],
  ["options[steps].steps.coverage", "101 %", '"101 %"', "at most 100 %"],
  ["options[staff].staff[0].wage", "$23", '"$23"', "the unit after the stroke is missing"],
  ["money.discountRate", "-3 %/yr", '"-3 %/yr"', "of at least 0"],
];

const others: readonly Edit[] = [
  ["study.name", absent, missing, "a text"],
  ["study.name", "   ", '"   "', "not empty"],
  ["study.name", "long ".repeat(60), "long long", "at most 200 characters"],
  ["study.prepared", "25 November", '"25 November"', "YYYY-MM-DD"],
  ["study.units", "imperial", '"imperial"', "one of us, si"],
  ["lake", absent, missing, "a group of fields"],
  ["lake.species", "golden", '"golden"', "one of zebra, quagga"],
  ["lake.chemistry.ph", "8.3", '"8.3"', "a number"],
  ["lake.chemistry.ph", 15, "15", "a pH of at most 14"],
  ["lake.chemistry.ph", Number.POSITIVE_INFINITY, /inf/i, "a number"],
  ["lake.storageTable", [], "nothing", "at least two rows"],
  ["lake.drawdown", [], "nothing", "at least one point"],
  ["lake.drawdown[0].on", "2-1", '"2-1"', '"MM-DD"'],
  ["lake.drawdown[0].on", "13-01", '"13-01"', '"MM-DD"'],
  ["lake.infestedSince", "2020", '"2020"', "a year"],
  ["structures", [], "nothing", "at least one structure"],
  ["structures", { intake: {} }, "a group of fields", "a list"],
  [
    "structures[0].kind",
    "canal",
    '"canal"',
    "intake, pumping-plant, treatment-plant, hydropower, service-line, hatchery, dock, ramp or lake-wide",
  ],
  [
    "structures[0].kind",
    absent,
    missing,
    "intake, pumping-plant, treatment-plant, hydropower, service-line, hatchery, dock, ramp or lake-wide",
  ],
  ["structures[intake].supply.by", "magic", '"magic"', /gravity.*pump/],
  ["structures[intake].id", "Village Intake", '"Village Intake"', "lower-case"],
  ["structures[dock].count", 1.5, "1.5", "a whole number"],
  ["structures[dock].count", 0, "0", "at least one"],
  ["structures[dock].floating", "yes", '"yes"', "true or false"],
  ["boats.classes", [], "nothing", "at least one vessel class"],
  ["options[equipment].equipment[0].life", 0, "0", "a life of at least 0.1 years"],
  ["money.horizon", 0, "0", "at least 1 year"],
  ["money.horizon", 1e12, "1000000000000", "at most 100 years"],
  ["money.currency", "dollars", '"dollars"', "three letters"],
  ["money.exchangeRate", 0, "0", "a rate of at least 0.000001"],
  ["money.timing", "whenever", '"whenever"', "one of mid-year, end-of-year"],
  ["overrides", "none", '"none"', "a list"],
];

const unknownKeys = [
  "colour",
  "lake.colour",
  "lake.drawdown[0].colour",
  "structures[intake].colour",
  "structures[intake].rack.colour",
  "structures[hydropower].energyPrice.colour",
  "options[steps].steps.colour",
];

/** Each mistake under a name for the list of tests. */
const mistakes = [...quantities, ...others].map(
  (edit) =>
    [edit[1] === absent ? `no ${edit[0]}` : `${edit[0]} = ${stringify(edit[1]).trim()}`, edit] as const,
);

const told = new Map<Edit, ReturnType<typeof problemsIn>>();

/** What is told of a mistake, read once for all tests. */
function problemsOf(edit: Edit): ReturnType<typeof problemsIn> {
  const [place, value] = edit;
  const problems = told.get(edit) ?? problemsIn(editedText([[place, value]]));
  told.set(edit, problems);
  return problems;
}

const remedyOf = (value: unknown, found: string | RegExp, allowed: string | RegExp) => {
  if (value === absent || (Array.isArray(value) && found === missing)) return "Add it.";
  if (value === null) return "Enter a value, or take the line out.";
  return /at most [\d,]+ characters/.test(String(allowed)) ? "Shorten it." : "Correct this value.";
};

const matching = (words: string | RegExp) =>
  typeof words === "string" ? expect.stringContaining(words) : expect.stringMatching(words);

describe("a study with one field that is not well formed", () => {
  it.each(mistakes)("is refused for %s", (_name, edit) => {
    const [place, value, found, allowed] = edit;
    const problems = problemsOf(edit);
    expect(problems).toHaveLength(1);
    expect(problems[0]).toMatchObject({
      path: placeIn(editedDocument([[place, value]]), place).text,
      found: matching(found),
      allowed: matching(allowed),
      remedy: remedyOf(value, found, allowed),
    });
  });

  it("is told at the row that its list has not", () => {
    const idle = { id: "none", name: "None", afterInfestation: { share: "0 %" } };
    expect(problemsIn(editedText([["options", [idle]]]))).toContainEqual(
      expect.objectContaining({ path: "options[1]", found: missing, remedy: "Add it." }),
    );
  });

  it.each(unknownKeys)("is refused for the unknown key %s", (place) => {
    expect(problemsIn(editedText([[place, "blue"]]))).toEqual([
      expect.objectContaining({
        path: placeIn(exampleDocument(), place).text,
        found: "an unknown key",
        remedy: expect.stringContaining("remove it"),
      }),
    ]);
  });

  it("is refused for each month that is missing from a year", () => {
    const months = { jan: 1, feb: 1, mar: 1, apr: 1, may: 1, jun: 1, jul: 1, aug: 1, sep: 1 };
    const problems = problemsIn(editedText([["boats.launches", months]]));
    expect(problems.map(({ path }) => path)).toEqual(
      ["oct", "nov", "dec"].map((month) => `boats.launches.${month}`),
    );
  });

  it("is refused for an override without a reason", () => {
    const overrides = [{ id: "cleaning.rack.visit", value: "$9,000", reason: " " }];
    expect(problemsIn(editedText([["overrides", overrides]]))).toMatchObject([
      { path: 'overrides[0 "cleaning.rack.visit"].reason', allowed: "a text that is not empty" },
    ]);
  });

  it.each(mistakes)("is told in words for an author: %s", (_name, edit) => {
    for (const problem of problemsOf(edit)) {
      for (const part of [problem.path, problem.found, problem.allowed, problem.remedy]) {
        expect(part).not.toBe("");
        expect(wordsOfTheProgram(part)).toBeUndefined();
        expect(part.length).toBeLessThan(200);
      }
    }
  });
});

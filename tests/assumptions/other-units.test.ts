import { describe, expect, it } from "vitest";
import { parse, stringify } from "yaml";
import { assumptionFiles, readAssumptions } from "../../src/assumptions/load.js";
import type { AssumptionUnit } from "../../src/model/register/expected.js";
import { resultsJson } from "../../src/report/results/results.js";
import { runStudy } from "../../src/study/prepare/compute.js";
import { readStudyText } from "../../src/study/reading/read.js";
import { type ExampleName, exampleText } from "../study/example.js";
import { assumptionsFolder, realSet } from "./real.js";

const foot = 0.3048;
const pound = 0.45359237;
/** Of the unit converter: 31,556,926 s. */
const daysOfYear = 31_556_926 / 86_400;

/** Another unit for each, with a value in it; feet, inches and pounds by definition. Dollars have none. */
const others: Readonly<Record<AssumptionUnit, readonly [unit: string, of: (value: number) => number]>> = {
  share: ["%", (value) => value * 100],
  "1/yr": ["%/yr", (value) => value * 100],
  yr: ["d", (value) => value * daysOfYear],
  d: ["h", (value) => value * 24],
  h: ["min", (value) => value * 60],
  degC: ["degF", (value) => value * 1.8 + 32],
  "m/s": ["ft/s", (value) => value / foot],
  m: ["mm", (value) => value * 1000],
  mm: ["in", (value) => value / 25.4],
  "m3/s": ["L/s", (value) => value * 1000],
  "mg/L": ["g/L", (value) => value / 1000],
  "g/L": ["mg/L", (value) => value * 1000],
  "uS/cm": ["mS/cm", (value) => value / 1000],
  "kg/m2": ["g/cm2", (value) => value / 10],
  $: ["$", (value) => value],
  "$/m2": ["$/ft2", (value) => value * foot ** 2],
  "$/kg": ["$/tonne", (value) => value * 1000],
  "$/m3": ["$/L", (value) => value / 1000],
  "$/h": ["$/min", (value) => value / 60],
  "$/kWh": ["$/MWh", (value) => value * 1000],
  m2: ["ft2", (value) => value / foot ** 2],
  "$/(m3/s)": ["$/(ft3/s)", (value) => value * foot ** 3],
  "1": ["%", (value) => value * 100],
  "1/m2": ["1/ft2", (value) => value * foot ** 2],
  "kg/m3": ["lb/ft3", (value) => (value * foot ** 3) / pound],
  "m2/s": ["mm2/s", (value) => value * 1e6],
  "m2K/W": ["cm2K/W", (value) => value * 1e4],
  kPa: ["Pa", (value) => value * 1000],
  "1/degC.d": ["1/degF.d", (value) => value / 1.8],
  "kWh/m3.K": ["kJ/m3.K", (value) => value * 3600],
};

interface Written {
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly unit: AssumptionUnit;
}

const isList = (name: string) =>
  ![
    "sources.yaml",
    "protection-plans.yaml",
    "planning-rates.yaml",
    "price-index.yaml",
    "groups.yaml",
    "founding-evidence.yaml",
    "habitat-lakes.yaml",
  ].includes(name);

const inOtherUnits = (text: string): string =>
  stringify(
    (parse(text) as Written[]).map((entry) => {
      const [unit, of] = others[entry.unit];
      return { ...entry, unit, value: of(entry.value), low: of(entry.low), high: of(entry.high) };
    }),
  );

const shipped = realSet();
const files = [...assumptionFiles(assumptionsFolder)];
const changed = readAssumptions(
  new Map(files.map(([name, text]) => [name, isList(name) ? inOtherUnits(text) : text])),
);

/** Every number of a tree of results, by its place. */
function numbersIn(value: unknown, place = "", found = new Map<string, number>()): Map<string, number> {
  if (typeof value === "number") found.set(place, value);
  else if (typeof value === "string" && value !== "" && Number.isFinite(Number(value))) {
    found.set(place, Number(value));
  } else if (typeof value === "object" && value !== null) {
    for (const [key, item] of Object.entries(value)) numbersIn(item, `${place}/${key}`, found);
  }
  return found;
}

describe("every shipped assumption in another unit of its kind", () => {
  it("is the same assumption, to the last bit, in the unit that the model expects", () => {
    expect([...changed.entries]).toEqual([...shipped.entries]);
  });

  it.each<ExampleName>(["sorrel-bend", "ninemoss"])("gives the same results to 1e-12: %s", (name) => {
    const study = readStudyText(exampleText(name), name);
    const before = numbersIn(resultsJson(runStudy(study, shipped)));
    const after = numbersIn(resultsJson(runStudy(study, changed)));
    expect(before.size).toBeGreaterThan(1000);
    expect([...after.keys()]).toEqual([...before.keys()]);
    const moved = [...before].filter(([place, value]) => {
      const difference = Math.abs((after.get(place) ?? Number.NaN) - value);
      return !(difference <= 1e-12 * Math.abs(value));
    });
    expect(moved).toEqual([]);
  });
});

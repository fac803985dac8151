import { readdirSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { applyOverrides } from "../../src/assumptions/override.js";
import { overrideDimensions } from "../../src/assumptions/units.js";
import type { AssumptionUnit } from "../../src/model/register/expected.js";
import type { DimensionName } from "../../src/units/dimensions.js";
import { parseQuantity } from "../../src/units/quantity.js";
import { relativeError, relativeTolerance } from "../units/definitions.js";
import { assumptionsFolder, realSet } from "./real.js";

const set = realSet();
const entries = [...set.entries.values()];
const isPrice = (unit: string) => unit.startsWith("$");

describe("the folder of assumptions", () => {
  it("is read whole: each file gives entries", () => {
    const files = readdirSync(assumptionsFolder).filter(
      (name) =>
        ![
          "sources.yaml",
          "protection-plans.yaml",
          "price-index.yaml",
          "planning-rates.yaml",
          "groups.yaml",
          "founding-evidence.yaml",
          "habitat-lakes.yaml",
        ].includes(name),
    );
    expect(files.filter((name) => !name.endsWith(".yaml"))).toEqual([]);
    expect(entries.length).toBeGreaterThan(files.length);
  });

  it("holds a citation for every source that an entry names", () => {
    const dangling = entries.filter(({ source }) => !set.sources.get(source)?.citation);
    expect(dangling.map(({ id }) => id)).toEqual([]);
  });

  it("holds every value within its own range", () => {
    const outside = entries.filter(({ value, low, high }) => !(low <= value && value <= high));
    expect(outside.map(({ id }) => id)).toEqual([]);
  });

  it("gives the year of prices for every price, and for prices only", () => {
    const wrong = entries.filter(({ unit, priceYear }) => isPrice(unit) !== (priceYear !== undefined));
    expect(wrong.map(({ id }) => id)).toEqual([]);
  });

  it("gives every judged price a range of a factor of two or more", () => {
    const judged = entries.filter(({ unit, basis }) => isPrice(unit) && basis === "judged");
    expect(judged.length).toBeGreaterThan(0);
    expect(judged.filter(({ low, high }) => !(high >= 2 * low)).map(({ id }) => id)).toEqual([]);
  });

  it("calls nothing published whose source was not read, in any way", () => {
    const unread = entries.filter(
      ({ source, basis }) => basis === "published" && set.sources.get(source)?.read === "not read",
    );
    expect(unread.map(({ id }) => id)).toEqual([]);
  });

  it("tells as judged what is judged or said of something else in its source", () => {
    // Each was once called published; what the source says stands in its note.
    const judged = [
      ...["arrival.shape", "population.later-over-peak", "settlement.spawning-temperature.quagga"],
      ...["settlement.upper-temperature", "drying.quagga-factor", "checks.layer-mass-low"],
      ...["checks.layer-mass-high", "plan.foul-release.capital", "oxidant.small-plant-cost"],
      ...["oxidant.large-plant-cost", "plan.oxidant.capital", "plan.strainer-uv.capital"],
      ...["checks.usual.ramp-slope-low", "checks.usual.ramp-slope-high"],
    ];
    for (const id of judged) {
      expect(set.entries.get(id)).toMatchObject({
        basis: "judged",
        note: expect.stringContaining("Judged from the source"),
      });
    }
  });

  it("calls nothing published whose source is a judgement of the project", () => {
    const firm = entries.filter(({ source, basis }) => source === "project-judgement" && basis !== "judged");
    expect(firm.map(({ id }) => id)).toEqual([]);
  });
});

/** A value of an entry as an engineer would type it for an override. */
function typed(value: number, unit: AssumptionUnit): string {
  if (unit === "share") return `${value * 100} %`;
  if (unit === "1/yr") return `${value * 100} %/yr`;
  if (unit === "$") return `$${value}`;
  if (unit === "$/(m3/s)") return `${value}`;
  if (unit.startsWith("$/")) return `$${value}${unit.slice(1)}`;
  return overrideDimensions[unit] ? `${value} ${unit}` : `${value}`;
}

describe("an entry of the folder", () => {
  it.each(entries.map((entry) => [entry.id, entry] as const))(
    "can be overridden in its own unit: %s",
    (id, entry) => {
      const override = { id, value: typed(entry.value, entry.unit), reason: "the same value again" };
      const { applied, problems } = applyOverrides(set, [override]);
      expect(problems).toEqual([]);
      expect(relativeError(applied[0]?.value ?? Number.NaN, entry.value)).toBeLessThan(relativeTolerance);
    },
  );
});

/** Values of published figures in other units, from the abstracts named; the tolerance is their own rounding. */
const published: ReadonlyArray<
  readonly [id: string, bound: "value" | "low" | "high", text: string, DimensionName]
> = [
  // Chakraborti and others 2016: operation and maintenance at 1 mgd, the same with capital, plants above 10 mgd
  ["oxidant.small-plant-cost", "value", "$34.32/Mgal", "moneyPerVolume"],
  ["oxidant.small-plant-cost", "high", "$78.56/Mgal", "moneyPerVolume"],
  ["oxidant.large-plant-cost", "value", "$7.00/Mgal", "moneyPerVolume"],
  ["oxidant.large-plant-cost", "low", "$1.00/Mgal", "moneyPerVolume"],
  ["oxidant.large-plant-cost", "high", "$13.00/Mgal", "moneyPerVolume"],
  ["oxidant.small-plant-flow", "value", "1 mgd", "flow"],
  // The same: one plant of 1 mgd, from half its running cost to twice its cost with capital; larger ones, the last of 2,640 mgd
  ["checks.water-cost.small-low", "value", "$17.16/Mgal", "moneyPerVolume"],
  ["checks.water-cost.small-high", "value", "$157.12/Mgal", "moneyPerVolume"],
  ["checks.water-cost.large-low", "value", "$1.00/Mgal", "moneyPerVolume"],
  ["checks.water-cost.large-high", "value", "$13.41/Mgal", "moneyPerVolume"],
  ["oxidant.large-plant-flow", "value", "10 mgd", "flow"],
  // Environmental Research and Education Foundation 2024: mean of the United States, lowest and highest region
  ["disposal.tipping-fee", "value", "$57.63/short ton", "moneyPerMass"],
  ["disposal.tipping-fee", "low", "$43.18/short ton", "moneyPerMass"],
  ["disposal.tipping-fee", "high", "$84.44/short ton", "moneyPerMass"],
  // Power magazine 2019: colonies to 400 ft
  ["settlement.no-depth.quagga", "value", "400 ft", "length"],
];

describe("a published figure", () => {
  it.each(published)("is converted rightly: %s, its %s from %s", (id, bound, text, dimension) => {
    const entry = set.entries.get(id);
    const ratio = (entry?.[bound] ?? Number.NaN) / parseQuantity(text, dimension).value;
    expect(ratio).toBeGreaterThan(0.997);
    expect(ratio).toBeLessThan(1.003);
  });
});

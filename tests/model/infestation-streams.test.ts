import { describe, expect, it } from "vitest";
import { compare } from "../../src/model/compare.js";
import { infestationCost, isControl } from "../../src/model/infestation-cost.js";
import { AmountError, type CostLine, costLine } from "../../src/model/money/line.js";
import { presentValueByAge, presentValueOf, weightsOf } from "../../src/model/present-value.js";
import { tableOf } from "../../src/model/structures/plans/year-table.js";
import { type StructureResult, structureResult } from "../../src/model/structures/structure.js";
import { assumed, assumedWith } from "./assumptions.js";
import { contextsOf } from "./contexts.js";
import { drawnDownLake } from "./lakes.js";
import { relativeGap } from "./near.js";
import { duties, fixedDock, floatingDock, wholeStudy } from "./study.js";

const contexts = contextsOf(drawnDownLake, 3);
const line = (
  type: CostLine["type"],
  amount: number,
  bearer = "city",
  kind: CostLine["quantityKind"] = "each",
) =>
  costLine({
    structure: "dock",
    what: type,
    type,
    bearer,
    quantity: 1,
    quantityKind: kind,
    unitRate: amount,
    assumptionIds: [],
  });

/** A structure whose lines are given by year. */
const withLines = (base: StructureResult, years: readonly (readonly CostLine[])[]): StructureResult => ({
  ...base,
  told: {
    count: years.length,
    origins: [{ part: undefined, table: tableOf(years) }],
  },
  years,
});
const dock = structureResult(floatingDock, contexts);
const pier = structureResult(fixedDock, contexts);
const lakeWide = structureResult(duties, contexts);

describe("what an infestation costs", () => {
  const lines = [
    [line("loss", 10), line("work", 4), line("protection", 3, "county")],
    [line("loss", 20), line("work", 5), line("loss", 2, "county"), line("apart", 1000)],
    [line("work", 6, "county", "energy"), line("loss", 7, "city", "energy")],
  ];
  const cost = infestationCost([withLines(dock, lines)], 0, new Set(["energy"]));

  it("is harm, which is lost, and control, which is done about it", () => {
    // By hand from the lines above; what is not infrastructure stays apart.
    expect(cost.plain.harm).toEqual([10, 22, 7]);
    expect(cost.plain.control).toEqual([7, 5, 6]);
    expect(cost.plain.byYear).toEqual([17, 27, 13]);
    expect([cost.harm, cost.control, cost.byYear].map((amounts) => amounts.map(Number))).toEqual([
      [10, 22, 7],
      [7, 5, 6],
      [17, 27, 13],
    ]);
    expect(cost.byAccount.get("other")?.plain.byYear).toEqual([0, 1000, 0]);
    expect(isControl(line("outage", 1))).toBe(true);
    expect(
      lines
        .flat()
        .filter(isControl)
        .map(({ type }) => type),
    ).not.toContain("loss");
    expect(isControl(line("protection", 1))).toBe(true);
    expect(isControl(line("loss", 1))).toBe(false);
    expect(isControl(line("apart", 1))).toBe(false);
  });

  it("is the same by bearer", () => {
    const [city, county] = cost.byBearer;
    expect([city?.id, county?.id]).toEqual(["city", "county"]);
    expect(city?.plain.harm).toEqual([10, 20, 7]);
    expect(city?.plain.control).toEqual([4, 5, 0]);
    expect(county?.plain.harm).toEqual([0, 2, 0]);
    expect(county?.plain.control).toEqual([3, 0, 6]);
  });

  it("keeps apart what rises otherwise, and nothing else", () => {
    expect([...cost.rising.keys()]).toEqual(["energy"]);
    expect(cost.rising.get("energy")?.plain.harm).toEqual([0, 0, 7]);
    expect(cost.rising.get("energy")?.plain.control).toEqual([0, 0, 6]);
    expect(cost.rising.get("energy")?.control.map(Number)).toEqual([0, 0, 6]);
    expect([...infestationCost([withLines(dock, lines)], 0).rising.keys()]).toEqual([]);
  });

  it("first is above a limit in one structure by what it loses; work does not count", () => {
    // By hand: the dock loses 10, 22 and 7; the pier 0, 40 and 9; what is lake-wide does not show an infestation.
    const all = infestationCost(
      [
        withLines(pier, [[], [line("loss", 40)], [line("loss", 9), line("work", 7)]]),
        withLines(dock, lines),
        withLines(lakeWide, [[line("work", 900), line("loss", 800)], [], []]),
      ],
      0,
    );
    expect([0, 9.99, 10, 30, 39.99, 40].map(all.firstAgeAbove)).toEqual([0, 0, 1, 1, 1, undefined]);
  });

  it("begins with the first year that the study holds", () => {
    const later = infestationCost([withLines(dock, lines)], 1);
    expect(later.plain.byYear).toEqual([27, 13]);
    expect(later.firstAgeAbove(20)).toBe(0);
    const [city, county] = later.byBearer;
    expect([city?.plain.harm, city?.plain.control]).toEqual([
      [20, 7],
      [5, 0],
    ]);
    expect([county?.plain.harm, county?.plain.control]).toEqual([
      [2, 0],
      [0, 6],
    ]);
    expect([...infestationCost([withLines(dock, lines)], 2).byAccount.keys()]).toEqual([]);
  });

  it("refuses an amount too large for whole cents in any year, also in those before the study", () => {
    const absurd = [{ ...line("loss", 1), quantity: 3, unitRate: 1e15 }];
    for (const years of [
      [absurd, [], []],
      [[], absurd, []],
      [[], [], absurd],
    ]) {
      for (const skipYears of [0, 1, 2]) {
        const found = () => infestationCost([withLines(dock, years)], skipYears);
        expect(found).toThrow(AmountError);
        expect(found).toThrow("is not a finite amount: 3000000000000000");
      }
    }
  });
});

describe("the present value of an infestation by its years", () => {
  const escalation = [{ group: "energy" as const, rate: 0.03 }];
  const { baseline, infestation } = compare(
    { ...wholeStudy, money: { ...wholeStudy.money, escalation } },
    assumed,
  );
  const { weights } = baseline;

  it("adds up to the whole, and has in each year that year's costs at their weight", () => {
    const byAge = presentValueByAge(infestation, weights);
    const sum = byAge.reduce((total, part) => total + part.toNumber(), 0);
    expect(relativeGap(sum, presentValueOf(infestation, weights).toNumber())).toBeLessThan(1e-12);
    // All is noticed at once here: a year costs what it weighs, and its energy more by its own weight.
    const energy = infestation.rising.get("energy");
    const risen = weightsOf("energy", weights);
    expect(weightsOf("water", weights)).toBe(weights);
    expect(risen).not.toBe(weights);
    byAge.forEach((part, age) => {
      const amount = infestation.byYear[age]?.toNumber() ?? Number.NaN;
      const rising = energy?.byYear[age]?.toNumber() ?? Number.NaN;
      const usual = weights.noticed[age] ?? Number.NaN;
      const expected = (amount - rising) * usual + rising * (risen.noticed[age] ?? Number.NaN);
      expect(part.toNumber()).toBeCloseTo(expected, 4);
    });
    expect(energy?.byYear.at(-1)?.greaterThan(0)).toBe(true);
  });

  it("adds up as well where mussels are noticed late: until then it is what they harm", () => {
    const options = wholeStudy.options.map((option) => ({
      ...option,
      monitoring: { noticedWithin: [0.1, 0.4, 0.8] },
    }));
    const late = compare({ ...wholeStudy, options }, assumedWith({ "detection.first-harm": 1e12 }));
    const by = late.baseline.weights;
    const byAge = presentValueByAge(late.infestation, by);
    const sum = byAge.reduce((total, part) => total + part.toNumber(), 0);
    expect(relativeGap(sum, presentValueOf(late.infestation, by).toNumber())).toBeLessThan(1e-12);
    byAge.forEach((part, age) => {
      const known =
        (late.infestation.byYear[age]?.toNumber() ?? Number.NaN) * (by.noticed[age] ?? Number.NaN);
      const before =
        (late.infestation.harm[age]?.toNumber() ?? Number.NaN) * (by.unnoticed[age] ?? Number.NaN);
      expect(part.toNumber()).toBeCloseTo(known + before, 4);
    });
    expect(by.unnoticed[0]).toBeGreaterThan(0);
  });

  it("weighs what is known of a group by the year's factor, the chance that it is known, and its rise", () => {
    // By hand: discount (1.03)^-(t - 1/2), and energy 1.03^(years from the middle of 2025) more.
    const { horizon, startYear, priceYear } = wholeStudy.money;
    const weightBy = (rate: number) =>
      Array.from({ length: horizon }, (_, year) => {
        const known =
          baseline.statesByYear[year]?.noticed.reduce((sum, chance) => sum + chance, 0) ?? Number.NaN;
        return 1.03 ** -(year + 1 / 2) * known * (1 + rate) ** (startYear + year - priceYear);
      }).reduce((sum, each) => sum + each, 0);
    expect(baseline.knownWeight("energy")).toBeCloseTo(weightBy(0.03), 9);
    expect(baseline.knownWeight("water")).toBeCloseTo(weightBy(0), 9);
  });
});

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { costOfChances } from "../../src/model/break-even/cost-of-chances.js";
import { type Comparison, compare } from "../../src/model/compare.js";
import type { StudyInput } from "../../src/model/inputs.js";
import { noMoney } from "../../src/model/money/decimal.js";
import { discountFactors } from "../../src/model/money/interest.js";
import { amountOf, sumOf } from "../../src/model/money/line.js";
import { type PriceGroup, priceGroupOf, priceGroups } from "../../src/model/money/price-group.js";
import type { Escalation } from "../../src/model/money/price-rises.js";
import type { OptionResult } from "../../src/model/option.js";
import { presentValueByAge, presentValueOf } from "../../src/model/present-value.js";
import { assumed } from "./assumptions.js";
import { relativeGap } from "./near.js";
import { wholeStudy } from "./study.js";

const rising = (
  escalation: readonly Escalation[],
  changes: Partial<StudyInput["money"]> = {},
): StudyInput => ({
  ...wholeStudy,
  money: { ...wholeStudy.money, ...changes, escalation },
});

const plain = compare(wholeStudy, assumed);
const rates: readonly Escalation[] = [
  { group: "energy", rate: 0.02 },
  { group: "labour", rate: 0.007 },
  { group: "treatment", rate: -0.01 },
  { group: "wages", rate: 0.012 },
  { group: "other", rate: 0.004 },
];
const risen = compare(rising(rates), assumed);
const results = ({ baseline, options }: Comparison) => [baseline, ...options.map(({ result }) => result)];

/** The present value of all that an option costs, from its lines: year by year, each line at its own rise. */
function fromLines(result: OptionResult, { money }: StudyInput, escalation: readonly Escalation[]): number {
  const factors = discountFactors(money.horizon, money.discountRate, money.timing);
  const rise = (group: PriceGroup, year: number) =>
    (1 + (escalation.find((each) => each.group === group)?.rate ?? 0)) **
    (money.startYear + year - money.priceYear);
  const { share } = result.option.afterInfestation;
  return factors.reduce((sum, factor, year) => {
    const known = result.statesByYear[year - 1]?.known ?? 0;
    const program = result.programLines.reduce(
      (total, line) => total + amountOf(line).toNumber() * rise(priceGroupOf(line), year),
      0,
    );
    let cost = program * (1 - known + known * share);
    for (const { years } of result.schedule.structures) {
      result.statesByYear[year]?.noticed.forEach((chance, since) => {
        for (const line of years[year - since] ?? []) {
          if (line.type !== "apart")
            cost += chance * amountOf(line).toNumber() * rise(priceGroupOf(line), year);
        }
      });
    }
    return sum + factor * cost;
  }, 0);
}

describe("prices that rise at rates of nothing", () => {
  it("leave every amount as it is, to the last digit", () => {
    const none = compare(rising(priceGroups.map((group) => ({ group, rate: 0 }))), assumed);
    results(none).forEach((result, index) => {
      const before = results(plain)[index];
      expect(String(result.presentValue.total)).toBe(String(before?.presentValue.total));
      expect(result.expectedByYear.map(String)).toEqual(before?.expectedByYear.map(String));
      expect(result.infestationByBearer.map(String)).toEqual(before?.infestationByBearer.map(String));
    });
  });
});

describe("the present value under rising prices", () => {
  it("is that of every line by itself in every year", () => {
    for (const result of results(risen)) {
      const found = result.presentValue.total.toNumber();
      expect(relativeGap(found, fromLines(result, wholeStudy, rates))).toBeLessThan(1e-10);
    }
  });

  it("is the same by year of the study, by year of the infestation, by structure and by bearer", () => {
    for (const result of results(risen)) {
      const expected = result.presentValue.infestation.toNumber();
      const byYear = result.expectedByYear.reduce(
        (sum, { infestation }, year) =>
          sum + infestation.toNumber() * (risen.discountFactors[year] ?? Number.NaN),
        0,
      );
      const routes = [
        sumOf(presentValueByAge(risen.infestation, result.weights)).toNumber(),
        sumOf(
          risen.structures.map(({ structure }) =>
            presentValueOf(risen.infestation.ofStructure(structure.id), result.weights),
          ),
        ).toNumber(),
        sumOf(result.infestationByBearer.map(({ presentValue }) => presentValue)).toNumber(),
        byYear,
      ];
      for (const found of routes) expect(relativeGap(found, expected)).toBeLessThan(1e-10);
    }
  });

  it("is what the search for break-even values starts from", () => {
    const settings = { factors: risen.discountFactors, rises: risen.rises };
    for (const result of results(risen)) {
      const hazards = result.reachingByYear.map(() => result.hazard);
      const found = costOfChances(result, settings).expected(hazards);
      expect(relativeGap(found, result.presentValue.total.toNumber())).toBeLessThan(1e-10);
    }
  });

  it("rises by (1 + rate) for all groups together as a lower discount rate would have it", () => {
    // (1+r)/(1+s) - 1 in place of r, and a factor for the way from the price year to the present; plans and capital
    // recovery stay at the study's rate, so the amounts themselves are taken as they are.
    const all = compare(rising(priceGroups.map((group) => ({ group, rate: 0.01 }))), assumed);
    const { horizon, discountRate, timing, startYear, priceYear } = wholeStudy.money;
    const factors = discountFactors(horizon, (1 + discountRate) / 1.01 - 1, timing);
    results(plain).forEach((result, index) => {
      const expected = result.expectedByYear.reduce(
        (sum, { total }, year) => sum + total.toNumber() * (factors[year] ?? Number.NaN),
        0,
      );
      const found = results(all)[index]?.presentValue.total.toNumber() ?? Number.NaN;
      expect(relativeGap(found, expected * 1.01 ** (startYear - priceYear - 1 / 2))).toBeLessThan(1e-10);
    });
  });

  it("moves with a rise the same way, and only for options that have such costs", () => {
    const rate = fc.integer({ min: -30, max: 50 }).map((thousandths) => thousandths / 1000);
    fc.assert(
      fc.property(rate, (wage) => {
        const changed = compare(rising([{ group: "wages", rate: wage }]), assumed, plain);
        const program = (comparison: Comparison, index: number) =>
          results(comparison)[index]?.presentValue.program.toNumber() ?? Number.NaN;
        expect(program(changed, 0)).toBe(program(plain, 0));
        expect(Math.sign(program(changed, 1) - program(plain, 1))).toBe(Math.sign(wage));
      }),
      { seed: 82, numRuns: 25 },
    );
  });
});

describe("a group without costs", () => {
  it("changes nothing, whatever its rise", () => {
    const { baseline } = compare(rising([{ group: "fees", rate: 0.2 }]), assumed);
    expect(baseline.presentValue.total.minus(plain.baseline.presentValue.total).equals(noMoney)).toBe(true);
  });
});

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { costOfChances } from "../../../src/model/break-even/cost-of-chances.js";
import { compare } from "../../../src/model/compare.js";
import type { OptionResult } from "../../../src/model/option.js";
import { costShare } from "../../../src/model/program/ramp-up.js";
import { expectedByYear } from "../../../src/model/risk/expectation.js";
import { stateProbabilities } from "../../../src/model/risk/state-probabilities.js";
import { assumed } from "../assumptions.js";
import { relativeGap } from "../near.js";
import { chance, courseCases } from "../risk/hazard-cases.js";
import { wholeStudy } from "../study.js";

const comparison = compare(wholeStudy, assumed);
const { baseline, options, discountFactors, rises } = comparison;
const settings = { factors: discountFactors, rises };
const results = [baseline, ...options.map(({ result }) => result)];
/** The same options noticing mussels late and paying for attempts to be rid of them. */
const responding = wholeStudy.options.map((option) => ({
  ...option,
  monitoring: { noticedWithin: [0.2, 0.5, 0.9] },
  response: { name: "Treatment", cost: 700_000, chance: 0.3, latestYear: 2 },
}));
const contained = compare({ ...wholeStudy, options: responding }, assumed, comparison);
const containing = [contained.baseline, ...contained.options.map(({ result }) => result)];
const horizon = discountFactors.length;
const numbers = (amounts: ReadonlyArray<{ toNumber: () => number }>) =>
  amounts.map((amount) => amount.toNumber());

/** The same cost from the first year on, by the course that the chances give. */
function byCourse(result: OptionResult, hazards: readonly number[]): number {
  const course = stateProbabilities(hazards, result.detection);
  const losses = expectedByYear(
    { unnoticed: numbers(result.unnoticed.harm), noticed: numbers(result.schedule.infestation.byYear) },
    course,
  );
  return course.reduce((sum, { noticed }, year) => {
    const known = course[year - 1]?.known ?? 0;
    const kept = 1 - known + known * result.option.afterInfestation.share;
    const program = costShare(result.option, year) * result.programPerYear.toNumber() * kept;
    const levels = result.schedulePerYear.toNumber() * noticed.reduce((total, each) => total + each, 0);
    return sum + (discountFactors[year] ?? Number.NaN) * ((losses[year] ?? Number.NaN) + program + levels);
  }, 0);
}

describe("the cost of an option as a function of its chances", () => {
  it("is its present value at its own chances", () => {
    for (const result of [...results, ...containing]) {
      const hazards = Array<number>(horizon).fill(result.hazard);
      const found = costOfChances(result, settings).expected(hazards);
      expect(relativeGap(found, result.presentValue.total.toNumber())).toBeLessThan(1e-12);
    }
  });

  it("is the same from the last year back as from the first on, noticed late, contained and growing", () => {
    const growth = fc.array(fc.record({ reach: chance, cost: chance }), { maxLength: 4 });
    const chances = fc.array(chance, { minLength: horizon, maxLength: horizon });
    fc.assert(
      fc.property(courseCases, chances, growth, ({ noticing }, hazards, rampUp) => {
        for (const each of results) {
          const result = { ...each, detection: noticing, option: { ...each.option, rampUp } };
          const found = costOfChances(result, settings).expected(hazards);
          expect(relativeGap(found, byCourse(result, hazards))).toBeLessThan(1e-9);
        }
      }),
      { seed: 71, numRuns: 150 },
    );
  });

  it("changes by a clean year's cost from one certain year of establishment to the next", () => {
    for (const result of results) {
      const { expected, ofCleanYears } = costOfChances(result, settings);
      const certain = (year: number) => expected(discountFactors.map((_, each) => Number(each === year)));
      ofCleanYears.forEach((cost, year) => {
        expect(Math.abs(certain(year + 1) - certain(year) - cost)).toBeLessThan(
          1e-9 * result.presentValue.total.toNumber(),
        );
      });
    }
  });
});

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { at } from "../../../src/lists.js";
import { expectedCourse } from "../../../src/model/futures/expected-course.js";
import { infestedAtEnd, optionFuture } from "../../../src/model/futures/future.js";
import { yearlyCostsOf } from "../../../src/model/futures/yearly-costs.js";
import { discountFactors } from "../../../src/model/money/interest.js";
import { type CostByEstablishment, costByEstablishment } from "../../../src/model/option-numbers.js";
import { stateProbabilities } from "../../../src/model/risk/state-probabilities.js";
import { chance, courseCases } from "../risk/hazard-cases.js";
import { courseCosts } from "./state-costs.js";

const most = 40;
const amounts = fc.array(fc.integer({ min: 0, max: 1_000_000 }), { minLength: most, maxLength: most });

/** Options whose amounts differ from year to year, some of whose prices rise. */
const cases = fc
  .record({
    each: courseCases,
    programInYear: amounts,
    scheduleInYear: amounts,
    unnoticed: amounts,
    noticed: amounts,
    attemptInYear: amounts,
  })
  .chain(({ each, ...lists }) =>
    fc.record({
      hazards: fc.constant(each.hazards),
      numbers: fc.record({
        factors: fc.constant(discountFactors(each.hazards.length, 0.03, "mid-year")),
        programInYear: fc.constant(lists.programInYear),
        scheduleInYear: fc.constant(lists.scheduleInYear),
        keptShare: chance,
        knownAtStart: fc.constant(false),
        losses: fc.constant([
          { unnoticed: lists.unnoticed, noticed: lists.noticed, share: undefined },
          {
            unnoticed: lists.noticed,
            noticed: lists.unnoticed,
            share: each.hazards.map((_, year) => 1.01 ** year - 1),
          },
        ]),
        detection: fc.constant(each.noticing),
        attemptInYear: fc.constant(lists.attemptInYear),
      }),
    }),
  );

/** Chance that mussels establish first in each year, and at last that they do not. */
function chancesOf(hazards: readonly number[]): number[] {
  let clean = 1;
  const first = hazards.map((hazard) => {
    const before = clean;
    clean *= 1 - hazard;
    return before * hazard;
  });
  return [...first, clean];
}

/** A luck with which mussels establish in that year, if its chance is not too small for one. */
function luckFor(year: number, chances: readonly number[]): number {
  const below = chances.slice(0, year).reduce((sum, each) => sum + each, 0);
  return Math.min(below + at(chances, year) / 2, 1 - Number.EPSILON);
}

const futureOf = (costs: CostByEstablishment, hazards: readonly number[], luck: number) =>
  optionFuture(costs, hazards, luck, expectedCourse(hazards, costs.contained));

describe("a future with its year of establishment", () => {
  it("costs by year what it costs in all, discounted", () => {
    fc.assert(
      fc.property(cases, fc.double({ min: 0, max: 1 - 1e-9, noNaN: true }), ({ hazards, numbers }, luck) => {
        const { cost, establishment } = futureOf(costByEstablishment(numbers), hazards, luck);
        const byYear = yearlyCostsOf(numbers)(hazards, establishment);
        const sum = byYear.reduce((total, each, year) => total + each * at(numbers.factors, year), 0);
        expect(Math.abs(sum - cost)).toBeLessThan(1e-9 * (1 + cost));
      }),
      { seed: 51, numRuns: 300 },
    );
  });

  it("costs in each year what the whole course of the infestation says, also where a lake is contained and infested again", () => {
    fc.assert(
      fc.property(cases, fc.nat({ max: most }), fc.boolean(), ({ hazards, numbers }, start, knownAtStart) => {
        const establishment = Math.min(start, hazards.length);
        const option = { ...numbers, knownAtStart };
        const byYear = yearlyCostsOf(option)(hazards, establishment);
        courseCosts(option, hazards, establishment).forEach((plain, year) => {
          expect(Math.abs(at([...byYear], year) - plain)).toBeLessThan(1e-9 * (1 + Math.abs(plain)));
        });
      }),
      { seed: 53, numRuns: 300 },
    );
  });

  it("has on average over luck the expected cost, and the chance of mussels at the end of the whole course", () => {
    fc.assert(
      fc.property(cases, ({ hazards, numbers }) => {
        const costs = costByEstablishment(numbers);
        const chances = chancesOf(hazards);
        let [cost, infested] = [0, 0];
        for (const [year, likely] of chances.entries()) {
          if (likely < 1e-12) continue;
          const luck = luckFor(year, chances);
          const future = futureOf(costs, hazards, luck);
          expect(future.establishment).toBe(year);
          cost += likely * future.cost;
          infested += likely * futureOf(infestedAtEnd(costs), hazards, luck).cost;
        }
        const { expected } = futureOf(costs, hazards, 0);
        expect(Math.abs(cost - expected)).toBeLessThan(1e-9 * (1 + expected));
        const end = stateProbabilities(hazards, numbers.detection).at(-1)?.infested ?? Number.NaN;
        expect(Math.abs(infested - end)).toBeLessThan(1e-9);
      }),
      { seed: 52, numRuns: 300 },
    );
  });
});

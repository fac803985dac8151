import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { expectedCost, expectedCourse } from "../../../src/model/futures/expected-course.js";
import { costToGo } from "../../../src/model/option-numbers.js";
import { relativeGap } from "../near.js";
import { chance } from "../risk/hazard-cases.js";

const years = 30;
const amounts = fc.array(fc.double({ min: 0, max: 1e6, noNaN: true }), {
  minLength: years,
  maxLength: years,
});
/** Chances to be contained in the first years, of which no more than 1 is contained in all. */
const contained = fc
  .array(chance, { maxLength: 5 })
  .map((shares) => shares.map((share) => share / (shares.length + 1)));

describe("the expected course of a future", () => {
  it("costs from its first year on what is reckoned from the last year back", () => {
    fc.assert(
      fc.property(
        fc.record({ clean: amounts, established: amounts, contained }),
        fc.array(chance, { minLength: years, maxLength: years }),
        (costs, hazards) => {
          const course = expectedCourse(hazards, costs.contained);
          const [toGo = Number.NaN] = costToGo(costs, hazards);
          expect(relativeGap(expectedCost(costs, course), toGo)).toBeLessThan(1e-12);
        },
      ),
      { seed: 93 },
    );
  });

  it("is in two years what follows by hand", () => {
    // R = 1, then 0.5 that stay clean and 0.5 × 0.5 contained: f = 0.5, 0.375; k the same; never 0.25.
    const { begins, clean, ever } = expectedCourse([0.5, 0.5], [0.5]);
    expect([begins, clean, ever]).toEqual([[0.5, 0.375], [0.5, 0.375], 0.75]);
  });
});

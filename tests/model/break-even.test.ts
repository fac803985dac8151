import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Comparison, compare, type OptionBalance } from "../../src/model/compare.js";
import type { StudyInput } from "../../src/model/inputs.js";
import { assumed, assumedWith } from "./assumptions.js";
import { relativeGap } from "./near.js";
import { boats, duties, fixedDock, floatingDock, noProgram, program, studyOf } from "./study.js";

const perArrival = "arrival.establishment-per-fouled-launch";
const heavyDuties = {
  ...duties,
  items: [{ name: "Permits, staff and monitoring", cost: 300_000, apart: false, fromYear: 2 }],
};
const study = studyOf([floatingDock, fixedDock, heavyDuties]);

function programOf(comparison: Comparison): OptionBalance {
  const [balance] = comparison.options;
  if (!balance) throw new Error("no program");
  return balance;
}

/** The chance per arrival that gives a yearly hazard, from 1 - h = exp(-a N s)(1 - o). */
function chanceFor(hazard: number, input: StudyInput, comparison: Comparison): number {
  const clean = (1 - hazard) / (1 - input.boats.otherPathways);
  return -Math.log(clean) / (comparison.baseline.arrivals.slipThrough * comparison.lake.suitability.weight);
}

describe("the break-even hazard", () => {
  const hazardOf = (input: StudyInput) => {
    const comparison = compare(input, assumed);
    const { hazard } = programOf(comparison).breakEven;
    if (hazard === undefined) throw new Error("no break-even hazard");
    return { hazard, chance: chanceFor(hazard, input, comparison) };
  };

  it("makes the net benefit vanish when the study is computed again with it", () => {
    const prices = fc.integer({ min: 0, max: 60_000 });
    const paths = fc.double({ min: 0, max: 0.004, noNaN: true });
    fc.assert(
      fc.property(prices, paths, (cost, otherPathways) => {
        const option = { ...program, yearly: [{ name: "Supplies", cost }] };
        const input = { ...study, boats: { ...boats, otherPathways }, options: [noProgram, option] };
        const { hazard, chance } = hazardOf(input);
        const again = compare(input, assumedWith({ [perArrival]: chance }));
        expect(relativeGap(again.baseline.hazard, hazard)).toBeLessThan(1e-9);
        const { netBenefit, addedProgramCost } = programOf(again);
        // 0.1 % of the added program cost.
        expect(Math.abs(netBenefit.toNumber() / addedProgramCost.toNumber())).toBeLessThan(0.001);
      }),
      { seed: 211, numRuns: 15 },
    );
  });

  it("is the same however small the chance per arrival that the search starts from", () => {
    const clean = { ...study, boats: { ...boats, otherPathways: 0 } };
    const from = (chance: number) =>
      programOf(compare(clean, assumedWith({ [perArrival]: chance }))).breakEven.hazard;
    const usual = from(0.0015) ?? Number.NaN;
    expect(usual).toBeGreaterThan(0);
    for (const chance of [1e-12, 1e-7, 0.5]) {
      expect(relativeGap(from(chance) ?? Number.NaN, usual)).toBeLessThan(1e-6);
    }
  });

  it("parts the chances at which the program pays from those at which it does not", () => {
    const { chance } = hazardOf(study);
    const netAt = (factor: number) =>
      programOf(compare(study, assumedWith({ [perArrival]: chance * factor }))).netBenefit.toNumber();
    expect(netAt(0.9)).toBeLessThan(0);
    expect(netAt(1.1)).toBeGreaterThan(0);
  });

  it("does not exist where no loss can pay for the program", () => {
    const dear = { ...program, yearly: [{ name: "All", cost: 50_000_000 }] };
    const balance = programOf(compare({ ...study, options: [noProgram, dear] }, assumed));
    expect(balance.breakEven.hazard).toBeUndefined();
  });

  it("rises with the cost of the program", () => {
    const at = (cost: number) =>
      hazardOf({ ...study, options: [noProgram, { ...program, yearly: [{ name: "Supplies", cost }] }] })
        .hazard;
    expect(at(10_000)).toBeLessThan(at(25_000));
    expect(at(25_000)).toBeLessThan(at(40_000));
  });
});

describe("the break-even budget", () => {
  it("is the whole yearly cost at which the program avoids just what it adds", () => {
    const { programPerYear } = programOf(compare(study, assumed)).breakEven;
    const cost = programPerYear?.toNumber() ?? Number.NaN;
    const budget = { ...program, staff: [], equipment: [], fees: [], yearly: [{ name: "Budget", cost }] };
    const { netBenefit, addedProgramCost } = programOf(
      compare({ ...study, options: [noProgram, budget] }, assumed),
    );
    expect(Math.abs(netBenefit.toNumber() / addedProgramCost.toNumber())).toBeLessThan(1e-6);
  });
});

describe("the break-even loss", () => {
  it("is the factor on every infestation cost at which the net benefit vanishes", () => {
    // A study with one yearly duty: its cost times the factor.
    const only = (cost: number) =>
      studyOf([{ ...duties, items: [{ name: "Monitoring", cost, apart: false, fromYear: 1 }] }]);
    const { lossFactor } = programOf(compare(only(50_000), assumed)).breakEven;
    const { netBenefit, addedProgramCost } = programOf(
      compare(only(50_000 * (lossFactor ?? Number.NaN)), assumed),
    );
    expect(Math.abs(netBenefit.toNumber() / addedProgramCost.toNumber())).toBeLessThan(1e-6);
  });

  it("is the inverse of the benefit-cost ratio", () => {
    const { breakEven, benefitCostRatio } = programOf(compare(study, assumed));
    expect((breakEven.lossFactor ?? Number.NaN) * (benefitCostRatio ?? Number.NaN)).toBeCloseTo(1, 10);
  });
});

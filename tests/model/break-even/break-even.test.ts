import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Comparison, compare } from "../../../src/model/compare.js";
import type { ProgramOption, StudyInput } from "../../../src/model/inputs.js";
import type { OptionBalance } from "../../../src/model/option-balance.js";
import { assumed, assumedWith } from "../assumptions.js";
import { relativeGap } from "../near.js";
import { thoroughSteps } from "../steps.js";
import {
  boats,
  duties,
  fixedDock,
  floatingDock,
  noProgram,
  otherChance,
  program,
  studyOf,
} from "../study.js";

const perArrival = "arrival.founding-unknown";
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
  const others = (input.boats.otherWays ?? []).reduce((left, { chance }) => left * (1 - chance), 1);
  const clean = (1 - hazard) / others;
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
      fc.property(prices, paths, (cost, chanceOfOthers) => {
        const option = { ...program, yearly: [{ name: "Supplies", cost }] };
        const input = {
          ...study,
          boats: { ...boats, otherWays: [{ name: "Others", chance: chanceOfOthers, checked: false }] },
          options: [noProgram, option],
        };
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
    const clean = { ...study, boats: { ...boats, otherWays: [] } };
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

/** What stops a share of fouled boats and nothing else: they stay away. */
const deterring = (deterrence: number) => ({
  ...program,
  steps: { ...thoroughSteps, coverage: 0, deterrence },
});

describe("every value at which the answer turns", () => {
  // A loss of L in the fourth year of an infestation alone, a program of P a year that ends with it, no interest, four
  // years. With x the chance that a year stays clean, x0 without the program, the net benefit is by hand
  // L (1 − x0) − L (1 − x) − P (1 + x + x² + x³).
  const [yearly, loss] = [100_000, 390_000];
  const money = { ...study.money, horizon: 4, discountRate: 0 };
  const costs = { staff: [], equipment: [], fees: [], yearly: [{ name: "All", cost: yearly }] };
  const free = { ...noProgram, yearly: [] };
  const fourYears = (late: number, option: ProgramOption): StudyInput => ({
    ...studyOf([{ ...duties, items: [{ name: "Late", cost: late, apart: false, fromYear: 4 }] }], { money }),
    options: [free, { ...option, ...costs, afterInfestation: { share: 0 } }],
  });
  const byHand = (late: number, without: number, x: number) =>
    late * (x - without) - yearly * (1 + x + x ** 2 + x ** 3);
  const likely = 0.5;
  /** A chance per arrival at which the program of the study pays. */
  const paying = 0.02;

  it("gives both shares of boats stopped between which a program pays", () => {
    const comparison = compare(fourYears(loss, deterring(0.5)), assumedWith({ [perArrival]: likely }));
    const { turns, all } = programOf(comparison).breakEven.stopped;
    const pressure = likely * comparison.baseline.arrivals.slipThrough * comparison.lake.suitability.weight;
    const cleanAt = (stopped: number) => (1 - otherChance) * Math.exp(-pressure * (1 - stopped));
    const netAt = (stopped: number) => byHand(loss, cleanAt(0), cleanAt(stopped));
    expect(turns.map(({ pays }) => pays)).toEqual([true, false]);
    for (const { value, pays } of turns) {
      expect(Math.abs(netAt(value))).toBeLessThan(1e-3);
      expect(netAt(value + 0.001) > 0).toBe(pays);
      expect(netAt(value - 0.001) > 0).toBe(!pays);
    }
    expect(all).toBe(false);
  });

  it("gives both chances between which a program pays, the lower first", () => {
    const late = 8 * yearly;
    const comparison = compare(fourYears(late, deterring(0.5)), assumed);
    const { hazard, hazards } = programOf(comparison).breakEven;
    expect(hazards.turns.map(({ pays }) => pays)).toEqual([true, false]);
    expect(hazards.turns[0]?.value).toBe(hazard);
    const open = 1 - otherChance;
    for (const { value } of hazards.turns) {
      // Half the boats stopped: half the pressure, so the root of what the other way in leaves.
      const net = byHand(late, 1 - value, open * Math.sqrt((1 - value) / open));
      expect(Math.abs(net)).toBeLessThan(1e-3);
    }
  });

  it("knows the only share of boats stopped where clean years always pay", () => {
    const lasting = { ...deterring(0.5), afterInfestation: { share: 1 } };
    const at = (option: ProgramOption) =>
      programOf(compare({ ...study, options: [noProgram, option] }, assumedWith({ [perArrival]: paying })));
    const { turns, all } = at(lasting).breakEven.stopped;
    expect(all).toBe(true);
    expect(turns.map(({ pays }) => pays)).toEqual([true]);
    const [turn] = turns;
    const again = at({ ...lasting, steps: { ...lasting.steps, deterrence: turn?.value ?? Number.NaN } });
    expect(Math.abs(again.netBenefit.dividedBy(again.addedProgramCost).toNumber())).toBeLessThan(1e-6);
  });

  it("has no share of boats stopped for an option that stops none, or one too dear for any", () => {
    const dear = { ...program, yearly: [{ name: "All", cost: 50_000_000 }] };
    const { breakEven } = programOf(compare({ ...study, options: [noProgram, dear] }, assumed));
    expect(breakEven.stopped.turns).toEqual([]);
    expect(breakEven.hazards.turns).toEqual([]);
    expect(breakEven.horizons.turns).toEqual([]);
  });

  it("gives the horizons at which a study computed again changes its answer", () => {
    const { turns } = programOf(compare(study, assumedWith({ [perArrival]: paying }))).breakEven.horizons;
    expect(turns.length).toBeGreaterThan(0);
    for (const { value, pays } of turns) {
      const over = (horizon: number) =>
        programOf(
          compare({ ...study, money: { ...study.money, horizon } }, assumedWith({ [perArrival]: paying })),
        ).netBenefit.toNumber();
      expect(over(value) > 0).toBe(pays);
      if (value > 1) expect(over(value - 1) > 0).toBe(!pays);
    }
  });
});

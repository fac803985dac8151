import { describe, expect, it, test } from "vitest";
import { breakEvenValuesOf } from "../../../src/model/break-even/break-even-values.js";
import { shareStopped } from "../../../src/model/break-even/stopped.js";
import { compare } from "../../../src/model/compare.js";
import type { ProgramOption, StudyInput } from "../../../src/model/inputs.js";
import type { Lake } from "../../../src/model/lake/lake.js";
import { findRoots } from "../../../src/model/root-search.js";
import { assumed, assumedWith } from "../assumptions.js";
import { drawnDownLake } from "../lakes.js";
import { thoroughSteps } from "../steps.js";
import { boats, fixedDock, floatingDock, noProgram, program, studyOf } from "../study.js";
import { heavyDuties, programOf } from "../watched.js";

const study = studyOf([floatingDock, fixedDock, heavyDuties]);
const withOption = (option: ProgramOption, changes: Partial<StudyInput> = {}): StudyInput => ({
  ...study,
  ...changes,
  options: [noProgram, option],
});

const breakEvenOf = (input: StudyInput, source = assumed) => programOf(compare(input, source)).breakEven;
/** A chance per arrival at which the program of the study pays. */
const likely = assumedWith({ "arrival.founding-unknown": 0.02 });
const dear = { ...program, yearly: [{ name: "All", cost: 50_000_000 }] };
/** What stops a share of fouled boats and nothing else: they stay away. */
const deterring = (deterrence: number): ProgramOption => ({
  ...program,
  steps: { ...thoroughSteps, coverage: 0, deterrence },
});

describe("the roots of a net benefit as turns", () => {
  const turnsIn = (netBenefit: (x: number) => number) =>
    breakEvenValuesOf(
      findRoots(netBenefit, { low: 0, high: 4, steps: 4, scale: "linear", tolerance: 1e-12 }),
      netBenefit,
      (x) => 10 * x,
    ).turns;

  test.each<[string, (x: number) => number, { value: number; pays: boolean }[]]>([
    // By hand; the grid is of whole numbers, and each value is told tenfold.
    ["rises through zero between points", (x) => x - 1.5, [{ value: 15, pays: true }]],
    ["falls through zero between points", (x) => 1.5 - x, [{ value: 15, pays: false }]],
    ["rises through zero on a point", (x) => x - 2, [{ value: 20, pays: true }]],
    ["falls through zero on a point", (x) => 2 - x, [{ value: 20, pays: false }]],
    ["rises from zero at its start", (x) => x, [{ value: 0, pays: true }]],
    ["falls from zero at its start", (x) => -x, []],
    ["only touches zero from below", (x) => -((x - 2) ** 2), []],
    ["only touches zero from above", (x) => (x - 2) ** 2, []],
    ["is nothing for a stretch and then pays", (x) => Math.max(0, x - 2), [{ value: 10, pays: true }]],
  ])("where it %s", (_name, netBenefit, expected) => {
    expect(turnsIn(netBenefit)).toEqual(
      expected.map(({ value, pays }) => ({ value: expect.closeTo(value, 9), pays })),
    );
  });
});

describe("the chances at which the answer turns", () => {
  it("are none in water where no mussel can live", () => {
    // Salinity of 12 g/L: none above 10 (Mackie and Claudi 2010, from memory).
    const lake: Lake = { ...drawnDownLake, chemistry: { calcium: 40, salinity: 12 } };
    const { hazard, hazards } = breakEvenOf(withOption(program, { lake }));
    expect(hazard).toBeUndefined();
    expect(hazards).toEqual({ turns: [], all: true });
  });

  it("begin at next to none for an option that costs less than doing without", () => {
    // The search begins at a pressure of 1e-7 without the program: h = 1 − exp(−1e-7) where no other pathway is.
    const costly = { ...noProgram, yearly: [{ name: "Monitoring", cost: 900_000 }] };
    const lake: Lake = { ...drawnDownLake, chemistry: { calcium: 24 } };
    const input = { ...study, lake, boats: { ...boats, otherWays: [] }, options: [costly, program] };
    const { hazard } = breakEvenOf(input);
    expect(hazard).toBeCloseTo(1e-7, 12);
    expect(hazard).toBeLessThan(1e-7);
  });

  it("are never next to none for an option that adds a cost", () => {
    const { hazard, hazards } = breakEvenOf(study);
    expect(hazard).toBe(hazards.turns[0]?.value);
    expect(hazard).toBeGreaterThan(1e-4);
  });
});

describe("the shares of boats stopped at which the answer turns", () => {
  it("are none for an option without steps", () => {
    const { steps: _, ...stepless } = program;
    expect(breakEvenOf(withOption(stepless), likely).stopped).toEqual({ turns: [], all: true });
  });

  it("are of the program in full, which grows to them over its first years", () => {
    // Two routes: the study computed again with that share of boats kept away. Clean years always pay where the program
    // goes on after an infestation.
    const rampUp = [
      { reach: 0.3, cost: 0.5 },
      { reach: 0.6, cost: 0.8 },
    ];
    const growing = (deterrence: number) => ({
      ...deterring(deterrence),
      rampUp,
      afterInfestation: { share: 1 },
    });
    const { turns, all } = breakEvenOf(withOption(growing(0.5)), likely).stopped;
    expect(turns.map(({ pays }) => pays)).toEqual([true]);
    expect(all).toBe(true);
    const again = programOf(compare(withOption(growing(turns[0]?.value ?? Number.NaN)), likely));
    expect(Math.abs(again.netBenefit.dividedBy(again.addedProgramCost).toNumber())).toBeLessThan(1e-6);
  });

  it("are of all ways in that the stations check: the study computed again with that share kept away", () => {
    const checked = { boats: { ...boats, otherWays: [{ name: "Trailers", chance: 0.2, checked: true }] } };
    const rare = assumedWith({ "arrival.founding-unknown": 1e-5 });
    const going = (deterrence: number) => ({ ...deterring(deterrence), afterInfestation: { share: 1 } });
    const [turn] = breakEvenOf(withOption(going(0.5), checked), rare).stopped.turns;
    expect(turn?.value).toBeGreaterThan(0.05);
    expect(turn?.value).toBeLessThan(0.95);
    const again = programOf(compare(withOption(going(turn?.value ?? Number.NaN), checked), rare));
    expect(Math.abs(again.netBenefit.dividedBy(again.addedProgramCost).toNumber())).toBeLessThan(1e-6);
  });

  it("are all known where each clean year costs more than an infestation", () => {
    // A program of 50 million a year that all but ends with an infestation of 300,000 from its second year on.
    const only = { structures: [heavyDuties] };
    expect(breakEvenOf(withOption(dear, only), likely).stopped).toEqual({ turns: [], all: true });
    // Where its first year costs something, too, the last clean year of the horizon saves that.
    expect(breakEvenOf(withOption(dear), likely).stopped).toEqual({ turns: [], all: false });
  });
});

describe("the horizons at which the answer turns", () => {
  it("are all known: every year is tried", () => {
    expect(breakEvenOf(study, likely).horizons.all).toBe(true);
    expect(breakEvenOf(withOption(dear), likely).horizons).toEqual({ turns: [], all: true });
  });
});

describe("the share of fouled boats stopped", () => {
  it("is what deterrence keeps away, and none of none", () => {
    const result = (option: ProgramOption, changes: Partial<StudyInput> = {}) => {
      const comparison = compare(withOption(option, changes), assumed);
      return shareStopped({ result: programOf(comparison).result, baseline: comparison.baseline });
    };
    expect(result(deterring(0.35))).toBeCloseTo(0.35, 12);
    expect(result(deterring(0))).toBeCloseTo(0, 12);
    const cleanBoats = { ...boats, classes: boats.classes.map((each) => ({ ...each, fouled: 0 })) };
    expect(result(deterring(0.35), { boats: cleanBoats })).toBe(0);
  });
});

describe("the budget and the loss at which the answer turns", () => {
  it("are none where nothing is avoided", () => {
    const { programPerYear, lossFactor } = breakEvenOf(withOption(deterring(0)), likely);
    expect([programPerYear, lossFactor]).toEqual([undefined, undefined]);
  });

  it("are the budget of a like program for one that costs nothing to run, and no loss is too small for one that saves", () => {
    const free = { ...deterring(0.5), staff: [], equipment: [], fees: [], yearly: [] };
    const budgetOf = (cost: number) =>
      breakEvenOf(withOption({ ...free, yearly: [{ name: "All of it", cost }] }), likely).programPerYear;
    expect(budgetOf(0)?.toNumber()).toBeCloseTo(budgetOf(70_000)?.toNumber() ?? Number.NaN, 6);
    expect(budgetOf(-70_000)?.toNumber()).toBeCloseTo(budgetOf(70_000)?.toNumber() ?? Number.NaN, 6);
    const costly = { ...noProgram, yearly: [{ name: "Monitoring", cost: 900_000 }] };
    expect(breakEvenOf({ ...study, options: [costly, program] }).lossFactor).toBeUndefined();
  });
});

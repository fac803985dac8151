import { describe, expect, it, test } from "vitest";
import { compare } from "../../../src/model/compare.js";
import type { ProgramOption, StudyInput } from "../../../src/model/inputs.js";
import { assumedWith } from "../assumptions.js";
import { thoroughSteps } from "../steps.js";
import { duties, noProgram, otherChance, program, studyOf, wholeStudy } from "../study.js";
import { programOf } from "../watched.js";

const perArrival = "arrival.founding-unknown";
const yearly = 10_000;
/** Keeps half the fouled boats away, at one price every year, mussels or not. */
const deterring: ProgramOption = {
  ...program,
  steps: { ...thoroughSteps, coverage: 0, deterrence: 0.5 },
  staff: [],
  equipment: [],
  fees: [],
  yearly: [{ name: "All", cost: yearly }],
  afterInfestation: { share: 1 },
};

/** Four years without interest; an infestation costs in its fourth year alone, so only if it begins in the first. */
const fourYears = (late: number, option: ProgramOption, changes: Partial<StudyInput> = {}): StudyInput =>
  studyOf([{ ...duties, items: [{ name: "Late", cost: late, apart: false, fromYear: 4 }] }], {
    money: { ...wholeStudy.money, horizon: 4, discountRate: 0 },
    options: [{ ...noProgram, yearly: [] }, option],
    ...changes,
  });

function compared(input: StudyInput, chance = 0.1) {
  const comparison = compare(input, assumedWith({ [perArrival]: chance, "arrival.shape": 1 }));
  return { comparison, balance: programOf(comparison) };
}

describe("the share of boats stopped at which a program begins to pay", () => {
  const loss = 40 * yearly;

  test.each([
    ["in full from the start", [], 1],
    ["that reaches half of them in its first year", [{ reach: 0.5, cost: 1 }], 2],
  ])("is by hand, for one %s", (_name, rampUp, times) => {
    const { comparison, balance } = compared(fourYears(loss, { ...deterring, rampUp }));
    // 13.5 fouled launches a year at 0.1 each; x stays clean in year 1: L (x − x0) = 4 P, x = (1−o) exp(−p (1 − k s)).
    const pressure = 0.1 * 13.5 * comparison.lake.suitability.weight;
    const needed = Math.exp(-pressure) + 4 / 40 / (1 - otherChance);
    const { turns, all } = balance.breakEven.stopped;
    expect(turns.map(({ pays }) => pays)).toEqual([true]);
    expect(turns[0]?.value).toBeCloseTo(times * (1 + Math.log(needed) / pressure), 9);
    // A clean first year saves L, and any other nothing: one way, so that there is no second such share.
    expect(all).toBe(true);
  });
});

describe("an option that does and costs just what is done without it", () => {
  it("pays at no chance and over no horizon", () => {
    const idle = { ...deterring, steps: { ...thoroughSteps, coverage: 0 } };
    const options = [{ ...idle, id: "none", steps: undefined }, idle];
    const { breakEven } = compared(fourYears(1e6, idle, { options })).balance;
    expect(breakEven.horizons).toEqual({ turns: [], all: true });
    expect(breakEven.hazards.turns).toEqual([]);
    expect(breakEven.hazard).toBeUndefined();
  });
});

import { at } from "../lake/calendar.js";
import type { OptionResult } from "../option.js";

/**
 * Present value of all that an option costs as a function of its yearly hazard, in plain numbers: a search needs no
 * cents. Under a constant hazard the expected loss follows from the year before, E(t) = (1−h) E(t−1) + h L(t), L the
 * cost t years after establishment in year 1, and the chance of still being clean from its own last value.
 */
export function expectedCost(option: OptionResult, factors: readonly number[]): (hazard: number) => number {
  const losses = option.schedule.infestation.byYear.map((amount) => amount.toNumber());
  const perYear = option.programPerYear.toNumber();
  const schedulePerYear = option.schedulePerYear.toNumber();
  const { share } = option.option.afterInfestation;
  return (hazard) => {
    let expectedLoss = 0;
    let clean = 1;
    let cost = 0;
    factors.forEach((factor, year) => {
      expectedLoss = (1 - hazard) * expectedLoss + hazard * at(losses, year);
      cost += factor * (expectedLoss + perYear * (clean + share * (1 - clean)));
      clean *= 1 - hazard;
      cost += factor * schedulePerYear * (1 - clean);
    });
    return cost;
  };
}

/**
 * What one more clean year adds to the present cost of an option, for establishment in year 2 over 1, 3 over 2, …,
 * and at last never over the last year: v(τ+1) G (1−a) − Σ (v(t) − v(t+1)) L(t−τ+1) − v(τ) S with v = 0 past the
 * horizon; L the loss since establishment, G the program, a its share after infestation, S the schedule.
 */
export function costOfCleanYears(option: OptionResult, factors: readonly number[]): number[] {
  const losses = option.schedule.infestation.byYear.map((amount) => amount.toNumber());
  const saved = option.programPerYear.toNumber() * (1 - option.option.afterInfestation.share);
  const schedulePerYear = option.schedulePerYear.toNumber();
  return factors.map((factor, year) => {
    const lossPutOff = factors
      .slice(year)
      .reduce((sum, own, since) => sum + (own - (factors[year + since + 1] ?? 0)) * at(losses, since), 0);
    return (factors[year + 1] ?? 0) * saved - lossPutOff - factor * schedulePerYear;
  });
}

import { at, meanOf } from "../../lists.js";
import { requireSameLength, requireValues } from "./allowed.js";

/** Net benefits of the options, each a list over the same draws. */
export type Benefits = readonly (readonly number[])[];

interface Regrets {
  /** By option: how much less it brings on average than the best option of each draw; never negative. */
  readonly byOption: readonly number[];
  /** Of the option that is best on average, by draw: their mean is the expected value of perfect information. */
  readonly ofBest: readonly number[];
}

/**
 * Expected regret of each option over the draws: mean of (best of the draw − the option's).
 * @throws RangeError without options or draws, for lists of unequal length, or values that are not finite
 */
export function expectedRegret(benefits: Benefits): Regrets {
  requireBenefits(benefits);
  const bestOfDraw = at(benefits, 0).map((_, draw) =>
    Math.max(...benefits.map((option) => at(option, draw))),
  );
  const regrets = benefits.map((option) => option.map((benefit, draw) => at(bestOfDraw, draw) - benefit));
  const byOption = regrets.map(meanOf);
  return { byOption, ofBest: at(regrets, byOption.indexOf(Math.min(...byOption))) };
}

/** @throws RangeError without options or draws, for lists of unequal length, or values that are not finite */
export function requireBenefits(benefits: Benefits): void {
  if (benefits.length === 0) throw new RangeError("net benefits of 0 options; allowed: 1 or more");
  benefits.forEach((option, index) => {
    requireValues(`net benefits of option ${index}`, option, 1);
    requireSameLength(`net benefits of option ${index}`, option, "those of option 0", at(benefits, 0));
  });
}

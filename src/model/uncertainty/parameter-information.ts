import { at, meanOf } from "../../lists.js";
import { requireCount, requireSameLength, requireValues } from "./allowed.js";
import { type Benefits, requireBenefits } from "./expected-regret.js";
import { risingOrder } from "./ranks.js";
import { momentsOf, standardError } from "./running-moments.js";

/**
 * Expected value of perfect information on one parameter, in the unit of the benefits: what it is worth on average to know
 * that parameter alone before choosing. Draws are sorted by the parameter and cut into blocks of as many draws each
 * (the first ones one more, if they do not divide evenly); in each block the option of greatest mean is taken, and the
 * mean over blocks is held against the best single option. Few draws to a block let chance choose, so that the
 * value comes out too high; few blocks hide turns, so that it comes out too low.
 * Source: Strong and Oakley 2013. An efficient method for computing single-parameter partial expected value of perfect
 * information. Medical Decision Making 33(6):755-766 (from memory).
 * The standard error is that of the blocks' gains over the best single option.
 * @throws RangeError for lists of unequal length, values that are not finite, or blocks not from 2 to half the draws
 */
export function parameterInformation(
  parameter: readonly number[],
  benefits: Benefits,
  blocks: number,
): { readonly value: number; readonly standardError: number } {
  requireBenefits(benefits);
  requireValues("parameter", parameter, 1);
  requireSameLength("parameter", parameter, "net benefits", at(benefits, 0));
  requireCount("blocks", blocks, 2, Math.floor(parameter.length / 2));
  const means = benefits.map(meanOf);
  const best = means.indexOf(Math.max(...means));
  const parts = blocksOf(risingOrder(parameter), blocks);
  const gains = parts.map((draws) => {
    const inBlock = benefits.map((option) => meanOf(draws.map((draw) => at(option, draw))));
    return { gain: Math.max(...inBlock) - at(inBlock, best), draws: draws.length };
  });
  const value = gains.reduce((sum, { gain, draws }) => sum + gain * draws, 0) / parameter.length;
  return { value, standardError: standardError(momentsOf(gains.map(({ gain }) => gain))) };
}

function blocksOf(order: readonly number[], blocks: number): number[][] {
  const start = (block: number) => Math.ceil((block * order.length) / blocks);
  return Array.from({ length: blocks }, (_, block) => order.slice(start(block), start(block + 1)));
}

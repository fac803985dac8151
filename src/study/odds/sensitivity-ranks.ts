import { meanOf, numbersBy } from "../../lists.js";
import {
  type DrawPlan,
  futuresPerLake,
  lakesPerBlock,
  type UncertainInput,
  valueAtShare,
} from "../../model/futures/draw-plan.js";
import { correlation } from "../../model/uncertainty/correlation.js";
import { ranks } from "../../model/uncertainty/ranks.js";
import { sharesOf } from "./block-values.js";
import type { StudyPlan } from "./draws.js";
import type { Sensitivity } from "./odds.js";

/**
 * Spearman's correlation of each input with the net benefit over all futures; strongest first. An input of the lake has
 * one value in all futures of a lake: its correlation is that of the lakes' ranks with the lakes' mean ranks of the net
 * benefit, times the ratio of the standard deviations of these means and of all ranks. That is Spearman's over all
 * futures to the last digit, with one value for each lake. So inputs of both stages are told on one scale, against all
 * that varies. An input without effect lies within about ±2/√(m−1) in 19 of 20 cases, m the lakes for an input
 * of the lake (less where chances decide most) and the futures for the others.
 * @param netBenefits of the futures, luck left out: lake by lake in the order of the blocks
 */
export function rankCorrelations(plan: StudyPlan, netBenefits: Float64Array): Sensitivity["ranks"] {
  if (netBenefits.every((value) => value === netBenefits[0])) return [];
  const lakes = netBenefits.length / futuresPerLake;
  const ranked = ranks(Array.from(netBenefits));
  const lakeMeans = numbersBy(lakes, (lake) =>
    meanOf(ranked.slice(lake * futuresPerLake, (lake + 1) * futuresPerLake)),
  );
  const between = deviation(lakeMeans) / deviation(ranked);
  const drawn = drawnOrders(plan, lakes);
  return plan.inputs
    .flatMap(({ id, name, stage }) => {
      const values = drawn.get(id) ?? [];
      const result = stage === "lake" ? lakeMeans : ranked;
      const scale = stage === "lake" ? between : 1;
      if (isConstant(values) || isConstant(result)) return [];
      return [{ id, name, correlation: scale * correlation(ranks(values), result) }];
    })
    .toSorted((one, other) => Math.abs(other.correlation) - Math.abs(one.correlation));
}

/** By id over the lakes, or over all futures for inputs of the other stage: numbers in the order of the values. */
function drawnOrders(plan: DrawPlan, lakes: number): Map<string, number[]> {
  const blocks = Array.from({ length: Math.ceil(lakes / lakesPerBlock) }, (_, block) =>
    sharesOf(plan, block),
  );
  return new Map(
    plan.inputs.map((input) => {
      const count = input.stage === "lake" ? lakes : lakes * futuresPerLake;
      const shares = blocks.flatMap((block) => block[input.stage].get(input.id) ?? []).slice(0, count);
      return [input.id, mayRepeat(input, shares) ? shares.map(valueAtShare(input)) : shares];
    }),
  );
}

/** Whether different shares may have one value; else they stand in the order of the values, and need not be turned into them. */
function mayRepeat(input: UncertainInput, shares: readonly number[]): boolean {
  const { distribution, limits } = input;
  if (distribution.kind === "discrete" || distribution.kind === "fixed") return true;
  if (!limits) return false;
  let [least, most] = [1, 0];
  for (const share of shares) {
    least = Math.min(least, share);
    most = Math.max(most, share);
  }
  const valueAt = valueAtShare(input);
  return valueAt(least) === limits.low || valueAt(most) === limits.high;
}

const isConstant = (values: readonly number[]) => values.every((value) => value === values[0]);

function deviation(values: readonly number[]): number {
  const middle = meanOf(values);
  return Math.sqrt(meanOf(values.map((value) => (value - middle) ** 2)));
}

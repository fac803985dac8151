import type { Comparison } from "../../model/compare.js";
import type { Money } from "../../model/money/decimal.js";
import { sumOf } from "../../model/money/line.js";

/** Years of a mature infestation over which a yearly cost is told, so that a plan of several years is not misread. */
export interface MatureYears {
  /** The year since establishment that stands for a mature infestation, counted from 0. */
  readonly year: number;
  /** Years from it on whose mean is told. */
  readonly meanYears: number;
}

const meanYears = 5;
const matureShare = 0.99;
const leastMatureYear = 9;

export function matureYears({ lake, input }: Pick<Comparison, "lake" | "input">): MatureYears {
  const peak = Math.max(...lake.densityByYear);
  const settled = lake.densityByYear.findIndex((density) => density >= peak * matureShare);
  const year = Math.min(input.money.horizon - 1, Math.max(settled, leastMatureYear));
  return { year, meanYears };
}

/** Mean yearly cost of the mature years. */
export function matureMean(stream: readonly Money[], mature: MatureYears): number {
  const counted = stream.slice(mature.year, mature.year + mature.meanYears);
  return sumOf(counted).dividedBy(Math.max(1, counted.length)).toNumber();
}

import { correlation } from "../../../src/model/uncertainty/correlation.js";
import { ranks } from "../../../src/model/uncertainty/ranks.js";

/** Spearman's rank correlation: Pearson's correlation of the ranks. */
export const rankCorrelation = (first: readonly number[], second: readonly number[]): number =>
  correlation(ranks(first), ranks(second));

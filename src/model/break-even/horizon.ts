import { at } from "../../lists.js";
import type { BreakEvenValue, BreakEvenValues, Weighed } from "./break-even-values.js";

/**
 * Horizons in whole years, 1 to that of the study, from which the option pays or no longer pays: the sign of
 * B(n) = Σ v(t) (C₀(t) − C(t)) over t = 1 … n, of expected costs C₀ without and C with the option. Every year is
 * tried, so there are no others.
 */
export function breakEvenHorizons({ result, baseline, settings }: Weighed): BreakEvenValues {
  const values: BreakEvenValue[] = [];
  let paid = false;
  let netBenefit = 0;
  const [without, own] = [baseline.plainByYear, result.plainByYear];
  settings.factors.forEach((factor, year) => {
    netBenefit += factor * (at(without, year) - at(own, year));
    const pays = netBenefit > 0;
    if (pays !== paid) values.push({ value: year + 1, pays });
    paid = pays;
  });
  return { turns: values, all: true };
}

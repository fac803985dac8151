import type { OptionResult, OptionSettings } from "../option.js";
import { yearlyHazard } from "../risk/hazard.js";
import { findRoots } from "../root-search.js";
import {
  type BreakEvenValues,
  breakEvenValuesOf,
  noBreakEvenValues,
  type Weighed,
} from "./break-even-values.js";

/** Rates of the boats without a program between which the search runs: chances of 1e-7 and over 99.9 %. */
const leastPressure = 1e-7;
const mostPressure = 8;
/** Cells of the grid, ten in every decade of pressure. */
const steps = 80;
const tolerance = 1e-16;

/**
 * All yearly chances without the program at which the net benefit turns, B(x) = 0, over a factor x on the foundings of
 * boats, the same for both options, from next to nothing to near certainty. It may turn more than once: at very
 * high chances a program stops paying again, since it puts infestation off by little.
 */
export function breakEvenHazards(weighed: Weighed): BreakEvenValues {
  const { baseline, settings } = weighed;
  const pressure = pressureWithout(weighed);
  if (pressure === 0) return noBreakEvenValues;
  const net = netBenefitAtScale(weighed);
  const netAt = (x: number) => net(x / pressure);
  const roots = findRoots(netAt, {
    low: leastPressure,
    high: mostPressure,
    steps,
    scale: "logarithmic",
    tolerance,
  });
  return breakEvenValuesOf(roots, netAt, (x) => hazardAt(x / pressure, baseline, settings));
}

/** The least chance that is searched, if the option pays there already. */
export function paysAtNextToNoChance(weighed: Weighed): number | undefined {
  const scale = leastPressure / pressureWithout(weighed);
  if (!Number.isFinite(scale) || netBenefitAtScale(weighed)(scale) <= 0) return undefined;
  return hazardAt(scale, weighed.baseline, weighed.settings);
}

const pressureWithout = ({ baseline, settings }: Weighed) =>
  settings.rates.ofBoats * baseline.arrivals.foundings;

const netBenefitAtScale =
  ({ result, baseline }: Weighed) =>
  (scale: number): number =>
    baseline.atScale(scale) - result.atScale(scale);

/** Chance of establishment in the first year at so many times the foundings of boats. */
const hazardAt = (scale: number, { arrivals }: OptionResult, { rates }: OptionSettings) =>
  yearlyHazard({ launches: arrivals.slipThrough, foundings: arrivals.foundings }, 0, rates, scale);

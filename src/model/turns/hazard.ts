import type { OptionResult, OptionSettings } from "../option.js";
import { yearlyHazard } from "../risk/hazard.js";
import { findRoots } from "../root.js";
import { expectedCost } from "./expected-cost.js";
import { noTurns, type Turns, turnsOf, type Weighed } from "./turns.js";

/** Pressure (α · arrivals · suitability) without a program between which the search runs: chances of 1e-7 and over 99.9 %. */
const leastPressure = 1e-7;
const mostPressure = 8;
/** Cells of the grid, ten in every decade of pressure. */
const steps = 80;
const tolerance = 1e-16;

/**
 * All yearly chances without the program at which the net benefit turns, over a factor on the establishment chance per
 * arrival, the same for both options, from next to nothing to near certainty. It may turn more than once: at very
 * high chances a program stops paying again, since it puts infestation off by little.
 */
export function hazardTurns(weighed: Weighed): Turns {
  const { baseline, settings } = weighed;
  const pressure = pressureWithout(weighed);
  if (pressure === 0) return noTurns;
  const net = netBenefitAtScale(weighed);
  const netAt = (x: number) => net(x / pressure);
  const roots = findRoots(netAt, {
    low: leastPressure,
    high: mostPressure,
    steps,
    scale: "logarithmic",
    tolerance,
  });
  return turnsOf(roots, netAt, (x) => hazardAt(x / pressure, baseline, settings));
}

/** The least chance that is searched, if the option pays there already. */
export function paysAtNextToNoChance(weighed: Weighed): number | undefined {
  const scale = leastPressure / pressureWithout(weighed);
  if (!Number.isFinite(scale) || netBenefitAtScale(weighed)(scale) < 0) return undefined;
  return hazardAt(scale, weighed.baseline, weighed.settings);
}

const pressureWithout = ({ baseline, settings }: Weighed) =>
  settings.hazard.establishmentPerArrival * baseline.arrivals.slipThrough * settings.suitability;

function netBenefitAtScale({ result, baseline, settings }: Weighed): (scale: number) => number {
  const before = expectedCost(baseline, settings.factors);
  const after = expectedCost(result, settings.factors);
  return (scale) => before(hazardAt(scale, baseline, settings)) - after(hazardAt(scale, result, settings));
}

function hazardAt(
  scale: number,
  { arrivals }: OptionResult,
  { hazard, suitability }: OptionSettings,
): number {
  return yearlyHazard(arrivals.slipThrough, suitability, {
    ...hazard,
    establishmentPerArrival: hazard.establishmentPerArrival * scale,
  });
}

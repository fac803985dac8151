import { at } from "./lake/calendar.js";
import type { Money } from "./money/line.js";
import type { OptionResult, OptionSettings } from "./option.js";
import { yearlyHazard } from "./risk/hazard.js";

/** Where the answer flips, all else equal. Absent values do not exist in the searched range. */
export interface BreakEven {
  /** Lowest yearly chance of infestation without the program at which the program pays. */
  readonly hazard: number | undefined;
  /** Largest yearly cost of the whole program that the avoided loss would carry. */
  readonly programPerYear: Money | undefined;
  /** Factor on every infestation cost at which the program pays. */
  readonly lossFactor: number | undefined;
}

/**
 * Break-even values of an option against the baseline. Loss, y = (K − K0)/(X0 − X), and budget,
 * A = (X0 − X + K0 − S)·G/(K − S), are ratios of present values, since both enter linearly; S is what a schedule of
 * levels costs. The chance at which B(h) = 0 is searched over a factor on the establishment chance per arrival, the same for
 * both options, on a logarithmic grid and then by bisection, from next to nothing to near certainty in a year;
 * the lowest crossing is given, because at very high chances a program stops paying again.
 */
export function breakEven(result: OptionResult, baseline: OptionResult, settings: OptionSettings): BreakEven {
  const added = result.presentValue.program.minus(baseline.presentValue.program);
  const avoided = baseline.presentValue.infestation.minus(result.presentValue.infestation);
  const ownProgram = result.presentValue.program.minus(result.schedulePresentValue);
  const running = result.programPerYear.isZero() ? undefined : ownProgram.dividedBy(result.programPerYear);
  return {
    hazard: breakEvenHazard(result, baseline, settings),
    programPerYear:
      running && avoided.greaterThan(0)
        ? avoided.plus(baseline.presentValue.program).minus(result.schedulePresentValue).dividedBy(running)
        : undefined,
    lossFactor:
      avoided.greaterThan(0) && added.greaterThan(0) ? added.dividedBy(avoided).toNumber() : undefined,
  };
}

/** Nothing can be avoided where the lake is infested already, so nothing flips the answer. */
export const noBreakEven: BreakEven = { hazard: undefined, programPerYear: undefined, lossFactor: undefined };

const gridSteps = 80;
/** Pressure (α · arrivals · suitability) without a program between which the search runs: chances of 1e-7 and over 99.9 %. */
const leastPressure = 1e-7;
const mostPressure = 8;
const bisections = 50;

function breakEvenHazard(
  result: OptionResult,
  baseline: OptionResult,
  settings: OptionSettings,
): number | undefined {
  const net = netBenefitAtScale(result, baseline, settings);
  const pressure =
    settings.hazard.establishmentPerArrival * baseline.arrivals.slipThrough * settings.suitability;
  if (pressure === 0) return undefined;
  const scales = Array.from(
    { length: gridSteps + 1 },
    (_, step) => (leastPressure * (mostPressure / leastPressure) ** (step / gridSteps)) / pressure,
  );
  const upper = scales.findIndex((scale) => net(scale) >= 0);
  if (upper === -1) return undefined;
  if (upper === 0) return hazardAt(at(scales, 0), baseline, settings);
  let low = at(scales, upper - 1);
  let high = at(scales, upper);
  for (let step = 0; step < bisections; step++) {
    const middle = Math.sqrt(low * high);
    if (net(middle) >= 0) high = middle;
    else low = middle;
  }
  return hazardAt(high, baseline, settings);
}

function hazardAt(scale: number, result: OptionResult, settings: OptionSettings): number {
  const { hazard, suitability } = settings;
  return yearlyHazard(result.arrivals.slipThrough, suitability, {
    ...hazard,
    establishmentPerArrival: hazard.establishmentPerArrival * scale,
  });
}

/**
 * Net benefit as a function of the scale, in plain numbers: a search needs no cents. Under a constant hazard the
 * expected loss follows from the year before, E(t) = (1−h) E(t−1) + h L(t), L the cost t years after
 * establishment in year 1, and the chance of still being clean from its own last value.
 */
function netBenefitAtScale(result: OptionResult, baseline: OptionResult, settings: OptionSettings) {
  const costAt = (option: OptionResult, losses: readonly number[], scale: number) => {
    const hazard = hazardAt(scale, option, settings);
    const perYear = option.programPerYear.toNumber();
    const schedulePerYear = option.schedulePerYear.toNumber();
    const { share } = option.option.afterInfestation;
    let expectedLoss = 0;
    let clean = 1;
    let cost = 0;
    settings.factors.forEach((factor, year) => {
      expectedLoss = (1 - hazard) * expectedLoss + hazard * at(losses, year);
      cost += factor * (expectedLoss + perYear * (clean + share * (1 - clean)));
      clean *= 1 - hazard;
      cost += factor * schedulePerYear * (1 - clean);
    });
    return cost;
  };
  const lossesOf = (option: OptionResult) =>
    option.schedule.infestation.byYear.map((amount) => amount.toNumber());
  const [before, after] = [lossesOf(baseline), lossesOf(result)];
  return (scale: number) => costAt(baseline, before, scale) - costAt(result, after, scale);
}

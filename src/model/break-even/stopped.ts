import { lastMade } from "../computed-once.js";
import { reach } from "../program/ramp-up.js";
import { yearlyHazards } from "../risk/hazard.js";
import { findRoots } from "../root-search.js";
import {
  type BreakEvenValues,
  breakEvenValuesOf,
  noBreakEvenValues,
  type Weighed,
} from "./break-even-values.js";

/** Cells of the grid where the net benefit may turn more than once. */
const cells = 200;
const tolerance = 1e-12;

/**
 * Shares of fouled boats stopped by the program in full, 0 to 1, at which the net benefit turns, B(s) = 0, at the
 * option's present cost. In a year in which it reaches k(t) of them it stops k(t) s.
 *
 * It is monotone if every further clean year changes the option's cost the same way. Proof: with s stopped,
 * h(t) falls as s rises. The year τ of establishment has P(τ > t) = Π (1−h), which
 * rises for every t as the h fall. The expected cost is C(1) + Σ P(τ > t) d(t), d(t) = C(t+1) − C(t) the cost of clean
 * year t; where all d have one sign, each term moves the same way. They may differ: near the horizon's end an
 * infestation may cost less than the program that would put it off. Then stopping more may turn the answer twice,
 * and `all` is false; so it is where an infestation may be contained, and come again.
 */
export function breakEvenStoppedShares({ result, baseline, settings }: Weighed): BreakEvenValues {
  if (result.option.steps === undefined) return noBreakEvenValues;
  const { rates } = settings;
  const { slipThrough: launches, foundings } = baseline.arrivals;
  const without = baseline.presentValue.total.toNumber();
  const { expected: cost, ofCleanYears } = result.ofChances;
  const reaching = lastMade((stopped: number) => {
    const through = 1 - stopped;
    return { launches: launches * through, foundings: foundings * through ** rates.shape };
  });
  const reached = rates.unchecked.map((_, year) => reach(result.option, year));
  const netAt = (stopped: number) =>
    without -
    cost(
      yearlyHazards(
        reached.map((share) => reaching(stopped * share)),
        rates,
      ),
    );
  const monotone =
    result.detection.containment === undefined &&
    (ofCleanYears.every((each) => each <= 0) || ofCleanYears.every((each) => each >= 0));
  const steps = monotone ? 1 : cells;
  const roots = findRoots(netAt, { low: 0, high: 1, steps, scale: "linear", tolerance, monotone });
  return breakEvenValuesOf(roots, netAt, (stopped) => stopped);
}

/** Share of the fouled boats of the baseline that an option stops, by its steps and by deterrence. */
export function shareStopped({ result, baseline }: Pick<Weighed, "result" | "baseline">): number {
  const without = baseline.arrivals.slipThrough;
  return without === 0 ? 0 : 1 - result.arrivals.slipThrough / without;
}

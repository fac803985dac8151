import { type Assumed, recorder } from "../assumed.js";
import type { Boats, ProgramOption, ProgramSteps, VesselClass } from "../inputs.js";

/** How one class of boats passes an option in a year. Boats, not shares. */
export interface ClassFunnel {
  readonly vesselClass: VesselClass;
  readonly launches: number;
  /** Launches that carry live mussels to the ramp, after deterrence. */
  readonly fouled: number;
  readonly setAside: number;
  /** Fouled launches that slip through. */
  readonly slipThrough: number;
}

export interface Arrivals {
  readonly classes: readonly ClassFunnel[];
  /** Fouled launches a year that reach the water. */
  readonly slipThrough: number;
  /** The same if the steps miss independently, and if they miss the same boats. */
  readonly slipThroughRange: { readonly independent: number; readonly dependent: number };
  readonly assumptionIds: readonly string[];
}

/** A year's boats through an option's steps; an option without steps stops nothing and deters no one. */
export function arrivals(boats: Boats, option: ProgramOption, source: Assumed): Arrivals {
  const { assumed, ids } = recorder(source);
  const launches = boats.launches.reduce((sum, month) => sum + month, 0);
  const dependence = option.steps ? assumed("steps.dependence") : 0;
  const classes = boats.classes.map((each) => funnel(each, launches, option.steps, dependence));
  const total = (shareOfDependence: number) =>
    boats.classes
      .map((each) => funnel(each, launches, option.steps, shareOfDependence).slipThrough)
      .reduce((sum, boat) => sum + boat, 0);
  return {
    classes,
    slipThrough: classes.reduce((sum, each) => sum + each.slipThrough, 0),
    slipThroughRange: { independent: total(0), dependent: total(1) },
    assumptionIds: ids(),
  };
}

function funnel(
  vesselClass: VesselClass,
  allLaunches: number,
  steps: ProgramSteps | undefined,
  dependence: number,
): ClassFunnel {
  const launches = allLaunches * vesselClass.share;
  const fouled = launches * vesselClass.carriesLive * (1 - (steps?.deterrence ?? 0));
  const setAside = steps ? fouled * steps.coverage * steps.setAside : 0;
  const slipThrough = steps ? fouled * passingShare(steps, dependence) : fouled;
  return { vesselClass, launches, fouled, setAside, slipThrough };
}

/**
 * Share of fouled boats that still reach the water with live mussels: those never met or not set aside, and
 * those that inspection and hot wash both miss. Two bounds for the last: misses independent, (1−i)(1−w), and
 * the same boats missed by both, 1 − max(i, w); `dependence` 0 to 1 leads from one to the other, m. Then
 * x = 1 − a + a m, a the share met and set aside.
 */
export function passingShare(steps: ProgramSteps, dependence: number): number {
  const independent = (1 - steps.inspection) * (1 - steps.hotWash);
  const dependent = 1 - Math.max(steps.inspection, steps.hotWash);
  const missed = independent + (dependent - independent) * dependence;
  const setAside = steps.coverage * steps.setAside;
  return 1 - setAside + setAside * missed;
}

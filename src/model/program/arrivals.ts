import { type Assumed, recorder } from "../assumed.js";
import type { Boats, CheckSteps, Lake, ProgramOption, ProgramSteps, VesselClass } from "../inputs.js";
import { holdSurvival } from "./drying-hold.js";

/** How one class of boats passes an option in a year. Boats, not shares. */
export interface ClassFunnel {
  readonly vesselClass: VesselClass;
  readonly launches: number;
  /** Boats that pass with a seal. */
  readonly sealed: number;
  /** Boats that the station meets in its open hours and looks at. */
  readonly checked: number;
  /** Launches that carry live mussels to the ramp, after deterrence. */
  readonly fouled: number;
  /** Fouled launches that are set aside, and all launches that are. */
  readonly setAside: number;
  readonly setAsideInAll: number;
  readonly washed: number;
  readonly held: number;
  readonly refused: number;
  /** Fouled launches that slip through. */
  readonly slipThrough: number;
}

export interface Arrivals {
  readonly classes: readonly ClassFunnel[];
  /** Fouled launches a year that reach the water. */
  readonly slipThrough: number;
  /** The same if the steps miss independently, and if they miss the same boats; worked out when asked for. */
  readonly slipThroughRange: { readonly independent: number; readonly dependent: number };
  readonly assumptionIds: readonly string[];
}

/**
 * A year's boats through an option's steps; an option without steps stops nothing and deters no one. Of a class's
 * fouled boats the share x = 1 − a + a (1−r) m u reaches the water, a = (1−s) c b: s sealed, c met in open hours,
 * b of those set aside, r of these refused, m missed by inspection and wash, u alive after the drying hold.
 */
export function arrivals(boats: Boats, option: ProgramOption, lake: Lake, source: Assumed): Arrivals {
  const { assumed, ids } = recorder(source);
  const launches = boats.launches.reduce((sum, month) => sum + month, 0);
  const { steps } = option;
  const dependence = steps ? assumed("steps.dependence") : 0;
  const outlivesHold =
    steps && steps.hold.share > 0 ? holdSurvival(steps.hold.days, boats, lake, assumed) : 1;
  const classes = (shareOfDependence: number) =>
    boats.classes.map((each) =>
      steps
        ? checkedFunnel(each, launches * each.share, { steps, dependence: shareOfDependence, outlivesHold })
        : openFunnel(each, launches * each.share),
    );
  const total = (funnels: readonly ClassFunnel[]) =>
    funnels.reduce((sum, { slipThrough }) => sum + slipThrough, 0);
  const found = classes(dependence);
  return {
    classes: found,
    slipThrough: total(found),
    get slipThroughRange() {
      return { independent: total(classes(0)), dependent: total(classes(1)) };
    },
    assumptionIds: ids(),
  };
}

function openFunnel(vesselClass: VesselClass, launches: number): ClassFunnel {
  const fouled = launches * vesselClass.carriesLive;
  const nothing = { sealed: 0, checked: 0, setAside: 0, setAsideInAll: 0, washed: 0, held: 0, refused: 0 };
  return { vesselClass, launches, fouled, ...nothing, slipThrough: fouled };
}

interface Passing {
  readonly steps: ProgramSteps;
  readonly dependence: number;
  /** Share of mussels that outlives a drying hold. */
  readonly outlivesHold: number;
}

function checkedFunnel(vesselClass: VesselClass, launches: number, passing: Passing): ClassFunnel {
  const { steps } = passing;
  const check = { ...steps, ...stepsOf(steps, vesselClass) };
  const sealedShare = steps.seals.find((seal) => seal.vesselClass === vesselClass.id)?.share ?? 0;
  const fouled = launches * vesselClass.carriesLive * (1 - steps.deterrence);
  const checkedShare = (1 - sealedShare) * steps.coverage;
  const setAside = fouled * checkedShare * setAsideShare(check);
  const refused = setAside * steps.refusal;
  const clean = (launches - fouled) * checkedShare * steps.falseAlarm;
  const missed = missedShare(check, passing.dependence) * outlivingShare(passing);
  return {
    vesselClass,
    launches,
    sealed: launches * sealedShare,
    checked: launches * checkedShare,
    fouled,
    setAside,
    setAsideInAll: setAside + clean,
    washed: setAside - refused + clean * steps.washedAnyway,
    held: (setAside - refused + clean) * steps.hold.share,
    refused,
    slipThrough: fouled - setAside + (setAside - refused) * missed,
  };
}

/** The steps that work otherwise for a class. */
function stepsOf({ byClass }: ProgramSteps, { id }: VesselClass): Partial<CheckSteps> {
  const own = byClass.find(({ vesselClass }) => vesselClass === id);
  if (!own) return {};
  const names = ["declaration", "quickCheck", "inspection", "hotWash"] as const;
  return Object.fromEntries(names.flatMap((name) => (own[name] === undefined ? [] : [[name, own[name]]])));
}

/** Risky boats that are set aside: declared, d, or not declared and found by the quick check, q: 1 − (1−d)(1−q). */
export function setAsideShare({ declaration, quickCheck }: CheckSteps): number {
  return 1 - (1 - declaration) * (1 - quickCheck);
}

/**
 * Of fouled boats set aside, the share that inspection i and hot wash w both miss. Two bounds: misses independent,
 * (1−i)(1−w), and the same boats missed by both, 1 − max(i, w); `dependence` 0 to 1 leads from one to the other.
 */
export function missedShare({ inspection, hotWash }: CheckSteps, dependence: number): number {
  const independent = (1 - inspection) * (1 - hotWash);
  const dependent = 1 - Math.max(inspection, hotWash);
  return independent + (dependent - independent) * dependence;
}

/** What a drying hold for some of the boats leaves alive of what the other steps missed. */
const outlivingShare = ({ steps: { hold }, outlivesHold }: Passing) => 1 - hold.share * (1 - outlivesHold);

import { at, sumOf } from "../../lists.js";
import { type Assumed, recorder } from "../assumed.js";
import { withLater } from "../computed-once.js";
import type { Boats, CheckSteps, ProgramOption, ProgramSteps, VesselClass } from "../inputs.js";
import type { Lake } from "../lake/lake.js";
import type { AssumptionId } from "../register/register.js";
import { holdSurvival } from "./drying-hold.js";
import { foundingChances, type Through, togetherOf } from "./founding-chances.js";

/** How one class of boats passes an option in a year. Boats, not shares. */
export interface ClassFunnel {
  readonly vesselClass: VesselClass;
  readonly launches: number;
  /** Boats that pass with a seal. */
  readonly sealed: number;
  /** Boats that the station meets in its open hours and looks at. */
  readonly checked: number;
  /** Fouled launches, after deterrence. */
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
  /** Populations that they would found in a year in wholly suitable water, at one each. */
  readonly foundings: number;
  /** Launches if the steps miss independently, and if they miss the same boats; worked out when asked for. */
  readonly slipThroughRange: { readonly independent: number; readonly dependent: number };
  /** Share of mussels that outlives the option's drying hold; 1 without one. */
  readonly outlivesHold: number;
  readonly assumptionIds: readonly AssumptionId[];
}

/**
 * A year's boats through an option's steps; an option without steps stops nothing and deters no one. Of a class's
 * fouled boats the share x = 1 − a + a (1−r) m u reaches the water, a = (1−s) c b: s sealed, c met in open hours,
 * b of those set aside, r of these refused, m missed by inspection and wash, u alive after the drying hold.
 */
export function arrivals(boats: Boats, option: ProgramOption, lake: Lake, source: Assumed): Arrivals {
  const { assumed, ids } = recorder(source);
  const launches = launchesOf(boats);
  const passing = passingOf(boats, option, lake, assumed);
  const none = boats.classes.map(() => 0);
  const classes = boats.classes.map((each) =>
    passing ? checkedFunnel(each, launches * each.share, passing) : openFunnel(each, launches * each.share),
  );
  const totalAt = (dependence: number) =>
    throughOf(boats, passing && { ...passing, dependence }, none).launches;
  const through = throughOf(boats, passing, foundingChances(boats, assumed));
  const passed = {
    classes,
    slipThrough: through.launches,
    foundings: togetherOf(through, assumed),
    outlivesHold: passing?.outlivesHold ?? 1,
    assumptionIds: ids(),
  };
  return withLater(passed, {
    slipThroughRange: () => ({ independent: totalAt(0), dependent: totalAt(1) }),
  });
}

/**
 * What reaches the water of a year's boats, as `arrivals` tells it, without how each class passes.
 * @param chances α of each class, in their order
 */
export function throughBoats(
  boats: Boats,
  option: ProgramOption,
  lake: Lake,
  source: Assumed,
  chances: readonly number[],
): Through {
  return throughOf(boats, passingOf(boats, option, lake, source), chances);
}

function throughOf(boats: Boats, passing: Passing | undefined, chances: readonly number[]): Through {
  const all = launchesOf(boats);
  let launches = 0;
  let foundings = 0;
  boats.classes.forEach((each, index) => {
    const fouled = all * each.share * each.fouled;
    const slipping = passing
      ? fouled * (1 - passing.steps.deterrence) * slippingShare(each, passing)
      : fouled;
    launches += slipping;
    foundings += slipping * at(chances, index);
  });
  return { launches, foundings };
}

const launchesOf = ({ launches }: Boats) => sumOf(launches);

interface Passing {
  readonly steps: ProgramSteps;
  readonly dependence: number;
  /** Share of mussels that outlives a drying hold. */
  readonly outlivesHold: number;
}

/** Absent for an option without steps. */
function passingOf(
  boats: Boats,
  { steps }: ProgramOption,
  lake: Lake,
  assumed: Assumed,
): Passing | undefined {
  if (!steps) return undefined;
  return {
    steps,
    dependence: assumed("steps.dependence"),
    outlivesHold: steps.hold.share > 0 ? holdSurvival(steps.hold.days, boats, lake, assumed) : 1,
  };
}

/** x of `arrivals`. */
function slippingShare(vesselClass: VesselClass, passing: Passing): number {
  const { steps } = passing;
  const check = stepsOf(steps, vesselClass);
  const setAside = checkedShare(vesselClass, steps) * setAsideShare(check);
  const missed = missedShare(check, passing.dependence) * outlivingShare(passing);
  return 1 - setAside + setAside * (1 - steps.refusal) * missed;
}

const sealedShare = ({ id }: VesselClass, { seals }: ProgramSteps) =>
  seals.find(({ vesselClass }) => vesselClass === id)?.share ?? 0;

/** (1−s) c: boats without a seal that come in open hours. */
const checkedShare = (vesselClass: VesselClass, steps: ProgramSteps) =>
  (1 - sealedShare(vesselClass, steps)) * steps.coverage;

function openFunnel(vesselClass: VesselClass, launches: number): ClassFunnel {
  const fouled = launches * vesselClass.fouled;
  const nothing = { sealed: 0, checked: 0, setAside: 0, setAsideInAll: 0, washed: 0, held: 0, refused: 0 };
  return { vesselClass, launches, fouled, ...nothing, slipThrough: fouled };
}

function checkedFunnel(vesselClass: VesselClass, launches: number, passing: Passing): ClassFunnel {
  const { steps } = passing;
  const met = checkedShare(vesselClass, steps);
  const fouled = launches * vesselClass.fouled * (1 - steps.deterrence);
  const setAside = fouled * met * setAsideShare(stepsOf(steps, vesselClass));
  const refused = setAside * steps.refusal;
  const clean = (launches - fouled) * met * steps.falseAlarm;
  return {
    vesselClass,
    launches,
    sealed: launches * sealedShare(vesselClass, steps),
    checked: launches * met,
    fouled,
    setAside,
    setAsideInAll: setAside + clean,
    washed: setAside - refused + clean * steps.washedAnyway,
    held: (setAside - refused + clean) * steps.hold.share,
    refused,
    slipThrough: fouled * slippingShare(vesselClass, passing),
  };
}

/** The steps with what works otherwise for a class. */
function stepsOf(steps: ProgramSteps, { id }: VesselClass): CheckSteps {
  const own = steps.byClass.find(({ vesselClass }) => vesselClass === id);
  if (!own) return steps;
  return {
    declaration: own.declaration ?? steps.declaration,
    quickCheck: own.quickCheck ?? steps.quickCheck,
    inspection: own.inspection ?? steps.inspection,
    hotWash: own.hotWash ?? steps.hotWash,
  };
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

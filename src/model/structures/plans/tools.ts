import { at } from "../../../lists.js";
import { remembered } from "../../computed-once.js";
import { months } from "../../lake/calendar.js";
import type { Layer } from "../../mussels/layer.js";
import type { PlanEntry } from "../catalogue.js";
import type { Component, LimitLoad, Plan, Tell } from "../component.js";
import { forcedCleaning, noLoad } from "../limits.js";
import { removalLines, shellLines, workLines } from "../plan-work.js";
import { Ledger, type Stretch, tellAll } from "./ledger.js";
import {
  type Course,
  layerIn,
  type PartYear,
  type SurfacePart,
  type UntouchedCourse,
  untouchedCourse,
} from "./untouched.js";
import { addTo, type Cost, costOfLines, noCost } from "./weights.js";

/** What all plans of one part share in one operating year: each thing is reckoned once. */
export interface PlanTools extends SurfacePart {
  /** The surface if nobody touches it, under a share of the settlers. */
  readonly untouched: (factor: number) => UntouchedCourse;
  /**
   * Tells what a layer costs in a month of the year.
   * @param upstream share of the pieces of a mature infestation upstream that reach the part
   */
  readonly tellMonth: (tell: Tell, layer: Layer, month: number, upstream: number) => void;
  /** What stands in a year of a course, and what is carted away. */
  readonly inYear: (year: number, plan: Plan, course: Course) => YearCost;
  /** What a date of a plan costs in a month of the year, apart from what is carted away. */
  readonly workOf: (entry: PlanEntry, month: number) => Cost;
}

export interface YearCost {
  readonly cost: Cost;
  /** The limit that the layer comes nearest to. */
  readonly nearest: LimitLoad;
}

/**
 * What a layer costs in a month while it stands, and the shells of what died in it: a stretch of the part's ledger.
 */
interface MonthCost extends Stretch {
  readonly nearest: LimitLoad;
  readonly upstream: number;
}

type InMonth = (layer: Layer, month: number, upstream: number) => MonthCost;

export function planTools(part: SurfacePart): PlanTools {
  const { component, context } = part;
  const { planWeights } = context;
  const ledger = new Ledger();
  const reckon = monthCosts(part, ledger);
  const inMonth = component.isFed ? fedMonths(reckon) : ownMonths(reckon);
  const courses = remembered((factor: number) => untouchedCourse(factor, part));
  const untouchedYears = remembered((_: Course) => new Map<number, YearCost>());
  const works = remembered((_: PlanEntry) => new Map<number, Cost>());
  return {
    component,
    context,
    surface: part.surface,
    untouched: courses,
    tellMonth: (tell, layer, month, upstream) => ledger.tellAgain(tell, inMonth(layer, month, upstream)),
    inYear: (year, plan, course) => {
      const reckonYear = () => yearCost(year, { plan, course }, part, { ledger, inMonth });
      const isShared = course.cleanedMonths.size === 0 && !component.isFed;
      return isShared ? once(untouchedYears(course), year, reckonYear) : reckonYear();
    },
    workOf: (entry, month) =>
      once(works(entry), month, () => costOfLines(workLines(entry, component, context, month), planWeights)),
  };
}

function once<Key, Value>(known: Map<Key, Value>, key: Key, reckon: () => Value): Value {
  const before = known.get(key);
  if (before !== undefined) return before;
  const found = reckon();
  known.set(key, found);
  return found;
}

/** A layer stands in one month of the year only; plans share many months. */
function ownMonths(reckon: InMonth): InMonth {
  const known = new Map<Layer, MonthCost>();
  return (layer, month, upstream) => {
    const before = known.get(layer);
    if (before !== undefined) return before;
    const found = reckon(layer, month, upstream);
    known.set(layer, found);
    return found;
  };
}

/** What comes down from upstream differs from plan to plan, and a bare surface is the same in all months. */
function fedMonths(reckon: InMonth): InMonth {
  const known = months.map(() => remembered((_: Layer): MonthCost[] => []));
  return (layer, month, upstream) => {
    const ofLayer = at(known, month)(layer);
    for (const before of ofLayer) if (before.upstream === upstream) return before;
    const found = reckon(layer, month, upstream);
    ofLayer.push(found);
    return found;
  };
}

function monthCosts({ component, context }: SurfacePart, ledger: Ledger): InMonth {
  const { tell } = ledger;
  const tellForced = forcedCleaning(component, context);
  return (layer, month, upstream) => {
    const isFouled = layer.mass > 0;
    const first = ledger.length;
    if (layer.killed > 0) tellAll(tell, shellLines(layer, component, context));
    if (isFouled || component.isFed) component.losses(tell, layer, month, upstream);
    const nearest = isFouled ? component.limit(layer, month) : noLoad;
    tellForced(tell, nearest, month);
    return { first, end: ledger.length, nearest, upstream };
  };
}

/** Whether a month under a layer costs anything. */
export const costsAnything = ({ isFed }: Component, { mass, killed }: Layer): boolean =>
  mass > 0 || killed > 0 || isFed === true;

/** Pieces from upstream come as the lake's density has it; none passes a filter while mussels are regularly found. */
export function upstreamShare({ entry }: Plan, month: number, { component, context }: PartYear): number {
  if (!component.isFed) return 0;
  const { density, matureDensity, found } = context;
  if (entry.measure === "filter" && found.isFound(month)) return 0;
  return matureDensity > 0 ? at(density, month) / matureDensity : 0;
}

function yearCost(
  year: number,
  { plan, course }: { readonly plan: Plan; readonly course: Course },
  part: SurfacePart,
  { ledger, inMonth }: { readonly ledger: Ledger; readonly inMonth: InMonth },
): YearCost {
  const { component, context } = part;
  const { planWeights } = context;
  const cost = noCost(planWeights);
  let nearest = noLoad;
  for (let month = year * 12; month < year * 12 + 12; month++) {
    const layer = layerIn(course, month);
    if (costsAnything(component, layer)) {
      const found = inMonth(layer, month % 12, upstreamShare(plan, month, part));
      ledger.addTo(cost, found, planWeights);
      if (found.nearest.load > nearest.load) nearest = found.nearest;
    }
    if (course.cleanedMonths.has(month))
      addTo(cost, removalLines(plan, layer, component, context), planWeights);
  }
  return { cost, nearest };
}

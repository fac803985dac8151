import { at } from "../../../lists.js";
import { remembered } from "../../computed-once.js";
import { months } from "../../lake/calendar.js";
import type { Layer } from "../../mussels/layer.js";
import type { PlanEntry } from "../catalogue.js";
import type { Component, LimitLoad, Plan, Tell } from "../component.js";
import { forcedCleaning, NearestLimit, noLoad } from "../limits.js";
import { removalLines, shellLines, workLines } from "../plan-work.js";
import { Ledger, tellAll } from "./ledger.js";
import {
  type Course,
  firstCleaned,
  isCleaned,
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

/** Reckons what a layer costs in a month while it stands, and the shells of what died in it. @returns its month in the ledger */
type InMonth = (layer: Layer, month: number, upstream: number) => number;

interface Months {
  readonly ledger: Ledger;
  readonly inMonth: InMonth;
}

export function planTools({ component, context, surface }: SurfacePart): PlanTools {
  const { planWeights } = context;
  const part: SurfacePart = { component, context, surface };
  const ledger = new Ledger(planWeights);
  const reckon = monthCosts(part, ledger);
  const isFed = component.isFed === true;
  const months = { ledger, inMonth: isFed ? fedMonths(reckon) : ownMonths(reckon) };
  const courses = remembered((factor: number) => untouchedCourse(factor, part));
  const untouchedYears = remembered((_: Course) => new Map<number, YearCost>());
  const works = remembered((_: PlanEntry) => new Map<number, Cost>());
  return {
    component,
    context,
    surface,
    untouched: courses,
    tellMonth: (tell, layer, month, upstream) =>
      ledger.tellAgain(tell, months.inMonth(layer, month, upstream)),
    inYear: (year, plan, course) => {
      if (isFed || firstCleaned(course) < Infinity) return yearCost(year, plan, course, part, months);
      return once(untouchedYears(course), year, () => yearCost(year, plan, course, part, months));
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
  const known = new Map<Layer, number>();
  return (layer, month, upstream) => {
    const before = known.get(layer);
    if (before !== undefined) return before;
    const found = reckon(layer, month, upstream);
    known.set(layer, found);
    return found;
  };
}

/**
 * What comes down from upstream differs from plan to plan, and a bare surface is the same in all months. Of each layer the
 * latest is known, and of each month in the ledger the one of the same layer before it.
 */
function fedMonths(reckon: InMonth): InMonth {
  const latest = months.map(() => new Map<Layer, number>());
  const before: number[] = [];
  const upstreams: number[] = [];
  return (layer, month, upstream) => {
    const inMonth = at(latest, month);
    const last = inMonth.get(layer) ?? -1;
    for (let each = last; each >= 0; each = before[each] ?? -1) if (upstreams[each] === upstream) return each;
    const found = reckon(layer, month, upstream);
    before[found] = last;
    upstreams[found] = upstream;
    inMonth.set(layer, found);
    return found;
  };
}

function monthCosts({ component, context }: SurfacePart, ledger: Ledger): InMonth {
  const { losses, limit, isFed } = component;
  const { tell } = ledger;
  const tellForced = forcedCleaning(component, context);
  const nearest = new NearestLimit();
  return (layer, month, upstream) => {
    const isFouled = layer.mass > 0;
    if (layer.killed > 0) tellAll(tell, shellLines(layer, component, context));
    if (isFouled || isFed) losses(tell, layer, month, upstream);
    nearest.clear();
    if (isFouled) limit(nearest.meet, layer, month);
    tellForced(tell, nearest, month);
    return ledger.endMonth(nearest);
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
  plan: Plan,
  course: Course,
  part: SurfacePart,
  { ledger, inMonth }: Months,
): YearCost {
  const { component, context } = part;
  const { planWeights } = context;
  const cost = noCost(planWeights);
  let load = 0;
  let nearest = -1;
  for (let month = year * 12; month < year * 12 + 12; month++) {
    const layer = layerIn(course, month);
    if (costsAnything(component, layer)) {
      const found = inMonth(layer, month % 12, upstreamShare(plan, month, part));
      ledger.addTo(cost, found);
      if (ledger.loadIn(found) > load) {
        load = ledger.loadIn(found);
        nearest = found;
      }
    }
    if (isCleaned(course, month)) addTo(cost, removalLines(plan, layer, component, context), planWeights);
  }
  return { cost, nearest: nearest < 0 ? noLoad : ledger.nearestIn(nearest) };
}

import { at, noElement } from "../../../lists.js";
import { remembered } from "../../computed-once.js";
import { months } from "../../lake/calendar.js";
import type { Layer } from "../../mussels/layer.js";
import type { PlanEntry } from "../catalogue.js";
import type { Component, LimitLoad, Plan, Tell } from "../component.js";
import type { LakeContext } from "../context.js";
import { forcedCleaning, noLoad } from "../limits.js";
import { removalLines, shellLines, workLines } from "../plan-work.js";
import { Ledger, tellAll } from "./ledger.js";
import { type Course, type SurfacePart, type UntouchedCourse, untouchedCourse } from "./untouched.js";
import { addCost, addTo, type Cost, costOfLines, noCost } from "./weights.js";

/** What all plans of one part share in one operating year: each thing is reckoned once. */
export interface PlanTools extends SurfacePart {
  /** The surface if nobody touches it, under a share of the settlers. */
  readonly untouched: (factor: number) => UntouchedCourse;
  /** @param upstream share of the pieces of a mature infestation upstream that reach the part */
  readonly inMonth: (layer: Layer, month: number, upstream: number) => MonthCost;
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

/** What a layer costs in a month while it stands, and the shells of what died in it. */
interface MonthCost extends YearCost {
  /** Comparing plans takes the cost alone. */
  readonly tellLines: (tell: Tell) => void;
}

export function planTools(part: SurfacePart): PlanTools {
  const { component, context } = part;
  const { planWeights } = context;
  const monthCost = monthCosts(part);
  const inMonth = component.isFed ? fedMonths(monthCost) : ownMonths(monthCost);
  const courses = remembered((factor: number) => untouchedCourse(factor, part));
  const untouchedYears = remembered((_: Course["layers"]) => new Map<number, YearCost>());
  const works = remembered((_: PlanEntry) => new Map<number, Cost>());
  return {
    ...part,
    untouched: courses,
    inMonth,
    inYear: (year, plan, course) => {
      const reckon = () => yearCost(year, { plan, course }, part, inMonth);
      const isShared = course.cleanedMonths.size === 0 && !component.isFed;
      return isShared ? once(untouchedYears(course.layers), year, reckon) : reckon();
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
function ownMonths(monthCost: PlanTools["inMonth"]): PlanTools["inMonth"] {
  const known = new Map<Layer, MonthCost>();
  return (layer, month, upstream) => {
    const before = known.get(layer);
    if (before !== undefined) return before;
    const found = monthCost(layer, month, upstream);
    known.set(layer, found);
    return found;
  };
}

/** What comes down from upstream differs from plan to plan, and a bare surface is the same in all months. */
function fedMonths(monthCost: PlanTools["inMonth"]): PlanTools["inMonth"] {
  const known = months.map(() => remembered((_: Layer) => new Map<number, MonthCost>()));
  return (layer, month, upstream) =>
    once(at(known, month)(layer), upstream, () => monthCost(layer, month, upstream));
}

function monthCosts({ component, context }: SurfacePart): PlanTools["inMonth"] {
  const { planWeights } = context;
  const ledger = new Ledger();
  const forced = forcedCleaning(component, context);
  const certain = remembered((month: number) => costOfLines(forced.certain(month), planWeights));
  return (layer, month, upstream) => {
    const isFouled = layer.mass > 0;
    const first = ledger.length;
    if (isFouled || component.isFed) component.losses(ledger.tell, layer, month, upstream);
    const end = ledger.length;
    const cost = ledger.costOf(first, end, planWeights);
    if (layer.killed > 0) addTo(cost, shellLines(layer, component, context), planWeights);
    const nearest = isFouled ? component.limit(layer, month) : noLoad;
    const chance = forced.chance(nearest.load);
    if (chance > 0) addCost(cost, certain(month), chance);
    return {
      cost,
      nearest,
      tellLines: (tell) => {
        tellAll(tell, shellLines(layer, component, context));
        ledger.tellAgain(tell, first, end);
        tellAll(tell, forced.lines(nearest, month));
      },
    };
  };
}

/** Whether a month under a layer costs anything. */
export const costsAnything = ({ isFed }: Component, { mass, killed }: Layer): boolean =>
  mass > 0 || killed > 0 || isFed === true;

/** Pieces from upstream come as the lake's density has it; none passes a filter while mussels are regularly found. */
export function upstreamShare({ entry }: Plan, month: number, context: LakeContext): number {
  const { density, matureDensity, found } = context;
  if (entry.measure === "filter" && found.isFound(month)) return 0;
  return matureDensity > 0 ? at(density, month) / matureDensity : 0;
}

function yearCost(
  year: number,
  { plan, course }: { readonly plan: Plan; readonly course: Course },
  { component, context }: SurfacePart,
  inMonth: PlanTools["inMonth"],
): YearCost {
  const { planWeights } = context;
  const { layers, cleanedMonths } = course;
  const cost = noCost(planWeights);
  let nearest = noLoad;
  for (let month = year * 12; month < year * 12 + 12; month++) {
    const layer = layers[month] ?? noElement(layers, month);
    if (costsAnything(component, layer)) {
      const found = inMonth(layer, month % 12, upstreamShare(plan, month, context));
      addCost(cost, found.cost, 1);
      if (found.nearest.load > nearest.load) nearest = found.nearest;
    }
    if (cleanedMonths.has(month)) addTo(cost, removalLines(plan, layer, component, context), planWeights);
  }
  return { cost, nearest };
}

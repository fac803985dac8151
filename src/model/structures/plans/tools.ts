import { noElement } from "../../../lists.js";
import type { Layer } from "../../mussels/layer.js";
import type { PlanEntry } from "../catalogue.js";
import type { LimitLoad, Plan, Priced } from "../component.js";
import { forcedCleaning, noLoad } from "../limits.js";
import { removalLines, shellLines, workLines } from "../plan-work.js";
import { type Course, type SurfacePart, untouchedCourse } from "./untouched.js";
import { addCost, addTo, type Cost, costOfLines, noCost } from "./weights.js";

/** What all plans of one part share in one operating year: each thing is reckoned once. */
export interface PlanTools extends SurfacePart {
  /** The surface if nobody touches it, under a share of the settlers. */
  readonly untouched: (factor: number) => Course;
  readonly inMonth: (layer: Layer, month: number) => MonthCost;
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
  readonly lines: readonly Priced[];
}

export function planTools(part: SurfacePart): PlanTools {
  const { component, context } = part;
  const { planWeights } = context;
  const inMonth = remembered(monthCosts(part));
  const courses = remembered((factor: number) => untouchedCourse(factor, part));
  const untouchedYears = remembered((_: Course["layers"]) => new Map<number, YearCost>());
  const works = remembered((_: PlanEntry) => new Map<number, Cost>());
  return {
    ...part,
    untouched: courses,
    inMonth,
    inYear: (year, plan, course) => {
      const reckon = () => yearCost(year, { plan, course }, part, inMonth);
      return course.cleanedMonths.size > 0 ? reckon() : once(untouchedYears(course.layers), year, reckon);
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

/** A function that reckons once for each of its first arguments. */
function remembered<Key, Rest extends readonly unknown[], Value>(
  reckon: (key: Key, ...rest: Rest) => Value,
): (key: Key, ...rest: Rest) => Value {
  const known = new Map<Key, Value>();
  return (key, ...rest) => once(known, key, () => reckon(key, ...rest));
}

/** A layer stands in one month of the year only; plans share many months. */
function monthCosts({ component, context }: SurfacePart): PlanTools["inMonth"] {
  const { planWeights } = context;
  const forced = forcedCleaning(component, context);
  return (layer, month) => {
    const lines = [...shellLines(layer, component, context)];
    let nearest = noLoad;
    if (layer.mass > 0) {
      nearest = component.limit(layer, month);
      append(lines, component.losses(layer, month));
      append(lines, forced.lines(nearest, month));
    }
    return { lines, cost: costOfLines(lines, planWeights), nearest };
  };
}

export function append(lines: Priced[], more: readonly Priced[]): void {
  for (const line of more) lines.push(line);
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
    if (layer.mass > 0 || layer.killed > 0) {
      const found = inMonth(layer, month % 12);
      addCost(cost, found.cost, 1);
      if (found.nearest.load > nearest.load) nearest = found.nearest;
    }
    if (cleanedMonths.has(month)) addTo(cost, removalLines(plan, layer, component, context), planWeights);
  }
  return { cost, nearest };
}

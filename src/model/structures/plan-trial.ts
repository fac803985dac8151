import { noElement } from "../../lists.js";
import { months } from "../lake/calendar.js";
import type { GrowingSurface } from "../mussels/growth.js";
import { bareSurface, type Layer } from "../mussels/layer.js";
import type { PlanEntry } from "./catalogue.js";
import type { Component, Plan } from "./component.js";
import type { LakeContext } from "./context.js";
import {
  type BareRuns,
  bareRuns,
  type PartYear,
  type Stretch,
  stretches,
  untouchedLayer,
} from "./growth-between-visits.js";
import { brokenLimit, forcedCleaning } from "./limits.js";
import { removalLines, shellLines, workLines } from "./plan-work.js";
import { costOf } from "./protection.js";

/** What trying plans in one operating year tells. All costs are yearly, in a mature infestation. */
export interface Trial {
  readonly surface: GrowingSurface;
  /** The thickest layer of a surface that nobody touches. */
  readonly untouchedLayer: Layer;
  /** Cost that a plan has whatever grows: its protection and the dates of its routine. */
  readonly leastCost: (plan: Plan) => number;
  readonly of: (plan: Plan) => PlanTrial;
}

/** One plan tried in one operating year; what is asked is worked out once. */
export interface PlanTrial {
  readonly plan: Plan;
  /** The first limit that the plan breaks, in words; undefined if it keeps them all. */
  readonly brokenLimit: () => string | undefined;
  readonly cost: () => number;
}

/**
 * Tries plans on one part. Plans that make the surface bare at fixed dates all pass through the same months, counted
 * from a bare surface in some month of the year: each such run is grown once for all of them.
 */
export function trialOf({ component, context }: PartYear): Trial {
  const surface = context.growing(component.surface);
  const runs = bareRuns(surface, context);
  const tools: TrialTools = {
    component,
    context,
    surface,
    runs,
    costOfMonth: monthCosts(component, context),
    workCost: workCosts(component, context),
  };
  return {
    surface,
    untouchedLayer: untouchedLayer(runs),
    leastCost: (plan) => leastCost(plan, tools.workCost),
    of: (plan) => planTrial(plan, tools),
  };
}

/** @param upstream share of the pieces upstream that reach the part */
type MonthCost = (layer: Layer, monthOfYear: number, upstream: number) => number;

/** What all trials of one part share. */
interface TrialTools extends PartYear {
  readonly surface: GrowingSurface;
  readonly runs: BareRuns;
  readonly costOfMonth: MonthCost;
  readonly workCost: (entry: PlanEntry, month: number) => number;
}

function planTrial(plan: Plan, tools: TrialTools): PlanTrial {
  let parts: readonly Stretch[] | undefined;
  let limits: { readonly broken: string | undefined } | undefined;
  let cost: number | undefined;
  const stretchesOf = () => {
    parts ??= stretches(plan, tools);
    return parts;
  };
  return {
    plan,
    brokenLimit: () => {
      limits ??= { broken: firstBrokenLimit(stretchesOf(), tools.component) };
      return limits.broken;
    },
    cost: () => {
      cost ??= leastCost(plan, tools.workCost) + growthCost(plan, stretchesOf(), tools);
      return cost;
    },
  };
}

/** Losses and shells of a month under a layer; plans share many months. */
function monthCosts(component: Component, context: LakeContext): TrialTools["costOfMonth"] {
  const known = new Map<number, Map<Layer, number>>();
  const forced = forcedCleaning(component, context);
  return (layer, monthOfYear, upstream) => {
    const costs = known.get(upstream) ?? new Map<Layer, number>();
    known.set(upstream, costs);
    const before = layer === bareSurface ? undefined : costs.get(layer);
    if (before !== undefined) return before;
    let cost = costOf(component.losses(layer, monthOfYear, upstream));
    cost += costOf(shellLines(layer, component, context));
    if (layer.mass > 0) cost += forced.cost(component.limit(layer, monthOfYear).load, monthOfYear);
    costs.set(layer, cost);
    return cost;
  };
}

/** Cost of a date of a routine in a month of the year, apart from what is carted away; intervals share many dates. */
function workCosts(component: Component, context: LakeContext): TrialTools["workCost"] {
  const known = new Map<PlanEntry, (number | undefined)[]>();
  return (entry, month) => {
    const costs = known.get(entry) ?? [];
    if (costs.length === 0) known.set(entry, costs);
    costs[month] ??= costOf(workLines(entry, component, context, month));
    return costs[month];
  };
}

const leastCost = (plan: Plan, workCost: TrialTools["workCost"]) =>
  routineCost(plan, workCost) + (plan.protection?.yearlyCost ?? 0);

/** Yearly cost of losses, of what is carted away, and of work on a trigger. */
function growthCost(plan: Plan, parts: readonly Stretch[], tools: TrialTools): number {
  const counted = parts.reduce((sum, { from, to }) => sum + to - from, 0);
  let cost = 0;
  for (const stretch of parts) cost += stretchCost(stretch, plan, tools, tools.costOfMonth);
  if (plan.routine.by === "trigger") cost += triggeredWork(parts, plan, tools.workCost);
  return (cost / counted) * 12;
}

function firstBrokenLimit(parts: readonly Stretch[], component: Component): string | undefined {
  for (const { layers, firstMonth, from, to } of parts) {
    for (let month = from; month < to; month++) {
      const layer = layers[month] ?? noElement(layers, month);
      const broken = layer.mass > 0 ? brokenLimit(component, layer, (firstMonth + month) % 12) : undefined;
      if (broken !== undefined) return broken;
    }
  }
  return undefined;
}

/** Losses while the layer is there, and the mussels and shells that are carted away. */
function stretchCost(
  { layers, firstMonth, from, to, cleanedAfter }: Stretch,
  plan: Plan,
  { component, context }: PartYear,
  costOfMonth: MonthCost,
): number {
  const upstream = plan.entry.measure === "filter" ? 0 : 1;
  let cost = 0;
  for (let month = from; month < to; month++) {
    const layer = layers[month] ?? noElement(layers, month);
    if (layer.mass > 0 || layer.killed > 0 || component.isFed) {
      cost += costOfMonth(layer, (firstMonth + month) % 12, upstream);
    }
    if (cleanedAfter(month)) cost += costOf(removalLines(plan, layer, component, context));
  }
  return cost;
}

/** Yearly cost of the work at a routine's dates, apart from what is carted away. */
function routineCost({ routine, entry }: Plan, workCost: TrialTools["workCost"]): number {
  switch (routine.by) {
    case "nothing":
    case "trigger":
      return 0;
    case "month-of-year":
      return workCost(entry, routine.month);
    case "interval":
      return routine.months >= 12
        ? (workCost(entry, 11) * 12) / routine.months
        : months
            .filter((month) => (month + 1) % routine.months === 0)
            .reduce((sum, month) => sum + workCost(entry, month), 0);
  }
}

function triggeredWork(parts: readonly Stretch[], { entry }: Plan, workCost: TrialTools["workCost"]): number {
  let cost = 0;
  for (const { firstMonth, from, to, cleanedAfter } of parts) {
    for (let month = from; month < to; month++) {
      if (cleanedAfter(month)) cost += workCost(entry, (firstMonth + month) % 12);
    }
  }
  return cost;
}

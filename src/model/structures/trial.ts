import { months, noElement } from "../lake/calendar.js";
import { type GrowingSurface, growLayers, grownOnce } from "../mussels/growth.js";
import { bareSurface, type Layer } from "../mussels/layer.js";
import type { Component } from "./component.js";
import type { LakeContext } from "./context.js";
import type { Plan } from "./plan.js";
import { costOf } from "./protection.js";
import { removalLines, shellLines, workLines } from "./work.js";

/**
 * A surface that nobody touches swings for years between crowding and new settlement before it settles: it is
 * costed, and held to its limits, over seven years after a run-up of three.
 */
const untouched = { runUpMonths: 36, cycleMonths: 84 };
const longestRun = untouched.runUpMonths + untouched.cycleMonths;

/** A part in one possible operating year of the lake. */
export interface PartYear {
  readonly component: Component;
  readonly context: LakeContext;
}

/** Months that follow one another on a surface in a mature infestation. */
interface Stretch {
  readonly layers: readonly Layer[];
  /** Month of the year of the first. */
  readonly firstMonth: number;
  /** First month that counts; those before are the run-up. */
  readonly from: number;
  /** First month that no longer counts. */
  readonly to: number;
  /** True for a month at whose end the surface was cleaned. */
  readonly cleanedAfter: (month: number) => boolean;
}

/** What trying plans in one operating year tells. All costs are yearly, in a mature infestation. */
export interface Trial {
  readonly surface: GrowingSurface;
  /** The thickest layer of a surface that nobody touches. */
  readonly untouchedLayer: () => Layer;
  /** The first limit that a plan breaks, in words; undefined if it keeps them all. */
  readonly brokenLimit: (plan: Plan) => string | undefined;
  /** Cost that a plan has whatever grows: its protection and the dates of its routine. */
  readonly leastCost: (plan: Plan) => number;
  readonly cost: (plan: Plan) => number;
}

/**
 * Tries plans on one part. Plans that make the surface bare at fixed dates all pass through the same months, counted
 * from a bare surface in some month of the year: each such run is grown once for all of them.
 */
export function trialOf({ component, context }: PartYear): Trial {
  const surface = context.growing(component.surface);
  const runs = bareRuns(surface, context);
  const monthCosts = new Map<Layer, number>();
  const costOfMonth = (layer: Layer, monthOfYear: number) => {
    const known = monthCosts.get(layer);
    if (known !== undefined) return known;
    const cost = costOf(component.losses(layer, monthOfYear)) + costOf(shellLines(layer, component, context));
    monthCosts.set(layer, cost);
    return cost;
  };
  const stretchesOf = (plan: Plan) => stretches(plan, { component, context, surface, runs });
  return {
    surface,
    untouchedLayer: () => thickest(runs(1, 0, longestRun).slice(untouched.runUpMonths)),
    brokenLimit: (plan) => firstBrokenLimit(stretchesOf(plan), component),
    leastCost: (plan) => routineCost(plan, component, context) + (plan.protection?.yearlyCost ?? 0),
    cost: (plan) => {
      const parts = stretchesOf(plan);
      const counted = parts.reduce((sum, { from, to }) => sum + to - from, 0);
      let growthCost = 0;
      for (const stretch of parts)
        growthCost += stretchCost(stretch, plan, { component, context }, costOfMonth);
      const triggered = plan.routine.by === "trigger" ? triggeredWork(parts, plan, component, context) : 0;
      const yearly = routineCost(plan, component, context) + (plan.protection?.yearlyCost ?? 0);
      return yearly + ((growthCost + triggered) / counted) * 12;
    },
  };
}

const neverCleaned: ReadonlySet<number> = new Set();

type BareRuns = (settlementFactor: number, firstMonth: number, length: number) => readonly Layer[];

/**
 * Layers grown from a bare surface in a mature infestation, from each month of the year: at least as many months as
 * asked for; made when first needed.
 */
function bareRuns(surface: GrowingSurface, context: LakeContext): BareRuns {
  return (settlementFactor, firstMonth, length) => {
    const grow = () => {
      const density = Array<number>(length).fill(context.matureDensity * settlementFactor);
      return {
        layers: growLayers({ surface, density, firstMonth }, context.growth),
        cleanedMonths: neverCleaned,
      };
    };
    const name = `bare in month ${firstMonth}, settlers × ${settlementFactor}`;
    return grownOnce(surface, name, grow, ({ layers }) => layers.length >= length).layers;
  };
}

function stretches(
  plan: Plan,
  part: PartYear & { surface: GrowingSurface; runs: BareRuns },
): readonly Stretch[] {
  const { routine, protection } = plan;
  const run = (firstMonth: number, length: number) =>
    part.runs(protection?.settlementFactor ?? 1, firstMonth, length);
  const cycle = (firstMonth: number, length: number): Stretch => ({
    layers: run(firstMonth, length),
    firstMonth,
    from: 0,
    to: length,
    cleanedAfter: (month) => month === length - 1,
  });
  switch (routine.by) {
    case "nothing":
      return [
        {
          layers: run(0, longestRun),
          firstMonth: 0,
          from: untouched.runUpMonths,
          to: longestRun,
          cleanedAfter: () => false,
        },
      ];
    case "interval":
      return routine.months >= 12
        ? [cycle(0, routine.months)]
        : months
            .filter((month) => month % routine.months === 0)
            .map((firstMonth) => cycle(firstMonth, routine.months));
    case "month-of-year":
      return [cycle((routine.month + 1) % 12, 12)];
    case "trigger":
      return [triggeredStretch(part)];
  }
}

function triggeredStretch({ component, context, surface }: PartYear & { surface: GrowingSurface }): Stretch {
  const cleaned = new Set<number>();
  const isNear = nearLimit(component, context);
  const layers = growLayers(
    {
      surface,
      density: Array<number>(longestRun).fill(context.matureDensity),
      cleanAfter: (month, layer) => {
        if (!isNear(layer, month % 12)) return false;
        cleaned.add(month);
        return true;
      },
    },
    context.growth,
  );
  return {
    layers,
    firstMonth: 0,
    from: untouched.runUpMonths,
    to: longestRun,
    cleanedAfter: (month) => cleaned.has(month),
  };
}

/** True for a layer that has reached the set share of one that breaks a limit. */
export function nearLimit(component: Component, context: LakeContext) {
  const share = context.assumed("plan.trigger.limit-share");
  return (layer: Layer, monthOfYear: number): boolean => {
    if (layer.mass === 0) return false;
    const grown = {
      ...layer,
      cover: layer.cover / share,
      mass: layer.mass / share,
      thickness: layer.thickness / share,
    };
    return component.brokenLimit(grown, monthOfYear) !== undefined;
  };
}

function firstBrokenLimit(parts: readonly Stretch[], component: Component): string | undefined {
  for (const { layers, firstMonth, from, to } of parts) {
    for (let month = from; month < to; month++) {
      const layer = layers[month] ?? noElement(layers, month);
      const broken = layer.mass > 0 ? component.brokenLimit(layer, (firstMonth + month) % 12) : undefined;
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
  costOfMonth: (layer: Layer, monthOfYear: number) => number,
): number {
  let cost = 0;
  for (let month = from; month < to; month++) {
    const layer = layers[month] ?? noElement(layers, month);
    if (layer.mass > 0 || layer.killed > 0) cost += costOfMonth(layer, (firstMonth + month) % 12);
    if (cleanedAfter(month)) cost += costOf(removalLines(plan, layer, component, context));
  }
  return cost;
}

/** Yearly cost of the work at a routine's dates, apart from what is carted away. */
function routineCost({ routine, entry }: Plan, component: Component, context: LakeContext): number {
  const workIn = (month: number) => costOf(workLines(entry, component, context, month));
  switch (routine.by) {
    case "nothing":
    case "trigger":
      return 0;
    case "month-of-year":
      return workIn(routine.month);
    case "interval":
      return routine.months >= 12
        ? (workIn(11) * 12) / routine.months
        : months
            .filter((month) => (month + 1) % routine.months === 0)
            .reduce((sum, month) => sum + workIn(month), 0);
  }
}

function triggeredWork(
  parts: readonly Stretch[],
  { entry }: Plan,
  component: Component,
  context: LakeContext,
): number {
  let cost = 0;
  for (const { firstMonth, from, to, cleanedAfter } of parts) {
    for (let month = from; month < to; month++) {
      if (cleanedAfter(month))
        cost += costOf(workLines(entry, component, context, (firstMonth + month) % 12));
    }
  }
  return cost;
}

export function thickest(layers: readonly Layer[]): Layer {
  return layers.reduce((best, layer) => (layer.thickness > best.thickness ? layer : best), bareSurface);
}

import { noElement } from "../../lists.js";
import { months } from "../lake/calendar.js";
import { type GrowingSurface, growLayers, grownOnce } from "../mussels/growth.js";
import { bareSurface, type Layer } from "../mussels/layer.js";
import type { Component, Plan, Routine } from "./component.js";
import type { LakeContext } from "./context.js";

/** A part in one possible operating year of the lake. */
export interface PartYear {
  readonly component: Component;
  readonly context: LakeContext;
}

/**
 * A surface that nobody touches swings for years between crowding and new settlement before it settles: it is
 * costed, and held to its limits, over seven years after a run-up of three.
 */
const untouched = { runUpMonths: 36, cycleMonths: 84 };
const longestRun = untouched.runUpMonths + untouched.cycleMonths;

type TriggeredRoutine = Extract<Routine, { by: "trigger" }>;

/** Months that follow one another on a surface in a mature infestation. */
export interface Stretch {
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

/** The thickest layer of a surface that nobody touches, after the run-up. */
export const untouchedLayer = (runs: BareRuns): Layer =>
  thickest(runs(1, 0, longestRun), untouched.runUpMonths, longestRun);

/** The months of a surface that nobody touches in a mature infestation, with those that count. */
export function untouchedMonths(
  surface: GrowingSurface,
  context: LakeContext,
): Pick<Stretch, "layers" | "from" | "to"> {
  const layers = bareRuns(surface, context)(1, 0, longestRun);
  return { layers, from: untouched.runUpMonths, to: longestRun };
}

const neverCleaned: ReadonlySet<number> = new Set();

export type BareRuns = (settlementFactor: number, firstMonth: number, length: number) => readonly Layer[];

/**
 * Layers grown from a bare surface in a mature infestation, from each month of the year: at least as many months as
 * asked for; made when first needed.
 */
export function bareRuns(surface: GrowingSurface, context: LakeContext): BareRuns {
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

export function stretches(
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
      return [triggeredStretch(routine, part)];
  }
}

function triggeredStretch(
  routine: TriggeredRoutine,
  { component, context, surface }: PartYear & { surface: GrowingSurface },
): Stretch {
  const cleaned = new Set<number>();
  const isNear = nearLimit(routine, component, context);
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

/** True for a layer that has reached the set share of one that passes a limit. */
export function nearLimit({ limitShare }: TriggeredRoutine, component: Component, context: LakeContext) {
  const share = context.assumed(limitShare);
  return (layer: Layer, monthOfYear: number): boolean => {
    if (layer.mass === 0) return false;
    const grown = {
      ...layer,
      cover: layer.cover / share,
      mass: layer.mass / share,
      thickness: layer.thickness / share,
      shed: layer.shed / share,
    };
    return component.limit(grown, monthOfYear).load > 1;
  };
}

/** The thickest layer of those from a place up to, but without, another. */
export function thickest(layers: readonly Layer[], from = 0, to = layers.length): Layer {
  let best = bareSurface;
  for (let index = from; index < to; index++) {
    const layer = layers[index] ?? noElement(layers, index);
    if (layer.thickness > best.thickness) best = layer;
  }
  return best;
}

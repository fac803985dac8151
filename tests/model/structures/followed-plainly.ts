import type { Layer } from "../../../src/model/mussels/layer.js";
import type { AssumptionId } from "../../../src/model/register/register.js";
import type { Component, Plan, Priced } from "../../../src/model/structures/component.js";
import type { LakeContext } from "../../../src/model/structures/context.js";
import { forcedCleaning } from "../../../src/model/structures/limits.js";
import { removalLines, shellLines, workLines } from "../../../src/model/structures/plan-work.js";
import { nearLimit } from "../../../src/model/structures/plans/course.js";
import { growLayers } from "../mussels/growing.js";
import { nearestLimit } from "./limits-met.js";
import { lossesOf, toldLines } from "./losses.js";

/**
 * The plain route: every month since establishment one after another, nothing remembered and no year taken for
 * another. Work begins at the first date that finds a layer worth a visit; a protection is there once mussels are
 * regularly found or work has begun, and holds off settlers from when they are found.
 */
export function followPlainly(plan: Plan, component: Component, context: LakeContext) {
  const { routine, protection } = plan;
  const isFound = context.density.map((share) => share >= assumedIn(context, "protection.start-density"));
  const isNear = routine.by === "trigger" ? nearLimit(routine, component, context) : () => false;
  const years = context.density.length / 12;
  const isDate = (month: number) => {
    if (routine.by === "interval") return (month + 1) % routine.months === 0;
    return routine.by === "month-of-year" && month % 12 === routine.month;
  };
  const visits: number[] = [];
  const cleanAfter = (month: number, layer: Layer) => {
    const begun = visits.length > 0 || layer.thickness >= assumedIn(context, "cleaning.smallest-layer");
    const isVisited = (isFound[month] === true && isNear(layer, month % 12)) || (isDate(month) && begun);
    if (isVisited) visits.push(month);
    return isVisited;
  };
  const density = context.density.map((share, month) =>
    isFound[month] && protection ? protection.settlementFactor * share : share,
  );
  const surface = context.growing(component.surface);
  const layers = growLayers({ surface, density, cleanAfter }, context.growth);
  const tellForced = forcedCleaning(component, context);
  const forcedIn = (layer: Layer, month: number) =>
    toldLines((tell) => tellForced(tell, nearestLimit(component, layer, month), month));
  const costs = layers.map((layer, month) => {
    const monthOfYear = month % 12;
    const isProtected = protection && (isFound[month] || visits.some((visit) => visit <= month));
    const lines = [
      ...lossesOf(component, layer, monthOfYear),
      ...(layer.mass > 0 ? forcedIn(layer, monthOfYear) : []),
      ...shellLines(layer, component, context),
      ...(isProtected ? (protection.monthly[monthOfYear] ?? []) : []),
    ];
    if (visits.includes(month)) {
      lines.push(...workLines(plan.entry, component, context, monthOfYear));
      lines.push(...removalLines(plan, layer, component, context));
    }
    return costOf(lines);
  });
  const ofYear = <Value>(values: readonly Value[], year: number) => values.slice(12 * year, 12 * year + 12);
  return {
    visits: visits.length,
    costs: Array.from({ length: years }, (_, year) =>
      ofYear(costs, year).reduce((sum, cost) => sum + cost, 0),
    ),
    thickest: Array.from({ length: years }, (_, year) =>
      Math.max(...ofYear(layers, year).map(({ thickness }) => thickness)),
    ),
  };
}

export const costOf = (lines: readonly Priced[]) =>
  lines.reduce((sum, { quantity, unitRate }) => sum + quantity * unitRate, 0);

const assumedIn = ({ assumed }: LakeContext, id: AssumptionId) => assumed(id);

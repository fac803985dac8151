import { at, noElement } from "../../lists.js";
import type { Layer } from "../mussels/layer.js";
import type { AssumptionId } from "../register/register.js";
import type { Plan, Priced } from "./component.js";
import { removalLines, workLines } from "./plan-work.js";
import { append, costsAnything, type PlanTools, upstreamShare } from "./plans/tools.js";
import { type Course, thickest, yearLike } from "./plans/untouched.js";
import { isInPlace } from "./protection.js";

/** What following a plan from establishment on leads to, year by year. */
export interface Followed {
  readonly years: readonly (readonly Priced[])[];
  readonly thickestByYear: readonly Layer[];
}

/**
 * The lines of a plan in each year since establishment. A protection is in place while mussels are regularly found, and
 * from its first use on. Years that are alike have the same list.
 */
export function followPlan(plan: Plan, tools: PlanTools, course: Course): Followed {
  const { layers, cleanedMonths } = course;
  const { component, context, inMonth } = tools;
  const years = Array.from({ length: context.density.length / 12 }, (_, year) => yearLike(course, year));
  const isThere = isInPlace(context, Math.min(...cleanedMonths));
  const known = Array.from({ length: layers.length / 12 }, (_, year) => {
    const lines: Priced[] = [];
    for (let month = year * 12; month < year * 12 + 12; month++) {
      const layer = layers[month] ?? noElement(layers, month);
      if (costsAnything(component, layer)) {
        append(lines, inMonth(layer, month % 12, upstreamShare(plan, month, context)).lines());
      }
      if (plan.protection && isThere(month)) append(lines, at(plan.protection.monthly, month % 12));
      if (!cleanedMonths.has(month)) continue;
      append(lines, workLines(plan.entry, component, context, month % 12));
      append(lines, removalLines(plan, layer, component, context));
    }
    return mergeLines(lines);
  });
  const thickestOf = known.map((_, year) => thickest(layers, year * 12, year * 12 + 12));
  return {
    years: years.map((year) => at(known, year)),
    thickestByYear: years.map((year) => at(thickestOf, year)),
  };
}

/**
 * Adds up lines of the same name, with the assumptions of all of them; the merged unit rate is the mean weighted by
 * quantity.
 */
export function mergeLines(lines: readonly Priced[]): Priced[] {
  const sums = new Map<
    string,
    { line: Priced; ids: readonly AssumptionId[]; quantity: number; cost: number }
  >();
  for (const line of lines) {
    if (line.quantity === 0) continue;
    const cost = line.quantity * line.unitRate;
    const known = sums.get(line.what);
    if (known) {
      known.quantity += line.quantity;
      known.cost += cost;
      known.ids = withIds(known.ids, line.assumptionIds);
    } else {
      sums.set(line.what, { line, ids: line.assumptionIds, quantity: line.quantity, cost });
    }
  }
  return [...sums.values()].map(({ line: { what, type, quantityKind }, ids, quantity, cost }) => ({
    what,
    type,
    quantity,
    quantityKind,
    unitRate: cost / quantity,
    assumptionIds: ids,
  }));
}

/** The same list where it holds all of the others already. */
function withIds(ids: readonly AssumptionId[], others: readonly AssumptionId[]): readonly AssumptionId[] {
  if (ids === others || others.every((id) => ids.includes(id))) return ids;
  return [...new Set([...ids, ...others])];
}

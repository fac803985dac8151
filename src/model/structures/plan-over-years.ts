import { at } from "../../lists.js";
import type { AssumptionId } from "../register/register.js";
import type { Charge, Plan, Priced, Tell } from "./component.js";
import { removalLines, workLines } from "./plan-work.js";
import { tellAll } from "./plans/ledger.js";
import { costsAnything, type PlanTools, upstreamShare } from "./plans/tools.js";
import { type Course, layerIn, yearLike } from "./plans/untouched.js";
import { isInPlace } from "./protection.js";

/**
 * The lines of a plan in each year since establishment. A protection is in place while mussels are regularly found, and
 * from its first use on. Years that are alike have the same list.
 */
export function followPlan(plan: Plan, tools: PlanTools, course: Course): readonly (readonly Priced[])[] {
  const { months, cleanedMonths } = course;
  const { component, context, tellMonth } = tools;
  const isThere = isInPlace(context, Math.min(...cleanedMonths));
  const known = Array.from({ length: months / 12 }, (_, year) => {
    const lines = new MergedLines();
    const { tell } = lines;
    for (let month = year * 12; month < year * 12 + 12; month++) {
      const layer = layerIn(course, month);
      if (costsAnything(component, layer)) {
        tellMonth(tell, layer, month % 12, upstreamShare(plan, month, tools));
      }
      if (plan.protection && isThere(month)) tellAll(tell, at(plan.protection.monthly, month % 12));
      if (!cleanedMonths.has(month)) continue;
      tellAll(tell, workLines(plan.entry, component, context, month % 12));
      tellAll(tell, removalLines(plan, layer, component, context));
    }
    return lines.all();
  });
  return Array.from({ length: context.density.length / 12 }, (_, year) => at(known, yearLike(course, year)));
}

interface MergedLine {
  readonly charge: Charge;
  ids: readonly AssumptionId[];
  quantity: number;
  cost: number;
}

/**
 * Adds up what it is told under the same name, with the assumptions of all of it; the merged unit rate is the mean
 * weighted by quantity.
 */
class MergedLines {
  readonly #sums = new Map<string, MergedLine>();

  readonly tell: Tell = (charge, quantity) => {
    if (quantity === 0) return;
    const cost = quantity * charge.unitRate;
    const known = this.#sums.get(charge.what);
    if (known) {
      known.quantity += quantity;
      known.cost += cost;
      known.ids = withIds(known.ids, charge.assumptionIds);
    } else {
      this.#sums.set(charge.what, { charge, ids: charge.assumptionIds, quantity, cost });
    }
  };

  all(): Priced[] {
    const lines: Priced[] = [];
    for (const { charge, ids, quantity, cost } of this.#sums.values()) {
      const { what, type, quantityKind } = charge;
      lines.push({ what, type, quantity, quantityKind, unitRate: cost / quantity, assumptionIds: ids });
    }
    return lines;
  }
}

export function mergeLines(lines: readonly Priced[]): Priced[] {
  const merged = new MergedLines();
  tellAll(merged.tell, lines);
  return merged.all();
}

/** The same list where it holds all of the others already. */
function withIds(ids: readonly AssumptionId[], others: readonly AssumptionId[]): readonly AssumptionId[] {
  if (ids === others || others.every((id) => ids.includes(id))) return ids;
  return [...new Set([...ids, ...others])];
}

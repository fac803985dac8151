import { at } from "../../lists.js";
import { remembered } from "../computed-once.js";
import type { AssumptionId } from "../register/register.js";
import type { Charge, Plan, Priced, Tell } from "./component.js";
import { removalLines, workLines } from "./plan-work.js";
import { type Course, firstCleaned, isCleaned, layerIn, yearLike } from "./plans/course-months.js";
import { tellAll } from "./plans/ledger.js";
import type { PlanTools } from "./plans/tools.js";
import { isInPlace } from "./protection.js";

/**
 * The lines of a plan in each year since establishment. A protection is in place while mussels are regularly found, and
 * from its first use on. Years that are alike have the same list.
 */
export function followPlan(plan: Plan, tools: PlanTools, course: Course): readonly (readonly Priced[])[] {
  const { component, context, tellMonth } = tools;
  const isThere = isInPlace(context, firstCleaned(course));
  const work = remembered((month: number) => workLines(plan.entry, component, context, month));
  const lines = new MergedLines();
  const known: Priced[][] = [];
  for (let month = 0; month < course.months; month++) {
    tellMonth(lines.tell, plan, course, month);
    if (plan.protection && isThere(month)) tellAll(lines.tell, at(plan.protection.monthly, month % 12));
    if (isCleaned(course, month)) {
      tellAll(lines.tell, work(month % 12));
      tellAll(lines.tell, removalLines(plan, layerIn(course, month), component, context));
    }
    if (month % 12 === 11) known.push(lines.take());
  }
  const years: (readonly Priced[])[] = [];
  for (let year = 0; year < context.density.length / 12; year++)
    years.push(at(known, yearLike(course, year)));
  return years;
}

interface MergedLine {
  readonly charge: Charge;
  ids: readonly AssumptionId[];
  /** The assumptions that were added last: a charge that is told month by month brings the same ones. */
  added: readonly AssumptionId[];
  quantity: number;
  cost: number;
}

/**
 * Adds up what it is told under the same name, with the assumptions of all of it; the merged unit rate is the mean
 * weighted by quantity.
 */
class MergedLines {
  #sums: MergedLine[] = [];

  readonly tell: Tell = (charge, quantity) => {
    if (quantity === 0) return;
    const cost = quantity * charge.unitRate;
    const ids = charge.assumptionIds;
    const known = this.#known(charge);
    if (!known) {
      this.#sums.push({ charge, ids, added: ids, quantity, cost });
      return;
    }
    known.quantity += quantity;
    known.cost += cost;
    if (known.added === ids) return;
    known.ids = withIds(known.ids, ids);
    known.added = ids;
  };

  #known(charge: Charge): MergedLine | undefined {
    for (const line of this.#sums) if (line.charge === charge) return line;
    const { what } = charge;
    for (const line of this.#sums) if (line.charge.what === what) return line;
    return undefined;
  }

  /** What it was told since it was last asked. */
  take(): Priced[] {
    const lines: Priced[] = [];
    for (const { charge, ids, quantity, cost } of this.#sums) {
      const { what, type, quantityKind } = charge;
      lines.push({ what, type, quantity, quantityKind, unitRate: cost / quantity, assumptionIds: ids });
    }
    this.#sums = [];
    return lines;
  }
}

export function mergeLines(lines: readonly Priced[]): Priced[] {
  const merged = new MergedLines();
  tellAll(merged.tell, lines);
  return merged.take();
}

/** The same list where it holds all of the others already. */
function withIds(ids: readonly AssumptionId[], others: readonly AssumptionId[]): readonly AssumptionId[] {
  if (others.every((id) => ids.includes(id))) return ids;
  return [...new Set([...ids, ...others])];
}

import { at } from "../../lists.js";
import { remembered } from "../computed-once.js";
import type { Plan, YearTable } from "./component.js";
import { removalLines, workLines } from "./plan-work.js";
import { type Course, firstCleaned, isCleaned, layerIn, yearLike } from "./plans/course-months.js";
import { tellAll } from "./plans/ledger.js";
import type { PlanTools } from "./plans/tools.js";
import { firstAlike, linesByYear, MergedLists } from "./plans/year-table.js";
import { isInPlace } from "./protection.js";

/**
 * The lines of a plan in each year since establishment. A protection is in place while mussels are regularly found, and
 * from its first use on. Years that are alike have the same list.
 */
export function followPlan(plan: Plan, tools: PlanTools, course: Course): YearTable {
  const { component, context, tellMonth } = tools;
  const isThere = isInPlace(context, firstCleaned(course));
  const work = remembered((month: number) => workLines(plan.entry, component, context, month));
  const lines = new MergedLists();
  for (let month = 0; month < course.months; month++) {
    tellMonth(lines.tell, plan, course, month);
    if (plan.protection && isThere(month)) tellAll(lines.tell, at(plan.protection.monthly, month % 12));
    if (isCleaned(course, month)) {
      tellAll(lines.tell, work(month % 12));
      tellAll(lines.tell, removalLines(plan, layerIn(course, month), component, context));
    }
    if (month % 12 === 11) lines.endList();
  }
  const years: number[] = [];
  for (let year = 0; year < context.density.length / 12; year++) years.push(yearLike(course, year));
  return lines.table(years);
}

/**
 * Lines of each year since establishment, the mean over the possible operating years; those that are alike in each of them
 * have the same list.
 */
export function meanOfYears(followed: readonly YearTable[]): YearTable {
  const [first, ...others] = followed;
  if (first && others.length === 0) return first;
  const share = 1 / followed.length;
  const all = followed.map(linesByYear);
  const merged = new MergedLists();
  const listOf = remembered((year: number) => {
    for (const lines of all) for (const line of at(lines, year)) merged.tell(line, line.quantity * share);
    return merged.endList();
  });
  return merged.table(firstAlike(followed, at(followed, 0).lists.length).map(listOf));
}

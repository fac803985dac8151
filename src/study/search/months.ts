import { at, sumOf } from "../../lists.js";
import { daysOf } from "../../model/lake/calendar.js";
import type { Choice, Level } from "../../model/search/choices.js";
import { monthNames } from "../format/month-names.js";
import type { StudyDocument } from "../format/schema.js";

/** A month in which a program without open hours runs or does not. */
export interface MonthCell extends Choice {
  readonly month: number;
  readonly levels: readonly [Level, Level];
  /** Whether the option is taken to run in it. */
  readonly own: 0 | 1;
}

/** An option that states its coverage is taken to run in the months with most launches that hold this share of them. */
const seasonShare = 0.95;

/**
 * Months for a program that states what it meets and no hours: in proportion to the launches of a month, for days in
 * proportion to hours.
 */
export function monthCells({ boats }: StudyDocument, isFree: boolean): MonthCell[] {
  const launches = monthNames.map((name) => boats.launches[name].value);
  const season = seasonOf(launches);
  const coming = launches.flatMap((count, month) => (count > 0 ? [month] : []));
  return coming.flatMap((month) => {
    const own = season.has(month) ? 1 : 0;
    if (!isFree && own === 0) return [];
    const open = { hours: daysOf(month), met: at(launches, month) };
    const levels = isFree ? ([{ hours: 0, met: 0 }, open] as const) : ([open, open] as const);
    return [{ month, levels, own }];
  });
}

function seasonOf(launches: readonly number[]): Set<number> {
  const byCount = launches
    .map((count, month) => ({ count, month }))
    .sort((one, other) => other.count - one.count);
  const all = sumOf(launches);
  const season = new Set<number>();
  let held = 0;
  for (const { count, month } of byCount) {
    if (held >= seasonShare * all) break;
    season.add(month);
    held += count;
  }
  return season;
}

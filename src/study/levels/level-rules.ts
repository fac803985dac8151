import { at, meanOf } from "../../lists.js";
import { daysInYear, monthStart, months } from "../../model/lake/calendar.js";
import type { Lake } from "../../model/lake/lake.js";
import { fastestFall, levelYears } from "../../model/search/drawdown.js";
import type { StudyDocument } from "../format/schema.js";
import { dayNumber } from "../prepare/to-model.js";

/** Drawdowns that are tried, and what binds them, with what follows where the study says nothing. */
export interface LevelRules {
  readonly lowest: readonly number[];
  readonly from: readonly number[];
  readonly days: readonly number[];
  readonly minimumPool: number;
  readonly fall: number;
  /** Whether the study states it; else it is that of the present levels. */
  readonly fallIsStated: boolean;
  readonly rise: number | undefined;
  readonly refilled: number;
  readonly notBelow: ReadonlyArray<{
    readonly from: number;
    readonly until: number;
    readonly elevation: number;
    readonly reason: string;
  }>;
}

/** Lowest levels that are tried where the study lists none, evenly from the present one to the minimum pool. */
const usualDepths = 5;
const usualDays = [30, 60, 90] as const;
/** The lowest level is reached by the first day of these months, counted from the coldest. */
const usualMonths = [-2, -1, 0] as const;

export function levelRules(
  { lake: document, search }: StudyDocument,
  lake: Pick<Lake, "drawdown" | "record" | "airTemperature">,
): LevelRules {
  const stated = search?.levels;
  const years = levelYears(lake);
  const mean = meanDaily(years);
  const minimumPool = stated?.minimumPool?.value ?? document.minimumElevation.value;
  return {
    lowest: stated?.lowest?.map(({ value }) => value) ?? depths(Math.min(...mean), minimumPool),
    from: stated?.from?.map(dayNumber) ?? coldMonths(lake.airTemperature),
    days: stated?.days ?? usualDays,
    minimumPool,
    fall: stated?.fastestFall?.value ?? Math.max(...years.map(fastestFall)),
    fallIsStated: stated?.fastestFall !== undefined,
    rise: stated?.fastestRise?.value,
    refilled: stated?.refilledBy ? dayNumber(stated.refilledBy) : mean.indexOf(Math.max(...mean)),
    notBelow: (stated?.notBelow ?? []).map(({ from, until, elevation, reason }) => ({
      ...{ from: dayNumber(from), until: dayNumber(until) },
      ...{ elevation: elevation.value, reason },
    })),
  };
}

export const meanDaily = (years: ReadonlyArray<readonly number[]>): number[] =>
  Array.from({ length: daysInYear }, (_, day) => meanOf(years.map((daily) => at(daily, day))));

function depths(present: number, pool: number): number[] {
  if (pool >= present) return [present];
  return Array.from(
    { length: usualDepths },
    (_, index) => present - ((present - pool) * index) / (usualDepths - 1),
  );
}

function coldMonths(airTemperature: readonly number[]): number[] {
  const coldest = airTemperature.indexOf(Math.min(...airTemperature));
  return usualMonths.map((step) => monthStart((coldest + step + months.length) % months.length));
}

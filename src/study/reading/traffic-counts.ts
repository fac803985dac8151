import { at, sumOf } from "../../lists.js";
import type { TrafficDayType } from "../../model/inputs.js";
import { daysOf, hoursPerDay, months } from "../../model/lake/calendar.js";
import { monthNames } from "../format/month-names.js";
import type { MonthGroupDocument } from "../format/traffic-schema.js";
import type { RecordProblem } from "./contradiction.js";
import { type CsvLine, firstProblems } from "./csv-lines.js";
import { csvTable } from "./csv-table.js";
import { type HourCount, headerExample, headerProblems, holdsLaunches, hourCount } from "./traffic-rows.js";

/** A day type derived from counts: launches by hour at each site, or at all sites together. */
export type CountedDayType = Omit<TrafficDayType, "launchesBySite"> &
  ({ readonly bySite: readonly number[][] } | { readonly allSites: readonly number[] });

export interface TrafficCounts {
  readonly dayTypes: readonly CountedDayType[];
  /** Number of dates counted of each day type, in order. */
  readonly daysCounted: readonly number[];
  /** Months without a day counted, which are taken to be like their group. */
  readonly monthsWithout: ReadonlyArray<(typeof monthNames)[number]>;
}

/** Day types derived from counts, or their problems. */
export type CountsReading =
  | { readonly counts: TrafficCounts }
  | { readonly counts?: undefined; readonly problems: readonly RecordProblem[] };

export interface CountsSettings {
  readonly monthGroups: readonly MonthGroupDocument[];
  /** Site ids that counts may use. */
  readonly siteIds: readonly string[];
}

const mostLines = 60_000;
const daysOfWeek = 7;
const weekendDays = 2;

/**
 * Reads counts, one line per hour, and derives a weekend and a weekday for each group of months: hourly means over the
 * dates counted. An hour without a line on such a date has no launches. Two days in seven of a month are weekend days;
 * public holidays are unknown and count by their day of the week.
 */
export function readTrafficCounts(csv: string, settings: CountsSettings): CountsReading {
  const table = csvTable(csv, mostLines + 2, holdsLaunches);
  if ("found" in table) return { problems: [table] };
  const { head: header, body } = table;
  if (!header || body.length === 0 || body.length > mostLines) return { problems: [sizeProblem(body)] };
  const wrongHeader = headerProblems(header);
  if (wrongHeader.length > 0) return { problems: firstProblems(wrongHeader) };
  const read = body.map((line) => hourCount(line, header.cells, settings.siteIds));
  const rows = read.flatMap(({ row }) => (row ? [row] : []));
  const problems = [
    ...read.flatMap((each) => each.problems),
    ...repeated(rows),
    ...monthProblems(rows, settings.monthGroups),
  ].sort((one, other) => (one.line ?? 0) - (other.line ?? 0));
  if (problems.length > 0) return { problems: firstProblems(problems) };
  return countsOf(rows, settings);
}

function sizeProblem(body: readonly CsvLine[]): RecordProblem {
  if (body.length > 0) {
    const allowed = `at most ${mostLines} lines`;
    return { found: `more than ${mostLines} lines`, allowed, remedy: "Leave out the earliest years." };
  }
  const allowed = `CSV text that begins with ${headerExample}, and a line for each hour counted`;
  return { found: "no count", allowed, remedy: "Add the counts." };
}

function repeated(rows: readonly HourCount[]): RecordProblem[] {
  const first = new Map<string, number>();
  return rows.flatMap(({ line, date, hour, site }) => {
    const key = `${date} ${hour} ${site}`;
    const before = first.get(key);
    if (before === undefined) {
      first.set(key, line);
      return [];
    }
    const where = site === undefined ? "" : ` at "${site}"`;
    const found = `${date}, hour ${hour}${where} a second time, first in line ${before}`;
    return [{ line, found, allowed: "each hour of a date once", remedy: "Take one of the two lines out." }];
  });
}

/** The first line of each month outside all groups. */
function monthProblems(rows: readonly HourCount[], groups: readonly MonthGroupDocument[]): RecordProblem[] {
  const known = new Set(groups.flatMap((group) => group.months));
  return months.flatMap((month) => {
    const name = at(monthNames, month);
    const row = known.has(name) ? undefined : rows.find((each) => each.month === month);
    if (!row) return [];
    const allowed = `counts of the months in boats.traffic.monthGroups: ${[...known].join(", ")}`;
    return [{ line: row.line, found: row.date, allowed, remedy: `Put ${name} into a group of months.` }];
  });
}

interface Kind {
  readonly group: MonthGroupDocument;
  readonly isWeekend: boolean;
}

function countsOf(rows: readonly HourCount[], { monthGroups, siteIds }: CountsSettings): CountsReading {
  const kinds = monthGroups.flatMap((group) => [true, false].map((isWeekend) => ({ group, isWeekend })));
  const rowsOf = ({ group, isWeekend }: Kind) =>
    rows.filter((row) => row.isWeekend === isWeekend && group.months.includes(at(monthNames, row.month)));
  const read = kinds.map((kind) => ({ kind, rows: rowsOf(kind) }));
  const problems = read.flatMap(({ kind, rows: own }) => uncounted(kind, own, siteIds));
  if (problems.length > 0) return { problems };
  const counted = new Set(rows.map(({ month }) => month));
  return {
    counts: {
      dayTypes: read.map(({ kind, rows: own }) => dayTypeOf(kind, own, siteIds)),
      daysCounted: read.map(({ rows: own }) => new Set(own.map(({ date }) => date)).size),
      monthsWithout: monthGroups
        .flatMap((group) => group.months)
        .filter((name) => !counted.has(monthNames.indexOf(name))),
    },
  };
}

const kindName = ({ group, isWeekend }: Kind) => `${group.name}, ${isWeekend ? "weekend" : "weekday"}`;

/** Problems of kinds of days without a date counted, at any one site if counts name sites. */
function uncounted(kind: Kind, rows: readonly HourCount[], siteIds: readonly string[]): RecordProblem[] {
  const remedy = "Add counts of such days, or join the months with others in one group.";
  const missing = siteIds.filter((id) => rows.every(({ site }) => site !== undefined && site !== id));
  if (rows.length === 0) {
    return [{ found: `no count for “${kindName(kind)}”`, allowed: "at least one date counted", remedy }];
  }
  return missing.map((id) => ({
    found: `no count for “${kindName(kind)}” at "${id}"`,
    allowed: "at least one date counted at each site",
    remedy,
  }));
}

function dayTypeOf(kind: Kind, rows: readonly HourCount[], siteIds: readonly string[]): CountedDayType {
  const { group, isWeekend } = kind;
  const share = (isWeekend ? weekendDays : daysOfWeek - weekendDays) / daysOfWeek;
  const daysByMonth = months.map((month) =>
    group.months.includes(at(monthNames, month)) ? daysOf(month) * share : 0,
  );
  const days = {
    id: `${group.id}-${isWeekend ? "weekend" : "weekday"}`,
    name: kindName(kind),
    daysPerYear: sumOf(daysByMonth),
    daysByMonth,
  };
  return rows.some(({ site }) => site !== undefined)
    ? { ...days, bySite: siteIds.map((id) => meanByHour(rows.filter(({ site }) => site === id))) }
    : { ...days, allSites: meanByHour(rows) };
}

function meanByHour(rows: readonly HourCount[]): number[] {
  const dates = new Set(rows.map(({ date }) => date)).size;
  const sums = Array<number>(hoursPerDay).fill(0);
  for (const { hour, launches } of rows) sums[hour] = at(sums, hour) + launches;
  return sums.map((sum) => sum / dates);
}

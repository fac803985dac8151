import { counted } from "../../../counted.js";
import { daysInYear } from "../../../model/lake/calendar.js";
import type { RecordProblem } from "../contradiction.js";
import { dateText, longestFill, yearOf } from "../level-dates.js";
import { type LevelRow, mostYears } from "./level-rows.js";

/** Days without a level between two lines of a record. */
export interface Gap {
  readonly before: LevelRow;
  readonly after: LevelRow;
  readonly firstDay: number;
  readonly lastDay: number;
}

export const daysOfGap = ({ firstDay, lastDay }: Gap): number => lastDay - firstDay + 1;

/** Dates that are repeated or out of order. */
export function orderProblems(rows: readonly LevelRow[]): RecordProblem[] {
  const lines = new Map<string, number>();
  let latest: LevelRow | undefined;
  return rows.flatMap((row) => {
    const { line, date } = row;
    const sameDate = lines.get(date.text);
    if (sameDate !== undefined) {
      const found = `"${date.text}" a second time, first in line ${sameDate}`;
      return [{ line, found, allowed: "each date once", remedy: "Remove one of the two lines." }];
    }
    lines.set(date.text, line);
    if (latest && date.text < latest.date.text) {
      const found = `"${date.text}" after "${latest.date.text}" in line ${latest.line}`;
      return [
        { line, found, allowed: "dates in order, the oldest first", remedy: "Sort the lines by date." },
      ];
    }
    latest = row;
    return [];
  });
}

/** Rows by date, each date once, without 29 February. */
export function inOrder(rows: readonly LevelRow[]): LevelRow[] {
  return rows
    .filter(({ date }) => !date.isLeapDay)
    .sort((one, other) => one.date.firstDay - other.date.firstDay)
    .filter(({ date }, index, sorted) => date.firstDay !== sorted[index - 1]?.date.firstDay);
}

/** Gaps in ordered rows; none where a line with a malformed date may hold the days. */
export function gapsIn(sorted: readonly LevelRow[]): Gap[] {
  return sorted.flatMap((after, index) => {
    const before = sorted[index - 1];
    if (!before || after.followsUndated) return [];
    const gap = { before, after, firstDay: before.date.lastDay + 1, lastDay: after.date.firstDay - 1 };
    return daysOfGap(gap) > 0 ? [gap] : [];
  });
}

export function gapProblem(gap: Gap, fillGapsUpTo: number): RecordProblem {
  const { after, firstDay, lastDay } = gap;
  const days = daysOfGap(gap);
  const [from, to] = [firstDay, lastDay].map((day) => dateText(day, after.date.form));
  const dates = from === to ? `of ${from}` : `from ${from} to ${to}`;
  const length = counted(days, "day");
  return {
    line: after.line,
    found: `no level ${dates} (${length})${wholeYears(gap)}`,
    allowed:
      fillGapsUpTo === 0
        ? "a record without gaps"
        : `gaps of at most ${counted(fillGapsUpTo, "day")} (fillGapsUpTo)`,
    remedy:
      days <= longestFill
        ? `Add what is missing, or set fillGapsUpTo to ${days} to join the levels beside it linearly.`
        : "Add what is missing, or take out the lines before or after the gap.",
  };
}

function wholeYears({ firstDay, lastDay }: Gap): string {
  const first = yearOf(firstDay + daysInYear - 1);
  const last = yearOf(lastDay + 1) - 1;
  if (last < first) return "";
  return `; the record holds no day of ${first === last ? first : `${first} to ${last}`}`;
}

export function spanProblems(sorted: readonly LevelRow[]): RecordProblem[] {
  const [first, last] = [sorted[0], sorted.at(-1)];
  if (!first || !last) return [];
  const years = yearOf(last.date.lastDay) - yearOf(first.date.firstDay) + 1;
  if (years <= mostYears) return [];
  return [
    {
      found: `${years} years, from ${first.date.text} to ${last.date.text}`,
      allowed: `at most ${mostYears} years`,
      remedy: "Correct the date that is wrong, or leave out the earliest years.",
    },
  ];
}

import { counted } from "../../counted.js";
import type { LevelColumnsMapped } from "../format/export-schema.js";
import type { RecordProblem } from "../reading/contradiction.js";
import type { Asked } from "./level-export.js";

/** A level of a line, its number with a decimal point. */
export interface Reading {
  readonly line: number;
  readonly date: string;
  readonly hasTime: boolean;
  readonly level: string;
}

interface DayLevel {
  readonly date: string;
  readonly level: string;
}

interface Day {
  readonly first: Reading;
  sum: number;
  count: number;
}

/** Decimals of means and sums of levels: a tenth of a millimetre, or of a thousandth of a foot. */
const decimals = 4;
const rounded = (value: number) => String(Number(value.toFixed(decimals)));

/** The level of each day, by date: the mean of several readings where they have times or the author wants it. */
export function dailyLevels(
  readings: readonly Reading[],
  { several, gaugeZero = 0 }: Pick<LevelColumnsMapped, "several" | "gaugeZero">,
) {
  const days = new Map<string, Day>();
  const repeated: Reading[] = [];
  let same = 0;
  for (const reading of readings) {
    const day = days.get(reading.date);
    if (!day) days.set(reading.date, { first: reading, sum: Number(reading.level), count: 1 });
    else if (several === "mean" || (reading.hasTime && day.first.hasTime)) {
      day.sum += Number(reading.level);
      day.count += 1;
    } else if (Number(reading.level) === Number(day.first.level)) same += 1;
    else repeated.push(reading);
  }
  const refused = repeated.map((reading) => twice(reading, days.get(reading.date)?.first));
  const ordered = [...days.keys()].sort();
  return {
    levels: ordered.map((date): DayLevel => ({ date, level: levelOf(days.get(date), gaugeZero) })),
    told: told(readings, ordered, [...days.values()], same),
    asked: manyRepeated(refused, days.size),
    refused,
  };
}

function levelOf(day: Day | undefined, zero: number): string {
  if (!day) return "";
  if (day.count === 1 && zero === 0) return day.first.level;
  return rounded(day.sum / day.count + zero);
}

const twice = (reading: Reading, first: Reading | undefined): RecordProblem => ({
  line: reading.line,
  found: `${reading.date} a second time, with ${reading.level}; in line ${first?.line} with ${first?.level}`,
  allowed: "one level for each date",
  remedy: "Take out the line that is wrong, or keep the mean of several readings.",
});

/** A file in which many days have several readings is no file with slips. */
function manyRepeated(refused: readonly RecordProblem[], days: number): Asked | undefined {
  const [first] = refused;
  if (!first || refused.length * 2 <= days) return undefined;
  const found = `${first.found}; ${counted(refused.length, "line")} of this kind`;
  return {
    about: "several",
    problem: { ...first, found, remedy: "Say whether to keep the mean of several readings on one day." },
  };
}

function told(
  readings: readonly Reading[],
  ordered: readonly string[],
  days: readonly Day[],
  same: number,
): string[] {
  const averaged = days.filter(({ count }) => count > 1).length;
  const isOrdered = days.every(
    ({ first }, index) => index === 0 || first.date > (days[index - 1]?.first.date ?? ""),
  );
  if (readings.length === 0) return [];
  return [
    `${counted(readings.length, "level")} read, of ${counted(ordered.length, "date")} from ${ordered[0]} to ${ordered.at(-1)}.`,
    ...(averaged > 0 ? [`On ${counted(averaged, "date")} the mean of several readings is kept.`] : []),
    ...(same > 0
      ? [`Ignored: ${counted(same, "line that repeats", "lines that repeat")} a level of the same date.`]
      : []),
    ...(isOrdered ? [] : ["The lines were sorted by date."]),
  ];
}

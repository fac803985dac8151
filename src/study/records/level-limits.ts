import type { LevelYear } from "../../model/lake/lake.js";
import type { Quantity } from "../../units/quantity.js";
import type { RecordProblem } from "../reading/contradiction.js";
import type { LevelRow } from "../reading/levels/level-rows.js";

/** Days above full pool, as floods and surcharge bring them: kept, and told. */
export interface AbovePool {
  readonly days: number;
  /** The highest of them, m, and the year that it was in. */
  readonly highest: number;
  readonly label: string;
}

interface Limits {
  readonly minimumElevation: Quantity | undefined;
  readonly maximumElevation: Quantity | undefined;
}

/** Rounding error between two conversions of one elevation, m. */
const roundingError = 1e-9;

/**
 * Levels that the lake cannot have had: below its minimum, or farther above full pool than full pool is above the minimum.
 * A slip of the unit or of the keys is beyond that, a flood is not.
 */
export function rangeProblems(
  rows: readonly LevelRow[],
  { minimumElevation, maximumElevation }: Limits,
): RecordProblem[] {
  if (!minimumElevation || !maximumElevation) return [];
  const lowest = minimumElevation.value - roundingError;
  const highest = 2 * maximumElevation.value - minimumElevation.value + roundingError;
  return rows
    .filter(({ elevation }) => elevation !== undefined && (elevation < lowest || elevation > highest))
    .map(({ line, date, text, elevation = 0 }) => ({
      line,
      found: `${text} for ${date.text}`,
      allowed:
        elevation < lowest
          ? `an elevation from ${minimumElevation.text}, the minimum of the lake`
          : `an elevation no farther above full pool, ${maximumElevation.text}, than full pool is above ${minimumElevation.text}`,
      remedy: "Correct the level, the unit in the header or the limits.",
    }));
}

export function daysAbove(
  years: readonly LevelYear[],
  maximumElevation: Quantity | undefined,
): AbovePool | undefined {
  if (!maximumElevation) return undefined;
  const pool = maximumElevation.value + roundingError;
  const counts = years.map(({ label, daily }) => ({
    label,
    days: daily.filter((level) => level > pool).length,
    highest: Math.max(...daily),
  }));
  const days = counts.reduce((sum, each) => sum + each.days, 0);
  if (days === 0) return undefined;
  const { label, highest } = counts.reduce((best, each) => (each.highest > best.highest ? each : best));
  return { days, highest, label };
}

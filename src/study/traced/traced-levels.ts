import { meanOf } from "../../lists.js";
import type { Comparison } from "../../model/compare.js";
import { type DryRun, dryRuns, monthlyMeans } from "../../model/lake/levels.js";
import type { StudyDocument } from "../format/schema.js";
import type { LevelRecord } from "../reading/levels/level-record.js";

/** What is told of the lake's own levels beside the comparison. */
export interface TracedLevels {
  /** Absent where the study gives a schedule. */
  readonly record: (LevelRecord & { readonly origin: string }) | undefined;
  /** Mean of each month over the possible operating years, and in each of them. */
  readonly monthlyMeans: readonly number[];
  readonly monthlyByYear: ReadonlyArray<readonly number[]>;
  /** How long an elevation above the lowest level hangs dry; worked out when asked for. */
  readonly dryAt: (elevation: number) => DryElevation;
}

export interface DryElevation {
  /** Dry days of each possible operating year. */
  readonly days: readonly number[];
  readonly meanDays: number;
  readonly longest: { readonly label: string; readonly run: DryRun };
}

export function tracedLevels({ lake: { daily, years } }: Comparison, { lake }: StudyDocument): TracedLevels {
  return {
    record: lake.record && { ...lake.record.levels, origin: lake.record.origin },
    monthlyMeans: monthlyMeans(daily),
    monthlyByYear: years.map((year) => monthlyMeans(year.daily)),
    dryAt: (elevation) => dryAt(elevation, years),
  };
}

function dryAt(elevation: number, years: Comparison["lake"]["years"]): DryElevation {
  const days = years.map(({ daily }) => daily.filter((level) => level < elevation).length);
  const runs = years.flatMap(({ label, daily }) =>
    dryRuns(daily, elevation).map((run) => ({ label: label.trim(), run })),
  );
  const longest = runs.reduce((best, each) => (each.run.days > best.run.days ? each : best));
  return { days, meanDays: meanOf(days), longest };
}

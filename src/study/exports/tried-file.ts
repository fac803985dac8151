import { levelExportSchema } from "../format/export-schema.js";
import { gapSetting } from "../format/schedule-schema.js";
import type { RecordProblem } from "../reading/contradiction.js";
import { firstProblems } from "../reading/csv-lines.js";
import { type Problem, problemsOf } from "../reading/problems.js";
import { judgedRecord } from "./judged-record.js";
import type { LevelExport } from "./level-export.js";
import { type FileColumns, fileColumns, unmappedYet } from "./proposed-columns.js";
import { readLevelExport } from "./read-levels.js";
import { recordTold } from "./record-told.js";

/** An exported file of levels, tried in a study before it is kept. */
export interface TriedFile {
  readonly columns: FileColumns | undefined;
  /** The record; absent while something is asked or wrong. */
  readonly csv: string | undefined;
  readonly told: readonly string[];
  readonly asked: LevelExport["asked"];
  /** Lines that are not in the record, the first of them. */
  readonly refused: readonly RecordProblem[];
  /** How many they are. */
  readonly refusedCount: number;
  /** Why the study cannot use the record. */
  readonly problems: readonly RecordProblem[];
}

/** How a file is tried. */
export interface FileTrial {
  readonly file: string;
  /** As far as it is mapped. */
  readonly mapping: Readonly<Record<string, unknown>>;
  /** As it was typed, if it is no number. */
  readonly fillGapsUpTo: number | string;
  /** The study, as far as it has come. */
  readonly document: unknown;
  readonly system: "us" | "si";
}

export function triedFile({ file, mapping, fillGapsUpTo, document, system }: FileTrial): TriedFile {
  const columns = fileColumns(file);
  const parsed = levelExportSchema.safeParse(mapping);
  const gaps = gapSetting.safeParse({ fillGapsUpTo });
  const nothing = { csv: undefined, told: [], asked: [], refused: [], refusedCount: 0 };
  if (!parsed.success || !gaps.success) {
    const isFirst = mapping.date === undefined || mapping.level === undefined;
    const first = isFirst ? unmappedYet(columns) : { told: [], problems: [] };
    const problems = [
      ...(isFirst ? [] : problemsOf(parsed.error?.issues ?? [], mapping)),
      ...problemsOf(gaps.error?.issues ?? [], { fillGapsUpTo }),
    ];
    return { ...nothing, ...first, columns, problems: [...first.problems, ...problems.map(withoutPath)] };
  }
  const read = readLevelExport(file, parsed.data);
  const reading =
    read.csv === undefined ? undefined : judgedRecord(read.csv, document, gaps.data.fillGapsUpTo ?? 0);
  const problems = reading && "problems" in reading ? reading.problems : [];
  return {
    columns,
    csv: problems.length > 0 ? undefined : read.csv,
    told: [...read.told, ...(reading ? recordTold(reading, system) : [])],
    asked: read.asked,
    refused: firstProblems(read.refused),
    refusedCount: read.refused.length,
    problems,
  };
}

const withoutPath = ({ path, found, allowed, remedy }: Problem): RecordProblem => ({
  ...{ found: `${path} ${found}`, allowed, remedy },
});

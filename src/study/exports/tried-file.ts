import { levelExportSchema } from "../format/export-schema.js";
import { firstProblems } from "../reading/csv-lines.js";
import { problemsOf } from "../reading/problems.js";
import { judgedRecord } from "./judged-record.js";
import type { Asked } from "./level-export.js";
import { fileColumns, unmappedYet } from "./proposed-columns.js";
import { readLevelExport } from "./read-levels.js";
import { recordTold } from "./record-told.js";
import { type ExportTrial, ofFile, type TriedTold } from "./tried-export.js";

/** An exported file of levels, tried in a study before it is kept. */
export interface TriedFile extends TriedTold<Asked> {
  /** The record; absent while something is asked, or where the study cannot use it. */
  readonly csv: string | undefined;
}

/** How a file is tried. */
export interface FileTrial extends ExportTrial {
  readonly fillGapsUpTo: number;
  readonly system: "us" | "si";
}

export function triedFile({ file, mapping, fillGapsUpTo, document, system }: FileTrial): TriedFile {
  const columns = fileColumns(file);
  const parsed = levelExportSchema.safeParse(mapping);
  const nothing = { csv: undefined, told: [], asked: [], refused: [], refusedCount: 0 };
  if (!parsed.success) {
    const isFirst = mapping.date === undefined || mapping.level === undefined;
    if (isFirst) return { ...nothing, columns, ...unmappedYet(columns) };
    return { ...nothing, columns, problems: problemsOf(parsed.error.issues, mapping).map(ofFile) };
  }
  const read = readLevelExport(file, parsed.data);
  const reading = read.csv === undefined ? undefined : judgedRecord(read.csv, document, fillGapsUpTo);
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

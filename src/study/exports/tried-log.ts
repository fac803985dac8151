import type { BoatColumnsMapped } from "../format/export-schema.js";
import { boatLogSchema } from "../format/export-schema.js";
import type { RecordProblem } from "../reading/contradiction.js";
import { firstProblems } from "../reading/csv-lines.js";
import { problemsOf, valueAt } from "../reading/problems.js";
import type { BoatSums } from "./boat-sums.js";
import type { LogAsked } from "./log-words.js";
import { type FileColumns, fileColumns } from "./proposed-columns.js";
import { readBoatLog } from "./read-boat-log.js";

/** An exported log, tried in a study before its sums are kept. */
export interface TriedLog {
  readonly columns: FileColumns | undefined;
  /** How it was mapped; absent while a column that is needed is not. */
  readonly mapping: BoatColumnsMapped | undefined;
  /** Absent while something is asked, or where no line could be read. */
  readonly sums: BoatSums | undefined;
  readonly told: readonly string[];
  readonly asked: readonly LogAsked[];
  /** Lines that are in no sum, the first of them. */
  readonly refused: readonly RecordProblem[];
  readonly refusedCount: number;
  readonly problems: readonly RecordProblem[];
}

export interface LogTrial {
  readonly file: string;
  /** As far as it is mapped. */
  readonly mapping: Readonly<Record<string, unknown>>;
  /** The study, as far as it has come. */
  readonly document: unknown;
}

export function triedLog({ file, mapping, document }: LogTrial): TriedLog {
  const columns = namesOnly(fileColumns(file));
  const parsed = boatLogSchema.safeParse(mapping);
  const nothing = { sums: undefined, mapping: undefined, told: [], asked: [], refused: [], refusedCount: 0 };
  if (!parsed.success) {
    const isFirst = mapping.date === undefined;
    const problems = problemsOf(parsed.error.issues, mapping).map(({ path, found, allowed, remedy }) => ({
      ...{ found: `${path} ${found}`, allowed, remedy },
    }));
    return { ...nothing, columns, problems: isFirst ? [] : problems };
  }
  const { sums, told, asked, refused } = readBoatLog(file, parsed.data, classIdsOf(document));
  return {
    ...{ columns, mapping: parsed.data, told, asked, problems: [] },
    sums: sums.classes.length > 0 ? sums : undefined,
    refused: firstProblems(refused),
    refusedCount: refused.length,
  };
}

/** Not what stands in the columns: it may name people. */
const namesOnly = (found: FileColumns | undefined): FileColumns | undefined =>
  found && { ...found, columns: found.columns.map(({ name }) => ({ name, examples: [] })) };

/** Ids of the vessel classes, as far as they are entered. */
export function classIdsOf(document: unknown): string[] {
  const classes = valueAt(document, ["boats", "classes"]);
  return (Array.isArray(classes) ? classes : []).flatMap((each: unknown) => {
    const id = valueAt(each, ["id"]);
    return typeof id === "string" ? [id] : [];
  });
}

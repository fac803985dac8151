import type { z } from "zod";
import type { RecordProblem } from "../reading/contradiction.js";
import { firstProblems } from "../reading/csv-lines.js";
import { type Problem, problemsOf, valueAt } from "../reading/problems.js";
import type { LogAsked } from "./log-words.js";
import { type FileColumns, fileColumns, unmappedYet } from "./proposed-columns.js";

/** What is told of a file that is tried before anything of it is kept. */
export interface TriedTold<Question> {
  /** The columns from which to choose; absent where no line looks like a head. */
  readonly columns: FileColumns | undefined;
  readonly told: readonly string[];
  readonly asked: readonly Question[];
  /** Lines that are left out, the first of them. */
  readonly refused: readonly RecordProblem[];
  readonly refusedCount: number;
  readonly problems: readonly RecordProblem[];
}

/** An exported file, tried in a study. */
export interface TriedExport<Mapping, Found> extends TriedTold<LogAsked> {
  /** How it was mapped; absent while a column that is needed is not. */
  readonly mapping: Mapping | undefined;
  /** Absent while something is asked, or where no line could be read. */
  readonly found: Found | undefined;
}

export interface ExportTrial {
  readonly file: string;
  /** As far as it is mapped. */
  readonly mapping: Readonly<Record<string, unknown>>;
  /** The study, as far as it has come. */
  readonly document: unknown;
}

/** A kind of exported file: how its mapping is written, and what is read of it for a study. */
export interface FileKind<Mapping, Found> {
  readonly schema: z.ZodType<Mapping>;
  readonly read: (file: string, mapping: Mapping, document: unknown) => ReadExport<Found>;
}

interface ReadExport<Found> extends Pick<TriedExport<never, Found>, "found" | "told" | "asked"> {
  /** All lines that are not counted. */
  readonly refused: readonly RecordProblem[];
}

/** Tries a file by a mapping, which may not be whole yet. */
export function triedExport<Mapping, Found>(
  { file, mapping, document }: ExportTrial,
  { schema, read }: FileKind<Mapping, Found>,
): TriedExport<Mapping, Found> {
  const columns = namesOnly(fileColumns(file));
  const parsed = schema.safeParse(mapping);
  const nothing = { found: undefined, mapping: undefined, told: [], asked: [], refused: [], refusedCount: 0 };
  if (!parsed.success) {
    const isFirst = Object.values(mapping).every((value) => typeof value !== "string");
    if (isFirst) return { ...nothing, columns, ...unmappedYet(columns) };
    const problems = problemsOf(parsed.error.issues, mapping).map(ofFile);
    return { ...nothing, columns, problems };
  }
  const { found, told, asked, refused } = read(file, parsed.data, document);
  return {
    ...{ columns, mapping: parsed.data, found, told, asked, problems: [] },
    refused: firstProblems(refused),
    refusedCount: refused.length,
  };
}

/** A problem of what was entered for a file, told with those of the file. */
export const ofFile = ({ path, found, allowed, remedy }: Problem): RecordProblem => ({
  ...{ found: `${path} ${found}`, allowed, remedy },
});

/** Not what stands in the columns: it may name people. */
const namesOnly = (found: FileColumns | undefined): FileColumns | undefined =>
  found && { ...found, columns: found.columns.map(({ name }) => ({ name, examples: [] })) };

/** Ids of the items of a list, as far as they are entered. */
export function idsAt(document: unknown, place: readonly string[]): string[] {
  const items = valueAt(document, place);
  return (Array.isArray(items) ? items : []).flatMap((each: unknown) => {
    const id = valueAt(each, ["id"]);
    return typeof id === "string" ? [id] : [];
  });
}

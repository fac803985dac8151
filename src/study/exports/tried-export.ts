import type { z } from "zod";
import type { RecordProblem } from "../reading/contradiction.js";
import { firstProblems } from "../reading/csv-lines.js";
import { problemsOf, valueAt } from "../reading/problems.js";
import type { LogAsked } from "./log-words.js";
import { type FileColumns, fileColumns, unmappedYet } from "./proposed-columns.js";

/** An exported file, tried in a study before anything of it is kept. */
export interface TriedExport<Mapping, Found> {
  readonly columns: FileColumns | undefined;
  /** How it was mapped; absent while a column that is needed is not. */
  readonly mapping: Mapping | undefined;
  /** Absent while something is asked, or where no line could be read. */
  readonly found: Found | undefined;
  readonly told: readonly string[];
  readonly asked: readonly LogAsked[];
  /** Lines that are not counted, the first of them. */
  readonly refused: readonly RecordProblem[];
  readonly refusedCount: number;
  readonly problems: readonly RecordProblem[];
}

export interface ExportTrial {
  readonly file: string;
  /** As far as it is mapped. */
  readonly mapping: Readonly<Record<string, unknown>>;
  /** The study, as far as it has come. */
  readonly document: unknown;
}

interface ReadExport<Found> extends Pick<TriedExport<never, Found>, "found" | "told" | "asked"> {
  /** All lines that are not counted. */
  readonly refused: readonly RecordProblem[];
}

/** Tries a file by a mapping, which may not be whole yet. */
export function triedExport<Mapping, Found>(
  { file, mapping }: Pick<ExportTrial, "file" | "mapping">,
  schema: z.ZodType<Mapping>,
  read: (mapping: Mapping) => ReadExport<Found>,
): TriedExport<Mapping, Found> {
  const columns = namesOnly(fileColumns(file));
  const parsed = schema.safeParse(mapping);
  const nothing = { found: undefined, mapping: undefined, told: [], asked: [], refused: [], refusedCount: 0 };
  if (!parsed.success) {
    const isFirst = Object.values(mapping).every((value) => typeof value !== "string");
    if (isFirst) return { ...nothing, columns, ...unmappedYet(columns) };
    const problems = problemsOf(parsed.error.issues, mapping).map(({ path, found, allowed, remedy }) => ({
      ...{ found: `${path} ${found}`, allowed, remedy },
    }));
    return { ...nothing, columns, problems };
  }
  const { found, told, asked, refused } = read(parsed.data);
  return {
    ...{ columns, mapping: parsed.data, found, told, asked, problems: [] },
    refused: firstProblems(refused),
    refusedCount: refused.length,
  };
}

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

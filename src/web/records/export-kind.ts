import type { Answering } from "../../app/answers/questions.js";
import type { AssumptionSet } from "../../assumptions/entry.js";
import { childOf, itemsOf } from "../../editor/form-values.js";
import type { Edit } from "../../editor/study-text.js";
import type { TableView } from "../../report/words/view-types.js";
import type { ExportTrial, TriedExport } from "../../study/exports/tried-export.js";
import { valueAt } from "../../study/reading/problems.js";
import type { Choice } from "./file-choices.js";
import type { ExportForm } from "./sent-export.js";

/** A column that a kind of file may have, and by what its name is likely known. */
interface ExportColumn {
  readonly key: string;
  readonly label: string;
  readonly needed: boolean;
  readonly likely?: RegExp | undefined;
}

/** Words of a column whose meaning is asked. */
interface WordGroup {
  readonly about: "classes" | "kinds" | "results" | "structures" | "works";
  /** Before the word and after it: "The class that “Day user” means". */
  readonly label: string;
  readonly choices: (document: unknown) => readonly Choice[];
}

/** What else a kind of file asks. */
interface ExportSetting {
  readonly key: string;
  readonly label: string;
  /** Absent where a text is typed. */
  readonly choices?: readonly Choice[];
  /** Whether several may be chosen. */
  readonly several?: boolean;
  /** Whether it is part of the mapping that the study remembers. */
  readonly isMapped?: boolean;
  /** Whether a typed text has several values. */
  readonly list?: boolean;
}

/** What is tried and what keeping it would change. */
export interface ShownExport extends Omit<TriedExport<unknown, unknown>, "found"> {
  readonly table: TableView | undefined;
  readonly changes: { readonly edits: readonly Edit[]; readonly told: readonly string[] } | undefined;
}

export interface TryParts {
  readonly answers: Answering;
  readonly assumptions: AssumptionSet;
}

/** What its author says of a file. */
export interface SaidOfFile {
  readonly form: ExportForm;
  /** Of the file. */
  readonly fileName: string;
  /** Where it comes from, if that was typed. */
  readonly origin: string | undefined;
}

/** A file that was tried, with the table and the changes of its kind where something was read. */
export function shownExport<Mapping, Found>(
  { found, mapping, ...tried }: TriedExport<Mapping, Found>,
  table: (found: Found) => TableView,
  changes: (found: Found, mapping: Mapping) => ShownExport["changes"],
): ShownExport {
  const isRead = found !== undefined && mapping !== undefined;
  return {
    ...{ ...tried, mapping, table: isRead ? table(found) : undefined },
    changes: isRead ? changes(found, mapping) : undefined,
  };
}

/** A kind of exported file with a page of its own, on which its columns are mapped once. */
export interface ExportKind {
  /** Address after that of the study. */
  readonly path: `/records/${string}`;
  /** The page on which what is kept of it stands. */
  readonly part: { readonly name: string; readonly path: string };
  readonly title: string;
  readonly guide: readonly string[];
  readonly fileLabel: string;
  readonly keepLabel: string;
  /** Before the name of a file, in the note of a revision. */
  readonly note: string;
  readonly hasDecimals: boolean;
  readonly columns: readonly ExportColumn[];
  readonly words: readonly WordGroup[];
  readonly settings: (document: unknown) => readonly ExportSetting[];
  /** How the study has such files mapped. */
  readonly mapped: (document: unknown) => unknown;
  /** Where what the study has of them comes from; empty where it has nothing. */
  readonly origin: (document: unknown) => string;
  readonly tried: (parts: TryParts, trial: ExportTrial, said: SaidOfFile) => Promise<ShownExport>;
}

/** Items of a list of the study, to choose from. */
export const named = (items: readonly unknown[]): Choice[] =>
  items.flatMap((each) => {
    const [id, name] = [valueAt(each, ["id"]), valueAt(each, ["name"])];
    return typeof id === "string" ? [{ value: id, label: typeof name === "string" ? name : id }] : [];
  });

export const optionsOf = (document: unknown): readonly unknown[] => itemsOf(childOf(document, "options"));

export const textAt = (document: unknown, ...place: readonly string[]): string => {
  const found = valueAt(document, place);
  return typeof found === "string" ? found : "";
};

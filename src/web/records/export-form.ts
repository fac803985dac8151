import { isFileOrigin } from "../../editor/files/file-origin.js";
import { typedList } from "../../study/exports/export-numbers.js";
import { type Problem, valueAt } from "../../study/reading/problems.js";
import { authorName } from "../author.js";
import type { ExportKind } from "./export-kind.js";
import { printable, readable, textProblems } from "./form-texts.js";
import { type ExportForm, sentExport, setting } from "./sent-export.js";

/** The form as a study has such files mapped. */
export function exportFormOf(document: unknown, kind: ExportKind, author: string): ExportForm {
  const mapping = kind.mapped(document);
  const mapped = (key: string) => {
    const value = valueAt(mapping, [key]);
    return typeof value === "string" ? value : "";
  };
  const words = kind.words.flatMap(({ about }) =>
    Object.entries(Object(valueAt(mapping, [about]))).map(([word, id]) => ({ about, word, id: String(id) })),
  );
  const set = kind.settings(document).flatMap(({ key, list }) => {
    const value = valueAt(mapping, [key]);
    const isGiven = typeof value === "string" || (list && Array.isArray(value));
    return isGiven ? [[key, list ? [[value].flat().join(", ")] : [value]]] : [];
  });
  const origin = kind.origin(document);
  return readable(sentExport, {
    columns: Object.fromEntries(kind.columns.map(({ key }) => [key, mapped(key)])),
    dates: mapped("dates"),
    decimals: mapped("decimals"),
    about: words.map((each) => each.about),
    word: words.map((each) => each.word),
    meaning: words.map((each) => each.id),
    set: Object.fromEntries(set),
    origin: isFileOrigin(origin) ? "" : origin,
    author,
  });
}

/** What is wrong with the form itself, by its labels. */
export const exportFormProblems = ({ columns, origin, author }: ExportForm, kind: ExportKind): Problem[] =>
  textProblems([
    ...kind.columns.map(({ key, label }) => [columns[key] ?? "", label, printable] as const),
    [origin, "Where the file comes from", printable],
    [author, "Your name", authorName],
  ]);

/** The mapping as it is typed: empty fields say nothing. */
export function exportMappingOf(form: ExportForm, kind: ExportKind): Record<string, unknown> {
  const { columns, dates, decimals, about, word, meaning } = form;
  const known = kind.columns.map(({ key }) => [key, columns[key] ?? ""] as const);
  const given = [
    ...[...known, ["dates", dates] as const],
    ...(kind.hasDecimals ? [["decimals", decimals] as const] : []),
  ];
  const words = kind.words.map((group) => {
    const own = word.flatMap((each, index) =>
      about[index] === group.about && each.trim() !== "" && meaning[index]
        ? [[each, meaning[index]] as const]
        : [],
    );
    return [group.about, Object.fromEntries(own)] as const;
  });
  const set = kind.settings(undefined).flatMap(({ key, isMapped, list }) => {
    if (!isMapped || setting(form, key) === "") return [];
    return [[key, list ? typedList(setting(form, key)) : setting(form, key)] as const];
  });
  return {
    ...Object.fromEntries(given.filter(([, value]) => value !== "")),
    ...Object.fromEntries([...words, ...set]),
  };
}

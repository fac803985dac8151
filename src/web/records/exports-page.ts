import type { Response } from "express";
import { textOf } from "../../app/answers/questions.js";
import type { StudyEntry } from "../../app/study-entry.js";
import { mayOnlyRead } from "../../app/visitor.js";
import { draftOf } from "../../editor/draft.js";
import type { StudyPages } from "../pages/study-pages.js";
import { workbenchPage } from "../pages/workbench-page.js";
import { renderPage } from "../render.js";
import type { ExportKind, ShownExport } from "./export-kind.js";
import { choices, columnsOffered, decimalChoices, fileKinds, orderChoices } from "./file-choices.js";
import { fileTold } from "./file-told.js";
import type { ExportForm } from "./sent-export.js";

interface Shown {
  readonly kind: ExportKind;
  readonly entry: StudyEntry;
  readonly form: ExportForm;
  readonly tried?: ShownExport;
  readonly name?: string;
  /** What is wrong with the form or the file as a whole. */
  readonly problems?: readonly string[];
  readonly changed?: boolean;
}

/** The page of a kind of exported file: what the study has of it, and what would come of a file. */
export async function showExport(
  response: Response,
  { answers }: Pick<StudyPages, "answers">,
  { kind, entry, form, tried, name, problems = [], changed }: Shown,
): Promise<void> {
  const { document } = draftOf(entry.text, entry.fileName);
  const { title, guide, fileLabel, keepLabel, path, hasDecimals } = kind;
  const view = {
    ...{ form, name, changed, guide, fileLabel, keepLabel, hasDecimals, kinds: fileKinds(entry.id, path) },
    readOnly: entry.isExample || mayOnlyRead(),
    href: `/studies/${entry.id}${path}`,
    partHref: `/studies/${entry.id}${kind.part.path}`,
    partName: kind.part.name,
    present: kind.origin(document),
    ...choicesOf(kind, form, { tried, document }),
    ...fileTold(tried, problems),
    told: [...(tried?.told ?? []), ...(tried?.changes?.told ?? [])],
    sums: tried?.table,
    canKeep: tried?.changes !== undefined,
    hasFile: form.upload !== "",
  };
  const balance = await answers.ask("balance", textOf(entry));
  response.send(renderPage("exports", workbenchPage({ entry, balance, part: "records", title }, view)));
}

interface Around {
  readonly tried: ShownExport | undefined;
  readonly document: unknown;
}

function choicesOf(kind: ExportKind, form: ExportForm, { tried, document }: Around) {
  const offered = columnsOffered(tried?.columns);
  return {
    hasColumns: offered.length > 0,
    columns: columnFields(kind, form, tried),
    words: wordFields(kind, form, { tried, document }),
    settings: kind.settings(document).map(({ key, label, choices: given, several }) => ({
      ...{ key, label, several, value: form.set[key]?.[0] ?? "", isChoice: given !== undefined && !several },
      choices: (given ?? []).map((each) => ({
        ...each,
        chosen: (form.set[key] ?? [""]).includes(each.value),
      })),
    })),
    orders: orderChoices(form.dates),
    signs: decimalChoices(form.decimals),
  };
}

function columnFields(kind: ExportKind, form: ExportForm, tried: ShownExport | undefined) {
  const offered = columnsOffered(tried?.columns);
  const isFirst = tried !== undefined && tried.mapping === undefined;
  return kind.columns.map(({ key, label, needed, likely }) => {
    const value = form.columns[key] ?? "";
    const named = offered.find((each) => likely?.test(each.value))?.value ?? "";
    const first = key === "date" ? (tried?.columns?.proposed.date ?? named) : named;
    const none = { value: "", label: needed ? "Choose a column" : "None" };
    return { key, label, value, choices: choices([none, ...offered], value || (isFirst ? first : "")) };
  });
}

/** Words that are mapped, and those that a file asks about. */
function wordFields(kind: ExportKind, form: ExportForm, { tried, document }: Around) {
  const fields = kind.words.flatMap(({ about, label, choices: given }) => {
    const known = form.word.flatMap((word, index) =>
      form.about[index] === about ? [{ word, meaning: form.meaning[index] ?? "" }] : [],
    );
    const asked = (tried?.asked ?? []).flatMap((each) => (each.about === about ? (each.words ?? []) : []));
    const fresh = asked.filter((word) => known.every((each) => each.word !== word));
    const offered = [{ value: "", label: "Choose what it means" }, ...given(document)];
    return [...known, ...fresh.map((word) => ({ word, meaning: "" }))].map(({ word, meaning }) => ({
      ...{ about, label, word, choices: choices(offered, meaning) },
    }));
  });
  return fields.map((each, index) => ({ ...each, number: index + 1 }));
}

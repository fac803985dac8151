import type { Response } from "express";
import { type Answer, textOf } from "../../app/answers/questions.js";
import type { StudyEntry } from "../../app/study-entry.js";
import { mayOnlyRead } from "../../app/visitor.js";
import { counted } from "../../counted.js";
import { draftOf } from "../../editor/draft.js";
import { head, num, row, type TableView } from "../../report/words/view-types.js";
import type { ClassSum } from "../../study/exports/boat-sums.js";
import { valueAt } from "../../study/reading/problems.js";
import type { StudyPages } from "../pages/study-pages.js";
import { workbenchPage } from "../pages/workbench-page.js";
import { renderPage } from "../render.js";
import {
  choices,
  columnsOffered,
  decimalChoices,
  faultText,
  fileKinds,
  orderChoices,
} from "./file-choices.js";
import { classesOf, type LogForm, logColumns, stationsOf } from "./log-form.js";

interface Shown {
  readonly entry: StudyEntry;
  readonly form: LogForm;
  readonly tried?: Answer<"logTried">;
  /** What keeping the sums would change, in sentences. */
  readonly changes?: readonly string[];
  readonly name?: string;
  readonly problem?: string;
  readonly changed?: boolean;
}

/** The page of logs of boats: what the study has, and what would come of a file. */
export async function showLogs(
  response: Response,
  { answers }: Pick<StudyPages, "answers">,
  { entry, form, tried, changes = [], name, problem, changed }: Shown,
): Promise<void> {
  const { document } = draftOf(entry.text, entry.fileName);
  const origin = valueAt(document, ["boats", "seasons", "origin"]);
  const view = {
    ...{ form, name, changed, kinds: fileKinds(entry.id, "/records/boats") },
    readOnly: entry.isExample || mayOnlyRead(),
    href: `/studies/${entry.id}/records/boats`,
    boatsHref: `/studies/${entry.id}/edit/boats`,
    present: typeof origin === "string" ? origin : undefined,
    ...choicesOf(form, tried, document),
    faults: [...(problem === undefined ? [] : [problem]), ...(tried?.problems ?? []).map(faultText)],
    asked: (tried?.asked ?? []).map(({ about, problem: each }) => ({
      about,
      text: faultText(each),
    })),
    told: [...(tried?.told ?? []), ...changes],
    sums: tried?.sums ? sumsTable(tried.sums.classes) : undefined,
    refused: (tried?.refused ?? []).map(faultText),
    refusedCount: counted(tried?.refusedCount ?? 0, "line"),
    canKeep: tried?.sums !== undefined,
    hasFile: form.upload !== "",
  };
  const balance = await answers.ask("balance", textOf(entry));
  const frame = {
    entry,
    balance,
    part: "records",
    title: "Logs of inspected boats",
  };
  response.send(renderPage("logs", workbenchPage(frame, view)));
}

/** All that is kept of a log. */
const sumsTable = (classes: readonly ClassSum[]): TableView => ({
  id: "sums",
  caption: "What is kept: boats by season and class",
  head: head("Season", "Class", num("Screened"), num("Held"), num("With mussels")),
  rows: classes.map(({ season, vesselClass, screened, setAside, fouled }) => {
    const counts = [screened, setAside, fouled].map((count) => num(count.toLocaleString("en-US")));
    return row(String(season), vesselClass, ...counts);
  }),
});

function choicesOf(form: LogForm, tried: Shown["tried"], document: unknown) {
  const offered = columnsOffered(tried?.columns);
  const classes = [{ value: "", label: "Choose a class" }, ...classesOf(document)];
  const asked = (tried?.asked ?? []).flatMap(({ words = [] }) => words);
  const isFirst = tried !== undefined && tried.mapping === undefined;
  const words = [...new Set([...form.word, ...asked])];
  return {
    hasColumns: offered.length > 0,
    columns: logColumns.map(({ key, label, needed, likely }) => {
      const value = form.columns[key] ?? "";
      const named = offered.find((each) => likely?.test(each.value))?.value;
      const first = key === "date" ? (tried?.columns?.proposed.date ?? named) : named;
      const none = { value: "", label: needed ? "Choose a column" : "None" };
      return {
        key,
        label,
        value,
        choices: choices([none, ...offered], value || (isFirst ? (first ?? "") : "")),
      };
    }),
    words: words.map((word, index) => {
      const meaning = form.meaning[form.word.indexOf(word)] ?? "";
      return { word, number: index + 1, choices: choices(classes, meaning) };
    }),
    stations: stationsOf(document).map((each) => ({
      ...each,
      chosen: form.stations.includes(each.value),
    })),
    orders: orderChoices(form.dates),
    signs: decimalChoices(form.decimals),
  };
}

import type { Response } from "express";
import { type Answer, textOf } from "../../app/answers/questions.js";
import type { StudyEntry } from "../../app/study-entry.js";
import { mayOnlyRead } from "../../app/visitor.js";
import { counted } from "../../counted.js";
import { draftOf } from "../../editor/draft.js";
import { recordTold } from "../../study/exports/record-told.js";
import type { RecordProblem } from "../../study/reading/contradiction.js";
import { valueAt } from "../../study/reading/problems.js";
import type { StudyPages } from "../pages/study-pages.js";
import { workbenchPage } from "../pages/workbench-page.js";
import { renderPage } from "../render.js";
import { type FileForm, placeOf, schedulesOf } from "./file-form.js";

interface Shown {
  readonly entry: StudyEntry;
  readonly form: FileForm;
  readonly tried?: Answer<"fileTried">;
  /** Of the file that was tried. */
  readonly name?: string;
  readonly problem?: string;
}

/** The page of records: what the study has, and what would come of a file. */
export async function showRecords(
  response: Response,
  { answers }: Pick<StudyPages, "answers">,
  { entry, form, tried, name, problem }: Shown,
): Promise<void> {
  const { document, levels, writing } = draftOf(entry.text, entry.fileName);
  const place = placeOf(document, form.schedule);
  const record = valueAt(document, [...place, "record"]);
  const isOwn = form.schedule === "";
  const view = {
    ...{ form, name, readOnly: entry.isExample || mayOnlyRead() },
    href: `/studies/${entry.id}/records`,
    levelsHref: `/studies/${entry.id}/edit/levels`,
    present: record === undefined ? undefined : presentLine(record),
    presentTold: isOwn && levels ? recordTold({ record: levels }, writing.system) : [],
    replacesSchedule: valueAt(document, [...place, "drawdown"]) !== undefined,
    schedules: choices(schedulesOf(document), form.schedule),
    ...choicesOf(form, tried),
    faults: [...(problem === undefined ? [] : [problem]), ...(tried?.problems ?? []).map(faultText)],
    asked: (tried?.asked ?? []).map(({ about, problem: each }) => ({ about, text: faultText(each) })),
    words: (tried?.asked ?? []).flatMap(({ words = [] }) => words).join(", "),
    told: tried?.told ?? [],
    refused: (tried?.refused ?? []).map(faultText),
    refusedCount: counted(tried?.refusedCount ?? 0, "line"),
    leftOut: tried?.refusedCount ?? 0,
    canKeep: tried?.csv !== undefined,
    hasFile: form.upload !== "",
    dropped: droppedText(tried, form),
  };
  const balance = await answers.ask("balance", textOf(entry));
  const frame = { entry, balance, part: "records", title: "Records from files" };
  response.send(renderPage("records", workbenchPage(frame, view)));
}

/** Columns that are neither kept nor looked at. */
function droppedText(tried: Shown["tried"], { date, level }: FileForm): string {
  const names = (tried?.columns?.columns ?? []).map((each) => each.name);
  const dropped = names.filter((each) => each !== date && each !== level);
  return tried?.csv === undefined ? "" : dropped.join(", ");
}

function presentLine(record: unknown): string {
  const text = (key: string) => {
    const found = valueAt(record, [key]);
    return typeof found === "string" ? found : "";
  };
  const digest = text("kept");
  if (digest === "") return `The record is in the study’s own text (${text("origin")}).`;
  return `The record was read from ${text("name")} (${text("origin")}) and is kept beside the study under the digest ${digest.slice(0, shownDigits)}….`;
}
const shownDigits = 12;

const faultText = ({ line, found, allowed, remedy }: RecordProblem): string =>
  `${line === undefined ? "The file" : `Line ${line}`}: found ${found}; allowed: ${allowed}. ${remedy}`;

interface Choice {
  readonly value: string;
  readonly label: string;
}

const choices = (offered: readonly Choice[], chosen: string) =>
  offered.map((each) => ({ ...each, chosen: each.value === chosen }));

function choicesOf(form: FileForm, tried: Shown["tried"]) {
  const { columns = [], proposed } = tried?.columns ?? {};
  const offered = columns.map(({ name, examples }) => ({
    value: name,
    label: examples.length === 0 ? name : `${name}: ${examples.join(" · ")}`,
  }));
  const column = (chosen: string, likely: string | undefined) => choices(offered, chosen || (likely ?? ""));
  return {
    hasColumns: offered.length > 0,
    dateColumns: column(form.date, proposed?.date),
    levelColumns: column(form.level, proposed?.level),
    orders: choices(
      [
        { value: "", label: "As the file shows" },
        { value: "month-first", label: "Month first: 3/4 is 4 March" },
        { value: "day-first", label: "Day first: 3/4 is 3 April" },
      ],
      form.dates,
    ),
    signs: choices(
      [
        { value: "", label: "As the file shows" },
        { value: "point", label: "A point: 1,240.5" },
        { value: "comma", label: "A comma: 1.240,5" },
      ],
      form.decimals,
    ),
    readings: choices(
      [
        { value: "one", label: "One level a day" },
        { value: "mean", label: "Several: keep their mean" },
      ],
      form.several,
    ),
  };
}

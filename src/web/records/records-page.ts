import type { Response } from "express";
import { type Answer, textOf } from "../../app/answers/questions.js";
import type { StudyEntry } from "../../app/study-entry.js";
import { mayOnlyRead } from "../../app/visitor.js";
import { draftOf } from "../../editor/draft.js";
import { recordTold } from "../../study/exports/record-told.js";
import { valueAt } from "../../study/reading/problems.js";
import type { StudyPages } from "../pages/study-pages.js";
import { workbenchPage } from "../pages/workbench-page.js";
import { renderPage } from "../render.js";
import { choices, columnsOffered, decimalChoices, fileKinds, orderChoices } from "./file-choices.js";
import { type FileForm, placeOf, schedulesOf } from "./file-form.js";
import { fileTold } from "./file-told.js";

interface Shown {
  readonly entry: StudyEntry;
  readonly form: FileForm;
  readonly tried?: Answer<"fileTried">;
  /** Of the file that was tried. */
  readonly name?: string;
  /** What is wrong with the form or the file as a whole. */
  readonly problems?: readonly string[];
  /** Whether it was to be kept, and something had been changed since it was shown. */
  readonly changed?: boolean;
}

/** The page of records: what the study has, and what would come of a file. */
export async function showRecords(
  response: Response,
  { answers }: Pick<StudyPages, "answers">,
  { entry, form, tried, name, problems = [], changed }: Shown,
): Promise<void> {
  const { document, levels, writing } = draftOf(entry.text, entry.fileName);
  const place = placeOf(document, form.schedule);
  const record = valueAt(document, [...place, "record"]);
  const isOwn = form.schedule === "";
  const view = {
    ...{ form, name, changed, kinds: fileKinds(entry.id, "/records") },
    readOnly: entry.isExample || mayOnlyRead(),
    href: `/studies/${entry.id}/records`,
    levelsHref: `/studies/${entry.id}/edit/levels`,
    present: record === undefined ? undefined : presentLine(record),
    presentTold: isOwn && levels ? recordTold({ record: levels }, writing.system) : [],
    replacesSchedule: valueAt(document, [...place, "drawdown"]) !== undefined,
    schedules: choices(schedulesOf(document), form.schedule),
    ...choicesOf(form, tried),
    ...fileTold(tried, problems),
    missingWords: (tried?.asked ?? []).flatMap(({ words = [] }) => words).join(", "),
    told: tried?.told ?? [],
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

function choicesOf(form: FileForm, tried: Shown["tried"]) {
  const { proposed } = tried?.columns ?? {};
  const offered = columnsOffered(tried?.columns);
  const column = (chosen: string, likely: string | undefined) => choices(offered, chosen || (likely ?? ""));
  return {
    hasColumns: offered.length > 0,
    dateColumns: column(form.date, proposed?.date),
    levelColumns: column(form.level, proposed?.level),
    orders: orderChoices(form.dates),
    signs: decimalChoices(form.decimals),
    readings: choices(
      [
        { value: "one", label: "One level a day" },
        { value: "mean", label: "Several: keep their mean" },
      ],
      form.several,
    ),
  };
}

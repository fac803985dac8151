import type { Express, Request, Response } from "express";
import type { Answer } from "../../app/answers/questions.js";
import type { StudyEntry } from "../../app/study-entry.js";
import { draftOf } from "../../editor/draft.js";
import { recordEdits } from "../../editor/files/record-edits.js";
import { edited } from "../../editor/study-text.js";
import { levelExportSchema } from "../../study/format/export-schema.js";
import { authorOf, rememberAuthor } from "../author.js";
import { NotFoundError } from "../explain.js";
import type { StudyPages } from "../pages/study-pages.js";
import { formIn } from "../sent-form.js";
import { type FileForm, formOf, formProblems, gapDays, mappingOf, placeOf, sentFile } from "./file-form.js";
import { showRecords } from "./records-page.js";
import { exportUpload, tooLarge, type WaitingFiles } from "./waiting-files.js";

type Parts = Pick<StudyPages, "studies" | "answers" | "find">;

/** Exported files of levels: read by columns that are mapped once, shown, and kept beside the study. */
export function addRecords(app: Express, parts: Parts, files: WaitingFiles): void {
  app.get("/studies/:id/records", (request, response) => {
    const entry = parts.find(request.params.id);
    const schedule = typeof request.query.schedule === "string" ? request.query.schedule : "";
    return showRecords(response, parts, {
      entry,
      form: formOf(entry, schedule, authorOf(request)),
    });
  });
  app.post("/studies/:id/records", exportUpload, tooLarge, async (request: Request, response: Response) => {
    const entry = parts.find(String(request.params.id));
    if (entry.isExample) throw new NotFoundError();
    const form = formIn(sentFile, request.body);
    const { document, writing } = draftOf(entry.text, entry.fileName);
    const sent = files.with(request, form, formProblems(form, document));
    if ("problems" in sent) {
      await showRecords(response.status(400), parts, { entry, ...sent });
      return;
    }
    const { file } = sent;
    rememberAuthor(response, form.author);
    const trial = { mapping: mappingOf(form), fillGapsUpTo: gapDays(form) };
    const tried = await parts.answers.ask("fileTried", {
      ...{ ...trial, file: file.text, document, system: writing.system },
    });
    const answered = JSON.stringify([form.schedule, trial]);
    if (form.act === "keep" && tried.csv !== undefined && file.shown === answered) {
      keep(response, parts, { entry, form, tried, name: file.name });
      return;
    }
    files.show(file, answered);
    await showRecords(response, parts, {
      ...{ entry, tried, name: file.name, form: { ...form, upload: file.token } },
      changed: form.act === "keep" && tried.csv !== undefined,
    });
  });
}

interface Kept {
  readonly entry: StudyEntry;
  readonly form: FileForm;
  readonly tried: Answer<"fileTried">;
  readonly name: string;
}

function keep(response: Response, { studies }: Parts, { entry, form, tried, name }: Kept): void {
  const { document } = draftOf(entry.text, entry.fileName);
  const place = placeOf(document, form.schedule);
  const digest = studies.keepRecord(tried.csv ?? "");
  const edits = recordEdits(document, place, {
    ...{ digest, fileName: name, mapping: levelExportSchema.parse(mappingOf(form)) },
    fillGapsUpTo: gapDays(form),
    origin: form.origin === "" ? undefined : form.origin,
  });
  const leftOut = tried.refusedCount === 0 ? "" : `, without ${tried.refusedCount} of its lines`;
  studies.save(entry.id, entry.revision, edited(entry.text, edits), {
    ...{ author: form.author, note: `Record of levels from ${name}${leftOut}`, origin: "form" },
  });
  response.redirect(303, `/studies/${entry.id}/records?schedule=${encodeURIComponent(form.schedule)}`);
}

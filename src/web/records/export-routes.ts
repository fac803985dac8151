import type { Express, Request, Response } from "express";
import type { StudyEntry } from "../../app/study-entry.js";
import { draftOf } from "../../editor/draft.js";
import { edited } from "../../editor/study-text.js";
import { authorOf, rememberAuthor } from "../author.js";
import { NotFoundError } from "../explain.js";
import type { StudyPages } from "../pages/study-pages.js";
import { formIn } from "../sent-form.js";
import { boatsFile } from "./boats-file.js";
import { exportFormOf, exportFormProblems, exportMappingOf } from "./export-form.js";
import type { ExportKind, ShownExport } from "./export-kind.js";
import { showExport } from "./exports-page.js";
import { samplesFile } from "./samples-file.js";
import { type ExportForm, sentExport } from "./sent-export.js";
import { exportUpload, tooLarge, type WaitingFiles } from "./waiting-files.js";
import { workFile } from "./work-file.js";

type Parts = Pick<StudyPages, "studies" | "answers" | "find">;

/** Exported logs, samples and work orders: read by columns that are mapped once, of which sums alone are kept. */
export function addExports(app: Express, parts: Parts, files: WaitingFiles): void {
  for (const kind of [boatsFile, samplesFile, workFile]) {
    app.get(`/studies/:id${kind.path}`, (request, response) => {
      const entry = parts.find(request.params.id);
      const { document } = draftOf(entry.text, entry.fileName);
      const form = exportFormOf(document, kind, authorOf(request));
      return showExport(response, parts, { kind, entry, form });
    });
    app.post(`/studies/:id${kind.path}`, exportUpload, tooLarge, (request: Request, response: Response) =>
      answerForm(request, response, { parts, files, kind }),
    );
  }
}

interface Around {
  readonly parts: Parts;
  readonly files: WaitingFiles;
  readonly kind: ExportKind;
}

async function answerForm(request: Request, response: Response, { parts, files, kind }: Around) {
  const entry = parts.find(String(request.params.id));
  if (entry.isExample) throw new NotFoundError();
  const form = formIn(sentExport, request.body);
  const sent = files.with(request, form, exportFormProblems(form, kind));
  if ("problems" in sent) return showExport(response.status(400), parts, { kind, entry, ...sent });
  rememberAuthor(response, form.author);
  const { file } = sent;
  const mapping = exportMappingOf(form, kind);
  const { document } = draftOf(entry.text, entry.fileName);
  const { name, text } = file;
  const origin = form.origin === "" ? undefined : form.origin;
  const means = { answers: parts.answers, assumptions: parts.studies.assumptions };
  const tried = await kind.tried(means, { file: text, mapping, document }, { form, fileName: name, origin });
  const answered = JSON.stringify([mapping, form.set]);
  const isKept = form.act === "keep" && tried.changes !== undefined;
  if (isKept && file.shown === answered) return keep(response, parts, { kind, entry, form, tried, name });
  files.show(file, answered);
  const shown = { kind, entry, tried, name, form: { ...form, upload: file.token }, changed: isKept };
  return showExport(response, parts, shown);
}

interface Kept {
  readonly kind: ExportKind;
  readonly entry: StudyEntry;
  readonly form: ExportForm;
  readonly tried: ShownExport;
  readonly name: string;
}

function keep(response: Response, { studies }: Parts, { kind, entry, form, tried, name }: Kept): void {
  const leftOut = tried.refusedCount === 0 ? "" : `, without ${tried.refusedCount} of its lines`;
  studies.save(entry.id, entry.revision, edited(entry.text, tried.changes?.edits ?? []), {
    ...{ author: form.author, note: `${kind.note} ${name}${leftOut}`, origin: "form" },
  });
  response.redirect(303, `/studies/${entry.id}${kind.path}`);
}

import { randomUUID } from "node:crypto";
import type { Express, Request, Response } from "express";
import { LRUCache } from "lru-cache";
import multer from "multer";
import type { Answer } from "../../app/answers/questions.js";
import type { StudyEntry } from "../../app/study-entry.js";
import { draftOf } from "../../editor/draft.js";
import { recordEdits } from "../../editor/record-edits.js";
import { edited } from "../../editor/study-text.js";
import { largestExportBytes } from "../../study/exports/export-table.js";
import { exportText } from "../../study/exports/file-text.js";
import { levelExportSchema } from "../../study/format/export-schema.js";
import { gapSetting } from "../../study/format/schedule-schema.js";
import { InputError, problemsOf, sentence } from "../../study/reading/problems.js";
import { authorOf, rememberAuthor } from "../author.js";
import { NotFoundError } from "../explain.js";
import type { StudyPages } from "../pages/study-pages.js";
import { type FileForm, formOf, gapDays, mappingOf, placeOf, sentFile } from "./file-form.js";
import { showRecords } from "./records-page.js";

type Parts = Pick<StudyPages, "studies" | "answers" | "find">;

interface Upload {
  readonly name: string;
  readonly text: string;
}

/** Files wait here from when they are chosen until their columns are: characters of all, and how long. */
const mostCharacters = 2 * largestExportBytes;
const waitingMilliseconds = 20 * 60 * 1000;

const upload = multer({
  storage: multer.memoryStorage(),
  limits: { fileSize: largestExportBytes + 1, fieldSize: 10_000, files: 1, fields: 20 },
});

/** Exported files of levels: read by columns that are mapped once, shown, and kept beside the study. */
export function addRecords(app: Express, parts: Parts): void {
  const uploads = new LRUCache<string, Upload>({
    maxSize: mostCharacters,
    sizeCalculation: ({ text }) => text.length + 1,
    ttl: waitingMilliseconds,
  });
  app.get("/studies/:id/records", (request, response) => {
    const entry = parts.find(request.params.id);
    const schedule = typeof request.query.schedule === "string" ? request.query.schedule : "";
    return showRecords(response, parts, { entry, form: formOf(entry, schedule, authorOf(request)) });
  });
  app.post("/studies/:id/records", upload.single("file"), async (request, response) => {
    const entry = parts.find(String(request.params.id));
    if (entry.isExample) throw new NotFoundError();
    const form = sentForm(request);
    rememberAuthor(response, form.author);
    const found = sentUpload(request, form, uploads);
    if ("problem" in found) {
      const shown = { entry, form: { ...form, upload: "" }, problem: found.problem };
      await showRecords(response.status(400), parts, shown);
      return;
    }
    const { document, writing } = draftOf(entry.text, entry.fileName);
    const tried = await parts.answers.ask("fileTried", {
      ...{ file: found.text, mapping: mappingOf(form), fillGapsUpTo: gapDays(form) },
      ...{ document, system: writing.system },
    });
    if (form.act === "keep" && tried.csv !== undefined && tried.refusedCount === form.leftOut)
      keep(response, parts, { entry, form, tried, name: found.name });
    else
      await showRecords(response, parts, {
        entry,
        form: { ...form, upload: found.token },
        tried,
        name: found.name,
      });
  });
}

function sentForm(request: Request): FileForm {
  const parsed = sentFile.safeParse(request.body ?? {});
  if (parsed.success) return parsed.data;
  throw new InputError("The form", problemsOf(parsed.error.issues, request.body));
}

/** The file that comes with the form, or the one that was sent before it. */
function sentUpload(
  { file }: Request,
  form: FileForm,
  uploads: LRUCache<string, Upload>,
): (Upload & { readonly token: string }) | { readonly problem: string } {
  if (!file || file.size === 0) {
    const known = uploads.get(form.upload);
    if (known) return { ...known, token: form.upload };
    const again = form.upload === "" ? "" : " The one sent before is no longer waiting.";
    return {
      problem: `The file: found ${file ? "an empty file" : "no file"}; allowed: an exported file.${again} Choose it.`,
    };
  }
  try {
    const found = {
      name: file.originalname.slice(0, longestName),
      text: exportText(file.buffer, file.originalname),
    };
    const token = randomUUID();
    uploads.set(token, found);
    return { ...found, token };
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    return { problem: error.problems.map(sentence).join(" ") };
  }
}

const longestName = 120;

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
    ...gapSetting.parse({ fillGapsUpTo: gapDays(form) }),
    origin: form.origin === "" ? undefined : form.origin,
  });
  const leftOut = tried.refusedCount === 0 ? "" : `, without ${tried.refusedCount} of its lines`;
  studies.save(entry.id, entry.revision, edited(entry.text, edits), {
    ...{ author: form.author, note: `Record of levels from ${name}${leftOut}`, origin: "form" },
  });
  response.redirect(303, `/studies/${entry.id}/records?schedule=${encodeURIComponent(form.schedule)}`);
}

import type { Express, Request } from "express";
import multer from "multer";
import { z } from "zod";
import { blankStudy } from "../../editor/new-study.js";
import { rawOf } from "../../editor/study-text.js";
import { linkedAssets } from "../../report/document/render-page.js";
import { allowedCharacters, isPrintable } from "../../study/reading/characters.js";
import { InputError, problemsOf, sentence } from "../../study/reading/problems.js";
import { largestStudyBytes } from "../../study/reading/read.js";
import { decodeStudy } from "../../study/reading/study-bytes.js";
import { recordDigest, recordsNamed } from "../../study/records/at-hand.js";
import { isZip, unzippedStudy } from "../../study/records/study-zip.js";
import { authorOf, rememberAuthor } from "../author.js";
import { largeForm } from "../editing/edit-routes.js";
import { renderPage } from "../render.js";
import { keepComplete } from "./complete-study.js";
import type { StudyPages } from "./study-pages.js";

const author = z.string().trim().max(200, "at most 200 characters").default("");
const blank = z.object({
  name: z
    .string()
    .trim()
    .min(1, "a name for the study")
    .max(200, "at most 200 characters")
    .refine(isPrintable, allowedCharacters),
  lake: z
    .string()
    .trim()
    .min(1, "the name of the lake")
    .max(200, "at most 200 characters")
    .refine(isPrintable, allowedCharacters),
  units: z.enum(["us", "si"]),
  currency: z
    .string()
    .trim()
    .toUpperCase()
    .regex(/^[A-Z]{3}$/, "a currency code of three letters, such as USD"),
  author,
});
/** The file comes back as its bytes in base64: a form would write its line ends anew. */
const unfinished = z.object({ bytes: z.base64().min(1), fileName: z.string().default(""), author });

/** Larger than a study, so that the reader's own message about size is given; beyond it the upload is cut off. */
const uploadLimit = largestStudyBytes + 1;

/** New studies: blank, from an example, or from a file, which may be unfinished. */
export function addNewStudies(
  app: Express,
  { studies, answers }: Pick<StudyPages, "studies" | "answers">,
  today: () => string,
): void {
  const page = (request: Request, typed: object, problems: readonly string[]) =>
    renderPage("new-study", {
      ...{ title: "A new study", assets: linkedAssets, problems, author: authorOf(request) },
      ...{ name: "", lake: "", currency: "USD", isMetric: false, ...typed },
      examples: studies.list().filter(({ isExample }) => isExample),
    });
  app.get("/studies/new", (request, response) => {
    response.send(page(request, {}, []));
  });
  app.post("/studies/new", largeForm, (request, response) => {
    const parsed = blank.safeParse(request.body ?? {});
    if (!parsed.success) {
      const typed = { ...request.body, isMetric: request.body?.units === "si" };
      const shown = problemsOf(parsed.error.issues, request.body).map(sentence);
      response.status(400).send(page(request, typed, shown));
      return;
    }
    const { author, ...names } = parsed.data;
    rememberAuthor(response, author);
    const text = blankStudy({ ...names, prepared: today() });
    const kept = studies.create(text, { author, note: "A blank study", origin: "form" });
    response.redirect(303, `/studies/${kept.id}/edit/names`);
  });
  app.post("/studies/unfinished", largeForm, (request, response) => {
    const parsed = unfinished.safeParse(request.body ?? {});
    if (!parsed.success) throw new InputError("The form", problemsOf(parsed.error.issues, request.body));
    const { bytes, fileName, author } = parsed.data;
    const text = decodeStudy(Buffer.from(bytes, "base64"), fileName || "the upload");
    const kept = studies.create(
      text,
      { author, note: "Unfinished file", origin: "upload" },
      fileName || undefined,
    );
    response.redirect(303, `/studies/${kept.id}`);
  });
  addUpload(app, { studies, answers });
}

const uploader = { author: "", note: "", origin: "upload" } as const;

function addUpload(app: Express, parts: Pick<StudyPages, "studies" | "answers">): void {
  const { studies } = parts;
  const upload = multer({
    storage: multer.memoryStorage(),
    defParamCharset: "utf8",
    limits: { fileSize: uploadLimit, files: 1, fields: 4, fieldSize: 10_000 },
  });
  app.post("/studies", upload.single("study"), async (request, response) => {
    const sent = sentStudy(request);
    const { fileName } = sent;
    const text = decodeStudy(sent.study, fileName);
    const named = new Set(recordsNamed(text));
    // What is kept is never removed: what the study does not name does not come in.
    for (const record of sent.records) if (named.has(recordDigest(record))) studies.keepRecord(record);
    try {
      const kept = await keepComplete(parts, { text, fileName }, uploader);
      response.redirect(303, `/studies/${kept.id}`);
    } catch (error) {
      if (!(error instanceof InputError) || !canBeFinished(text, fileName)) throw error;
      const shown = { title: `${fileName} is not finished`, problems: error.problems.map(sentence) };
      const bytes = Buffer.from(text).toString("base64");
      const view = { ...shown, bytes, fileName, assets: linkedAssets, author: authorOf(request) };
      response.status(400).send(renderPage("unfinished-file", view));
    }
  });
}

/** The study's file that was sent, or the one in a zip with its records. */
function sentStudy({ file }: Request) {
  const [fileName, study] = [file?.originalname ?? "the upload", file?.buffer ?? new Uint8Array()];
  return isZip(study) ? unzippedStudy(study, fileName) : { fileName, study, records: [] };
}

/** A text that is read as a group of fields, whatever is wrong with them, can be mended in the forms. */
function canBeFinished(text: string, fileName: string): boolean {
  if (Buffer.byteLength(text) > largestStudyBytes) return false;
  try {
    const document = rawOf(text, fileName);
    return typeof document === "object" && document !== null && !Array.isArray(document);
  } catch (error) {
    if (error instanceof InputError) return false;
    throw error;
  }
}

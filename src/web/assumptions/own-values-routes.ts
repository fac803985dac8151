import type { Express, Request } from "express";
import multer from "multer";
import { z } from "zod";
import { textOf } from "../../app/answers/questions.js";
import type { StudyEntry } from "../../app/study-entry.js";
import { mayOnlyRead } from "../../app/visitor.js";
import { counted } from "../../counted.js";
import { draftOf } from "../../editor/draft.js";
import { ownValues } from "../../editor/own-value.js";
import { type OwnValueTable, ownValueTable, ownValueText } from "../../editor/table/own-value-table.js";
import { ownEffectTable } from "../../report/compared/own-effect-view.js";
import { usualIn } from "../../report/words/usual-and-own.js";
import { allowedCharacters, unseenIn } from "../../study/reading/characters.js";
import { InputError } from "../../study/reading/problems.js";
import { largestStudyBytes } from "../../study/reading/read.js";
import { decodeStudy } from "../../study/reading/study-bytes.js";
import { authorOf, rememberAuthor } from "../author.js";
import { NotFoundError } from "../explain.js";
import type { StudyPages } from "../pages/study-pages.js";
import { workbenchPage } from "../pages/workbench-page.js";
import { readerSignal } from "../reader-gone.js";
import { faultText } from "../records/file-told.js";
import { renderPage } from "../render.js";
import { formIn } from "../sent-form.js";
import { unitsOf } from "./assumption-units.js";

const sent = z.object({
  csv: z.string().default(""),
  author: z.string().trim().max(200, "at most 200 characters").default(""),
  /** The study that is copied from. */
  from: z.string().default(""),
  act: z.enum(["check", "take", "copy"]).default("check"),
});

const upload = multer({
  storage: multer.memoryStorage(),
  limits: { fileSize: largestStudyBytes, fieldSize: largestStudyBytes, files: 1, fields: 8 },
});

const path = "/studies/:id/own-values";

type Parts = Pick<StudyPages, "studies" | "answers" | "find">;

/** Own values from a pasted table, a file or another study: shown first with what they do, then kept in one revision. */
export function addOwnValues(app: Express, parts: Parts): void {
  const { studies, find } = parts;
  app.get(path, async (request, response) => {
    const entry = find(request.params.id);
    response.send(await rendered(parts, entry, { csv: "", author: authorOf(request) }));
  });
  app.post(path, upload.single("file"), async (request, response) => {
    const entry = find(String(request.params.id));
    if (entry.isExample) throw new NotFoundError();
    const { act, ...form } = sentTable(request);
    const from = act === "copy" ? studies.find(form.from) : undefined;
    if (from) {
      response.send(
        await rendered(parts, entry, { ...copiedFrom(from, form.csv), author: form.author, from }),
      );
      return;
    }
    const table = ownValueTable(form.csv, entry, studies.assumptions);
    const unseen = unseenIn(form.author);
    if (unseen === undefined) rememberAuthor(response, form.author);
    const author = unseen === undefined ? form.author : "";
    const nameProblem = unseen && `Your name: found ${unseen}; allowed: ${allowedCharacters}. Type it again.`;
    if (act === "take" && table.problems.length === 0 && !nameProblem) {
      const note = `Assumptions: ${counted(table.lines.length, "own value")} from a table`;
      studies.save(entry.id, entry.revision, table.text, { author, note, origin: "form" });
      response.redirect(303, `/studies/${entry.id}/assumptions`);
      return;
    }
    const signal = readerSignal(response);
    const page = await rendered(parts, entry, { csv: form.csv, author, table, nameProblem, signal });
    response.status(table.problems.length > 0 || nameProblem ? 400 : 200).send(page);
  });
}

const ownIn = ({ text, fileName }: StudyEntry) => ownValues(draftOf(text, fileName).document);

function sentTable(request: Request) {
  const form = formIn(sent, request.body);
  const file = request.file ? decodeStudy(request.file.buffer, request.file.originalname) : "";
  return { ...form, csv: file === "" ? form.csv : file };
}

interface Shown {
  readonly csv: string;
  readonly author: string;
  /** The study that values are copied from. */
  readonly from?: StudyEntry | undefined;
  /** What is told of it. */
  readonly copied?: string;
  readonly table?: OwnValueTable;
  readonly nameProblem?: string | undefined;
  /** Given when the reader leaves: what the values do is then not worked out to its end. */
  readonly signal?: AbortSignal | undefined;
}

async function rendered(parts: Parts, entry: StudyEntry, shown: Shown): Promise<string> {
  const { studies, answers } = parts;
  const { csv, author, from, copied, table, nameProblem, signal } = shown;
  const problems = table?.problems ?? [];
  const isSound = table !== undefined && problems.length === 0;
  const balance = await answers.ask("balance", textOf(entry));
  const frame = { entry, balance, part: "assumptions", title: "Several own values" } as const;
  return renderPage(
    "own-values",
    workbenchPage(frame, {
      ...{ csv, author, isSound, readOnly: entry.isExample || mayOnlyRead() },
      href: `/studies/${entry.id}/own-values`,
      list: `/studies/${entry.id}/assumptions`,
      others: studies
        .list()
        .filter(({ id }) => id !== entry.id)
        .map(({ id, name }) => ({ value: id, label: name, chosen: id === from?.id })),
      copied,
      problems: [
        ...(nameProblem ? [nameProblem] : []),
        ...problems.map((each) => faultText(each, "The lines")),
      ],
      count: counted(table?.lines.length ?? 0, "own value"),
      effect: isSound ? await effectOf(parts, entry, { ...table, signal }) : undefined,
    }),
  );
}

/** What is in the box then, and what is told of it: lines that are there stay. */
function copiedFrom(from: StudyEntry, typed: string): Pick<Shown, "csv" | "copied"> {
  const csv = ownValueText(ownIn(from));
  if (csv === "") return { csv: typed, copied: `“${from.name}” has no own values to copy.` };
  if (typed.trim() !== "") {
    return { csv: typed, copied: "Nothing was copied: lines are in the box. Keep them first, or empty it." };
  }
  return { csv, copied: `The own values of “${from.name}” are in the box below. Nothing is saved yet.` };
}

/** What the values do, as far as the study can be computed. */
async function effectOf(
  { answers, studies }: Parts,
  entry: StudyEntry,
  { lines, text, signal }: OwnValueTable & Pick<Shown, "signal">,
) {
  const { fileName } = entry;
  const before = ownIn(entry);
  try {
    const values = lines.map(({ id, value }) => ({ id, value }));
    const names = ["As kept", "With all of them"] as const;
    const [effects, table] = await Promise.all([
      answers.ask("ownEffects", { text: entry.text, fileName, values }, signal),
      answers.ask("effect", { before: entry.text, text, fileName, names }, signal),
    ]);
    const units = unitsOf(entry, studies);
    const shown = lines.map(({ id, ...line }) => {
      const known = studies.assumptions.entries.get(id);
      const usual = known ? `${usualIn(known, units).value} (usual)` : "";
      return { ...line, before: before.get(id)?.value ?? usual };
    });
    return { table, rows: ownEffectTable(shown, effects), note: "" };
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    const note = "The values can be saved; their effect is shown once the study is complete.";
    return { table: undefined, rows: undefined, note };
  }
}

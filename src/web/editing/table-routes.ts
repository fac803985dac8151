import type { Express, Request, Response } from "express";
import multer from "multer";
import { z } from "zod";
import { textOf } from "../../app/answers/questions.js";
import type { StudyEntry } from "../../app/study-entry.js";
import { mayOnlyRead } from "../../app/visitor.js";
import { counted } from "../../counted.js";
import { draftOf } from "../../editor/draft.js";
import { childOf, itemsOf } from "../../editor/form-values.js";
import { labelOf } from "../../editor/labels.js";
import { edited } from "../../editor/study-text.js";
import { structureKindFields } from "../../editor/table/structure-columns.js";
import { readStructureTable, type StructureTable } from "../../editor/table/structure-table.js";
import { headsAllowed, templateOf } from "../../editor/table/template.js";
import { allowedCharacters, unseenIn } from "../../study/reading/characters.js";
import { largestStudyBytes } from "../../study/reading/read.js";
import { decodeStudy } from "../../study/reading/study-bytes.js";
import { authorOf, rememberAuthor } from "../author.js";
import { NotFoundError } from "../explain.js";
import type { StudyPages } from "../pages/study-pages.js";
import { workbenchPage } from "../pages/workbench-page.js";
import { renderPage } from "../render.js";
import { formIn } from "../sent-form.js";

const sent = z.object({
  kind: z.string().default(""),
  csv: z.string().default(""),
  author: z.string().trim().max(200, "at most 200 characters").default(""),
  act: z.enum(["check", "take"]).default("check"),
});

const upload = multer({
  storage: multer.memoryStorage(),
  limits: { fileSize: largestStudyBytes, fieldSize: largestStudyBytes, files: 1, fields: 8 },
});

/** Structures from a pasted table or a file: checked and shown first, and only sound lines are taken. */
export function addTables(
  app: Express,
  { studies, answers, find }: Pick<StudyPages, "studies" | "answers" | "find">,
): void {
  app.get("/studies/:id/structures/table", (request, response) => {
    const entry = find(request.params.id);
    return show(response, answers, entry, { author: authorOf(request), kind: "intake", csv: "" });
  });
  app.get("/studies/:id/structures/template/:file", (request, response) => {
    const { writing, document } = draftOf(...readText(find(request.params.id)));
    const kind = request.params.file.replace(/\.csv$/, "");
    if (!structureKindFields().has(kind)) throw new NotFoundError();
    response
      .type("csv")
      .set("Content-Disposition", `attachment; filename="${kind}.csv"`)
      .send(templateOf(kind, writing, document));
  });
  app.post("/studies/:id/structures/table", upload.single("file"), async (request, response) => {
    const entry = find(String(request.params.id));
    if (entry.isExample) throw new NotFoundError();
    const { act, ...form } = sentTable(request);
    const unseen = unseenIn(form.author);
    if (unseen !== undefined) {
      const problems = [`Your name: found ${unseen}; allowed: ${allowedCharacters}. Type it again.`];
      await show(response.status(400), answers, entry, {
        ...{ ...form, author: "" },
        table: { problems, lines: [], rest: form.csv },
      });
      return;
    }
    rememberAuthor(response, form.author);
    const { document } = draftOf(...readText(entry));
    const table = readStructureTable(form.csv, form.kind, document);
    if (act === "check") await show(response, answers, entry, { ...form, table });
    else await take(response, { studies, answers, entry }, { ...form, table });
  });
}

const readText = ({ text, fileName }: StudyEntry) => [text, fileName] as const;

function sentTable(request: Request) {
  const { kind, ...rest } = formIn(sent, request.body);
  if (!structureKindFields().has(kind)) throw new NotFoundError();
  const file = request.file ? decodeStudy(request.file.buffer, request.file.originalname) : "";
  return { ...rest, kind, csv: file === "" ? rest.csv : file };
}

interface TableForm {
  readonly author: string;
  readonly kind: string;
  readonly csv: string;
}

/** Keeps the sound lines in one revision; the others stay in the box, each with what is wrong. */
async function take(
  response: Response,
  { studies, answers, entry }: Pick<StudyPages, "studies" | "answers"> & { readonly entry: StudyEntry },
  form: TableForm & { table: StructureTable },
): Promise<void> {
  const { document } = draftOf(...readText(entry));
  const first = itemsOf(childOf(document, "structures")).length;
  const good = form.table.lines.filter(({ problems }) => problems.length === 0);
  const edits = good.map(({ structure }, index) => ({ at: ["structures", first + index], value: structure }));
  const note = `Structures: ${good.length} from a table`;
  const saved =
    good.length === 0
      ? entry
      : studies.save(entry.id, entry.revision, edited(entry.text, edits), {
          author: form.author,
          note,
          origin: "form",
        });
  if (form.table.rest === "" && good.length > 0) {
    response.redirect(303, `/studies/${entry.id}/edit/structures`);
    return;
  }
  const again = draftOf(...readText(saved)).document;
  const table = readStructureTable(form.table.rest, form.kind, again);
  await show(response, answers, saved, { ...form, csv: form.table.rest, table, taken: good.length });
}

async function show(
  response: Response,
  answers: StudyPages["answers"],
  entry: StudyEntry,
  { author, kind, csv, table, taken = 0 }: TableForm & { table?: StructureTable; taken?: number },
): Promise<void> {
  const kinds = [...structureKindFields().keys()].map((value) => ({
    value,
    label: labelOf(value),
    chosen: value === kind,
    template: `/studies/${entry.id}/structures/template/${value}.csv`,
  }));
  const { writing } = draftOf(...readText(entry));
  const bad = table?.lines.filter(({ problems }) => problems.length > 0) ?? [];
  const good = (table?.lines.length ?? 0) - bad.length;
  const view = {
    ...{ author, csv, kinds, bad, taken, readOnly: entry.isExample || mayOnlyRead() },
    href: `/studies/${entry.id}/structures/table`,
    listHref: `/studies/${entry.id}/edit/structures`,
    heads: headsAllowed(kind, writing),
    kindTitle: labelOf(kind),
    checked: table !== undefined,
    problems: table?.problems ?? [],
    good: counted(good, "line"),
    hasGood: good > 0,
    badCount: counted(bad.length, "line"),
    shown: table?.lines.filter(({ problems }) => problems.length === 0) ?? [],
    takenText: counted(taken, "line"),
  };
  const frame = {
    entry,
    balance: await answers.ask("balance", textOf(entry)),
    part: "structures",
    title: "Structures from a table",
  };
  response.set("Cache-Control", "no-store").send(renderPage("structure-table", workbenchPage(frame, view)));
}

import type { Express, Request } from "express";
import { type Answering, textOf } from "../../app/answers/questions.js";
import type { Studies } from "../../app/studies.js";
import type { StudyEntry } from "../../app/study-entry.js";
import { draftOf } from "../../editor/draft.js";
import { typicalIn } from "../../editor/typical/typical-edits.js";
import type { ReportPart } from "../../report/document/sections.js";
import { editionText } from "../../report/print/paper.js";
import type { Printer } from "../../report/print/printer.js";
import { studyZip } from "../../study/records/study-zip.js";
import { withFilePolicy } from "../access/security-headers.js";
import { readerSignal } from "../reader-gone.js";
import { renderPage } from "../render.js";
import { firstView } from "../start/first-view.js";
import { type AskLatest, latestIn, sendChance, sendReport, sendResults } from "./awaited-pages.js";
import { answersIn, listStates } from "./list-states.js";
import { listPage } from "./pages.js";
import { studyMenu } from "./study-menu.js";
import { unfinishedPage } from "./unfinished-page.js";
import { askFigures, askWithOdds, type OddsSource } from "./with-odds.js";

export interface StudyPages extends OddsSource {
  readonly studies: Studies;
  readonly answers: Answering;
  readonly printer: Printer;
  readonly find: (id: string | undefined) => StudyEntry;
}

/** The list, and of each study the results, the report and its files. */
export function addStudyPages(app: Express, parts: StudyPages): void {
  addUnfinished(app, parts);
  addPages(app, parts);
  addFiles(app, parts);
}

/** What needs a complete study says what is missing instead. */
function addUnfinished(app: Express, { studies, answers }: StudyPages): void {
  const pages = [
    { path: "/studies/:id", part: "results" },
    { path: "/studies/:id/report", part: "report" },
    { path: "/studies/:id/report.pdf", part: "pdf" },
    { path: "/studies/:id/method.pdf", part: "method" },
    { path: "/studies/:id/chance", part: "chance" },
    { path: "/studies/:id/plans", part: "plans" },
    { path: "/studies/:id/odds", part: "odds" },
    { path: "/studies/:id/search", part: "search" },
    { path: "/studies/:id/first", part: "first" },
    { path: "/studies/:id/forms", part: "forms" },
  ];
  for (const { path, part } of pages) {
    app.get(path, async (request, response, next) => {
      const entry = studies.find(String(request.params.id));
      const balance =
        entry && entry.state !== "deleted" ? await answers.ask("balance", textOf(entry)) : undefined;
      if (!entry || !balance || balance.line) {
        next();
        return;
      }
      response.status(part === "results" ? 200 : 409);
      response.send(renderPage("unfinished", unfinishedPage(entry, balance, part)));
    });
  }
}

const linksOf = ({ id, name }: Pick<StudyEntry, "id" | "name">) => ({
  study: studyMenu(id, name),
  back: "/",
  pdf: `/studies/${id}/report.pdf`,
  boardPdf: `/studies/${id}/report.pdf?part=board`,
  json: `/studies/${id}/results.json`,
  method: `/studies/${id}/method.pdf`,
});

function addPages(app: Express, parts: StudyPages): void {
  const { studies, answers, find, knownOdds } = parts;
  const missingIn = listStates(studies);
  app.get("/", async (_request, response) => {
    const found = await answersIn(parts, studies.list());
    response.send(renderPage("studies", listPage(studies, missingIn, found)));
  });
  app.get("/studies/:id", (request, response) => {
    const { id } = request.params;
    const firstOf = (entry: StudyEntry) => {
      if (typicalIn(draftOf(entry.text, entry.fileName).document).length === 0) return undefined;
      const document = studies.document(entry);
      return firstView({ entry, document, odds: knownOdds(entry) }, studies.assumptions.entries);
    };
    return sendResults({ ...latestIn(find, id), response, answers }, `/studies/${id}/report`, firstOf);
  });
  app.get("/studies/:id/chance", (request, response) =>
    sendChance({ ...latestIn(find, request.params.id), response, answers }),
  );
  app.get("/studies/:id/report", (request, response) => {
    const part = partAsked(request);
    const howOf = (entry: StudyEntry) => ({ links: linksOf(entry), odds: knownOdds(entry), part });
    const askReport: AskLatest<"report"> = (latest, signal) => askWithOdds(parts, "report", latest, signal);
    return sendReport({ ...latestIn(find, request.params.id), response, answers }, howOf, askReport);
  });
}

/** "?part=board" asks for the report without appendices. */
const partAsked = ({ query }: Request): ReportPart => (query.part === "board" ? "board" : "all");

function addFiles(app: Express, parts: StudyPages): void {
  const { printer, find, knownOdds } = parts;
  app.get("/studies/:id/report.pdf", async (request, response) => {
    const signal = readerSignal(response);
    const part = partAsked(request);
    const askedOf = (entry: StudyEntry) => ({
      ...{ ...textOf(entry), odds: knownOdds(entry), part, edition: editionText(entry) },
    });
    const latest = { ...latestIn(find, request.params.id), askedOf };
    const { entry, answer } = await askWithOdds(parts, "printable", latest, signal);
    const { body, settings } = answer;
    const pdf = await printer.print(body, settings, signal);
    withFilePolicy(response, "pdf")
      .type("pdf")
      .set(
        "Content-Disposition",
        `inline; filename="${entry.id}-${part === "board" ? "board-part" : "report"}.pdf"`,
      )
      .send(Buffer.from(pdf));
  });
  const figuresOf = (entry: StudyEntry) => ({ ...textOf(entry), odds: knownOdds(entry) });
  app.get("/studies/:id/results.json", async (request, response) => {
    const latest = { ...latestIn(find, request.params.id), askedOf: figuresOf };
    const { answer } = await askFigures(parts, latest, readerSignal(response));
    response.type("json").send(Buffer.from(answer));
  });
  app.get("/studies/:id/study", (request, response) => {
    const entry = find(request.params.id);
    response
      .type("text")
      .set("Content-Disposition", `attachment; filename="${entry.id}.yaml"`)
      .send(entry.text);
  });
  app.get("/studies/:id/study.zip", (request, response) => {
    const entry = find(request.params.id);
    response
      .type("zip")
      .set("Content-Disposition", `attachment; filename="${entry.id}.zip"`)
      .send(Buffer.from(studyZip(entry)));
  });
}

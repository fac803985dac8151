import { readFileSync } from "node:fs";
import { join } from "node:path";
import express, { type ErrorRequestHandler, type Express, type Request, type Response } from "express";
import { assets, fontFile, projectRoot } from "../report/assets.js";
import { linkedAssets, renderReport, renderReportBody } from "../report/html.js";
import type { ToldOdds } from "../report/odds-words.js";
import { editionText, printSettings } from "../report/paper.js";
import type { Printer } from "../report/printer.js";
import { resultsJson } from "../report/results.js";
import type { ReportPart } from "../report/sections.js";
import { toldOdds } from "../report/told-odds.js";
import { DeletedStudyError } from "../store/errors.js";
import type { Door } from "./access/door.js";
import { gate } from "./access/gate.js";
import { knownHostsOnly } from "./access/host-check.js";
import { securityHeaders, withFilePolicy } from "./access/security-headers.js";
import type { AccessSettings } from "./access/settings.js";
import { addSignIn } from "./access/sign-in-routes.js";
import { addApi } from "./api/routes.js";
import { addAssumptions, type Judge } from "./assumption-routes.js";
import { addCompare } from "./compare-routes.js";
import { addEditing } from "./edit-routes.js";
import { explain, NotFoundError } from "./explain.js";
import { addForms } from "./forms-routes.js";
import type { IssueParts } from "./issue-desk.js";
import { addIssues } from "./issue-routes.js";
import { addItems } from "./item-routes.js";
import { addKeeping } from "./keeping-routes.js";
import { listStandings } from "./list-standing.js";
import { addNewStudies } from "./new-study-routes.js";
import type { OddsDesk } from "./odds-desk.js";
import { addOdds, oddsQuestion } from "./odds-routes.js";
import { refuseOtherSites } from "./other-sites.js";
import { comparisonPage, listPage, problemPage } from "./pages.js";
import { ReaderGoneError, readerSignal } from "./reader-gone.js";
import { renderPage } from "./render.js";
import { addRevisions } from "./revision-routes.js";
import type { ShelfEntry } from "./shelf-reading.js";
import type { StudyShelf } from "./study-shelf.js";
import { addTables } from "./table-routes.js";
import { unfinishedPage } from "./unfinished-page.js";

export interface AppParts {
  readonly shelf: StudyShelf;
  readonly printer: Printer;
  readonly desk: OddsDesk;
  readonly judge: Judge;
  readonly issuing: Omit<IssueParts, "printer">;
  readonly access: { readonly door: Door; readonly settings: AccessSettings };
  /** Told of faults that are not the reader's. */
  readonly report: (error: unknown) => void;
}

/** The web application, apart from listening. */
export function createApp(parts: AppParts): Express {
  const app = express();
  guard(app, parts.access);
  addNewStudies(app, parts.shelf, () => new Date().toISOString().slice(0, 10));
  addUnfinished(app, parts);
  addPages(app, parts);
  addFiles(app, parts);
  addOdds(app, parts, (id) => findStudy(parts, id));
  const find = (id: string | undefined) => findStudy(parts, id);
  const reading = { ...parts, find, knownOdds: (entry: ShelfEntry) => knownOdds(entry, parts) };
  addForms(app, reading);
  addIssues(app, { ...reading, ...parts.issuing });
  addItems(app, parts.shelf, find);
  addTables(app, parts.shelf, find);
  addEditing(app, parts.shelf, find);
  addKeeping(app, parts.shelf);
  addRevisions(app, parts.shelf, find);
  addCompare(app, { shelf: parts.shelf, issues: parts.issuing.issues });
  addApi(app, parts.shelf, parts.report);
  addAssumptions(app, parts, find);
  app.use((_request, _response) => {
    throw new NotFoundError();
  });
  app.use(errorPages(parts));
  return app;
}

/** What comes before every page: which of them, for whom, and how a browser treats them. */
function guard(app: Express, { door, settings }: AppParts["access"]): void {
  app.set("query parser", "simple");
  app.set("trust proxy", settings.isSecure ? "loopback" : false);
  app.use(securityHeaders(settings), knownHostsOnly(settings), refuseOtherSites(settings));
  addAssets(app);
  app.use(gate(door));
  addSignIn(app, door, settings);
}

const pageScript = (name: string) => readFileSync(join(projectRoot, "dist", "web", "browser", name), "utf8");

function addAssets(app: Express): void {
  const asset = (path: string, type: string, read: () => string) =>
    app.get(path, (_request, response) => {
      response.type(type).set("Cache-Control", "public, max-age=3600").send(read());
    });
  asset("/assets/style.css", "css", () => assets().screenCss);
  asset("/assets/chart.js", "js", () => assets().chartLibrary);
  asset("/assets/svg-canvas.js", "js", () => assets().svgLibrary);
  asset("/assets/draw-charts.js", "js", () => assets().drawCharts);
  asset("/assets/workbench.js", "js", () => pageScript("workbench.js"));
  asset("/assets/await-answer.js", "js", () => pageScript("await-answer.js"));
  asset("/assets/narrow-table.js", "js", () => pageScript("narrow-table.js"));
  app.get("/assets/fonts/:name", (request, response) => {
    const path = fontFile(request.params.name);
    if (path === undefined) throw new NotFoundError();
    response.sendFile(path, { maxAge: "30d", immutable: true });
  });
}

function findStudy({ shelf }: AppParts, id: string | undefined): ShelfEntry {
  const entry = id === undefined ? undefined : shelf.find(id);
  if (!entry) throw new NotFoundError();
  if (entry.state === "deleted") throw new DeletedStudyError(entry);
  return entry;
}

const linksOf = ({ id }: Pick<ShelfEntry, "id">) => ({
  back: "/",
  study: `/studies/${id}`,
  report: `/studies/${id}/report`,
  pdf: `/studies/${id}/report.pdf`,
  boardPdf: `/studies/${id}/report.pdf?part=board`,
  json: `/studies/${id}/results.json`,
  odds: `/studies/${id}/odds`,
  source: `/studies/${id}/study`,
});

/** What needs a complete study says what is missing instead. */
function addUnfinished(app: Express, parts: AppParts): void {
  const pages = [
    { path: "/studies/:id", part: "results" },
    { path: "/studies/:id/report", part: "report" },
    { path: "/studies/:id/report.pdf", part: "pdf" },
    { path: "/studies/:id/odds", part: "odds" },
    { path: "/studies/:id/forms", part: "forms" },
  ];
  for (const { path, part } of pages) {
    app.get(path, (request, response, next) => {
      const entry = parts.shelf.find(String(request.params.id));
      const balance = entry && entry.state !== "deleted" ? parts.shelf.balance(entry) : undefined;
      if (!entry || !balance || balance.line) {
        next();
        return;
      }
      response.status(part === "results" ? 200 : 409);
      response.send(renderPage("unfinished", unfinishedPage(entry, balance.problems, part)));
    });
  }
}

function addPages(app: Express, parts: AppParts): void {
  const missingIn = listStandings(parts.shelf);
  app.get("/", (_request, response) => {
    response.send(renderPage("studies", listPage(parts.shelf, missingIn)));
  });
  app.get("/studies/:id", (request, response) => {
    const entry = findStudy(parts, request.params.id);
    response.send(renderPage("comparison", comparisonPage(entry, parts.shelf.run(entry), linksOf(entry))));
  });
  app.get("/studies/:id/report", (request, response) => {
    const entry = findStudy(parts, request.params.id);
    response.send(
      renderReport(
        parts.shelf.run(entry),
        linkedAssets,
        linksOf(entry),
        knownOdds(entry, parts),
        partAsked(request),
      ),
    );
  });
}

/** The odds that a reader had drawn before, for the report. */
function knownOdds(entry: ShelfEntry, { desk, shelf }: AppParts): ToldOdds | undefined {
  const odds = desk.known(oddsQuestion(entry, shelf));
  return odds && toldOdds(shelf.run(entry), odds);
}

/** "?part=board" asks for the report without appendices. */
const partAsked = ({ query }: Request): ReportPart => (query.part === "board" ? "board" : "all");

function addFiles(app: Express, parts: AppParts): void {
  app.get("/studies/:id/report.pdf", async (request, response) => {
    const entry = findStudy(parts, request.params.id);
    const run = parts.shelf.run(entry);
    const pdf = await parts.printer.print(
      renderReportBody(run, knownOdds(entry, parts), { part: partAsked(request) }),
      printSettings(run.document, editionText(entry)),
      readerSignal(response),
    );
    withFilePolicy(response, "pdf")
      .type("pdf")
      .set("Content-Disposition", `inline; filename="${entry.id}.pdf"`)
      .send(Buffer.from(pdf));
  });
  app.get("/studies/:id/results.json", (request, response) => {
    response.json(resultsJson(parts.shelf.run(findStudy(parts, request.params.id))));
  });
  app.get("/studies/:id/study", (request, response) => {
    const entry = findStudy(parts, request.params.id);
    response
      .type("text")
      .set("Content-Disposition", `attachment; filename="${entry.id}.yaml"`)
      .send(entry.text);
  });
}

function errorPages({ report }: AppParts): ErrorRequestHandler {
  return (error: unknown, request, response, _next) => {
    if (error instanceof ReaderGoneError) return;
    const told = explain(error);
    const { status, headers, title, problems, advice } = told;
    if (status === 500) report(error);
    response.set(headers);
    const wantsJson = request.path.endsWith(".json");
    send(response, status, wantsJson ? { title, problems, advice } : problemPage(told), wantsJson);
  };
}

function send(response: Response, status: number, body: object, asJson: boolean): void {
  response.status(status);
  if (asJson) response.json(body);
  else response.send(renderPage("problem", body));
}

import { readFileSync } from "node:fs";
import { join } from "node:path";
import express, { type ErrorRequestHandler, type Express, type Request, type Response } from "express";
import type { Answering } from "../app/answers/questions.js";
import type { IssueParts } from "../app/issuing.js";
import { type AskedRuns, resultOf, resultWithin } from "../app/runs.js";
import type { Studies } from "../app/studies.js";
import type { StudyEntry } from "../app/study-entry.js";
import { projectRoot } from "../project-root.js";
import { assets, fontFile } from "../report/document/assets.js";
import type { Printer } from "../report/print/printer.js";
import { DeletedStudyError } from "../store/errors.js";
import type { FuturesOdds, Odds } from "../study/odds/odds.js";
import type { Door } from "./access/door.js";
import { gate } from "./access/gate.js";
import { knownHostsOnly } from "./access/host-check.js";
import { securityHeaders } from "./access/security-headers.js";
import type { AccessSettings } from "./access/settings.js";
import { addSignIn } from "./access/sign-in-routes.js";
import { addApi } from "./api/routes.js";
import { addAssumptions, type Judge } from "./assumptions/assumption-routes.js";
import { addOwnValues } from "./assumptions/own-values-routes.js";
import { refuseWithoutBoundary } from "./broken-upload.js";
import { addEditing } from "./editing/edit-routes.js";
import { addItems } from "./editing/item-routes.js";
import { addTables } from "./editing/table-routes.js";
import { explain, NotFoundError } from "./explain.js";
import { refuseOtherSites } from "./other-sites.js";
import { leadNowhereElse } from "./own-address.js";
import { addCompare } from "./pages/compare-routes.js";
import { addForms } from "./pages/forms-routes.js";
import { addHelp } from "./pages/help-routes.js";
import { addIssues } from "./pages/issue-routes.js";
import { addKeeping } from "./pages/keeping-routes.js";
import { addManual } from "./pages/manual-routes.js";
import { addMethod } from "./pages/method-routes.js";
import { addNewStudies } from "./pages/new-study-routes.js";
import { addOdds, runQuestion } from "./pages/odds-routes.js";
import { problemPage, type Way } from "./pages/pages.js";
import { addRevisions } from "./pages/revision-routes.js";
import { addStudyPages } from "./pages/study-pages.js";
import { addWorked } from "./pages/worked-routes.js";
import { addPlans } from "./plans/plan-routes.js";
import { ReaderGoneError } from "./reader-gone.js";
import { addExports } from "./records/export-routes.js";
import { addRecords } from "./records/record-routes.js";
import { WaitingFiles } from "./records/waiting-files.js";
import { renderPage } from "./render.js";
import { addSearch, type Searcher } from "./search/search-routes.js";
import { addFirstEstimate } from "./start/first-routes.js";
import { addStart } from "./start/start-routes.js";

export interface AppParts {
  readonly studies: Studies;
  readonly answers: Answering;
  readonly printer: Printer;
  readonly runs: AskedRuns<Odds>;
  /** A first look at a study that is being typed. */
  readonly few: AskedRuns<FuturesOdds>;
  readonly judge: Judge;
  readonly search: Searcher;
  readonly issuing: Pick<IssueParts, "issues" | "now" | "key">;
  readonly access: { readonly door: Door; readonly settings: AccessSettings };
  /** Told of faults that are not the reader's. */
  readonly report: (error: unknown) => void;
}

/** The web application, apart from listening. */
export function createApp(parts: AppParts): Express {
  const app = express();
  guard(app, parts.access);
  const { studies, answers, runs } = parts;
  const find = (id: string | undefined) => findStudy(parts, id);
  const reading = {
    ...parts,
    find,
    knownOdds: ({ text }: StudyEntry) => runs.known(text),
    drawn: (entry: StudyEntry, signal: AbortSignal) => resultOf(runs, runQuestion(entry, studies), signal),
    drawnWithin: (milliseconds: number, entry: StudyEntry) =>
      resultWithin(milliseconds, runs, runQuestion(entry, studies)),
  };
  addNewStudies(app, parts, () => new Date().toISOString().slice(0, 10));
  addStart(app, parts, () => new Date().toISOString().slice(0, 10));
  addStudyPages(app, reading);
  addOdds(app, reading);
  addSearch(app, reading);
  addFirstEstimate(app, reading);
  addMethod(app, reading);
  addHelp(app);
  addManual(app);
  addForms(app, reading);
  addIssues(app, { ...reading, ...parts.issuing });
  addItems(app, studies, find);
  addTables(app, reading);
  const files = new WaitingFiles();
  addRecords(app, reading, files);
  addExports(app, reading, files);
  addEditing(app, reading);
  addKeeping(app, studies);
  addRevisions(app, reading);
  addCompare(app, { studies, answers, issues: parts.issuing.issues });
  addApi(app, { ...reading, needsKey: parts.access.door.isLocked });
  addAssumptions(app, reading);
  addOwnValues(app, reading);
  addWorked(app, reading);
  addPlans(app, reading);
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
  app.use(leadNowhereElse, securityHeaders(settings), knownHostsOnly(settings), refuseOtherSites(settings));
  addAssets(app);
  app.use(gate(door));
  addSignIn(app, door, settings);
  app.use(refuseWithoutBoundary);
}

/** Scripts of pages, and what they import. */
const pageScripts = [
  ...[
    "workbench.js",
    "drafts.js",
    "page-inputs.js",
    "listed-faults.js",
    "saved-answer.js",
    "kept-table.js",
    "paste-cells.js",
  ],
  ...["await-answer.js", "slow-ways.js", "live-balance.js", "narrow-table.js", "charts.js"],
];

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
  for (const name of pageScripts) asset(`/assets/${name}`, "js", () => pageScript(name));
  app.get("/assets/fonts/:name", (request, response) => {
    const path = fontFile(request.params.name);
    if (path === undefined) throw new NotFoundError();
    response.sendFile(path, { maxAge: "30d", immutable: true });
  });
}

function findStudy({ studies }: AppParts, id: string | undefined): StudyEntry {
  const entry = id === undefined ? undefined : studies.find(id);
  if (!entry) throw new NotFoundError();
  if (entry.state === "deleted") throw new DeletedStudyError(entry);
  return entry;
}

function errorPages({ report }: AppParts): ErrorRequestHandler {
  return (error: unknown, request, response, _next) => {
    if (error instanceof ReaderGoneError) return;
    const explained = explain(error);
    const { status, headers, title, problems, advice } = explained;
    if (status === 500) report(error);
    response.set(headers);
    const wantsJson = request.path.endsWith(".json");
    send(
      response,
      status,
      wantsJson ? { title, problems, advice } : problemPage(explained, wayOf(request)),
      wantsJson,
    );
  };
}

const wayOf = (request: Request): Way =>
  request.is("multipart/form-data") ? "file" : request.method === "POST" ? "form" : "address";

function send(response: Response, status: number, body: object, asJson: boolean): void {
  response.status(status);
  if (asJson) response.json(body);
  else response.send(renderPage("problem", body));
}

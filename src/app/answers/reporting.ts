import { renderReport, renderReportBody } from "../../report/document/html.js";
import { resultsView } from "../../report/document/main-view.js";
import { linkedAssets, renderPage } from "../../report/document/render-page.js";
import { reportView } from "../../report/document/report-view.js";
import { printSettings } from "../../report/print/paper.js";
import { planPicks } from "../../report/rack/plan-picks.js";
import { resultsJson } from "../../report/results/results.js";
import type { StudyRun } from "../../study/prepare/compute.js";
import type { AnswerContext, AnswersOf } from "./answer-context.js";
import type { StudyText } from "./questions.js";
import { reportRuns } from "./report-runs.js";

/** Runs that are kept for the next question about the same study: with their ranges they take some ten megabytes. */
const mostRuns = 4;

type Reported =
  | "results"
  | "chance"
  | "plans"
  | "report"
  | "printable"
  | "method"
  | "worked"
  | "methodToPrint"
  | "figures"
  | "plainForms"
  | "formsToPrint"
  | "printedForms";

/** What is told of a whole run. */
export function reporting(context: AnswerContext): AnswersOf<Reported> {
  const reportRun = reportRuns(context, mostRuns);
  const runOf = (study: StudyText | undefined) => study && reportRun({ ...study, odds: undefined }).run;
  return {
    results: (asked) => resultsBody(reportRun({ ...asked, odds: undefined }).run, asked.report),
    chance: (asked) => chanceBody(reportRun({ ...asked, odds: undefined }).run, asked.study),
    plans: ({ part, ...asked }) => planPicks(reportRun({ ...asked, odds: undefined }).run, part),
    report: (asked) => {
      const { run, printedOdds } = reportRun(asked);
      return bytesOf(renderReport(run, linkedAssets, asked.links, printedOdds, asked.part));
    },
    printable: (asked) => {
      const { run, printedOdds } = reportRun(asked);
      return {
        body: renderReportBody(run, printedOdds, { part: asked.part }),
        settings: printSettings(run.document, asked.edition),
      };
    },
    method: async ({ study, links }) =>
      bytesOf((await theMethod()).renderMethod(context.assumptions, linkedAssets, links, runOf(study))),
    worked: async ({ asked, ...study }) => {
      const { workedSheets } = await import("../../method/worked-sheets.js");
      return workedSheets(reportRun({ ...study, odds: undefined }).run, asked);
    },
    methodToPrint: async ({ study }) => {
      const { methodPrintSettings, renderMethodBody } = await theMethod();
      const run = runOf(study);
      return { body: renderMethodBody(context.assumptions, run), settings: methodPrintSettings(run) };
    },
    figures: (asked) => bytesOf(JSON.stringify(resultsJson(reportRun(asked).run, asked.odds))),
    plainForms: async (asked) =>
      (await theForms()).plainForms({ ...reportRun(asked), edition: asked.edition }),
    formsToPrint: async (asked) =>
      (await theForms()).formsToPrint({ ...reportRun(asked), edition: asked.edition }),
    printedForms: async ({ printed }) => (await theForms()).formsOfPrints(printed),
  };
}

/** Loaded when they are asked for: pages wait for less. */
const theMethod = () => import("../../method/method-document.js");
const theForms = () => import("../../forms/forms.js");

const resultsBody = (run: StudyRun, report: string): string =>
  renderPage("partials/results-body", { ...resultsView(run), links: { report } });

const chanceBody = (run: StudyRun, study: string): string =>
  renderPage("partials/chance-page", { ...reportView(run), links: { study, edit: `${study}/edit` } });

const encoder = new TextEncoder();
const bytesOf = (text: string): Uint8Array => encoder.encode(text);

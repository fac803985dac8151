import { formsOfPrints, formsToPrint, plainForms } from "../../forms/forms.js";
import { methodPrintSettings, renderMethod, renderMethodBody } from "../../method/method-document.js";
import { workedSheets } from "../../method/worked-sheets.js";
import { linkedAssets, renderPage, renderReport, renderReportBody } from "../../report/document/html.js";
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
    method: ({ study, links }) =>
      bytesOf(renderMethod(context.assumptions, linkedAssets, links, runOf(study))),
    worked: ({ asked, ...study }) => workedSheets(reportRun({ ...study, odds: undefined }).run, asked),
    methodToPrint: ({ study }) => {
      const run = runOf(study);
      return { body: renderMethodBody(context.assumptions, run), settings: methodPrintSettings(run) };
    },
    figures: (asked) => bytesOf(JSON.stringify(resultsJson(reportRun(asked).run, asked.odds))),
    plainForms: (asked) => plainForms({ ...reportRun(asked), edition: asked.edition }),
    formsToPrint: (asked) => formsToPrint({ ...reportRun(asked), edition: asked.edition }),
    printedForms: ({ printed }) => formsOfPrints(printed),
  };
}

const resultsBody = (run: StudyRun, report: string): string =>
  renderPage("partials/results-body", { ...reportView(run), links: { report } });

const chanceBody = (run: StudyRun, study: string): string =>
  renderPage("partials/chance-page", { ...reportView(run), links: { study, edit: `${study}/edit` } });

const encoder = new TextEncoder();
const bytesOf = (text: string): Uint8Array => encoder.encode(text);

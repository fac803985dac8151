import { formsOfPrints, formsToPrint, plainForms } from "../../forms/forms.js";
import { methodPrintSettings, renderMethod, renderMethodBody } from "../../method/method-document.js";
import { linkedAssets, renderPage, renderReport, renderReportBody } from "../../report/document/html.js";
import { reportView } from "../../report/document/report-view.js";
import { printSettings } from "../../report/print/paper.js";
import { resultsJson } from "../../report/results/results.js";
import type { StudyRun } from "../../study/prepare/compute.js";
import type { AnswersOf, Means } from "./means.js";
import type { StudyText } from "./questions.js";
import { toldRuns } from "./told-runs.js";

/** Runs that are kept for the next question about the same study: with their ranges they take some ten megabytes. */
const mostRuns = 4;

type Reported =
  | "results"
  | "report"
  | "printable"
  | "method"
  | "methodToPrint"
  | "figures"
  | "plainForms"
  | "formsToPrint"
  | "printedForms";

/** What is told of a whole run. */
export function reporting(means: Means): AnswersOf<Reported> {
  const toldRun = toldRuns(means, mostRuns);
  const runOf = (study: StudyText | undefined) => study && toldRun({ ...study, odds: undefined }).run;
  return {
    results: (asked) => resultsBody(toldRun({ ...asked, odds: undefined }).run, asked.report),
    report: (asked) => {
      const { run, told } = toldRun(asked);
      return bytesOf(renderReport(run, linkedAssets, asked.links, told, asked.part));
    },
    printable: (asked) => {
      const { run, told } = toldRun(asked);
      return {
        body: renderReportBody(run, told, { part: asked.part }),
        settings: printSettings(run.document, asked.edition),
      };
    },
    method: ({ study, links }) => bytesOf(renderMethod(means.assumptions, linkedAssets, links, runOf(study))),
    methodToPrint: ({ study }) => {
      const run = runOf(study);
      return { body: renderMethodBody(means.assumptions, run), settings: methodPrintSettings(run) };
    },
    figures: (asked) => bytesOf(JSON.stringify(resultsJson(toldRun({ ...asked, odds: undefined }).run))),
    plainForms: (asked) => plainForms({ ...toldRun(asked), edition: asked.edition }),
    formsToPrint: (asked) => formsToPrint({ ...toldRun(asked), edition: asked.edition }),
    printedForms: ({ printed }) => formsOfPrints(printed),
  };
}

const resultsBody = (run: StudyRun, report: string): string =>
  renderPage("partials/results-body", { ...reportView(run), links: { report } });

const encoder = new TextEncoder();
const bytesOf = (text: string): Uint8Array => encoder.encode(text);

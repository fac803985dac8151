import type { StudyRun } from "../../study/prepare/compute.js";
import { forXml } from "../../study/reading/characters.js";
import type { PrintedOdds } from "../odds/odds-words.js";
import { breakLongWords } from "../words/long-words.js";
import { isolateRightToLeft } from "../words/right-to-left.js";
import type { IssueView } from "./issue-view.js";
import { withPageReferences } from "./page-references.js";
import { type AssetSource, renderPage } from "./render-page.js";
import { reportView } from "./report-view.js";
import type { ReportPart } from "./sections.js";

/** The report: the same template and the same figures on screen, as a file and in print. */
export function renderReport(
  run: StudyRun,
  source: AssetSource,
  links: object = {},
  printedOdds?: PrintedOdds,
  part?: ReportPart,
): string {
  const view = { ...reportView(run, printedOdds, part), issue: undefined, assets: source, links };
  return readable(renderPage("report", view));
}

/** Which edition of a report: its part, and the issue that it is. */
interface Edition {
  readonly part?: ReportPart | undefined;
  readonly issue?: IssueView | undefined;
}

/** The report without its page, for a press that has style and scripts at hand. */
export function renderReportBody(
  run: StudyRun,
  printedOdds?: PrintedOdds,
  { part, issue }: Edition = {},
): string {
  const view = reportView(run, printedOdds, part);
  const body = renderPage("partials/report-body", { ...view, issue });
  return withPageReferences(readable(body), view.sections.contents);
}

/** Names of any length and any script. */
const readable = (html: string): string => forXml(isolateRightToLeft(breakLongWords(html)));

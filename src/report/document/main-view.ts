import { counted } from "../../counted.js";
import { appendixLetter } from "../../study/format/report-schema.js";
import type { StudyRun } from "../../study/prepare/compute.js";
import type { BoardView } from "../board/board.js";
import { boardView } from "../board/board-view.js";
import { type ComparisonView, comparisonView } from "../board/comparison-view.js";
import type { RowPicture } from "../pictures/row-picture.js";
import { structureRows } from "../pictures/structure-rows.js";
import { type ChartsView, chartsView } from "../print/charts.js";
import { type InfestationView, infestationView } from "../rack/infestation-view.js";
import { type ProgramView, programView } from "../ramp/program-view.js";
import { uncapitalised } from "../words/format.js";
import { type ReportContext, reportContext } from "./context.js";
import { method } from "./method.js";
import { type SectionsView, sectionsView } from "./sections.js";

/** What a report and the page of results both print. */
export interface MainView {
  readonly authority: string;
  readonly prepared: string;
  readonly preparedBy: string;
  /** Empty where the study does not say. */
  readonly checkedBy: string;
  readonly invented: boolean;
  readonly money: string;
  readonly board: BoardView;
  readonly infestation: InfestationView & { readonly picture: RowPicture };
  readonly program: ProgramView;
  readonly comparison: ComparisonView;
  readonly charts: ChartsView;
  readonly method: typeof method;
}

export function mainView(context: ReportContext): MainView {
  const { run } = context;
  const { authority, prepared, preparedBy, invented } = run.document.study;
  return {
    ...{ authority, prepared, preparedBy, invented },
    checkedBy: run.document.report.ask.checkedBy ?? "",
    money: moneyText(run),
    board: boardView(context),
    infestation: { ...infestationView(context), picture: structureRows(context) },
    program: programView(context),
    comparison: comparisonView(context),
    charts: chartsView(context),
    method,
  };
}

/** The page of results, at central values: a report's appendices take as long again, and nobody waits for them. */
export interface ResultsView extends MainView {
  readonly isInfested: boolean;
  readonly sections: SectionsView;
}

export function resultsView(run: StudyRun): ResultsView {
  const context = reportContext(run);
  const isInfested = context.infestedSince !== undefined;
  return { ...mainView(context), isInfested, sections: sectionsView(run.document, "board") };
}

function moneyText({ document }: StudyRun): string {
  const { money } = document;
  const rate = (money.discountRate.value * 100).toLocaleString("en-US", { maximumFractionDigits: 3 });
  const timing = money.timing === "mid-year" ? "in the middle" : "at the end";
  const origin = money.discountRate.planning
    ? "by the federal rule for water planning"
    : money.discountRateOrigin;
  const rises =
    money.escalation.length === 0
      ? ""
      : ` Some prices rise faster or slower than inflation: see appendix ${appendixLetter("money")}.`;
  return `All money is in ${money.currency} of ${money.priceYear}, without inflation. Present values are as of the start of ${money.startYear}, over ${counted(money.horizon, "year")}, at a real rate of ${rate}% a year (${uncapitalised(origin ?? "")}); each year's cost falls ${timing} of the year.${rises}`;
}

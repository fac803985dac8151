import { programVersion } from "../../assumptions/version.js";
import type { StudyRun } from "../../study/prepare/compute.js";
import { type SchedulesView, schedulesView } from "../board/schedules/schedules-view.js";
import { type OddsView, oddsView } from "../odds/odds-view.js";
import type { PrintedOdds } from "../odds/odds-words.js";
import { type FoundView, foundView } from "../papers/found-view.js";
import { type RequestView, requestView } from "../papers/request-view.js";
import { type HydraulicsView, hydraulicsView } from "../rack/hydraulics-view.js";
import { type LakeView, lakeView } from "../rack/lake-view.js";
import { type PlansView, plansView } from "../rack/plans-view.js";
import { type ChanceView, chanceView } from "../ramp/chance-view.js";
import { type DetectionView, detectionView } from "../ramp/detection-view.js";
import { type BoardSearch, boardSearch } from "../search/board-search.js";
import { type AppendixView, appendixView } from "./appendix-view.js";
import { reportContext } from "./context.js";
import { type MainView, mainView } from "./main-view.js";
import { leftOut } from "./method.js";
import { type MoneyView, moneyView } from "./money-view.js";
import { safetyCautions } from "./safety-cautions.js";
import { type ReportPart, type SectionsView, sectionsView } from "./sections.js";

/** Everything that the template prints. */
export interface ReportView extends MainView {
  readonly title: string;
  readonly priceYear: number;
  readonly horizon: number;
  readonly sections: SectionsView;
  readonly lake: LakeView;
  readonly detection: DetectionView | undefined;
  /** Absent where the lake is infested already. */
  readonly chance: ChanceView | undefined;
  /** Absent where the study has no search. */
  readonly search: BoardSearch | undefined;
  /** Absent where no odds were drawn. */
  readonly odds: OddsView | undefined;
  readonly moneyDetails: MoneyView;
  readonly appendix: AppendixView;
  readonly hydraulics: HydraulicsView;
  readonly plans: PlansView | undefined;
  readonly schedules: SchedulesView | undefined;
  /** Absent where the study says nothing of it, and where mussels are there. */
  readonly found: FoundView | undefined;
  /** Absent where the study says nothing to a budget office. */
  readonly request: RequestView | undefined;
  readonly leftOut: readonly string[];
  readonly cautions: readonly string[];
  /** The version whose method document has the relations behind it. */
  readonly version: string;
}

const known = new WeakMap<StudyRun, Omit<ReportView, "sections">>();

/**
 * What a report prints; that of a run without odds is worked out once, for its pages and its print.
 * @param part the board's part alone has no appendices
 */
export function reportView(run: StudyRun, printedOdds?: PrintedOdds, part: ReportPart = "all"): ReportView {
  const view = (printedOdds ? undefined : known.get(run)) ?? viewOf(run, printedOdds);
  if (!printedOdds) known.set(run, view);
  return { ...view, sections: sectionsView(run.document, part, emptyAppendices(view)) };
}

/** Appendices, and sections, of which this study has nothing to tell. */
function emptyAppendices(view: Omit<ReportView, "sections">): string[] {
  const contents = {
    budget: view.board.ask,
    odds: view.odds,
    plans: view.plans,
    "odds-tables": view.odds,
    schedules: view.schedules,
    detection: view.detection,
    chance: view.chance,
    request: view.request,
    found: view.found,
  };
  return Object.entries(contents).flatMap(([id, content]) => (content === undefined ? [id] : []));
}

function viewOf(run: StudyRun, printedOdds: PrintedOdds | undefined): Omit<ReportView, "sections"> {
  const context = reportContext(run, printedOdds?.odds);
  const { study, money } = run.document;
  return {
    ...mainView(context),
    title: study.name,
    priceYear: money.priceYear,
    horizon: money.horizon,
    lake: lakeView(context),
    detection: detectionView(context),
    chance: chanceView(context),
    search: boardSearch(context),
    odds: printedOdds && oddsView(printedOdds, context),
    moneyDetails: moneyView(context),
    appendix: appendixView(context, printedOdds?.odds.matters),
    hydraulics: hydraulicsView(context),
    plans: plansView(context),
    schedules: schedulesView(context),
    request: requestView(context),
    found: foundView(context),
    leftOut: leftOut(context),
    cautions: safetyCautions(context),
    version: programVersion(),
  };
}

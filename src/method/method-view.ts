import { join } from "node:path";
import type { AssumptionSet } from "../assumptions/entry.js";
import { examplesFolder } from "../report/document/assets.js";
import { consulted } from "../report/document/bases.js";
import { method } from "../report/document/method.js";
import type { ChartView, TableView } from "../report/words/view-types.js";
import { runStudy, type StudyRun } from "../study/prepare/compute.js";
import { readStudyFile } from "../study/reading/read.js";
import { coefficientsTable, planningRatesTable } from "./coefficients-table.js";
import { type DryingView, dryingView } from "./drying-view.js";
import { type HabitatView, habitatView } from "./habitat-view.js";
import { oddsMethod } from "./odds-method.js";
import { planCatalogue } from "./plan-catalogue.js";
import { type RelationGroupView, relationsView } from "./relations-view.js";
import { sheetContext } from "./sheet-context.js";
import { type WordingView, wordingView } from "./wording.js";
import { type WorkedExamples, workedExamples } from "./worked-example.js";

/** What the method document prints for every study alike. */
export interface MethodView {
  readonly steps: typeof method.steps;
  readonly relations: readonly RelationGroupView[];
  readonly drying: DryingView;
  readonly habitat: HabitatView;
  readonly worked: WorkedExamples;
  /** Name of the invented lake whose structures are worked. */
  readonly example: string;
  readonly wording: WordingView;
  /** How odds are drawn. */
  readonly odds: readonly string[];
  readonly plans: TableView;
  readonly coefficients: TableView;
  readonly planningRates: TableView;
  readonly sources: readonly { readonly key: string; readonly citation: string; readonly read: string }[];
}

/** What it has of one study beside that. */
interface OwnSheetsView {
  readonly name: string;
  readonly worked: WorkedExamples;
  /** Absent where the study takes the program's numbers of drying and frost. */
  readonly drying: DryingView | undefined;
}

export function methodView(assumptions: AssumptionSet): MethodView {
  const context = sheetContext(exampleOf(assumptions));
  return {
    steps: method.steps,
    relations: relationsView(),
    drying: dryingView(context),
    habitat: habitatView(assumptions),
    worked: workedExamples(context),
    example: context.run.document.lake.name,
    wording: wordingView(),
    odds: oddsMethod,
    plans: planCatalogue(assumptions),
    coefficients: coefficientsTable(assumptions),
    planningRates: planningRatesTable(assumptions),
    sources: [...assumptions.sources]
      .sort()
      .map(([key, source]) => ({ key, ...source, read: consulted[source.read] })),
  };
}

export function ownSheetsView(run: StudyRun): OwnSheetsView {
  const context = sheetContext(run);
  const hasOwnDrying = run.overrides.some(({ entry }) => entry.id.split(".")[0] === "drying");
  return {
    name: run.document.study.name,
    worked: workedExamples(context, { under: "plan" }),
    drying: hasOwnDrying ? ownDrying(dryingView(context)) : undefined,
  };
}

/** The lake of the worked examples, under the program's own assumptions and the few that it states itself. */
const exampleOf = (assumptions: AssumptionSet): StudyRun =>
  runStudy(readStudyFile(join(examplesFolder, "sorrel-bend.yaml")), assumptions);

/** The same charts and tables under ids of their own, since they stand in a document that has the program's. */
const ownDrying = ({ cool, warm, frost, fit, frostFit }: DryingView): DryingView => ({
  cool: ownChart(cool),
  warm: ownChart(warm),
  frost: ownChart(frost),
  fit: { ...fit, id: ownId(fit.id) },
  frostFit: { ...frostFit, id: ownId(frostFit.id) },
});

const ownChart = (chart: ChartView): ChartView => ({
  ...chart,
  id: ownId(chart.id),
  tableId: ownId(chart.tableId),
});

const ownId = (id: string) => `own-${id}`;

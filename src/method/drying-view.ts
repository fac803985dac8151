import type { ReportContext } from "../report/document/context.js";
import type { ChartView, TableView } from "../report/words/view-types.js";
import { coolChart, frostChart, warmChart } from "./drying-charts.js";
import { dryingModel, dryingTable, frostFitTable } from "./drying-fit.js";

export interface DryingView {
  readonly cool: ChartView;
  readonly warm: ChartView;
  readonly frost: ChartView;
  readonly fit: TableView;
  readonly frostFit: TableView;
}

/** How well the model's drying and frost agree with what was published. */
export function dryingView(context: ReportContext): DryingView {
  const model = dryingModel(context);
  return {
    cool: coolChart(model),
    warm: warmChart(model),
    frost: frostChart(model),
    fit: dryingTable(model),
    frostFit: frostFitTable(model),
  };
}

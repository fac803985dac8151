import type { ReportContext } from "../document/context.js";
import type { TableView } from "../words/view-types.js";
import { pipesTable } from "./pipes-table.js";
import { pumpsTable } from "./pumps-table.js";
import { racksTable } from "./racks-table.js";
import { serviceLinesTable } from "./service-lines-table.js";

/** What carries water, clean and if left to foul, so that it can be checked by hand; no table for what is not there. */
export interface HydraulicsView {
  readonly tables: readonly TableView[];
}

export function hydraulicsView(context: ReportContext): HydraulicsView {
  const tables = [pipesTable, pumpsTable, serviceLinesTable, racksTable].map((make) => make(context));
  return { tables: tables.filter((each) => each !== undefined) };
}

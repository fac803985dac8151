import type { ReportContext } from "./context.js";
import { pipesTable } from "./pipes-table.js";
import { pumpsTable } from "./pumps-table.js";
import { racksTable } from "./racks-table.js";
import { serviceLinesTable } from "./service-lines-table.js";
import type { TableView } from "./view-types.js";

/** What carries water, clean and if left to foul, so that it can be checked by hand; no table for what is not there. */
export interface HydraulicsView {
  readonly tables: readonly TableView[];
}

export function hydraulicsView(context: ReportContext): HydraulicsView {
  const tables = [pipesTable, pumpsTable, serviceLinesTable, racksTable].map((make) => make(context));
  return { tables: tables.filter((each) => each !== undefined) };
}

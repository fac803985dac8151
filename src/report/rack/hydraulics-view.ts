import { counted } from "../../counted.js";
import type { TracedStructure } from "../../study/traced/traced-structure.js";
import type { ReportContext } from "../document/context.js";
import type { TableView } from "../words/view-types.js";
import { pipesTable } from "./pipes-table.js";
import { pumpsTable } from "./pumps-table.js";
import { racksTable } from "./racks-table.js";
import { serviceLinesTable } from "./service-lines-table.js";
import { toldStructures } from "./told-structures.js";

/** What carries water, clean and if left to foul, so that it can be checked by hand; no table for what is not there. */
export interface HydraulicsView {
  readonly tables: readonly TableView[];
  /** Empty where the tables have every structure. */
  readonly note: string;
  /** Those of all structures, for the tables as files; none where print has them. */
  readonly every: readonly TableView[];
}

export function hydraulicsView(context: ReportContext): HydraulicsView {
  const { told, others } = toldStructures(context);
  const all = context.traced.structures;
  return {
    tables: tablesOf(told, context),
    note:
      others.length === 0
        ? ""
        : `Of ${counted(all.length, "structure")}, the ${told.length} with the highest expected cost are shown; the tables as files have all.`,
    every:
      others.length === 0
        ? []
        : tablesOf(all, context).map((table) => ({
            ...table,
            id: table.id.replace("table-", "table-every-"),
          })),
  };
}

const tablesOf = (structures: readonly TracedStructure[], context: ReportContext): TableView[] =>
  [pipesTable, pumpsTable, serviceLinesTable, racksTable]
    .map((make) => make(context, structures))
    .filter((each) => each !== undefined);

import type { Alteration } from "../../assumptions/entry.js";
import { programVersion } from "../../assumptions/version.js";
import type { AssumptionId } from "../../model/register/register.js";
import type { ReportContext } from "../../report/document/context.js";
import { number, times, type Worked } from "./formula.js";
import { type Grid, grid } from "./grid.js";
import { type SheetDraft, text, value } from "./sheet.js";

/** The assumptions, for sheets that link to them. */
export interface AssumptionSheet {
  readonly draft: SheetDraft;
  /** The value that the study uses. */
  readonly used: (id: AssumptionId) => Worked;
  /** The value of the files. */
  readonly filed: (id: string) => Worked | undefined;
  /** Links the value used of those that stand among the inputs to them. */
  readonly link: (id: AssumptionId, formula: Worked) => void;
}

const columns = { value: 2, factor: 7, used: 8 };
const firstRow = 4;
const heads = [
  ...["Number", "Assumption", "Value", "Low", "High", "Unit", "Prices of", "Price factor", "Used", "Basis"],
  ...["Source", "Note"],
];

/** Every assumption used: as its source has it, what it was multiplied by, and as it was used. */
export function assumptionSheet(context: ReportContext): AssumptionSheet {
  const { run, traced } = context;
  const sheet = grid("Assumptions");
  const ids = [...run.usedAssumptions].sort().filter((id) => run.assumptions.entries.has(id));
  sheet.put(0, 0, text("Every assumption used", "title"));
  sheet.put(1, 0, text(introduction, "note"));
  sheet.putRow(
    firstRow - 1,
    heads.map((each) => text(each, "head")),
  );
  ids.forEach((id, index) => {
    writeEntry(sheet, firstRow + index, id, context);
  });
  const rowOf = (id: string) => firstRow + ids.indexOf(id);
  return {
    draft: sheet.draft({ widths: [9, 40, 12, 12, 12, 12, 10, 12, 14, 18, 60, 60], headRows: firstRow }),
    used: (id) => (ids.includes(id) ? sheet.at(rowOf(id), columns.used) : number(traced.used(id))),
    filed: (id) => (ids.includes(id) ? sheet.at(rowOf(id), columns.value) : undefined),
    link: (id, formula) => {
      if (ids.includes(id)) sheet.put(rowOf(id), columns.used, value(formula, "plain"));
    },
  };
}

const introduction =
  "Used: value × price factor, or the operator’s own value in its place; where it is a formula of the sheet of inputs, change it there. All other values are read by the program: growth and plans follow them in the study alone.";

function writeEntry(
  sheet: Grid,
  row: number,
  id: string,
  { run, assumptionNumber }: Pick<ReportContext, "run" | "assumptionNumber">,
): void {
  const entry = run.assumptions.entries.get(id);
  if (!entry) return;
  const override = run.overrides.find((each) => each.entry.id === id);
  sheet.putRow(row, [
    text(assumptionNumber(id)),
    text(id),
    value(entry.value, "plain"),
    value(entry.low, "plain"),
    value(entry.high, "plain"),
    text(entry.unit === "1" ? "" : entry.unit),
    entry.priceYear === undefined ? text("") : value(entry.priceYear, "whole"),
    value(run.prices.factorOf(entry), "factor"),
  ]);
  const filed = times(sheet.at(row, columns.value), sheet.at(row, columns.factor));
  sheet.put(row, columns.used, value(override ? override.value : filed, "plain"));
  sheet.putRow(
    row,
    [
      text(override ? "own value" : entry.basis),
      text(override?.reason ?? run.assumptions.sources.get(entry.source)?.citation ?? entry.source),
      text(entry.note),
    ],
    columns.used + 1,
  );
}

/** The operator's own values, with their reasons. */
export function overrideSheet(
  { run }: Pick<ReportContext, "run">,
  { filed }: Pick<AssumptionSheet, "filed">,
): SheetDraft {
  const ownHeads = [
    "Assumption",
    "Own value",
    "Project's value",
    "Unit",
    "Reason",
    "Within the stated range",
  ];
  return {
    name: "Overrides",
    widths: [40, 20, 16, 12, 70, 14],
    headRows: 3,
    rows: [
      [text("Own values in place of the project's assumptions", "title")],
      [text(run.overrides.length === 0 ? "None." : "", "note")],
      ownHeads.map((each) => text(each, "head")),
      ...run.overrides.map(({ entry, text: typed, reason, outsideRange }) => [
        text(entry.id),
        text(typed),
        value(filed(entry.id) ?? entry.value, "plain"),
        text(entry.unit === "1" ? "" : entry.unit),
        text(reason),
        text(outsideRange ? "no" : "yes"),
      ]),
      ...alterationRows(run.assumptions.alterations),
    ],
  };
}

/** What was altered in the folder of assumptions, where no study says why. */
function alterationRows(alterations: readonly Alteration[]): SheetDraft["rows"] {
  if (alterations.length === 0) return [];
  return [
    [],
    [text(`Not as version ${programVersion()} of the program ships it`, "title")],
    ["Altered in the folder of assumptions", "Used here", "As shipped"].map((each) => text(each, "head")),
    ...alterations.map(({ what, found, shipped }) => [text(what), text(found), text(shipped)]),
  ];
}

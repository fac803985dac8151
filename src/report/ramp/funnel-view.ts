import { counted } from "../../counted.js";
import type { OptionResult } from "../../model/option.js";
import type { ClassFunnel } from "../../model/program/arrivals.js";
import type { ReportContext } from "../document/context.js";
import { percent, significant } from "../words/format.js";
import { onlyFollows } from "../words/option-kind.js";
import { groupRow, head, num, row, type TableView } from "../words/view-types.js";

export interface FunnelView {
  /** Of the year's launches, what the station does with them. */
  readonly boats: TableView;
  /** Of the fouled ones, how many slip through, by class. */
  readonly fouled: TableView;
}

export function funnelView(context: ReportContext, results: readonly OptionResult[]): FunnelView {
  const options = results.filter((result) => !onlyFollows(result));
  return { boats: boatsTable(options), fouled: fouledTable(options, context) };
}

const boats = (value: number) => significant(value, value < 100 ? 2 : 3);

function totalOf({ arrivals }: OptionResult, read: (each: ClassFunnel) => number): number {
  return arrivals.classes.reduce((sum, each) => sum + read(each), 0);
}

const stations = [
  ["Launches", (each) => each.launches],
  ["Pass with a seal", (each) => each.sealed],
  ["Checked", (each) => each.checked],
  ["Held for full inspection", (each) => each.setAsideInAll],
  ["Washed", (each) => each.washed],
  ["Held to dry", (each) => each.held],
  ["Turned away", (each) => each.refused],
] as const satisfies ReadonlyArray<readonly [string, (each: ClassFunnel) => number]>;

function boatsTable(options: readonly OptionResult[]): TableView {
  return {
    id: "table-boats",
    caption: "A year of launches through each option’s stations",
    head: head("Option", ...stations.map(([name]) => num(name))),
    rows: options.map((result) =>
      row(result.option.name, ...stations.map(([, read]) => num(boats(totalOf(result, read))))),
    ),
    note: "Boats a year. Checked: met in open hours and looked at. Held for full inspection: declared risky or found so by the quick check, and clean boats flagged by mistake.",
  };
}

function fouledTable(options: readonly OptionResult[], { comparison }: ReportContext): TableView {
  const { classes } = comparison.input.boats;
  return {
    id: "table-funnel",
    caption: "The fouled boats among them, and those that slip through",
    head: head(
      "Option and class",
      num("Fouled at the ramp"),
      num("Held for full inspection"),
      num("Slip through"),
      num("Chance a year"),
    ),
    rows: options.flatMap((result) => [
      groupRow(result.option.name),
      ...result.arrivals.classes
        .filter(({ fouled }) => fouled > 0)
        .map(({ vesselClass, fouled, setAside, slipThrough }) =>
          row(vesselClass.name, num(boats(fouled)), num(boats(setAside)), num(boats(slipThrough)), num("")),
        ),
      row(
        `All ${counted(classes.length, "class", "classes")}`,
        num(boats(totalOf(result, ({ fouled }) => fouled))),
        num(boats(totalOf(result, ({ setAside }) => setAside))),
        num(`${boats(result.arrivals.slipThrough)}${rangeText(result.arrivals.slipThroughRange)}`),
        num(percent(result.hazard)),
      ),
    ]),
    note: "Fouled: with mussels on the boat, dead or alive. In brackets, what slips through if inspection and wash miss independently, and if they miss the same boats. Chance a year: of infestation, with other pathways. Classes of which none is fouled are left out.",
  };
}

function rangeText({ independent, dependent }: { independent: number; dependent: number }): string {
  return independent === dependent ? "" : ` (${boats(independent)}–${boats(dependent)})`;
}

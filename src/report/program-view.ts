import { amountOf, type CostLine, type Money } from "../model/money/line.js";
import type { OptionResult } from "../model/option.js";
import { rampLines } from "./at-the-ramp.js";
import { budgetTable } from "./budget-table.js";
import type { ReportContext } from "./context.js";
import { coverageTables, trafficTable } from "./coverage-view.js";
import { capitalised, lineDimensions } from "./format.js";
import { type FunnelView, funnelView } from "./funnel-view.js";
import { scheduleNameOf } from "./option-kind.js";
import { type StationView, stationViews } from "./staffing-view.js";
import { vesselClassesTable } from "./vessel-classes-view.js";
import { groupRow, head, num, type RowView, row, type TableView } from "./view-types.js";

export interface ProgramView {
  readonly heading: string;
  /** Absent where the lake is infested: what boats carry no longer matters. */
  readonly classes: TableView | undefined;
  /** Absent where the lake is infested, or no option has steps: no chance of infestation is lowered. */
  readonly funnel: FunnelView | undefined;
  readonly cost: TableView;
  /** Absent where the lake is infested, or the requested option has no program. */
  readonly budget: TableView | undefined;
  readonly stepsNote: string;
  /** Absent where the study gives no traffic. */
  readonly traffic: TableView | undefined;
  /** One for each option that gives its open hours. */
  readonly coverage: readonly TableView[];
  /** A line for each option with steps: its coverage, and what its stations need. */
  readonly atTheRamp: readonly string[];
  /** One for each option whose study gives its station. */
  readonly stations: readonly StationView[];
}

export const allOptions = ({ comparison }: ReportContext): OptionResult[] => [
  comparison.baseline,
  ...comparison.options.map(({ result }) => result),
];

export function programView(context: ReportContext): ProgramView {
  const hasSteps = context.comparison.options.some(({ result }) => result.option.steps !== undefined);
  const funnel =
    context.infestedSince === undefined && hasSteps ? funnelView(context, allOptions(context)) : undefined;
  return {
    heading: hasSteps ? "At the ramp: the program options" : "The options and what they cost",
    classes: context.infestedSince === undefined ? vesselClassesTable(context) : undefined,
    funnel,
    cost: costTable(context),
    budget: budgetTable(context),
    stepsNote: stepsNote(context),
    traffic: trafficTable(context),
    coverage: coverageTables(context),
    atTheRamp: rampLines(context),
    stations: stationViews(context),
  };
}

function stepsNote({ run }: ReportContext): string {
  return run.document.options
    .flatMap((option) => (option.steps ? [`${option.name}: ${option.steps.origin}.`] : []))
    .join(" ");
}

function costTable(context: ReportContext): TableView {
  return {
    id: "table-program-cost",
    caption: `${context.infestedSince === undefined ? "Cost of each option in a year with a clean lake" : "Cost of each option in a year in which it runs in full"}, prices of ${context.priceYear}`,
    head: head("Line", num("Quantity"), "Unit", num("Unit rate"), num("A year")),
    rows: allOptions(context).flatMap((result) => optionRows(result, context)),
    note: costNote(context),
  };
}

function costNote(context: ReportContext): string {
  const options = allOptions(context);
  const notes = [
    options.some(({ option }) => option.equipment.length > 0)
      ? "Equipment is shown at its yearly capital recovery over its life at the study's rate."
      : "",
    options.some(({ option }) => option.fees.length > 0) ? "Fees are revenue." : "",
    options.some(({ option }) => option.schedule !== undefined)
      ? "Following a schedule is costed against the levels as operated; amounts with a minus are saved."
      : "",
  ];
  return notes.filter(Boolean).join(" ");
}

function optionRows(result: OptionResult, context: ReportContext): RowView[] {
  const { option, programLines, programPerYear, schedule, schedulePerYear } = result;
  const followed = scheduleNameOf(result);
  const when = context.infestedSince === undefined ? "each year once the lake is infested" : "each year";
  return [
    groupRow(option.name),
    ...programLines.map((line) => lineRow(line, context)),
    sumRow(programPerYear, context),
    ...(followed === undefined
      ? []
      : [
          groupRow(`${option.name}: following “${followed}”, ${when}`),
          ...schedule.operating.map((line) => lineRow(line, context)),
          sumRow(schedulePerYear, context),
        ]),
  ];
}

function lineRow(line: CostLine, { format }: ReportContext): RowView {
  const { quantity, rate, unit } = lineDimensions[line.quantityKind];
  return row(
    capitalised(line.what),
    num(format.number(line.quantity, quantity)),
    unit ?? format.unit(quantity),
    num(format.rate(format.display(line.unitRate, rate))),
    num(format.exactMoney(amountOf(line))),
  );
}

const sumRow = (sum: Money, { format }: ReportContext) =>
  row("Sum", num(""), "", num(""), num(format.exactMoney(sum)));

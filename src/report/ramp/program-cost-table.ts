import { counted } from "../../counted.js";
import { sumOf } from "../../lists.js";
import type { Money } from "../../model/money/decimal.js";
import type { CostLine } from "../../model/money/line.js";
import type { ProgramLine } from "../../model/program/cost.js";
import type { StudyDocument } from "../../study/format/schema.js";
import type { GroupSum, ProgramSums } from "../../study/traced/program-sums.js";
import type { TracedOption } from "../../study/traced/traced-option.js";
import { allOptions, type ReportContext } from "../document/context.js";
import { carrying } from "../print/carried-totals.js";
import { capitalised, lineDimensions, significant } from "../words/format.js";
import { groupNames, togetherText } from "../words/line-groups.js";
import { scheduleNameOf } from "../words/option-kind.js";
import { groupRow, head, num, type RowView, row, subtotalRow, type TableView } from "../words/view-types.js";

/** A row, and the amount in it unless it is a heading or a sum. */
interface AmountRow {
  readonly row: RowView;
  readonly cents?: number;
}

const yearlyColumn = 5;

/** Lines of following a schedule for which a report has room. */
const mostLines = 15;

/** What a year of each option costs, line by line in groups; printed to the cent, so that lines add up as printed. */
export const programCostTable = (context: ReportContext): TableView =>
  tableOf(context, mostLines, "table-program-cost");

/** With every line, for the tables as files; absent where print has them. */
export const everyProgramCostTable = (context: ReportContext): TableView | undefined =>
  context.traced.options.every(({ result }) => result.schedule.operating.length <= mostLines)
    ? undefined
    : tableOf(context, Number.POSITIVE_INFINITY, "table-every-program-cost");

function tableOf(context: ReportContext, most: number, id: string): TableView {
  const { infestedSince, priceYear, run } = context;
  const { currency } = run.document.money;
  const rows = context.traced.options.flatMap((option) => optionRows(option, context, most));
  return {
    id,
    caption: `${infestedSince === undefined ? "Cost of each option in a year with a clean lake" : "Cost of each option in a year in which it runs in full"}, ${currency}, prices of ${priceYear}`,
    head: head("Group", "Line", num("Quantity"), "Unit", num("Unit rate"), num("A year")),
    ...carrying(
      rows.map(({ row: each }) => each),
      {
        columns: [yearlyColumn],
        amounts: rows.map(({ cents }) => (cents === undefined ? undefined : [cents])),
        text: context.format.cents,
        byGroup: true,
      },
    ),
    note: costNote(context),
  };
}

function costNote(context: ReportContext): string {
  const options = allOptions(context).map(({ option }) => option);
  const notes = [
    options.some(({ equipment }) => equipment.length > 0)
      ? "Equipment is shown at its yearly capital recovery over its life at the study's rate, beside what it costs to run."
      : "",
    options.some(({ fees }) => fees.length > 0) ? "Fees are revenue." : "",
    options.some(({ otherRevenue = [] }) => otherRevenue.length > 0)
      ? "Grants and contributions count as revenue, whoever pays them."
      : "",
    options.some(({ demandLoss }) => demandLoss !== undefined)
      ? "Payments are those left after the stated loss of demand."
      : "",
    options.some(({ schedule }) => schedule !== undefined)
      ? "Following a schedule is costed against the levels as operated; negative amounts are saved."
      : "",
    "Amounts are rounded to the cent once, from unit rates that are not rounded.",
    originsText(context.run.document.options),
  ];
  return notes.filter(Boolean).join(" ");
}

/** Where amounts come from, each origin once with the lines that have it. */
function originsText(options: StudyDocument["options"]): string {
  const named = options.flatMap(({ staff, equipment, yearly, otherRevenue, demandLoss }) => [
    ...[...staff, ...equipment, ...yearly, ...otherRevenue],
    ...(demandLoss ? [{ name: "Loss of demand", origin: demandLoss.origin }] : []),
  ]);
  const lines = new Map<string, Set<string>>();
  for (const { name, origin } of named) {
    if (origin !== undefined) lines.set(origin, (lines.get(origin) ?? new Set()).add(name));
  }
  const texts = [...lines].map(([origin, names]) => `${[...names].join(", ")}: ${origin}.`);
  return texts.length === 0 ? "" : `Origins. ${texts.join(" ")}`;
}

function optionRows({ result, program }: TracedOption, context: ReportContext, most: number): AmountRow[] {
  const { option, schedule, schedulePerYear } = result;
  const followed = scheduleNameOf(result);
  const when = context.infestedSince === undefined ? "each year once the lake is infested" : "each year";
  return [
    { row: groupRow(option.name) },
    ...programRows(program, context),
    ...(followed === undefined
      ? []
      : [
          { row: groupRow(`${option.name}: following “${followed}”, ${when}`) },
          ...scheduleRows(schedule.operating, context, most),
          sumRow("Sum", schedulePerYear, context),
        ]),
  ];
}

const programRows = ({ costs, cost, revenue, total }: ProgramSums, context: ReportContext): AmountRow[] => [
  ...costs.flatMap((each) => rowsOfGroup(each, context)),
  ...(revenue.length === 0 ? [] : [sumRow("Cost before fees and other revenue", cost, context)]),
  ...revenue.flatMap((each) => rowsOfGroup(each, context)),
  sumRow("Sum", total, context),
];

/** The lines of a group, the first with its name, and their subtotal where they are several. */
function rowsOfGroup({ group, lines, total }: GroupSum, context: ReportContext): AmountRow[] {
  const rows = lines.map((line, index) => programRow(line, index === 0 ? groupNames[group] : "", context));
  return lines.length === 1 ? rows : [...rows, sumRow(togetherText(group), total, context)];
}

/** Quantities in full, since an author typed them. */
function programRow(line: ProgramLine, group: string, context: ReportContext): AmountRow {
  const { quantity, unit } = lineDimensions[line.quantityKind];
  const typed = significant(context.format.display(line.quantity, quantity), 9);
  return lineRow(line, context, {
    group,
    quantity: typed,
    unit: line.unit ?? unit ?? context.format.unit(quantity),
  });
}

/** The largest amounts in their order, the others together. */
function scheduleRows(lines: readonly CostLine[], context: ReportContext, most: number): AmountRow[] {
  const largest = new Set(
    lines.toSorted((one, other) => Math.abs(other.cents) - Math.abs(one.cents)).slice(0, most),
  );
  const shown = lines.filter((line) => largest.has(line)).map((line) => scheduleRow(line, context));
  const others = lines.filter((line) => !largest.has(line));
  if (others.length === 0) return shown;
  const cents = sumOf(others.map((line) => line.cents));
  const name = `${counted(others.length, "smaller line")}, in every-program-cost.csv of the tables as files`;
  return [...shown, { row: row("", name, num("–"), "", num("–"), num(context.format.cents(cents))), cents }];
}

function scheduleRow(line: CostLine, context: ReportContext): AmountRow {
  const { quantity, unit } = lineDimensions[line.quantityKind];
  const { format } = context;
  return lineRow(line, context, {
    group: "",
    quantity: format.number(line.quantity, quantity),
    unit: unit ?? format.unit(quantity),
  });
}

function lineRow(
  line: CostLine,
  { format }: ReportContext,
  { group, quantity, unit }: { group: string; quantity: string; unit: string },
): AmountRow {
  const { rate } = lineDimensions[line.quantityKind];
  const cells = row(
    group,
    capitalised(line.what),
    num(quantity),
    unit,
    num(format.rate(format.display(line.unitRate, rate))),
    num(format.cents(line.cents)),
  );
  return { row: cells, cents: line.cents };
}

function sumRow(text: string, sum: Money, { format }: ReportContext): AmountRow {
  return { row: subtotalRow("", text, num(""), "", num(""), num(format.moneyInCents(sum))) };
}

import { type CostLine, totalOf } from "../../model/money/line.js";
import type { OptionResult } from "../../model/option.js";
import type { ProgramLine } from "../../model/program/cost.js";
import { byGroup, type Grouped } from "../../model/program/groups.js";
import type { StudyDocument } from "../../study/format/schema.js";
import { allOptions, type ReportContext } from "../document/context.js";
import { carrying } from "../print/carried.js";
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

/** What a year of each option costs, line by line in groups; printed to the cent, so that lines add up as printed. */
export function programCostTable(context: ReportContext): TableView {
  const { infestedSince, priceYear, run } = context;
  const { currency } = run.document.money;
  const rows = allOptions(context).flatMap((result) => optionRows(result, context));
  return {
    id: "table-program-cost",
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
      ? "Grants and contributions count as revenue, whoever bears them."
      : "",
    options.some(({ demandLoss }) => demandLoss !== undefined)
      ? "Payments are those left after the stated loss of demand."
      : "",
    options.some(({ schedule }) => schedule !== undefined)
      ? "Following a schedule is costed against the levels as operated; amounts with a minus are saved."
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

function optionRows(result: OptionResult, context: ReportContext): AmountRow[] {
  const { option, programLines, schedule } = result;
  const followed = scheduleNameOf(result);
  const when = context.infestedSince === undefined ? "each year once the lake is infested" : "each year";
  return [
    { row: groupRow(option.name) },
    ...programRows(programLines, context),
    ...(followed === undefined
      ? []
      : [
          { row: groupRow(`${option.name}: following “${followed}”, ${when}`) },
          ...schedule.operating.map((line) => scheduleRow(line, context)),
          sumRow("Sum", schedule.operating, context),
        ]),
  ];
}

function programRows(lines: readonly ProgramLine[], context: ReportContext): AmountRow[] {
  const costs = lines.filter(({ type }) => type !== "revenue");
  const revenue = lines.filter(({ type }) => type === "revenue");
  return [
    ...groupedRows(costs, context),
    ...(revenue.length === 0 ? [] : [sumRow("Cost before fees and other revenue", costs, context)]),
    ...groupedRows(revenue, context),
    sumRow("Sum", lines, context),
  ];
}

const groupedRows = (lines: readonly ProgramLine[], context: ReportContext): AmountRow[] =>
  byGroup(lines).flatMap((each) => rowsOfGroup(each, context));

/** The lines of a group, the first with its name, and their subtotal where they are several. */
function rowsOfGroup({ group, lines }: Grouped<ProgramLine>, context: ReportContext): AmountRow[] {
  const rows = lines.map((line, index) => programRow(line, index === 0 ? groupNames[group] : "", context));
  return lines.length === 1 ? rows : [...rows, sumRow(togetherText(group), lines, context)];
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

function sumRow(text: string, lines: readonly CostLine[], { format }: ReportContext): AmountRow {
  return { row: subtotalRow("", text, num(""), "", num(""), num(format.moneyInCents(totalOf(lines)))) };
}

import { counted } from "../../counted.js";
import { at } from "../../lists.js";
import { type Money, noMoney } from "../../model/money/decimal.js";
import { appendixLetter } from "../../study/format/report-schema.js";
import type { NamedLine } from "../../study/traced/named-lines.js";
import type { TracedStructure } from "../../study/traced/traced-structure.js";
import { carrying } from "../print/carried-totals.js";
import { allTold, type ToldStructures, toldStructures } from "../rack/told-structures.js";
import { addingUp } from "../words/adding-up.js";
import { lineDimensions } from "../words/format.js";
import { groupRow, head, num, type RowView, row, type TableView } from "../words/view-types.js";
import type { ReportContext } from "./context.js";

/** Lines under one heading, and whether their sum is told. */
interface LineGroup {
  readonly heading: string;
  readonly lines: readonly Line[];
  readonly isSummed: boolean;
}

interface Line {
  readonly presentValue: Money;
  /** @param presentValue as it is printed */
  readonly row: (presentValue: string) => RowView;
}

const presentValueColumn = 5;

/** The cost lines of the structures that print tells one by one, the others together. */
export const linesTable = (context: ReportContext): TableView =>
  tableOf(context, toldStructures(context), "table-lines");

/** Every cost line, for the tables as files; absent where print has them all. */
export const everyLineTable = (context: ReportContext): TableView | undefined =>
  toldStructures(context).others.length === 0
    ? undefined
    : tableOf(context, allTold(context), "table-every-line");

/** Lines are summed over the horizon with their weights: rows add up, as printed, to the expected present value. */
function tableOf(context: ReportContext, { told, others }: ToldStructures, id: string): TableView {
  const { format, traced, priceYear } = context;
  const mature = traced.mature.year;
  const groups = [
    ...told.map((structure) => linesOf(structure, context)),
    ...togetherOf(others, context),
    ...attempts(context),
  ].filter(({ lines }) => lines.length > 0);
  const { rows, amounts, sum } = printedRows(groups, format.exactMoney);
  return {
    id,
    caption: `Cost lines of an infestation, prices of ${priceYear}`,
    head: head(
      "Line",
      num(`Quantity, year ${mature + 1}`),
      "Unit",
      num("Unit rate"),
      num(`Amount, year ${mature + 1}`),
      num("Expected present value"),
      "Assumptions",
    ),
    ...carrying(rows, { columns: [presentValueColumn], amounts, text: format.exactMoney }),
    total: sumRow("All lines", format.exactMoney(sum)),
    note: `Quantity × unit rate is the amount, in year ${mature + 1} of appendix ${appendixLetter("years")}; a dash where the line does not occur in that year. Expected present value: amounts of all years weighed by the weights of appendix ${appendixLetter("years")}, without a program, rounded so that they add up as printed. Lines under ${format.exactMoney(smallAmount)} are put together; the workbook has each. Behind every layer stand assumptions ${layerNumbers(context)}.`,
    compact: true,
  };
}

const sumRow = (name: string, sum: string): RowView => row(name, num(""), "", num(""), num(""), num(sum), "");

function printedRows(groups: readonly LineGroup[], text: (amount: number) => string) {
  const exact = groups.flatMap(({ lines }) => lines.map(({ presentValue }) => presentValue.toNumber()));
  const { parts, sum } = addingUp(exact, 1);
  const rows: RowView[] = [];
  const amounts: Array<readonly number[] | undefined> = [];
  let place = 0;
  for (const { heading, lines, isSummed } of groups) {
    const own = parts.slice(place, place + lines.length);
    place += lines.length;
    const ownSum = own.reduce((total, each) => total + each, 0);
    rows.push(groupRow(heading), ...lines.map((line, index) => line.row(text(at(own, index)))));
    amounts.push(undefined, ...own.map((each) => [each]));
    if (!isSummed) continue;
    rows.push(sumRow("Sum", text(ownSum)));
    amounts.push(undefined);
  }
  return { rows, amounts, sum };
}

function linesOf({ result, lines }: TracedStructure, context: ReportContext): LineGroup {
  const { name, bearer } = result.structure;
  return {
    heading: `${name} (${context.bearerName(bearer)})`,
    lines: withSmallTogether(lines, context),
    isSummed: true,
  };
}

/** The lines of structures that are not told one by one, as one. */
function togetherOf(others: readonly TracedStructure[], { format }: ReportContext): LineGroup[] {
  if (others.length === 0) return [];
  const lines = others.flatMap((structure) => structure.lines);
  const mature = lines.reduce((sum, line) => sum.plus(line.mature?.amount ?? 0), noMoney);
  const printed = (text: string) =>
    row(
      "in the tables as files, every-line.csv",
      num("–"),
      "",
      num("–"),
      num(format.exactMoney(mature)),
      num(text),
      "",
    );
  return [
    {
      heading: `${counted(others.length, "other structure")} together`,
      lines: [{ presentValue: presentValueOf(lines), row: printed }],
      isSummed: false,
    },
  ];
}

const presentValueOf = (lines: readonly NamedLine[]): Money =>
  lines.reduce((sum, { presentValue }) => sum.plus(presentValue), noMoney);

/** In the study's money; the workbook has each line by itself. */
const smallAmount = 100;

/** Lines of next to nothing as one. */
function withSmallTogether(lines: readonly NamedLine[], context: ReportContext): Line[] {
  const isSmall = ({ mature, presentValue }: NamedLine) =>
    presentValue.abs().lt(smallAmount) && (mature?.amount.abs().lt(smallAmount) ?? true);
  const small = lines.filter(isSmall);
  if (small.length < 2) return lines.map((line) => lineOf(line, context));
  const presentValue = presentValueOf(small);
  const name = `${small.length} smaller lines`;
  const printed = (text: string) => row(name, num("–"), "", num("–"), num("–"), num(text), "");
  return [
    ...lines.filter((line) => !isSmall(line)).map((line) => lineOf(line, context)),
    { presentValue, row: printed },
  ];
}

/** Containment without a program, where it states a response. */
function attempts({ comparison, format, bearerName }: ReportContext): LineGroup[] {
  const { containment } = comparison.baseline;
  if (containment === undefined) return [];
  const { line, presentValue } = containment;
  const each = num(format.rate(line.unitRate));
  const printed = (text: string) => row(line.what, num("–"), "each", each, num("–"), num(text), "study");
  return [
    {
      heading: `Eradication attempts (${bearerName(line.bearer)})`,
      lines: [{ presentValue, row: printed }],
      isSummed: false,
    },
  ];
}

function lineOf({ sample, mature, presentValue }: NamedLine, context: ReportContext): Line {
  const { format } = context;
  const { quantity, rate, unit } = lineDimensions[sample.quantityKind];
  const shown = mature?.line ?? sample;
  return {
    presentValue,
    row: (text) =>
      row(
        sample.what,
        num(mature ? format.number(mature.line.quantity, quantity) : "–"),
        unit ?? format.unit(quantity),
        num(format.rate(format.display(shown.unitRate, rate))),
        num(mature ? format.exactMoney(mature.amount) : "–"),
        num(text),
        sample.assumptionIds.map(context.assumptionNumber).filter(Boolean).join(", ") || "study",
      ),
  };
}

function layerNumbers({ comparison, assumptionNumber }: ReportContext): string {
  const numbers = comparison.lake.layerAssumptionIds
    .map((id) => Number(assumptionNumber(id).slice(1)))
    .filter((number) => number > 0)
    .sort((a, b) => a - b);
  const runs: Array<[number, number]> = [];
  for (const number of numbers) {
    const last = runs.at(-1);
    if (last && last[1] === number - 1) last[1] = number;
    else runs.push([number, number]);
  }
  return runs.map(([from, to]) => (from === to ? `A${from}` : `A${from}–A${to}`)).join(", ");
}

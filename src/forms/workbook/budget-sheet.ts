import { at } from "../../lists.js";
import { centsPerUnit } from "../../model/money/decimal.js";
import type { FiscalRow } from "../../model/money/fiscal-years.js";
import type { BudgetPart } from "../../model/program/budget.js";
import type { ReportContext } from "../../report/document/context.js";
import { capitalised } from "../../report/words/format.js";
import { groupNames } from "../../report/words/line-groups.js";
import type { TracedRequest } from "../../study/traced/traced-request.js";
import {
  address,
  addressIn,
  columnRange,
  type Entry,
  type SheetDraft,
  strong,
  text,
  value,
} from "./sheet.js";

const firstRow = 4;
const firstAmount = 2;

export const budgetSheetName = "Budget years";

/** Cells of a fiscal year, counted from 0, in which the lines of a part stand. */
export function budgetCells(
  { budget }: TracedRequest,
  part: BudgetPart,
  place: { readonly year: number; readonly startsMidYear: boolean },
): string[] {
  const lines = budget.groups.flatMap(({ rows }) => rows);
  const column = firstAmount + place.year + Number(place.startsMidYear);
  return lines.flatMap((line, index) =>
    line.part === part ? [addressIn(budgetSheetName, firstRow + index, column)] : [],
  );
}

/** The requested program by fiscal year, in money of each year; absent as in the report. */
export function budgetSheet(context: ReportContext): SheetDraft | undefined {
  const { budget, result } = context.requested;
  if (context.infestedSince !== undefined || budget === undefined) return undefined;
  const startsMidYear = context.comparison.input.money.fiscalYearStart > 1;
  const amounts = ({ before, cents }: FiscalRow) => [...(startsMidYear ? [before] : []), ...cents];
  const columns = amounts(budget.totals).length;
  const lines = budget.groups.flatMap(({ group, rows }) => rows.map((each) => ({ group, each })));
  const lastRow = firstRow + lines.length - 1;
  return {
    name: budgetSheetName,
    widths: [22, 44, ...Array.from({ length: columns + 1 }, () => 16)],
    headRows: firstRow,
    rows: [
      [text(`“${result.option.name}” by fiscal year while the lake stays clean`, "title")],
      [text(introduction(context), "note")],
      [],
      [
        ...["Group", "Line", ...(startsMidYear ? ["Before"] : [])],
        ...budget.years.map(({ endYear }) => `FY ${endYear}`),
        "Together",
      ].map((each) => text(each, "head")),
      ...lines.map(({ group, each }, index) => [
        text(groupNames[group]),
        text(capitalised(each.name)),
        ...amounts(each).map((cents) => value(cents / centsPerUnit, "cents")),
        totalOf(firstRow + index, columns, each.total),
      ]),
      [
        strong(text("All lines")),
        text(""),
        ...amounts(budget.totals).map((_, index) => columnSum(budget.totals, { index, lastRow, amounts })),
        strong(totalOf(lastRow + 1, columns, budget.totals.total)),
      ],
    ],
  };
}

function introduction({ run }: ReportContext): string {
  return `${run.document.money.currency} of each year. Equipment is paid in full when it is bought; fees are income and shown as negative.`;
}

function totalOf(row: number, columns: number, cents: number): Entry {
  const formula = `SUM(${address(row, firstAmount)}:${address(row, firstAmount + columns - 1)})`;
  return value({ formula, result: cents / centsPerUnit }, "cents");
}

function columnSum(
  totals: FiscalRow,
  place: {
    readonly index: number;
    readonly lastRow: number;
    readonly amounts: (row: FiscalRow) => readonly number[];
  },
): Entry {
  const formula = `SUM(${columnRange(firstAmount + place.index, firstRow, place.lastRow)})`;
  return strong(value({ formula, result: at(place.amounts(totals), place.index) / centsPerUnit }, "cents"));
}

import { at } from "../../lists.js";
import type { FiscalRow } from "../../model/money/fiscal-years.js";
import type { BudgetPart, ProgramBudget } from "../../model/program/budget.js";
import type { LineGroup } from "../../model/program/groups.js";
import type { ReportContext } from "../../report/document/context.js";
import { capitalised } from "../../report/words/format.js";
import { groupNames } from "../../report/words/line-groups.js";
import { type BudgetAmount, calendarAmounts, earlyPart } from "./budget-amounts.js";
import { minus, plus, sum, toTheCent, type Worked } from "./formula.js";
import { type Grid, grid } from "./grid.js";
import { budgetOf } from "./money-inputs.js";
import { type SheetDraft, strong, text, value } from "./sheet.js";

const headRow = 3;
const firstRow = headRow + 1;
const firstAmount = 2;

export interface BudgetSheet {
  readonly draft: SheetDraft;
  /** Cells of a fiscal year, counted from 0, of the lines that are so. */
  readonly cells: (year: number, isMeant: (line: BudgetRow) => boolean) => readonly Worked[];
}

export interface BudgetRow {
  readonly group: LineGroup;
  readonly part: BudgetPart;
  readonly name: string;
}

/** The requested program by fiscal year, in money of each year; absent as in the report. */
export function budgetSheet(
  context: ReportContext,
  amounts: readonly BudgetAmount[],
  parts: Parameters<typeof calendarAmounts>[2],
): BudgetSheet | undefined {
  const budget = budgetOf(context);
  if (!budget) return undefined;
  const { result } = context.requested;
  const sheet = grid("Budget years");
  const shape = shapeOf(budget, context);
  sheet.put(0, 0, text(`“${result.option.name}” by fiscal year while the lake stays clean`, "title"));
  sheet.put(1, 0, text(introduction(context), "note"));
  sheet.putRow(
    headRow,
    headsOf(budget, shape, context).map((each) => text(each, "head")),
  );
  const lines = linesOf(budget, amounts);
  lines.forEach(({ row, amount }, index) => {
    const place = { sheet, row: firstRow + index, shape };
    writeLine(place, row, (year) => calendarAmounts(amount, year, parts));
  });
  writeTotals(sheet, firstRow + lines.length, shape);
  return {
    draft: sheet.draft({
      widths: [22, 44, ...Array.from({ length: shape.together + 1 + shape.calendarYears }, () => 16)],
      headRows: firstRow,
    }),
    cells: (year, isMeant) =>
      lines.flatMap(({ row }, index) =>
        isMeant(row) ? [sheet.at(firstRow + index, shape.fiscal + year)] : [],
      ),
  };
}

/** Columns, counted from 0. */
interface Shape {
  /** Months of a calendar year before its fiscal year starts. */
  readonly monthsBefore: number;
  readonly fiscal: number;
  readonly fiscalYears: number;
  readonly together: number;
  /** First of the calendar years: beside the fiscal years where these are others. */
  readonly calendar: number;
  readonly calendarYears: number;
}

function shapeOf({ years }: ProgramBudget, { comparison }: ReportContext): Shape {
  const monthsBefore = comparison.input.money.fiscalYearStart - 1;
  const fiscal = firstAmount + Number(monthsBefore > 0);
  const together = fiscal + years.length;
  return {
    ...{ monthsBefore, fiscal, together, fiscalYears: years.length },
    calendar: monthsBefore > 0 ? together + 2 : fiscal,
    calendarYears: years.length + Number(monthsBefore > 0),
  };
}

function headsOf({ years }: ProgramBudget, shape: Shape, { comparison }: ReportContext): string[] {
  const { startYear } = comparison.input.money;
  const calendar = Array.from({ length: shape.calendarYears }, (_, year) => `Calendar ${startYear + year}`);
  return [
    ...["Group", "Line", ...(shape.monthsBefore > 0 ? ["Before"] : [])],
    ...years.map(({ endYear }) => `FY ${endYear}`),
    "Together",
    ...(shape.monthsBefore > 0 ? ["", ...calendar] : []),
  ];
}

function introduction({ run }: ReportContext): string {
  return `${run.document.money.currency} of each year. Equipment is paid in full when it is bought; fees are income and shown as negative. Where fiscal years are not calendar years, the latter are shown on the right, and fiscal years draw on their months.`;
}

interface BudgetLine {
  readonly row: BudgetRow & FiscalRow;
  readonly amount: BudgetAmount;
}

/** Rows of the budget with the amounts of the program that they come from, which stand in the order of its lines. */
function linesOf({ groups }: ProgramBudget, amounts: readonly BudgetAmount[]): BudgetLine[] {
  return groups.flatMap(({ group, rows }) => {
    const own = amounts.filter((each) => each.group === group);
    return rows.map((row, index) => ({ row: { ...row, group }, amount: at(own, index) }));
  });
}

function writeLine(
  { sheet, row, shape }: { sheet: Grid; row: number; shape: Shape },
  { group, name }: BudgetRow,
  amountIn: (year: number) => Worked,
): void {
  sheet.putRow(row, [text(groupNames[group]), text(capitalised(name))]);
  const put = (column: number, formula: Worked) => sheet.put(row, column, value(formula, "cents"));
  const amounts = Array.from({ length: shape.calendarYears }, (_, year) =>
    put(shape.calendar + year, toTheCent(amountIn(year))),
  );
  if (shape.monthsBefore > 0) {
    const early = (year: number) => earlyPart(at(amounts, year), shape.monthsBefore);
    put(firstAmount, early(0));
    for (let year = 0; year < shape.fiscalYears; year++) {
      put(shape.fiscal + year, plus(minus(at(amounts, year), early(year)), early(year + 1)));
    }
  }
  put(shape.together, sum(sheet.across(row, shape.fiscal, shape.together - 1)));
}

function writeTotals(sheet: Grid, row: number, shape: Shape): void {
  sheet.put(row, 0, strong(text("All lines")));
  for (let column = firstAmount; column <= shape.together; column++) {
    sheet.put(row, column, strong(value(sum(sheet.down(column, firstRow, row - 1)), "cents")));
  }
}

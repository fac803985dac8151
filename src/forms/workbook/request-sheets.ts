import { at, sumOf } from "../../lists.js";
import { centsPerUnit } from "../../model/money/decimal.js";
import type { ReportContext } from "../../report/document/context.js";
import type { TracedRequest } from "../../study/traced/traced-request.js";
import type { BudgetSheet } from "./budget-sheet.js";
import { sum, type Worked } from "./formula.js";
import type { StaffInputs } from "./program-inputs.js";
import { payersOf } from "./request-payers.js";
import { type SourceRow, sourceFormula, termEntries, termHeads } from "./request-sources.js";
import { requestStaffSheet } from "./request-staff-sheet.js";
import { address, type Entry, input, type SheetDraft, strong, text, value } from "./sheet.js";

const firstYear = 1 + termHeads.length;
const yearRow = 3;

/** The request as its formulas: links to the budget's lines, terms of the sources, and who pays; none without a request. */
export function requestSheets(
  context: ReportContext,
  parts: { readonly budget: BudgetSheet | undefined; readonly staff: readonly StaffInputs[] },
): SheetDraft[] {
  const { request } = context;
  const { budget, staff } = parts;
  if (!request || !budget) return [];
  return [requestSheet(request, context, budget), ...requestStaffSheet(request, context, staff)];
}

interface Line {
  readonly name: string;
  readonly cents: readonly number[];
  /** Of a year counted from 0. */
  readonly formula?: (year: number) => string;
  readonly terms?: readonly Entry[];
  readonly isSum?: boolean;
}

function requestSheet(request: TracedRequest, context: ReportContext, budget: BudgetSheet): SheetDraft {
  const years = request.budget.years.length;
  const lines = requestLines(request, context, budget);
  const bottom = yearRow + 1 + lines.length;
  return {
    name: "Request",
    widths: [44, ...termHeads.map(() => 12), ...Array.from({ length: years + 1 }, () => 16)],
    headRows: yearRow + 1,
    rows: [
      [text(`The request for “${context.requested.result.option.name}”`, "title")],
      [text(introduction(context), "note")],
      [text("")],
      [
        ...["Line", ...termHeads].map((each) => text(each, "head")),
        ...request.budget.years.map(({ endYear }) => value(endYear, "whole")),
        text("Together", "head"),
      ],
      ...lines.map((line, index) => lineRow(line, yearRow + 1 + index)),
      [],
      [text("Who pays what", "head")],
      ...payerRows(request, lines, {
        first: bottom + 2,
        payers: payersOf(request, context, { cells: budget.cells, ...requestCells(request, lines) }),
      }),
      [],
      [text("Appropriated together, asked of the fund", "head")],
      ...appropriationRows(request, yearRow + lines.length),
    ],
  };
}

const introduction = ({ run }: ReportContext) =>
  [
    `${run.document.money.currency} of each fiscal year, called by the calendar year in which it ends. Revenue, sources and carryover are negative.`,
    run.document.report.ask.fund,
    run.document.report.ask.account,
  ]
    .filter(Boolean)
    .join(" · ");

function lineRow({ name, cents, formula, terms = [], isSum = false }: Line, row: number): Entry[] {
  const cells = cents.map((each, year) => {
    const result = each / centsPerUnit;
    return value(formula ? { formula: formula(year), result } : result, "cents");
  });
  const shown = (entry: Entry) => (isSum ? strong(entry) : entry);
  return [
    shown(text(name)),
    ...termHeads.map((_, index) => terms[index] ?? text("")),
    ...cells.map(shown),
    shown(sumAcross(row, cents)),
  ];
}

const sumAcross = (row: number, cents: readonly number[]) =>
  value(
    {
      formula: `SUM(${address(row, firstYear)}:${address(row, firstYear + cents.length - 1)})`,
      result: sumOf(cents) / centsPerUnit,
    },
    "cents",
  );

const cellOf = (row: number, year: number) => address(row, firstYear + year);
const less = (cents: readonly number[]) => cents.map((each) => (each === 0 ? 0 : -each));

/** Rows from the first below the years: cost by part, its sum, revenue, sources, carried in, contingency, the fund. */
function requestLines(
  request: TracedRequest,
  context: ReportContext,
  { cells }: Pick<BudgetSheet, "cells">,
): Line[] {
  const { budget, funded } = request;
  const partLine = (name: string, part: "purchases" | "once" | "ongoing" | "revenue"): Line => ({
    name,
    cents: budget.parts[part].cents,
    formula: (year) => sumOfCells(cells(year, (line) => line.part === part)),
  });
  const parts = ["purchases", "once", "ongoing"] as const;
  const top = yearRow + 1;
  const rows = { cost: top + parts.length, revenue: top + parts.length + 1 };
  const firstSource = rows.revenue + 1;
  const carried = firstSource + funded.sources.length;
  const between = (year: number, first: number, last: number) =>
    `SUM(${cellOf(first, year)}:${cellOf(last, year)})`;
  const sourceRow = (index: number): SourceRow => ({
    row: firstSource + index,
    yearCell: (year) => cellOf(yearRow, year),
    eligible: (year) =>
      at(funded.sources, index).source.paysFor.map((part) => cellOf(top + parts.indexOf(part), year)),
    left: (year) => between(year, rows.cost, firstSource + index - 1),
  });
  return [
    partLine("Capital: equipment bought", "purchases"),
    partLine("One-time: paid to start", "once"),
    partLine("Operation", "ongoing"),
    {
      name: "Cost",
      cents: budget.years.map((_, year) => sumOf(parts.map((part) => at(budget.parts[part].cents, year)))),
      formula: (year) => between(year, top, rows.cost - 1),
      isSum: true,
    },
    partLine("Fees and other revenue", "revenue"),
    ...funded.sources.map(
      ({ source, cents }, index): Line => ({
        name: `${source.name}${source.inKind ? " (in kind)" : ""}`,
        cents: less(cents),
        terms: termEntries(source),
        formula: (year) => sourceFormula(source, sourceRow(index), year),
      }),
    ),
    carriedLine(request, context, {
      row: carried,
      need: (year) => `${between(year, rows.cost, carried - 1)}+${cellOf(carried + 1, year)}`,
    }),
    { name: "Contingency, from the odds", cents: funded.contingency },
    {
      name: "Asked of the fund",
      cents: funded.fund,
      formula: (year) => between(year, rows.cost, carried + 1),
      isSum: true,
    },
  ];
}

/** Money carried in, in the column of yearly amounts, used up from the first year on. */
function carriedLine(
  { funded }: TracedRequest,
  { run }: ReportContext,
  { row, need }: { readonly row: number; readonly need: (year: number) => string },
): Line {
  const amount = Math.round((run.document.report.ask.carriedIn?.value ?? 0) * centsPerUnit) / centsPerUnit;
  const balance = address(row, 1 + termHeads.indexOf("Amount a year"));
  const before = (year: number) => (year === 0 ? "" : `+SUM(${cellOf(row, 0)}:${cellOf(row, year - 1)})`);
  return {
    name: "Carryover: what there is, and what is used",
    cents: less(funded.carriedIn),
    terms: [text(""), input(amount, "cents")],
    formula: (year) => `-MAX(0,MIN(${balance}${before(year)},${need(year)}))`,
  };
}

const sumOfCells = (cells: readonly Worked[]) => sum(...cells).formula;

/** Where the sources, what is carried in and the fund stand, by their places from the last row up. */
function requestCells({ funded: { sources } }: TracedRequest, lines: readonly Line[]) {
  const fund = yearRow + lines.length;
  const carriedIn = fund - 2;
  return {
    source: (index: number, year: number) => cellOf(carriedIn - sources.length + index, year),
    carriedIn: (year: number) => cellOf(carriedIn, year),
    fund: (year: number) => cellOf(fund, year),
  };
}

function payerRows(
  { payers, budget }: TracedRequest,
  lines: readonly Line[],
  { first, payers: written }: { readonly first: number; readonly payers: ReturnType<typeof payersOf> },
): Entry[][] {
  const byYear = budget.years.map((_, year) => sumOf(payers.map(({ cents }) => at(cents, year))));
  const total = first + payers.length;
  return [
    ...payers.map(({ name, cents }, index) =>
      lineRow({ name, cents, formula: at(written, index).formula }, first + index),
    ),
    lineRow(
      {
        name: "Cost and contingency",
        cents: byYear,
        formula: (year) => `SUM(${cellOf(first, year)}:${cellOf(total - 1, year)})`,
        isSum: true,
      },
      total,
    ),
    lineRow(
      {
        name: "Less cost and contingency above: nothing",
        cents: byYear.map(() => 0),
        formula: (year) =>
          `ROUND(${cellOf(total, year)}-${cellOf(yearRow + 1 + lines.findIndex(({ name }) => name === "Cost"), year)}-${cellOf(yearRow + lines.length - 1, year)},2)`,
      },
      total + 1,
    ),
  ];
}

function appropriationRows({ appropriations, budget }: TracedRequest, fundRow: number): Entry[][] {
  const yearOf = (endYear: number) => budget.years.findIndex((each) => each.endYear === endYear);
  return appropriations.map(({ from, to, cents }) => [
    text(from === to ? `FY ${from}` : `FY ${from} to FY ${to}`),
    value(
      {
        formula: `SUM(${cellOf(fundRow, yearOf(from))}:${cellOf(fundRow, yearOf(to))})`,
        result: cents / centsPerUnit,
      },
      "cents",
    ),
  ]);
}

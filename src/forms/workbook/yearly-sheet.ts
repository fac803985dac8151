import { counted } from "../../counted.js";
import { at } from "../../lists.js";
import type { OptionResult } from "../../model/option.js";
import { allOptions, type ReportContext } from "../../report/document/context.js";
import {
  address,
  addressIn,
  columnRange,
  type Entry,
  type Formula,
  type SheetDraft,
  strong,
  text,
  value,
} from "./sheet.js";

/** Where an option's sums stand, for sheets that link to them. */
export interface OptionCells {
  readonly result: OptionResult;
  readonly chanceAtEnd: string;
  readonly presentValue: Record<Part, string>;
  readonly equalYearly: Record<Part, string>;
}

export interface YearlySheet {
  readonly draft: SheetDraft;
  readonly options: readonly OptionCells[];
}

const parts = ["program", "infestation", "total"] as const;
type Part = (typeof parts)[number];

const name = "Cost by year";
const rateRow = 2;
const timingRow = 3;
const headRow = 5;
const firstYearRow = headRow + 1;
const factorColumn = 2;
const columnsBefore = 3;
const columnsPerOption = 4;

/** Every year of every option: the factor is a formula of the rate, and present values are sums of products. */
export function yearlySheet(context: ReportContext): YearlySheet {
  const options = allOptions(context);
  const lastYearRow = firstYearRow + context.horizon - 1;
  const sums = { undiscounted: lastYearRow + 1, presentValue: lastYearRow + 2, equalYearly: lastYearRow + 3 };
  const draft: SheetDraft = {
    name,
    widths: [44, 10, 14, ...options.flatMap(() => [12, 16, 16, 16])],
    headRows: firstYearRow,
    joined: options.map((_, index) => {
      const from = columnsBefore + index * columnsPerOption;
      return { row: headRow - 1, from, to: from + columnsPerOption - 1 };
    }),
    rows: [
      [text("Expected cost of each year", "title")],
      [text(introduction(context), "note")],
      [text("Discount rate a year"), value(context.comparison.input.money.discountRate, "percent")],
      [
        text("Part of a year by which flows fall before its end"),
        value(context.comparison.input.money.timing === "mid-year" ? 1 / 2 : 0, "plain"),
      ],
      [text(""), text(""), text(""), ...options.flatMap(({ option }) => headOf(option.name))],
      [
        ...["Year", "Number", "Discount factor"].map((each) => text(each, "head")),
        ...options.flatMap(() => columnHeads.map((each) => text(each, "head"))),
      ],
      ...context.comparison.discountFactors.map((factor, year) => yearRow(context, year, factor)),
      sumRow("Undiscounted", options, (result, part, column) => ({
        formula: `SUM(${columnRange(column, firstYearRow, lastYearRow)})`,
        result: result.undiscounted[part].toNumber(),
      })),
      sumRow("Present value", options, (result, part, column) => ({
        formula: `SUMPRODUCT(${columnRange(factorColumn, firstYearRow, lastYearRow)},${columnRange(column, firstYearRow, lastYearRow)})`,
        result: result.presentValue[part].toNumber(),
      })),
      sumRow("Equal amount a year", options, (result, part, column) => ({
        formula: `${address(sums.presentValue, column)}/SUM(${columnRange(factorColumn, firstYearRow, lastYearRow)})`,
        result: result.equivalentYearly[part].toNumber(),
      })),
    ],
  };
  return {
    draft,
    options: options.map((result, index) => ({
      result,
      chanceAtEnd: addressIn(name, lastYearRow, columnsBefore + index * columnsPerOption),
      presentValue: partCells(sums.presentValue, index),
      equalYearly: partCells(sums.equalYearly, index),
    })),
  };
}

const columnHeads = ["Chance so far", "Program", "Infestation", "Together"];

const headOf = (option: string): Entry[] => [text(option, "head"), text(""), text(""), text("")];

function introduction({ run, priceYear, horizon }: ReportContext): string {
  return `${run.document.money.currency} of ${priceYear}. Program and infestation are expected values over ${counted(horizon, "year")}: each weighed by the chance that the lake is clean or infested, computed by the model. Sums, factors and present values are formulas.`;
}

const columnOf = (option: number, part: Part) =>
  columnsBefore + option * columnsPerOption + 1 + parts.indexOf(part);

function partCells(row: number, option: number): Record<Part, string> {
  const cell = (part: Part) => addressIn(name, row, columnOf(option, part));
  return { program: cell("program"), infestation: cell("infestation"), total: cell("total") };
}

function yearRow(context: ReportContext, year: number, factor: number): Entry[] {
  const row = firstYearRow + year;
  const [rate, before] = [rateRow, timingRow].map((each) => `$B$${each + 1}`);
  const formula = `1/(1+${rate})^(${address(row, 1)}-${before})`;
  return [
    value(context.run.document.money.startYear + year, "whole"),
    value(year + 1, "whole"),
    value({ formula, result: factor }, "factor"),
    ...allOptions(context).flatMap(({ infestedByYear, expectedByYear }, option) => {
      const { program, infestation, total } = at(expectedByYear, year);
      const sum = `${address(row, columnOf(option, "program"))}+${address(row, columnOf(option, "infestation"))}`;
      return [
        value(at(infestedByYear, year), "percent"),
        value(program.toNumber(), "cents"),
        value(infestation.toNumber(), "cents"),
        value({ formula: sum, result: total.toNumber() }, "cents"),
      ];
    }),
  ];
}

function sumRow(
  label: string,
  options: readonly OptionResult[],
  formulaOf: (result: OptionResult, part: Part, column: number) => Formula,
): Entry[] {
  return [
    strong(text(label)),
    text(""),
    text(""),
    ...options.flatMap((result, option) => [
      text(""),
      ...parts.map((part) => strong(value(formulaOf(result, part, columnOf(option, part)), "cents"))),
    ]),
  ];
}

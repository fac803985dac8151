import type { ReportContext } from "../../report/document/context.js";
import type { WeighedLine } from "../../study/traced/weighed-lines.js";
import { lineEntries, lineHeads } from "./line-entries.js";
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

interface InfestationSheet {
  readonly draft: SheetDraft;
  /** Cell of the sum of expected present values: the infestation cost of the option without a program. */
  readonly sum: string;
}

const name = "Infestation lines";
const amountColumn = 8;
const weightColumn = 9;
const valueColumn = 10;
const headRow = 3;

/**
 * Every cost line of every year of an infestation with what it weighs without a program, so that lines can be followed
 * to the present value that the answer rests on.
 */
export function infestationSheet(context: ReportContext): InfestationSheet {
  const rows: Entry[][] = [
    [text("Damage, line by line", "title")],
    [text(introduction(context), "note")],
    [],
    [
      "Structure",
      "Line",
      "Kind",
      "Year of the infestation",
      ...lineHeads,
      "Weight",
      "Expected present value",
    ].map((each) => text(each, "head")),
  ];
  for (const line of context.traced.lines()) rows.push(lineRow(line, rows.length, context));
  const attempts = attemptsRow(context);
  if (attempts) rows.push(attempts);
  const result = context.comparison.baseline.presentValue.infestation.toNumber();
  const formula =
    rows.length === headRow + 1 ? "0" : `SUM(${columnRange(valueColumn, headRow + 1, rows.length - 1)})`;
  const sum = addressIn(name, rows.length, valueColumn);
  rows.push([
    strong(text("All lines")),
    ...Array.from({ length: valueColumn - 1 }, () => text("")),
    strong(value({ formula, result }, "cents")),
  ]);
  const widths = [28, 40, 12, 12, 26, 14, 12, 14, 16, 12, 18];
  return { draft: { name, widths, headRows: headRow + 1, rows }, sum };
}

function introduction({ run, priceYear, comparison, infestedSince }: ReportContext): string {
  const weight =
    infestedSince === undefined
      ? `the discounted chance that the lake is in that year of an infestation under “${comparison.baseline.option.name}”`
      : "the discount factor";
  return `${run.document.money.currency} of ${priceYear}. Amount = quantity × unit rate, rounded to the cent. Weight: ${weight}, with the rise of the line's price; work and protection weigh only once mussels are detected. Expected present value = amount × weight.`;
}

function lineRow(
  { structureName, line, age, weight, presentValue }: WeighedLine,
  row: number,
  context: ReportContext,
): Entry[] {
  const [amount, weightCell] = [amountColumn, weightColumn].map((column) => address(row, column));
  return [
    text(structureName),
    text(line.what),
    text(line.type),
    value(age + 1, "whole"),
    ...lineEntries(line, { row, column: 4 }, context),
    value(weight, "factor"),
    value({ formula: `${amount}*${weightCell}`, result: presentValue }, "cents"),
  ];
}

/** Containment without a program, where it states a response: tried at most once, so that it has no yearly line. */
function attemptsRow({ comparison, bearerName }: ReportContext): Entry[] | undefined {
  const { containment } = comparison.baseline;
  if (containment === undefined) return undefined;
  return [
    text("Eradication attempts"),
    text(containment.line.what),
    text("work"),
    text(""),
    text(bearerName(containment.line.bearer)),
    ...Array.from({ length: 5 }, () => text("")),
    value(containment.presentValue.toNumber(), "cents"),
  ];
}

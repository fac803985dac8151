import { centsPerUnit } from "../../model/money/decimal.js";
import type { CostLine } from "../../model/money/line.js";
import type { ReportContext } from "../../report/document/context.js";
import { lineDimensions } from "../../report/words/format.js";
import { address, type Entry, text, value } from "./sheet.js";

/** Columns of every list of cost lines, after those that say what a line is. */
export const lineHeads = ["Bearer", "Quantity", "Unit", "Unit rate", "Amount"];

/**
 * Bearer, quantity, unit, rate and amount of a line in the study's units; the amount is quantity × rate, to the cent.
 * @param row and column of the first of them
 */
export function lineEntries(
  line: CostLine,
  place: { readonly row: number; readonly column: number },
  context: ReportContext,
  unit?: string,
): Entry[] {
  const { quantity: dimension, unit: named } = lineDimensions[line.quantityKind];
  const quantity = context.format.display(line.quantity, dimension);
  const [quantityCell, rateCell] = [1, 3].map((each) => address(place.row, place.column + each));
  return [
    text(context.bearerName(line.bearer)),
    value(quantity, "plain"),
    text(unit ?? named ?? context.format.unit(dimension)),
    value(rateOf(line, quantity, context), "plain"),
    value({ formula: `ROUND(${quantityCell}*${rateCell},2)`, result: line.cents / centsPerUnit }, "cents"),
  ];
}

/** Next to half a cent a spreadsheet may round to the other side than the model did. */
const nearHalfACent = 1e-6;

function rateOf(line: CostLine, quantity: number, { format }: ReportContext): number {
  const rate = format.display(line.unitRate, lineDimensions[line.quantityKind].rate);
  const cents = Math.abs(quantity * rate * centsPerUnit);
  const isDoubtful = Math.abs((cents % 1) - 1 / 2) < nearHalfACent;
  return isDoubtful ? line.cents / centsPerUnit / quantity : rate;
}

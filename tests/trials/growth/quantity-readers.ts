import { amountOf, quantityText } from "#product/editor/amounts/amount.js";
import { enteredValue } from "#product/editor/form-edits.js";
import { readDate } from "#product/study/reading/level-dates.js";
import { columnReader, parseQuantity } from "#product/units/quantity.js";
import { parseSpread } from "#product/units/spread.js";
import type { Reader } from "./measure.js";
import { refusing } from "./refusing.js";

/** Longest text of a field in a study or a form, which are limited as a whole. */
const most = 2 * 1024 * 1024;
const writing = { system: "us", currency: "USD" } as const;
const line = { kind: "text", form: "line" } as const;

const quantities: readonly Reader[] = (["length", "money", "moneyPerArea", "share"] as const).flatMap(
  (dimension) => [
    { name: `a quantity: ${dimension}`, most, read: refusing((text) => parseQuantity(text, dimension)) },
    { name: `a range: ${dimension}`, most, read: refusing((text) => parseSpread(text, dimension)) },
    { name: `an amount shown: ${dimension}`, most, read: (text) => amountOf(text, dimension, writing) },
    {
      name: `an amount typed: ${dimension}`,
      most,
      read: (text) => quantityText({ amount: text, unit: "$/ft2" }, dimension),
    },
  ],
);

/** Quantities, numbers and dates, in studies, forms and the heads of columns. */
export const quantityReaders: readonly Reader[] = [
  ...quantities,
  { name: "the unit of a column", most, read: refusing((text) => columnReader(text, "elevation")) },
  { name: "a number of a column", most, read: refusing((text) => columnReader("ft", "elevation")(text)) },
  { name: "a date or month", most, read: (text) => readDate(text) },
  {
    name: "a number typed",
    most,
    read: (text) => enteredValue({ kind: "number" }, text),
  },
  {
    name: "several values typed",
    most,
    read: (text) => enteredValue({ kind: "values", each: line }, text),
  },
];

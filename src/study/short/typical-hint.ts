import { at } from "../../lists.js";
import { type DimensionName, dimensions } from "../../units/dimensions.js";
import { toDisplay } from "../../units/quantity.js";
import { mapped, type Writing } from "./amount-text.js";
import { filling, type TypicalValues } from "./filling.js";
import type { Question } from "./question.js";

/** What stands for an answer while it is not known: "typical 82 ft (26 to 197)"; empty where it follows from others. */
export function typicalHint(
  { typical, dimension, choices }: Question,
  values: TypicalValues,
  { system, currency }: Writing,
): string {
  if (!typical) return "";
  const range = filling(values, { system, currency }, 1).typical(typical);
  if (choices) return `typical ${at(choices, range.value - 1)[1]}`;
  if (!dimension) return "";
  const { low, value, high } = mapped(range, (each) => toDisplay(each, dimension, system));
  return `typical ${told(value)}${unitAfter(dimension, system)} (${told(low)} to ${told(high)})`;
}

/** None where the question has it: counts and years. */
function unitAfter(dimension: DimensionName, system: Writing["system"]): string {
  if (dimension === "count" || dimension === "years") return "";
  const { label } = dimensions[dimension][system];
  return label === "%" ? label : ` ${label}`;
}

/** No finer than a range that nobody measured: whole units from 10 on, and at most three digits. */
const told = (value: number): string =>
  Number(value.toPrecision(Math.abs(value) < manyDigitsFrom ? 2 : 3)).toLocaleString("en-US");

const manyDigitsFrom = 100;

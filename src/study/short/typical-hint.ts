import { at } from "../../lists.js";
import { typedUnit, type Writing } from "./amount-text.js";
import { filling, type TypicalValues } from "./filling.js";
import type { Question } from "./questions.js";

/** What stands for an answer while it is not known: "typical 26 ft (10 to 60)"; empty where it follows from others. */
export function typicalHint(
  { typical, dimension, choices }: Question,
  values: TypicalValues,
  writing: Writing,
  rate: number,
): string {
  if (!typical) return "";
  const { text, ranged, typical: rangeOf } = filling(values, writing, rate);
  if (choices) return `typical ${at(choices, rangeOf(typical).value - 1)[1]}`;
  if (!dimension) return "";
  const { low, value, high } = rangeOf(typical);
  if (dimension === "years" || dimension === "count")
    return `typical ${plain(value)} (${plain(low)} to ${plain(high)})`;
  const written = String(ranged(typical, dimension).written);
  const [least = "", middle = "", most = ""] = written.split(" to ");
  const unit = typedUnit(dimension, writing.system);
  const bare = most.replace(unit, "").trim();
  return most === ""
    ? `typical ${text({ low, value, high }, dimension)}`
    : `typical ${middle} ${unit} (${least} to ${bare})`;
}

const plain = (value: number) => value.toLocaleString("en-US");

import type { DimensionName } from "../units/dimensions.js";
import { longestSpread } from "../units/spread.js";
import { unitsOffered, type Writing } from "./units-offered.js";

/** A quantity as a form shows it: what is typed, and the unit chosen beside it. */
interface Amount {
  readonly amount: string;
  /** Empty where the unit, if any, stands in the amount. */
  readonly unit: string;
}

/** What is longer is no amount: it is shown and taken as it stands, and no pattern sees it. */
const isShort = (text: string) => text.length <= longestSpread;

const number = String.raw`[-+]?[\d.,]+(?:[eE][-+]?\d+)?`;
const numbersOnly = new RegExp(`^(${number})(\\s+to\\s+${number}){0,2}$`, "i");
const withUnit = new RegExp(`^(${number}(?:\\s+to\\s+${number}){0,2})\\s*(\\S.*)$`, "i");
const moneyFirst = new RegExp(`^([$€£]|[A-Z]{3}(?=\\s))\\s*(${number})\\s*(/.*)?$`);

/** A value of the study as a form shows it. What is not a plain amount with a unit that is offered stays whole. */
export function amountOf(value: unknown, dimension: DimensionName, writing: Writing): Amount {
  if (value === undefined || value === null || value === "") {
    return { amount: "", unit: unitsOffered(dimension, writing)[0] ?? "" };
  }
  const text = String(value).trim();
  const [amount, unit] = (isShort(text) && (splitMoney(text) ?? splitPhysical(text))) || [text, ""];
  return unit !== "" && unitsOffered(dimension, writing).includes(unit)
    ? { amount, unit }
    : { amount: text, unit: "" };
}

function splitMoney(text: string): [string, string] | undefined {
  const match = moneyFirst.exec(text);
  return match ? [match[2] ?? "", `${match[1] ?? ""}${(match[3] ?? "").replace(/\s/g, "")}`] : undefined;
}

function splitPhysical(text: string): [string, string] | undefined {
  const match = withUnit.exec(text);
  return match ? [match[1] ?? "", match[2] ?? ""] : undefined;
}

/**
 * What a form's amount and unit say, as the study writes it: "6 to 9" and "$/m2" are "6 to 9 $/m2". An amount that
 * brings words of its own is taken as typed. @returns undefined for an empty amount
 */
export function quantityText({ amount, unit }: Amount, dimension: DimensionName): string | undefined {
  const typed = amount.trim();
  if (typed === "") return undefined;
  const chosen = unit.trim();
  if (chosen === "" || !isShort(typed) || !numbersOnly.test(typed)) return typed;
  const isRange = /\sto\s/i.test(typed);
  const currency = /^([$€£]|[A-Z]{3})(.*)$/.exec(chosen);
  if (!dimension.startsWith("money") || !currency || isRange) return `${typed} ${chosen}`;
  const [, sign = "", under = ""] = currency;
  return sign.length > 1 ? `${sign} ${typed}${under}` : `${sign}${typed}${under}`;
}

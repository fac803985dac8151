import type { DimensionName } from "../../units/dimensions.js";
import { exactly, longestSpread } from "../../units/spread.js";
import { unitsOffered, type Writing } from "./units-offered.js";

/** A quantity as a form shows it: what is typed, and the unit chosen beside it. */
export interface Amount {
  readonly amount: string;
  /** Empty if the unit, if any, is part of the amount. */
  readonly unit: string;
}

/** Longest amount; a longer text is shown and taken unchanged, and no pattern is tried on it. */
const isShort = (text: string) => text.length <= longestSpread;

const number = String.raw`[-+]?[\d.,]+(?:[eE][-+]?\d+)?`;
const numbersOnly = new RegExp(`^(${number})(\\s+to\\s+${number}){0,2}$`, "i");
const withUnit = new RegExp(`^(${number}(?:\\s+to\\s+${number}){0,2})\\s*(\\S.*)$`, "i");
const moneyFirst = new RegExp(`^([$€£]|[A-Z]{3}(?=\\s))\\s*(${number})\\s*(/.*)?$`);

/** A value of the study in a form. Anything but a plain amount with an offered unit stays whole. */
export function amountOf(value: unknown, dimension: DimensionName, writing: Writing): Amount {
  if (value === undefined || value === null || value === "") {
    return { amount: "", unit: unitsOffered(dimension, writing)[0] ?? "" };
  }
  const text = String(value).trim();
  const said = exactly.exec(text)?.[0] ?? "";
  const bare = text.slice(0, text.length - said.length).trimEnd();
  const [amount, unit] = (isShort(text) && (splitMoney(bare) ?? splitPhysical(bare))) || [bare, ""];
  return unit !== "" && unitsOffered(dimension, writing).includes(unit)
    ? { amount: `${amount}${said}`, unit }
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
 * A form's amount and unit as the study writes them: "6 to 9" and "$/m2" give "6 to 9 $/m2". An amount with words of
 * its own is taken as typed. @returns undefined for an empty amount
 */
export function quantityText({ amount, unit }: Amount, dimension: DimensionName): string | undefined {
  const typed = amount.trim();
  if (typed === "") return undefined;
  const chosen = unit.trim();
  if (exactly.test(typed))
    return withExactly(quantityText({ amount: typed.replace(exactly, ""), unit }, dimension));
  if (chosen === "" || !isShort(typed)) return typed;
  if (!numbersOnly.test(typed)) return `${typed}${strokeLeftOut(typed, chosen)}`;
  const isRange = /\sto\s/i.test(typed);
  const currency = /^([$€£]|[A-Z]{3})(.*)$/.exec(chosen);
  if (!dimension.startsWith("money") || !currency || isRange) return `${typed} ${chosen}`;
  const [, sign = "", under = ""] = currency;
  return sign.length > 1 ? `${sign} ${typed}${under}` : `${sign}${typed}${under}`;
}

/** "$12,000" beside "$/yr" is meant a year. */
const strokeLeftOut = (typed: string, unit: string) =>
  plainMoney.test(typed) && splitMoney(typed)?.[1] === unit.replace(/\/.*$/, "")
    ? unit.replace(/^[^/]*/, "")
    : "";

const plainMoney = /^(?:[$€£]|[A-Z]{3}\s)\s*[\d.,]+$/;

const withExactly = (text: string | undefined) => (text === undefined ? undefined : `${text} exact`);

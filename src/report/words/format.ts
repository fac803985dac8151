import type { Money } from "../../model/money/decimal.js";
import type { QuantityKind } from "../../model/money/line.js";
import { type DimensionName, dimensions } from "../../units/dimensions.js";
import { toDisplay } from "../../units/quantity.js";
import { trueMinus } from "./minus.js";

/** Every figure that a reader sees passes through here; nothing else in the report rounds. */
export interface Formatter {
  /** Money for reading: three significant figures, whole units below a thousand. */
  readonly money: (amount: Money | number) => string;
  /** Money to the unit, for appendices. */
  readonly exactMoney: (amount: Money | number) => string;
  /** Money with cents, for unit rates. */
  readonly rate: (amount: number) => string;
  /** Whole cents as an amount without a sign of currency, to be pasted. */
  readonly cents: (cents: number) => string;
  /** An amount that is a sum of lines, to the cent, without a sign of currency. */
  readonly moneyInCents: (amount: Money) => string;
  readonly quantity: (value: number, dimension: DimensionName) => string;
  /** The number alone, for tables that have the unit in the head. */
  readonly number: (value: number, dimension: DimensionName) => string;
  readonly unit: (dimension: DimensionName) => string;
  readonly display: (value: number, dimension: DimensionName) => number;
}

const locale = "en-US";

type NumberFormat = Pick<Intl.NumberFormat, "format">;

const made = new Map<string, NumberFormat>();

/** A format of each kind is made once: making one takes far longer than formatting with it. Nothing has no minus. */
function numberFormat(options: Intl.NumberFormatOptions): NumberFormat {
  const key = JSON.stringify(options);
  const known = made.get(key);
  if (known) return known;
  const plain = new Intl.NumberFormat(locale, { signDisplay: "negative", ...options });
  const format = { format: (value: number) => trueMinus(plain.format(value)) };
  made.set(key, format);
  return format;
}

export function formatter(currency: string, system: "us" | "si"): Formatter {
  const whole = numberFormat({ style: "currency", currency, maximumFractionDigits: 0 });
  const rounded = numberFormat({ style: "currency", currency, maximumSignificantDigits: 3 });
  const plain = numberFormat({ minimumFractionDigits: 2, maximumFractionDigits: 2 });
  const display = (value: number, dimension: DimensionName) => toDisplay(value, dimension, system);
  const number = (value: number, dimension: DimensionName) => significant(display(value, dimension), 4);
  const unit = (dimension: DimensionName) => dimensions[dimension][system].label;
  return {
    money: (amount) => roundedMoney(Number(amount), { whole, rounded }),
    exactMoney: (amount) => whole.format(Number(amount)),
    cents: (cents) => plain.format(cents / 100),
    moneyInCents: (amount) => plain.format(amount.toNumber()),
    rate: (amount) => rateText(amount, currency),
    display,
    number,
    unit,
    quantity: (value, dimension) => `${number(value, dimension)} ${unit(dimension)}`,
  };
}

function roundedMoney(amount: number, { whole, rounded }: Record<"whole" | "rounded", NumberFormat>): string {
  const size = Math.abs(amount);
  if (size > 0 && size < 1) return `under ${whole.format(1)}`;
  return size < 1000 ? whole.format(amount) : rounded.format(amount);
}

function rateText(amount: number, currency: string): string {
  const small = Math.abs(amount) < 1;
  return numberFormat({
    style: "currency",
    currency,
    minimumFractionDigits: 2,
    maximumFractionDigits: small ? 4 : 2,
  }).format(amount);
}

export function significant(value: number, digits: number): string {
  return numberFormat({ maximumSignificantDigits: digits }).format(value);
}

/** A share as percent: two significant figures, so that neither 71 % nor 0.002 % is hidden. */
export function percent(share: number, digits = 2): string {
  const text = numberFormat({ style: "percent", maximumSignificantDigits: digits }).format(share);
  return share > 0.995 && share < 1 ? "over 99%" : text;
}

/** A ratio past which its figures say nothing. */
const largestRatio = 1000;

/** A benefit–cost ratio: two decimals, or words where it is next to nothing, below it or beyond telling. */
export function ratio(value: number): string {
  if (value < 0) return "below 0";
  if (value > largestRatio) return `over ${significant(largestRatio, 4)}`;
  return value > 0 && value < 0.01 ? "under 0.01" : value.toFixed(2);
}

/** Which dimension a cost line's quantity has, and its unit rate. */
export const lineDimensions: Record<
  QuantityKind,
  { quantity: DimensionName; rate: DimensionName; unit?: string }
> = {
  area: { quantity: "area", rate: "moneyPerArea" },
  mass: { quantity: "mass", rate: "moneyPerMass" },
  energy: { quantity: "energy", rate: "moneyPerEnergy" },
  volume: { quantity: "volume", rate: "moneyPerVolume" },
  hours: { quantity: "hours", rate: "moneyPerHour" },
  days: { quantity: "duration", rate: "moneyPerDay" },
  visits: { quantity: "count", rate: "money", unit: "visit" },
  each: { quantity: "count", rate: "money", unit: "each" },
  year: { quantity: "count", rate: "money", unit: "year" },
};

/** With its first letter large, for the start of a line; "pH" stays as it is. */
export const capitalised = (text: string): string =>
  /^\p{Ll}\p{Lu}/u.test(text) ? text : text.charAt(0).toLocaleUpperCase(locale) + text.slice(1);

/** With its first letter small, for the middle of a sentence; an abbreviation or a name in capitals stays as it is. */
export const uncapitalised = (text: string): string =>
  /^\p{Lu}\p{Ll}+ \p{Ll}/u.test(text) ? text.charAt(0).toLocaleLowerCase(locale) + text.slice(1) : text;

/** About how wide a letter is in print, in those of running text. */
export const printedWidth = (letter: string): number =>
  /[\p{Script=Han}\p{Script=Hangul}\p{Script=Hiragana}\p{Script=Katakana}\p{Extended_Pictographic}]/u.test(
    letter,
  )
    ? 2
    : /[\p{Lu}mwæœ@%&—…]/u.test(letter)
      ? 1.6
      : 1;

/** How many of these letters have room in a line as wide as so many of running text; one at least. */
function lettersInLine(
  letters: readonly string[],
  most: number,
  widthOf: (letter: string) => number,
): number {
  let width = 0;
  const beyond = letters.findIndex((letter) => {
    width += widthOf(letter);
    return width > most;
  });
  return beyond === -1 ? letters.length : Math.max(1, beyond);
}

/** A name in lines about as wide as so many letters, ended at spaces where there are any. */
export function wrapped(name: string, most: number, widthOf = (_letter: string) => 1): string[] {
  const lines: string[] = [];
  for (let rest = [...name]; rest.length > 0; ) {
    const room = lettersInLine(rest, most, widthOf);
    const space = rest.slice(0, room + 1).lastIndexOf(" ");
    const end = rest.length <= room ? rest.length : space > 0 ? space : room;
    lines.push(rest.slice(0, end).join(""));
    rest = [...rest.slice(end).join("").trimStart()];
  }
  return lines;
}

/** Names as a list in words, the first few of them and how many others. */
export function listedWithin(names: readonly string[], most: number): string {
  const rest = names.length - most;
  const shown = rest > 0 ? [...names.slice(0, most), `${rest} ${rest === 1 ? "other" : "others"}`] : names;
  return new Intl.ListFormat("en", { type: "conjunction" }).format(shown);
}

/** A factor on what follows in words: "2.2 times", or "85% of"; 101% is not told as 100%. */
export function factorText(factor: number): string {
  return factor > 2 ? `${significant(factor, 2)} times` : `${percent(factor, factor < 1 ? 2 : 3)} of`;
}

interface Spread {
  readonly low: number;
  readonly high: number;
}

/** Lowest to highest ratio, or one of them where they print alike. */
export function spreadText({ low, high }: Spread): string {
  const [from, to] = [ratio(low), ratio(high)];
  return from === to ? from : `${from} to ${to}`;
}

export const ratioNote = (spread: Spread) => `${spreadText(spread)} over the ranges tried`;

/** A wait in minutes, given in hours. */
export const minutesText = (hours: number): string => atLeastTenth(toDisplay(hours, "shortTime", "si"));

const atLeastTenth = (value: number) =>
  value > 0 && value < 0.05 ? "under 0.1" : value < 100 ? oneDecimal(value) : significant(value, 3);

/** A share of boats in percent, to a tenth. */
export const boatShareText = (share: number): string => `${atLeastTenth(toDisplay(share, "share", "si"))}%`;

export const oneDecimal = (value: number): string =>
  numberFormat({ minimumFractionDigits: 1, maximumFractionDigits: 1 }).format(value);

/** Tenths of a share from 5% to 95%, never none and never all; beyond that "few" or "most". */
export function tenthsOf(share: number): number | "few" | "most" {
  if (share < 0.05) return "few";
  return share > 0.95 ? "most" : Math.min(9, Math.max(1, Math.round(share * 10)));
}

/** A share of outcomes in percent, to a tenth beyond 1 and 99; neither none nor all is certain. */
export function clearPercent(share: number): string {
  if (share < 0.001) return "under 0.1%";
  return share > 0.999 ? "over 99.9%" : `${percentNumber(share)}%`;
}

const percentNumber = (share: number) =>
  share < 0.0095 || share > 0.9905 ? (share * 100).toFixed(1) : String(Math.round(share * 100));

/** Limits of a share, in whole percent: "64–73%". */
export const percentSpan = ({ low, high }: Spread): string => `${percentNumber(low)}–${percentNumber(high)}%`;

/** Amounts in thousands or millions, where the unit stands in the head. */
export interface MoneyScale {
  /** "thousand USD" */
  readonly unit: string;
  /** Three significant figures. */
  readonly text: (amount: number) => string;
  readonly errorText: (amount: number) => string;
  readonly scaled: (amount: number) => number;
}

/** @param largest of the amounts that are told together */
export function moneyScale(largest: number, currency: string): MoneyScale {
  const [size, name] = largest < 1e5 ? [1, ""] : largest < 1e8 ? [1e3, "thousand "] : [1e6, "million "];
  const scaled = (amount: number) => Number((amount / size).toPrecision(6)) || 0;
  return {
    unit: `${name}${currency}`,
    text: (amount) => significant(scaled(amount), 3),
    errorText: (amount) => significant(scaled(amount), 2),
    scaled,
  };
}

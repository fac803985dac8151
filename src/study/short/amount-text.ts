import type { Dimension } from "../../units/dimension.js";
import { type DimensionName, dimensions } from "../../units/dimensions.js";
import { toDisplay } from "../../units/quantity.js";
import type { SpreadQuantity } from "../../units/spread.js";

/** How a study writes its amounts. */
export interface Writing {
  readonly system: "us" | "si";
  /** Three-letter code. */
  readonly currency: string;
}

/** A value, or a range from low to high with the likeliest between them, in the coherent unit of its dimension. */
export interface Range {
  readonly low: number;
  readonly value: number;
  readonly high: number;
}

export const pointRange = (value: number): Range => ({ low: value, value, high: value });

/** What an author gave, as a range from its ends. */
export function rangeOf({ value, spread }: SpreadQuantity): Range {
  if (!spread) return pointRange(value);
  if (spread.kind !== "discrete") return { low: spread.low, value, high: spread.high };
  const values = spread.choices.map((each) => each.value);
  return { low: Math.min(...values), value, high: Math.max(...values) };
}

/** A range with a function of each of its three values, in rising order. */
export function mapped({ low, value, high }: Range, change: (each: number) => number): Range {
  const [one, other] = [change(low), change(high)];
  return { low: Math.min(one, other), value: change(value), high: Math.max(one, other) };
}

export const isPoint = ({ low, high }: Range): boolean => low === high;

/**
 * A range as a study writes it: "12 to 20 to 30 ft", its ends rounded outward; one value where low and high are alike to
 * three figures.
 */
export function amountText(range: Range, dimension: DimensionName, writing: Writing): string | number {
  const number = (each: number, round: Rounding) =>
    rounded(toDisplay(each, dimension, writing.system), dimension, round);
  const value = number(range.value, Math.round);
  const isOne = !(number(range.low, Math.round) < number(range.high, Math.round));
  const [low, high] = [number(range.low, Math.floor), number(range.high, Math.ceil)];
  const unit = typedUnit(dimension, writing.system);
  if (!isMoney(dimension)) {
    if (isOne) return unit === "" ? value : `${value} ${unit}`;
    return `${low} to ${value} to ${high} ${unit}`.trim();
  }
  const sign = writing.currency === "USD" ? "$" : writing.currency;
  const under = unit === "" ? "" : `/${unit}`;
  if (isOne) return `${sign}${sign.length > 1 ? " " : ""}${value}${under}`;
  return `${low} to ${value} to ${high} ${sign}${under}`;
}

export const isMoney = (name: DimensionName): boolean => (dimensions[name] as Dimension).money === true;

type Rounding = (value: number) => number;

/** Digits that a value which nobody measured is told with. */
const significantDigits = 3;
/** Of a number, beyond which its digits are those of its conversion. */
const exactDigits = 12;

function rounded(value: number, dimension: DimensionName, round: Rounding): number {
  if (value === 0) return 0;
  const decimals =
    dimension === "elevation" ? 1 : significantDigits - 1 - Math.floor(Math.log10(Math.abs(value)));
  const step = 10 ** -decimals;
  return Number((round(Number((value / step).toPrecision(exactDigits))) * step).toPrecision(exactDigits));
}

/** Units whose written form is not that of the unit converter. */
const written: Readonly<Record<string, string>> = {
  tempF: "degF",
  tempC: "degC",
  hectare: "ha",
  "acre*ft": "acre-ft",
  "ft3/s": "cfs",
  "1": "",
  "1/year": "yr",
  hour: "h",
  day: "d",
  "mg/l": "mg/L",
};

/** A dimension's usual unit as an author types it. */
export function typedUnit(name: DimensionName, system: "us" | "si"): string {
  const { unit } = dimensions[name][system];
  return written[unit] ?? unit;
}

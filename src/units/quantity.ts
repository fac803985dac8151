import Qty from "js-quantities";
import { convertible } from "./convertible.js";
import type { Dimension } from "./dimension.js";
import { type DimensionName, dimensions } from "./dimensions.js";
import { taught } from "./taught-units.js";

/** A quantity as its author typed it, with its value in the coherent unit of its dimension. */
export interface Quantity {
  readonly text: string;
  readonly value: number;
  readonly dimension: DimensionName;
}

/** Why a text was refused: what was found is the caller's to add. */
export class QuantityError extends Error {}

const temperatureUnits: ReadonlyMap<string, string> = new Map([
  ...["degf", "°f", "ºf", "f"].map((unit) => [unit, "tempF"] as const),
  ...["degc", "°c", "ºc", "c"].map((unit) => [unit, "tempC"] as const),
  ["k", "tempK"],
]);

/** No quantity is longer; the unit converter takes minutes over a text of thousands of letters. */
const longestText = 60;

const numberPattern = "[-+]?(?:\\d{1,3}(?:,\\d{3})+|\\d+)(?:\\.\\d+)?(?:[eE][-+]?\\d+)?|[-+]?\\.\\d+";
const numberText = new RegExp(`^(?:${numberPattern})$`);
const quantityPattern = new RegExp(`^(${numberPattern})\\s*(.*)$`);
const moneyPattern = new RegExp(`^(?:[$€£]|[A-Z]{3}\\s)\\s*(${numberPattern})\\s*(?:(?:/|per\\s)\\s*(.+))?$`);
/** "12 $/ft2", "12 USD per ft2". */
const currencyAfter = new RegExp(`^(${numberPattern})\\s*([$€£]|[A-Z]{3}(?=\\s*(?:/|per\\s|$)))(.*)$`);

/**
 * Reads a quantity and checks its dimension.
 * @param text as typed: "1,200 acre-ft", "42 in", "$0.08/kWh"; a bare number where the dimension has no unit
 * @throws QuantityError saying what is allowed
 */
export function parseQuantity(text: string | number, dimensionName: DimensionName): Quantity {
  const dimension: Dimension = dimensions[dimensionName];
  const trimmed = String(text).trim();
  if (trimmed.length > longestText) throw refused(dimension);
  const value = dimension.money ? parseMoney(trimmed, dimension) : parsePhysical(trimmed, dimension);
  requireRange(value, dimension);
  return { text: trimmed, value, dimension: dimensionName };
}

/**
 * Reads numbers that share one unit, such as a column of a table with the unit in its head. The conversion is
 * worked out once: the last digit of a value may differ from that of `parseQuantity`.
 * @returns reads one number as typed, "2,135.4", in the coherent unit; throws QuantityError if it is none
 * @throws QuantityError if the unit is not one of the dimension
 */
export function columnReader(
  unit: string,
  dimensionName: Exclude<DimensionName, `money${string}`>,
): (text: string) => number {
  const dimension: Dimension = dimensions[dimensionName];
  if (unit.length > longestText) throw refused(dimension);
  const zero = parsePhysical(`0 ${unit}`, dimension);
  const scale = parsePhysical(`1 ${unit}`, dimension) - zero;
  return (text) => {
    const trimmed = text.trim();
    if (trimmed.length > longestText || !numberText.test(trimmed)) {
      throw new QuantityError('a number such as 1240.5 or "1,240.5"');
    }
    const value = zero + scale * Number(trimmed.replaceAll(",", ""));
    requireRange(value, dimension);
    return value;
  };
}

function parsePhysical(text: string, dimension: Dimension): number {
  const match = quantityPattern.exec(text);
  if (!match) throw refused(dimension);
  const number = Number((match[1] ?? "").replaceAll(",", ""));
  const unit = (match[2] ?? "").trim();
  if (dimension.unit === "1") return number * dimensionlessScale(unit, dimension);
  if (unit === "") throw refused(dimension, "a unit is missing");
  const value = convert(convertible(number), teach(unit, dimension), dimension.unit, dimension);
  if (dimension.minimum === 0 && value === 0 && number !== 0) throw tooSmall(dimension);
  return value;
}

function parseMoney(text: string, dimension: Dimension): number {
  const match = moneyPattern.exec(text.replace(currencyAfter, "$2 $1 $3"));
  if (!match) throw refused(dimension);
  const amount = Number((match[1] ?? "").replaceAll(",", ""));
  const unit = (match[2] ?? "").trim();
  const isPerUnit = dimension.unit !== "1" || dimension.underStroke !== undefined;
  if (!isPerUnit && unit !== "") throw refused(dimension);
  if (!isPerUnit) return amount;
  if (unit === "") throw refused(dimension, "the unit after the stroke is missing");
  if (dimension.underStroke && !dimension.underStroke.test(unit)) throw refused(dimension);
  return dimension.unit === "1"
    ? amount
    : amount / convert(1, teach(unit, dimension), dimension.unit, dimension);
}

function dimensionlessScale(unit: string, dimension: Dimension): number {
  if (unit === "") return 1;
  const isShare = dimension.us.unit === "%";
  const isYearly = dimension === dimensions.yearlyShare || dimension === dimensions.yearlyChange;
  const percent = isYearly ? /^(?:%|percent|pct)(\s*(?:\/|per)\s*(yr|year|a))?$/ : /^(?:%|percent|pct)$/;
  if (isShare && percent.test(unit)) return Qty("1 %").toBase().scalar;
  throw refused(dimension);
}

function teach(unit: string, dimension: Dimension): string {
  if (dimension.unit === "tempC") return temperatureUnits.get(unit.toLowerCase().replace(" ", "")) ?? unit;
  if (/\bmwh\b/i.test(unit) && !/\bMWh\b/.test(unit))
    throw refused(dimension, "write MWh for megawatt-hours");
  return taught(unit);
}

function convert(number: number, from: string, to: string, dimension: Dimension): number {
  const unit = from.replace(/^1?\s*\//, "1/");
  if (numberInUnit.test(unit.replace(/^1\//, "/"))) throw refused(dimension);
  try {
    const quantity = Qty(number, unit);
    // `to` alone would also turn an inverse round: 5 s/m into 0.2 m/s
    if (quantity.isCompatible(to)) return quantity.to(to).scalar;
  } catch {
    // refused below, as a unit of another dimension is
  }
  throw refused(dimension);
}

/** A digit that is no exponent: the converter would drop it without a word ("1 200 ft" as 1 ft). */
const numberInUnit = /(?:^|[\s*/])[-+.,]?\d/;

/** What conversion may add to a value that is exactly at its bound: 140 °F is 60 °C. */
const roundingError = 1e-9;

/**
 * A number beyond these, in the coherent unit, is a slip of the keys or of the unit; between them no step of the model
 * leaves the range of floating point. Where zero is no end of a scale, as of temperatures, small ones are sound.
 */
const smallestMagnitude = 1e-12;
const largestMagnitude = 1e15;

function requireRange(value: number, dimension: Dimension): void {
  const { minimum, maximum, name } = dimension;
  if (!Number.isFinite(value)) throw new QuantityError(`${name} must be a finite number`);
  const magnitude = Math.abs(value);
  if (magnitude > largestMagnitude)
    throw new QuantityError(`${name} of a size that there is; this is too large`);
  if (minimum === 0 && magnitude > 0 && magnitude < smallestMagnitude) {
    throw tooSmall(dimension);
  }
  if (minimum !== undefined && value < minimum) {
    throw new QuantityError(
      minimum === 0 ? `${name} of at least 0` : `${name} of at least ${bound(minimum, dimension)}`,
    );
  }
  if (maximum !== undefined && value > maximum + roundingError) {
    throw new QuantityError(
      maximum === 1 ? `${name} of at most 100 %` : `${name} of at most ${bound(maximum, dimension)}`,
    );
  }
}

const tooSmall = ({ name }: Dimension): QuantityError =>
  new QuantityError(`${name} of 0, or of a size that there is; this is too small`);

/** In the units of either system: what was typed may be in any. */
function bound(value: number, { unit, us, si }: Dimension): string {
  const inUnits = [si, us].map((each) => {
    const shown = Qty(value, unit).to(each.unit).scalar;
    return `${Number(shown.toPrecision(3))} ${each.unit.replace("temp", "°")}`;
  });
  return [...new Set(inUnits)].join(", ");
}

function refused(dimension: Dimension, why?: string): QuantityError {
  return new QuantityError(`${dimension.name} such as ${dimension.example}${why ? ` (${why})` : ""}`);
}

/** Converts a value of the model to a display unit. Money rates are converted under the stroke. */
export function toDisplay(value: number, dimensionName: DimensionName, system: "us" | "si"): number {
  const dimension: Dimension = dimensions[dimensionName];
  const target = dimension[system].unit;
  if (dimension.unit === "1") return target === "%" ? Qty(value, "").to("%").scalar : value;
  if (dimension.unit === "year") return value;
  return dimension.money
    ? value * Qty(1, target).to(dimension.unit).scalar
    : Qty(value, dimension.unit).to(target).scalar;
}

import Qty from "js-quantities";
import { convertible } from "./convertible.js";
import { taught } from "./taught-units.js";

/** Turns a number in one unit into the same quantity in another. */
type Conversion = (value: number) => number;

/** No unit is longer; the unit converter takes minutes over a text of thousands of letters. */
const longestUnit = 60;

/**
 * How numbers in one unit become numbers in another: units of the trade, dollars over a unit ("$/ft2"), shares ("%"),
 * temperatures on a scale ("degF"). A number in the unit that is asked for stays as it is, to the last bit.
 * @returns undefined where the units are not of one dimension, or where one of them is no unit
 */
export function conversionBetween(from: string, to: string): Conversion | undefined {
  if (from === to) return (value) => value;
  if (from.length > longestUnit) return undefined;
  if (from.startsWith("$") || to.startsWith("$")) return priceConversion(from, to);
  if (scales.has(from) || scales.has(to)) return scaleConversion(from, to);
  const source = written(from);
  const target = written(to);
  if (source === target) return (value) => value;
  return isCompatible(source, target)
    ? (value) => rounded(Qty(convertible(value), source).to(target).scalar)
    : undefined;
}

/** Of prices, only what is under the stroke is converted: the more of it in a unit, the lower the price of one. */
function priceConversion(from: string, to: string): Conversion | undefined {
  const source = underStroke(from);
  const target = underStroke(to);
  if (source === undefined || target === undefined) return undefined;
  if (source === target) return (value) => value;
  if (!isCompatible(source, target)) return undefined;
  const size = Qty(1, source).to(target).scalar;
  return (value) => rounded(value / size);
}

/** What stands under the stroke of a price; nothing for a sum of money; undefined for what is no price. */
function underStroke(unit: string): string | undefined {
  const [, under] = /^\$(?:\s*\/\s*(.+))?$/.exec(unit) ?? [undefined, undefined];
  if (unit.trim() === "$") return "";
  return under === undefined ? undefined : written(under.replace(/^\((.*)\)$/, "$1"));
}

/** Digits that a conversion keeps: 53.6 °F is 12 °C, and not a last bit more. */
const keptDigits = 15;

const rounded = (value: number) => Number(value.toPrecision(keptDigits));

interface Scale {
  readonly degree: string;
  /** Where water freezes. */
  readonly freezing: number;
}

const celsius = { degree: "degC", freezing: 0 };
const fahrenheit = { degree: "degF", freezing: 32 };

/** Scales of temperature, by the units that name them where they stand alone. */
const scales: ReadonlyMap<string, Scale> = new Map([
  ["degC", celsius],
  ["°C", celsius],
  ["degF", fahrenheit],
  ["°F", fahrenheit],
  ["K", { degree: "degK", freezing: 273.15 }],
]);

function scaleConversion(from: string, to: string): Conversion | undefined {
  const source = scales.get(from);
  const target = scales.get(to);
  if (!source || !target) return undefined;
  const size = Qty(1, source.degree).to(target.degree).scalar;
  return (value) => rounded((value - source.freezing) * size + target.freezing);
}

const pureNumbers = ["share", "1"];

/** A unit as the converter would write it. */
const written = (unit: string): string =>
  pureNumbers.includes(unit) ? "" : taught(unit).replace(/(?<=[A-Za-z\d])\s*[.·]\s*(?=[A-Za-z])/g, "*");

/** A digit that is no exponent: the converter would drop it without a word. */
const numberInUnit = /(?:^|[\s*/])[-+.,]?\d/;

function isCompatible(source: string, target: string): boolean {
  if (numberInUnit.test(source.replace(/^1\s*\//, "/"))) return false;
  try {
    return Qty(1, source).isCompatible(target);
  } catch {
    return false;
  }
}

import { conversionBetween } from "../../units/unit-conversion.js";

/** Digits that a converted number keeps: enough that converting back gives what was typed. */
const keptDigits = 9;

const number = /[-+]?(?:\d[\d,]*(?:\.\d*)?|\.\d+)(?:[eE][-+]?\d+)?/g;

/**
 * The numbers of an amount in another unit: "36" from "in" to "mm" is "914.4", and both ends of a range change.
 * @returns undefined where one of the units is none, or they are not of one dimension
 */
export function convertedAmount(amount: string, from: string, to: string): string | undefined {
  const conversion = conversionBetween(inDollars(from), inDollars(to));
  if (!conversion || currencyOf(from) !== currencyOf(to)) return undefined;
  const converted = (text: string) =>
    String(Number(conversion(Number(text.replaceAll(",", ""))).toPrecision(keptDigits)));
  return amount.replace(number, converted);
}

/** BTU is a unit that looks like a currency. */
const currency = /^(?:[$€£]|(?!BTU)[A-Z]{3}(?=$|\/))/;

const currencyOf = (unit: string) => currency.exec(unit)?.[0] ?? "";

/** Currencies do not change here, and conversions know the dollar. */
const inDollars = (unit: string) => unit.replace(currency, "$");

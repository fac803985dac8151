import { describe, expect, it } from "vitest";
import { type DimensionName, dimensions } from "../../src/units/dimensions.js";
import { parseQuantity, QuantityError } from "../../src/units/quantity.js";
import { processorMilliseconds } from "../trials/fuzz/fault.js";

/** The message with which a text is refused; fails if it is read instead. */
function refusal(text: string | number, dimension: DimensionName): string {
  try {
    const { value } = parseQuantity(text, dimension);
    return `was read as ${value}`;
  } catch (error) {
    expect(error).toBeInstanceOf(QuantityError);
    return error instanceof Error ? error.message : "";
  }
}

type Refused = readonly [why: string, text: string | number, dimension: DimensionName, words: string];

/** Each with words that the message must hold: the rule, or the example of the dimension. */
const refused: readonly Refused[] = [
  ["without its unit", "1,240", "elevation", "a unit is missing"],
  ["as a bare number that needs a unit", 42, "length", "a unit is missing"],
  ["as money per energy without its unit", "$0.08", "moneyPerEnergy", "the unit after the stroke is missing"],
  ["in a unit of another dimension", "42 kg", "length", dimensions.length.example],
  ["in an area for a volume", "3 acre", "volume", dimensions.volume.example],
  ["in the inverse of its unit", "5 s/m", "speed", dimensions.speed.example],
  ["as a yearly rate for a time", "40 %/yr", "duration", dimensions.duration.example],
  ["in a unit that nobody knows", "42 zorks", "length", dimensions.length.example],
  ["as money in another unit", "$5/ton", "moneyPerEnergy", dimensions.moneyPerEnergy.example],
  ["as money per something for plain money", "$5/yr", "money", dimensions.money.example],
  ["as plain money for money per year", "$5", "moneyPerYear", dimensions.moneyPerYear.example],
  ["with a unit where none belongs", "12 ft", "count", dimensions.count.example],
  ["as a length next to nothing", "1e-300 ft", "length", "this is too small"],
  ["as a negative length", "-3 ft", "length", "of at least 0"],
  ["as a negative flow", "-3 cfs", "flow", "of at least 0"],
  ["as a negative share", "-1 %", "share", "of at least 0"],
  ["as a negative number", -1, "count", "of at least 0"],
  ["as negative money", "$-5", "money", "of at least 0"],
  ["as a share above 100 %", "101 %", "share", "at most 100 %"],
  ["as a bare share above 1", 1.01, "share", "at most 100 %"],
  ["as a yearly rate above 100 %", "120 %/yr", "yearlyShare", "at most 100 %"],
  ["as an angle past the vertical", "91 deg", "angle", "at most 90 deg"],
  ["as water hotter than any", "160 degF", "temperature", "at most 60 °C, 140 °F"],
  ["as air colder than any", "-90 degC", "temperature", "at least -60 °C, -76 °F"],
  ["as infinite text", "Infinity ft", "length", dimensions.length.example],
  ["as a text for not-a-number", "NaN ft", "length", dimensions.length.example],
  ["as the number infinity", Number.POSITIVE_INFINITY, "share", dimensions.share.example],
  ["as not-a-number", Number.NaN, "count", dimensions.count.example],
  ["as a number past all bounds", "1e400 cfs", "flow", "flow"],
  ["as money past all bounds", "$1e400", "money", "finite"],
  ["as an empty text", "", "length", dimensions.length.example],
  ["as blanks", "   ", "share", dimensions.share.example],
  ["as a unit alone", "ft", "length", dimensions.length.example],
  ["as money without a currency", "17,000", "money", dimensions.money.example],
  ["as a bare number of money", 17_000, "money", dimensions.money.example],
  ["as a money rate without a currency", "52/MWh", "moneyPerEnergy", dimensions.moneyPerEnergy.example],
  ["with a comma before two digits", "12,00 ft", "length", dimensions.length.example],
  ["with a comma before four digits", "1,2345 ft", "length", dimensions.length.example],
  ["with a comma after four digits", "1200,000 ft", "length", dimensions.length.example],
  ["with commas all over", "1,2,3 ft", "length", dimensions.length.example],
  ["with a decimal comma", "1,5 m", "length", dimensions.length.example],
  ["with blanks between thousands", "1 200 ft", "length", dimensions.length.example],
  ["with two decimal points", "1.5.2 ft", "length", dimensions.length.example],
  ["as two numbers", "12 5 ft", "length", dimensions.length.example],
  ["as money with a misplaced comma", "$17,00", "money", dimensions.money.example],
  ["as money with four digits after a comma", "$1,7000", "money", dimensions.money.example],
  ["as a count with a misplaced comma", "12,00", "count", dimensions.count.example],
  ["as money with a number in its unit", "$1/100 gal", "moneyPerVolume", dimensions.moneyPerVolume.example],
  ["as feet and inches", "5 ft 6 in", "length", dimensions.length.example],
  ["as a fraction", "3/8 in", "smallLength", dimensions.smallLength.example],
  ["as a yearly rate for a plain share", "35 %/yr", "share", dimensions.share.example],
];

describe("a quantity is refused", () => {
  it.each(refused)("%s: %j for %s", (_why, text, dimension, words) => {
    expect(refusal(text, dimension)).toContain(words);
  });

  it.each(["constructor", "toString", "__proto__"])("in the unit %s, a name of the language", (unit) => {
    expect(refusal(`20 ${unit}`, "temperature")).toContain(dimensions.temperature.example);
    expect(refusal(`20 ${unit}`, "length")).toContain(dimensions.length.example);
  });

  it("at once if it is far longer than any quantity", () => {
    const started = processorMilliseconds();
    expect(refusal(`1 ${"m*".repeat(30_000)}`, "length")).toContain("length");
    expect(processorMilliseconds() - started).toBeLessThan(2000);
  });
});

import type { Assumption } from "../../assumptions/entry.js";
import { significant } from "../../report/words/format.js";
import { conversionBetween } from "../../units/unit-conversion.js";

/** US units for those that entries state; what is not here is told as it is stated. Temperatures may be differences. */
const inUs: Readonly<Record<string, readonly [unit: string, label: string]>> = {
  m: ["ft", "ft"],
  mm: ["in", "in"],
  "m/s": ["ft/s", "ft/s"],
  m2: ["ft2", "ft²"],
  "m3/s": ["ft3/s", "cfs"],
  "kg/m2": ["lb/ft2", "lb/ft²"],
  "kg/m3": ["lb/ft3", "lb/ft³"],
  "$/m2": ["$/ft2", "$/ft²"],
  "$/m3": ["$/acre-ft", "$/acre-ft"],
  "$/kg": ["$/lb", "$/lb"],
};

const digits = 3;

/** An entry's value and range in the units of a study, where it states others. */
export function inStudyUnits(
  { value, low, high, unit, priceYear }: Assumption,
  system: "us" | "si",
): { readonly value: string; readonly range: string } | undefined {
  const [to, label] = (system === "us" ? inUs[unit] : undefined) ?? [];
  const convert = to === undefined ? undefined : conversionBetween(unit, to);
  if (!convert || label === undefined) return undefined;
  const year = priceYear === undefined ? "" : ` of ${priceYear}`;
  const [middle = "", from = "", until = ""] = [value, low, high].map((each) =>
    significant(convert(each), digits),
  );
  return { value: `${middle} ${label.replace("$", "USD")}${year}`, range: `${from}–${until}` };
}

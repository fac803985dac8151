import type { z } from "zod";
import { conversionBetween } from "../units/unit-conversion.js";
import { boundsText, isWithin } from "./bounds.js";
import { type Assumption, type Source, type WrittenAssumption, writtenSchema } from "./entry.js";
import type { Expectation } from "./expectations.js";
import type { WrittenItem } from "./written-items.js";
import { shapeProblemAt, valueAt, wrongValue } from "./yaml-file.js";

/**
 * Reads one item of a file, in the unit in which the model expects it, and adds what is wrong with it to `problems`.
 * @param expected absent for an id that nothing reads
 */
export function settled(
  written: WrittenItem,
  expected: Expectation | undefined,
  sources: ReadonlyMap<string, Source>,
  problems: string[],
): Assumption | undefined {
  const { file, item } = written;
  const parsed = writtenSchema.safeParse(item);
  if (!parsed.success) {
    problems.push(...parsed.error.issues.map((issue) => shapeProblem(written, issue, expected)));
    return undefined;
  }
  const entry = parsed.data;
  problems.push(...rangeProblems(file, entry), ...sourceProblems(file, entry, sources));
  return expected && inExpectedUnit(file, entry, expected, problems);
}

function shapeProblem(
  { file, item, id, index }: WrittenItem,
  issue: z.core.$ZodIssue,
  expected: Expectation | undefined,
): string {
  const name = id ?? `entry ${index + 1}`;
  const field = issue.path.join(".");
  if (issue.code === "unrecognized_keys") {
    return `${file}: ${name} has an unknown key "${issue.keys.join('", "')}". Allowed: ${Object.keys(writtenSchema.shape).join(", ")}. Correct or remove it.`;
  }
  const place = `${file}: ${name}: ${field}`;
  const found = valueAt(item, issue.path);
  return field === "unit" && expected
    ? wrongValue(place, found, unitsText(expected))
    : shapeProblemAt(place, found, issue);
}

const unitsText = ({ unit, as }: Expectation) =>
  `${unit}, or a unit that can be converted to it${as ? `, for ${as}` : ""}`;

function inExpectedUnit(
  file: string,
  entry: WrittenAssumption,
  expected: Expectation,
  problems: string[],
): Assumption | undefined {
  const { id, value, low, high, priceYear } = entry;
  const { unit } = expected;
  const convert = conversionBetween(entry.unit, unit);
  if (convert === undefined) {
    problems.push(
      `${file}: ${id}: unit is ${JSON.stringify(entry.unit)}; allowed: ${unitsText(expected)}. Correct the unit, and the values with it if they are in another.`,
    );
    return undefined;
  }
  if (unit.startsWith("$") && priceYear === undefined) {
    problems.push(`${file}: ${id} is a price without priceYear. Add the year of its prices.`);
  }
  const settledEntry = { ...entry, unit, value: convert(value), low: convert(low), high: convert(high) };
  problems.push(...boundsProblems(file, entry, settledEntry, expected));
  return settledEntry;
}

/** Of what was written, in words with what it comes to in the expected unit. */
function boundsProblems(
  file: string,
  written: WrittenAssumption,
  entry: Assumption,
  { bounds, unit, as }: Expectation,
): string[] {
  const allowed = `${boundsText(bounds, unit)}${as ? `, for ${as}` : ""}`;
  return (["value", "low", "high"] as const)
    .filter((field) => !isWithin(entry[field], bounds))
    .map((field) => {
      const found = `${written[field]} ${written.unit}`;
      const converted = written.unit === unit ? "" : ` (${entry[field]} ${unit})`;
      return `${file}: ${entry.id}: ${field} is ${found}${converted}; allowed: ${allowed}. Correct it or its unit.`;
    });
}

function rangeProblems(file: string, { id, value, low, high, unit }: WrittenAssumption): string[] {
  return value < low || value > high
    ? [
        `${file}: ${id} is ${value}; allowed ${low} to ${high} ${unit}. Correct the value or widen the range with a source.`,
      ]
    : [];
}

function sourceProblems(
  file: string,
  { id, source }: WrittenAssumption,
  sources: ReadonlyMap<string, Source>,
): string[] {
  return sources.has(source)
    ? []
    : [
        `${file}: ${id} names the source "${source}", which sources.yaml does not hold. Add the citation there.`,
      ];
}

import { LRUCache } from "lru-cache";
import { z } from "zod";
import type { DimensionName } from "../../units/dimensions.js";
import { dimensions } from "../../units/dimensions.js";
import { QuantityError } from "../../units/quantity.js";
import { parseSpread, type SpreadQuantity } from "../../units/spread.js";
import { monthNames } from "./month-names.js";

interface Typed {
  readonly text: string | number;
  readonly dimension: DimensionName;
}

/** Quantities as they were read: a study that is edited is read at each key, with one of hundreds of them changed. */
const read = new LRUCache<string, SpreadQuantity, Typed>({
  max: 5000,
  memoMethod: (_key, _read, { context: { text, dimension } }) => parseSpread(text, dimension),
});

/** A quantity as text with its unit and perhaps a range; a bare number if the dimension has no unit. */
export function quantity(dimension: DimensionName) {
  const { name, example } = dimensions[dimension];
  return z
    .union([z.string(), z.number()], { error: `${name} such as ${example}` })
    .meta({ description: `${name}, for instance ${example}`, dimension })
    .transform((text, context): SpreadQuantity => {
      try {
        return read.memo(`${dimension} ${text}`, { context: { text, dimension } });
      } catch (error) {
        if (!(error instanceof QuantityError)) throw error;
        context.addIssue({ code: "custom", message: error.message });
        return z.NEVER;
      }
    });
}

/** A quantity above zero. */
export function positive(dimension: DimensionName) {
  return quantity(dimension).refine(({ value }) => value > 0, `${dimensions[dimension].name} above zero`);
}

/** One value for each month, or one for all. */
export function monthly(dimension: DimensionName) {
  const each = quantity(dimension);
  const months = Object.fromEntries(monthNames.map((name) => [name, each])) as Record<
    (typeof monthNames)[number],
    typeof each
  >;
  return z.strictObject(months);
}

/** Values by month, or one for all where nobody has twelve. */
export function monthlyOrOne(dimension: DimensionName) {
  return z.union([monthly(dimension), quantity(dimension).transform((value) => ({ all: value }))]);
}

/** A day of the year, "MM-DD". */
export const dayOfYear = z
  .string()
  .regex(/^(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])$/, 'a day of the year written "MM-DD", for instance "10-15"')
  .meta({ input: "day-of-year" });

export const shortText = z
  .string()
  .trim()
  .min(1, "a text that is not empty")
  .max(200, "at most 200 characters");
export const identifier = z
  .string()
  .regex(/^[a-z0-9][a-z0-9-]*$/, "lower-case letters, digits and hyphens, for instance north-intake")
  .max(60, "at most 60 characters")
  .meta({ input: "id" });

/** An id defined elsewhere in the study, for instance under "money.bearers". */
export const reference = (refersTo: string) => identifier.meta({ input: "reference", refersTo });

export const year = z.int("a year").min(1900, "a year from 1900").max(2200, "a year up to 2200");

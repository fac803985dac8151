import { z } from "zod";
import { identifier, quantity, reference, shortText } from "./fields.js";

export const count = (what: string) =>
  z.int(`a whole number of ${what}`).min(1, `at least one of ${what}`).max(10_000, `at most 10,000 ${what}`);

const fixtures = z
  .array(z.strictObject({ name: shortText, count: count("items"), hoursEach: quantity("hours") }))
  .default([])
  .meta({
    description: "Gates, guides, gauges, drains: counted items with hours of work a year once infested",
  });

const pinned = z
  .array(
    z.strictObject({ part: shortText, plan: z.string().max(60, "at most 60 characters"), reason: shortText }),
  )
  .default([])
  .meta({ description: "Protection plans that the engineer prescribes for parts, each with its reason" });

const bearerShares = z
  .record(identifier, quantity("share"))
  .meta({ refersTo: "money.bearers" })
  .transform((shares) => Object.entries(shares).map(([id, share]) => ({ id, share })));

/** Who pays: one of the study's bearers, or several with shares. */
export const bearer = z.union([reference("money.bearers"), bearerShares], {
  error: "an id from money.bearers, or ids with shares such as { city: 60 %, district: 40 % }",
});

/** What structures of every kind have. */
export const base = {
  id: identifier,
  name: shortText,
  bearer: bearer.meta({
    description: "Who pays for this structure: an id from money.bearers, or several with shares",
  }),
  fixtures,
  pinned,
};

/** Year since establishment from which a duty is paid. */
export const fromYear = z
  .int("a whole number of years")
  .min(1, "at least 1")
  .max(100, "at most 100")
  .default(1);

import { z } from "zod";
import { budgetParts } from "../../model/program/budget.js";
import { positive, quantity, reference, shortText, year } from "./fields.js";

const mostSources = 20;
const mostPayments = 100_000_000;

/** An amount without a range: what was agreed, not what is expected. */
const agreed = quantity("money").refine(
  ({ value, spread }) => spread === undefined && value >= 0,
  "one amount without a range, at least 0",
);

const part = quantity("share").refine(({ spread }) => spread === undefined, "one share without a range");

const source = z.strictObject({
  name: shortText.meta({
    description: "The grant, or the agreement with a partner",
  }),
  payer: reference("money.bearers").optional().meta({
    description: "Who pays; if left out, the source itself under its own name",
  }),
  paysFor: z
    .array(z.enum(budgetParts).exclude(["revenue"]))
    .min(1, "at least one part of the cost")
    .optional()
    .meta({
      description:
        "Purchases of equipment, costs of starting (once), what goes on each year (ongoing); all if left out",
    }),
  share: part.optional().meta({ description: "Of what it may pay for" }),
  amount: agreed.optional().meta({ description: "In place of a share: money of each fiscal year" }),
  cap: agreed.optional().meta({ description: "The most that it pays in a fiscal year" }),
  match: part.optional().meta({ description: "Share that others must pay of what it may pay for" }),
  from: year.optional().meta({
    description: "First fiscal year, by the calendar year in which it ends",
  }),
  to: year.optional().meta({ description: "Last fiscal year" }),
  inKind: z.boolean().default(false).meta({
    description:
      "Whether it is work or things in place of money, which the program's lines hold at that value",
  }),
  afterwards: shortText.optional().meta({ description: "What is done when it ends" }),
  origin: shortText.meta({ description: "Where the terms come from" }),
});

const payments = (what: string) =>
  z
    .number()
    .min(1, "at least 1")
    .max(mostPayments, `at most ${mostPayments.toLocaleString("en-US")}`)
    .optional()
    .meta({ description: what });

/** What a budget office asks of a request, beside what the board votes on. */
export const requestFields = {
  fund: shortText.optional().meta({ description: "The fund that is asked" }),
  account: shortText.optional().meta({
    description: "Account or program codes, as the budget office writes them",
  }),
  fullTimeHours: z
    .number()
    .min(1, "at least 1 hour")
    .max(8784, "at most the hours of a year, 8,784")
    .optional()
    .meta({ description: "Paid hours of a full-time year; 2,080 if left out" }),
  contingency: z
    .strictObject({
      confidence: positive("share")
        .refine(({ value }) => value >= 0.5 && value < 1, "a share from 50 % to below 100 %")
        .meta({
          description: "Share of the simulated outcomes of the program's own cost that it covers",
        }),
    })
    .optional()
    .meta({
      description:
        "A line of the request for what the program may cost more than its lines; never in the comparison. Federal practice is 80 %",
    }),
  appropriationYears: z
    .int("a whole number of fiscal years")
    .min(1, "at least 1 fiscal year")
    .max(5, "at most 5 fiscal years")
    .optional()
    .meta({
      description: "Fiscal years that are appropriated together; one if left out",
    }),
  carriedIn: agreed.optional().meta({
    description: "What is left of earlier years and may be used in place of new money, until it is gone",
  }),
  sources: z.array(source).max(mostSources, `at most ${mostSources} sources`).optional().meta({
    description:
      "Grants and partners that pay a part, in the order in which they do; not in the comparison, since they change who pays and not what it costs",
  }),
  payments: z
    .strictObject({
      launches: payments("Launches a year that would pay a fee each"),
      days: payments("Boat days a year that would pay a day fee each"),
      seasons: payments("Boats a year that would pay a season's fee each"),
    })
    .optional()
    .meta({
      description: "Payments if a fee kept nobody away: for the fees that would cover the whole program",
    }),
};

export type SourceDocument = z.output<typeof source>;

import { z } from "zod";
import { type PlanningRate, planningRate } from "../../model/money/planning-rate.js";
import { priceGroups } from "../../model/money/price-group.js";
import type { Quantity } from "../../units/quantity.js";
import type { SpreadQuantity } from "../../units/spread.js";
import { identifier, quantity, reference, shortText, year } from "./fields.js";
import { monthNames } from "./month-names.js";

/** A rate that is entered, or that follows from the federal rule. */
type DiscountRate = SpreadQuantity & {
  readonly planning?: PlanningRate & {
    readonly meanYield: Quantity;
    readonly previousRate: Quantity;
    readonly origin: string;
    readonly fiscalYear?: number | undefined;
  };
};

const oneRate = quantity("yearlyShare").refine(
  ({ spread }) => spread === undefined,
  "one rate without a range",
);

const plannedRate = z
  .strictObject({
    planningRate: z.strictObject({
      meanYield: oneRate.meta({
        description: "Mean yield of Treasury securities with 15 years or more left",
      }),
      previousRate: oneRate.meta({
        description: "The rate of the fiscal year before, in eighths of a percent",
      }),
      origin: shortText,
      fiscalYear: year.optional().meta({
        description:
          "Fiscal year that the rate is for, from October; the rate is then held against its notice",
      }),
    }),
  })
  .transform(({ planningRate: given }, context): DiscountRate => {
    try {
      const found = planningRate(given.meanYield.value, given.previousRate.value);
      const text = `${Number((found.rate * 100).toFixed(3))} %/yr`;
      return { text, value: found.rate, dimension: "yearlyShare", planning: { ...given, ...found } };
    } catch (error) {
      if (!(error instanceof RangeError)) throw error;
      context.addIssue({
        code: "custom",
        path: ["planningRate", "previousRate"],
        message: "a rate in eighths of a percent, such as 5.375 %/yr",
      });
      return z.NEVER;
    }
  });

const discountRate = z
  .union([plannedRate, quantity("yearlyShare")])
  .transform((rate): DiscountRate => rate)
  .meta({
    where: "the finance office; federal projects use the yearly water-planning rate",
    description:
      "Real rate, or planningRate: the federal water-planning rate, worked out by its published rule",
  });

const mostInflation = 0.3;
const mostRise = 0.2;

const escalation = z
  .array(
    z.strictObject({
      group: z.enum(priceGroups),
      rate: quantity("yearlyChange").refine(
        ({ value }) => Math.abs(value) <= mostRise,
        "a real rise from -20 to 20 % a year",
      ),
      origin: shortText,
    }),
  )
  .default([])
  .meta({
    description:
      "Groups of costs whose prices rise by so much a year above general inflation, or fall behind it",
  });

const indexValues = z
  .array(
    z.strictObject({
      year,
      value: z.number().min(0.01, "an index value of at least 0.01").max(1e6, "at most 1,000,000"),
      origin: shortText,
    }),
  )
  .default([])
  .meta({ description: "Years that the table of consumer prices lacks, on its base (1982-84 = 100)" });

const worksIndex = z
  .strictObject({
    name: shortText,
    origin: shortText,
    values: z
      .array(z.strictObject({ year, value: z.number().positive("above 0").max(1e6, "at most 1,000,000") }))
      .min(2, "at least two years"),
  })
  .optional()
  .meta({
    description:
      "A construction-cost index of your own, on any base, for prices of works; it needs the price year and those of the assumptions",
    where: "the agency or the trade paper that publishes it",
  });

export const money = z.strictObject({
  currency: z.string().regex(/^[A-Z]{3}$/, "a currency code of three letters, for instance USD"),
  exchangeRate: z
    .number()
    .min(1e-6, "a rate of at least 0.000001")
    .max(1e9, "at most 1,000,000,000")
    .default(1)
    .meta({
      description: "Units of the study's currency for one US dollar, for prices of the assumptions",
      where: "the central bank's mean of the year",
    }),
  exchangeRateYear: year.optional().meta({ description: "Year of which the exchange rate is" }),
  exchangeRateOrigin: shortText.optional().meta({ description: "Where the exchange rate comes from" }),
  pricesOfAssumptions: z.enum(["converted", "as-they-stand"]).default("converted").meta({
    description:
      "Whether prices of the assumptions are turned into the study's price year by consumer prices",
  }),
  indexValues,
  worksIndex,
  priceYear: year.meta({
    description: "Year of whose prices all amounts are",
    where: "the year of your quotes and invoices",
  }),
  startYear: year.meta({ description: "First year of the program" }),
  horizon: z.int("a whole number of years").min(1, "at least 1 year").max(100, "at most 100 years").meta({
    description: "Years that the study covers",
    where: "the board's planning period, or the life of its larger structures",
  }),
  discountRate,
  discountRateOrigin: shortText
    .optional()
    .meta({ description: "Where the rate comes from; a planningRate has its own origin" }),
  otherDiscountRates: z
    .tuple([quantity("yearlyShare"), quantity("yearlyShare")], "two rates")
    .optional()
    .meta({ description: "Two more real rates at which options are weighed, in place of those assumed" }),
  timing: z.enum(["mid-year", "end-of-year"]).default("mid-year"),
  fiscalYearStart: z
    .enum(monthNames)
    .default("jan")
    .meta({ description: "Month in which the budget's fiscal year starts" }),
  inflation: quantity("yearlyShare")
    .refine(({ value }) => value <= mostInflation, "a general inflation of at most 30 % a year")
    .prefault(0)
    .meta({
      description: "General inflation, for amounts in money of their years: fiscal years, nominal flows",
    }),
  inflationOrigin: shortText.optional().meta({ description: "Where the inflation comes from" }),
  escalation,
  programBearer: reference("money.bearers"),
  bearers: z
    .array(z.strictObject({ id: identifier, name: shortText }))
    .min(1, "at least one fund or group that pays"),
});

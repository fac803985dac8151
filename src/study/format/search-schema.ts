import { z } from "zod";
import type { DimensionName } from "../../units/dimensions.js";
import { dayOfYear, identifier, quantity, reference, shortText } from "./fields.js";

const one = (dimension: DimensionName) =>
  quantity(dimension).refine(({ spread }) => spread === undefined, "one value without a range");
const positive = (dimension: DimensionName) => one(dimension).refine(({ value }) => value > 0, "above zero");
const share = () => one("share").optional();

const measure = z.strictObject({
  id: identifier,
  name: shortText,
  cost: one("moneyPerYear").meta({ description: "What it costs a year" }),
  declaration: share(),
  quickCheck: share(),
  inspection: share(),
  hotWash: share(),
  refusal: share(),
  deterrence: share(),
  hold: z.strictObject({ share: one("share"), days: one("duration") }).optional(),
  origin: shortText.meta({ description: "Where cost and effect come from" }),
});

/** What a search for the program that fits may vary. */
export const variable = ["hours", "wash", "seals", "measures", "fees", "levels"] as const;

const most = 12;
const listed = <Item extends z.ZodType>(item: Item, one: string) =>
  z.array(item).min(1, `at least one ${one}`).max(most, `at most ${most}`).optional();

const levels = z
  .strictObject({
    lowest: listed(one("elevation"), "elevation").meta({
      description:
        "Lowest levels that are tried; from that of the levels as operated down to the minimum pool if left out",
    }),
    from: listed(dayOfYear, "day").meta({
      description: "Days by which the lowest level is reached; in the cold months if left out",
    }),
    days: listed(
      z.int("a whole number of days").min(1, "at least 1 day").max(300, "at most 300 days"),
      "number of days",
    ).meta({ description: "For how many days it is held; 30, 60 and 90 if left out" }),
    minimumPool: one("elevation").optional().meta({
      description: "No drawdown goes lower; the lake's minimum elevation if left out",
    }),
    fastestFall: positive("levelRate").optional().meta({
      description:
        "Fastest fall that the dam's operating rules allow; that of the levels as operated if left out",
    }),
    fastestRise: positive("levelRate").optional().meta({
      description: "Fastest refilling that inflow and rules allow; not limited if left out",
    }),
    refilledBy: dayOfYear.optional().meta({
      description:
        "Day on which the levels as operated are reached again; that of their highest level if left out",
    }),
    notBelow: z
      .array(
        z.strictObject({
          from: dayOfYear,
          until: dayOfYear,
          elevation: one("elevation"),
          reason: shortText.meta({ description: "Fish, dam safety, or what else binds in these days" }),
        }),
      )
      .max(most, `at most ${most}`)
      .default([])
      .meta({ description: "Levels below which the lake may not be in some days of the year" }),
  })
  .meta({ description: "Drawdowns that are tried once the lake is infested, and what binds them" });

const time = z.int("a whole hour").min(0, "an hour from 0").max(24, "an hour up to 24");

export const searchSchema = z
  .strictObject({
    from: reference("options").optional().meta({
      description: "The option with steps that programs start from; the requested option if left out",
    }),
    vary: z
      .array(z.enum(variable))
      .refine((names) => new Set(names).size === names.length, "each once")
      .optional()
      .meta({ description: "What may vary; all that the option has if left out" }),
    sites: z
      .array(identifier)
      .min(1, "at least one site")
      .optional()
      .meta({ description: "Ids from boats.sites that may be open; those of the option if left out" }),
    dayTypes: z
      .array(identifier)
      .min(1, "at least one day type")
      .optional()
      .meta({ description: "Ids of day types on which stations may be open; all if left out" }),
    earliest: time.optional().meta({ description: "Earliest hour of opening" }),
    latest: time.optional().meta({ description: "Latest hour of closing" }),
    mostHours: z
      .int("a whole number of hours")
      .min(1, "at least 1 hour")
      .max(24, "at most 24 hours")
      .optional()
      .meta({ description: "Most hours a day that a station may be open" }),
    fees: z
      .array(z.number().positive("above zero").max(10, "at most 10 times the fees"))
      .min(1, "at least one number")
      .max(8, "at most 8 numbers")
      .optional()
      .meta({
        description:
          "Fees that may be asked, as multiples of those of the option: 1.5 for half as much again",
      }),
    measures: z
      .array(measure)
      .max(4, "at most 4 measures")
      .default([])
      .meta({ description: "What may be added to the program, each with its cost and what it sets" }),
    budget: one("moneyPerYear")
      .optional()
      .meta({ description: "Most that the program may cost a year, less its fees and grants" }),
    staffHours: z
      .number()
      .positive("more than 0 hours")
      .max(1_000_000, "at most 1,000,000 hours")
      .optional()
      .meta({ description: "Most hours of inspectors a year" }),
    longestWait: positive("shortTime")
      .optional()
      .meta({ description: "Longest wait in place of that of the option's station" }),
    chance: positive("share")
      .optional()
      .meta({ description: "Chance of infestation over the horizon that is not to be exceeded" }),
    levels: levels.optional(),
  })
  .meta({ description: "What a search for the program that fits may vary, and what binds it" });

export type SearchDocument = z.output<typeof searchSchema>;

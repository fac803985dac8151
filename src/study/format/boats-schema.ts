import { z } from "zod";
import { chanceSchema, cleanPeriodsSchema, otherWaysSchema } from "./chance-schema.js";
import { boatLogSchema, sampleLogSchema } from "./export-schema.js";
import { identifier, monthly, positive, quantity, shortText } from "./fields.js";
import { sitesSchema, trafficSchema } from "./traffic-schema.js";

/** Longest log of seasons: 5,000 lines of about 40 characters. */
const longestLog = 256 * 1024;

const counted = z
  .strictObject({
    found: z.int("a whole number of boats").min(0, "at least 0 boats"),
    of: z.int("a whole number of boats").min(1, "at least 1 boat"),
    weight: positive("share").meta({
      description: "How much a boat there says of one here: 100 % if they are alike",
    }),
    origin: shortText.meta({ description: "Where the counts come from" }),
  })
  .meta({ description: "Fouled boats found by a comparable program among those of the class it looked at" });

const vesselClass = z.strictObject({
  id: identifier,
  name: shortText,
  share: quantity("share").meta({
    description: "Share of all launches",
    where: "a survey at the ramp, or boat registrations by home county",
  }),
  fouled: z.union([counted, quantity("share")]).meta({
    description:
      "Of this class's launches, those of boats with mussels on them, dead or alive: a share, or counts",
    where: "finds of your own or a neighbouring state's inspection stations",
    typical: ["typical.fouled-infested-water"],
  }),
  living: quantity("share")
    .optional()
    .meta({
      description: "Of its fouled boats, those with living mussels, if known",
      moves: true,
      typical: ["arrival.living-share-near", "arrival.living-share-far"],
    }),
  sinceInfestedWater: quantity("duration").optional().meta({
    description:
      "Time since its boats were last in infested water: hours to two days tell most. Left out: unknown",
    moves: true,
  }),
  lastWater: z
    .enum(["infested", "clean", "this-lake"])
    .optional()
    .meta({
      description: "Where its boats mostly come from; printed only",
      titles: {
        infested: "A lake that has mussels",
        clean: "A lake that has none",
        "this-lake": "Here, and stay",
      },
    }),
  moored: z.boolean().optional().meta({ description: "In a slip or at a buoy for weeks; printed only" }),
  residualWater: z
    .enum(["drained", "standing"])
    .optional()
    .meta({
      description: "In bilge, ballast tanks and wells; printed only",
      titles: { drained: "Run dry at home", standing: "Some slops about" },
    }),
  origin: shortText.meta({ description: "Where the two figures come from" }),
});

export const boats = z.strictObject({
  launches: monthly("count").meta({
    description: "Launches in each month",
    where: "county or park visitor counts, ramp counters, launch-fee receipts",
  }),
  sites: sitesSchema,
  traffic: trafficSchema,
  classes: z.array(vesselClass).min(1, "at least one vessel class"),
  seasons: z
    .strictObject({
      csv: z.string().max(longestLog, `at most ${longestLog} characters`).meta({
        description:
          "CSV text with the columns season, class, screened, setAside and fouled, a line for each class in each season",
      }),
      export: boatLogSchema.optional(),
      origin: shortText.meta({ description: "Where the log comes from" }),
    })
    .optional()
    .meta({ description: "Log of the lake's own seasons; it updates the chance of each class in it" }),
  samples: z
    .strictObject({ export: sampleLogSchema, origin: shortText })
    .optional()
    .meta({ description: "How samples for mussels were last counted; it moves no figure by itself" }),
  chance: chanceSchema,
  otherWays: otherWaysSchema,
  cleanPeriods: cleanPeriodsSchema,
});

export type BoatsDocument = z.output<typeof boats>;

import { z } from "zod";
import { sampleLogSchema } from "./export-schema.js";
import { identifier, quantity, reference, shortText, year } from "./fields.js";

/** Kinds of ways in beside the boats that launch. */
export const otherWayKinds = [
  "upstream-water",
  "water-transfer",
  "work-craft",
  "moored-and-rental-boats",
  "wildfowl-and-gear",
  "other",
] as const;

const ownRate = z
  .strictObject({
    chance: quantity("yearlyShare").meta({
      description: "Yearly chance of infestation by all ways in together, best with a range",
    }),
    under: reference("options").optional().meta({
      description: "The option whose checks are in that chance already; left out for a chance without checks",
    }),
    origin: shortText.meta({ description: "Who says so, and from what" }),
  })
  .meta({ description: "A yearly chance of your own, in place of the rate of comparable lakes" });

/** How the yearly chance is estimated. */
export const chanceSchema = z
  .strictObject({
    drivenBy: z
      .enum(["both", "launches", "lakes"])
      .meta({
        titles: {
          both: "Fouled launches and comparable lakes, weighed together",
          launches: "Fouled launches alone",
          lakes: "Comparable lakes alone",
        },
      })
      .default("both")
      .meta({ description: "What drives the answer" }),
    lakes: z
      .enum(["open", "busy", "inspected", "unknown"])
      .meta({
        titles: {
          open: "An average lake of a region without checks",
          busy: "A busy large lake of a region without checks",
          inspected: "A lake far from infested water, in a region with checks",
          unknown: "Not known",
        },
      })
      .default("unknown")
      .meta({ description: "Which lakes this one is like" }),
    ownRate: ownRate.optional(),
    leaveOutRegions: z
      .array(identifier)
      .max(20, "at most 20 regions")
      .default([])
      .meta({ description: "Regions of the published counts that are left out of the estimate" }),
  })
  .prefault({})
  .meta({ description: "How the yearly chance is estimated; left out, in the usual way" });

export const otherWaysSchema = z
  .array(
    z.strictObject({
      name: shortText,
      kind: z.enum(otherWayKinds).default("other"),
      chance: quantity("yearlyShare").meta({
        description: "Yearly chance that it brings mussels that establish, once its source is infested",
        where: "the state's risk assessment: upstream waters, transfers, work craft, gear",
      }),
      checked: z
        .boolean()
        .default(false)
        .meta({ description: "Whether the stations check it as they check boats that launch" }),
      infestedFrom: year
        .optional()
        .meta({ description: "First year in which its source is infested; it is already if left out" }),
      becomesInfested: quantity("yearlyShare")
        .optional()
        .meta({ description: "Or the yearly chance that its source becomes infested" }),
      origin: shortText.meta({ description: "Where the figures come from" }),
    }),
  )
  .max(30, "at most 30 ways")
  .optional()
  .meta({
    description:
      "Ways in beside the boats that launch. Left out: a typical share of all foundings. An empty list: none",
  });

export const cleanPeriodsSchema = z
  .array(
    z.strictObject({
      from: year.meta({ description: "First year" }),
      to: year.meta({ description: "Last year" }),
      launches: quantity("share").prefault("100 %").meta({
        description: "Fouled launches in these years against those entered for now",
      }),
      under: reference("options")
        .optional()
        .meta({ description: "The option whose checks were in force; none if left out" }),
      export: sampleLogSchema.optional(),
      origin: shortText.meta({ description: "How it is known that no mussels were there" }),
    }),
  )
  .max(20, "at most 20 periods")
  .default([])
  .meta({
    description:
      "Years in which the lake was watched and no mussels were found; they lower the chance a little",
  });

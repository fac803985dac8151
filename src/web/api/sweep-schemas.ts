import { z } from "zod";
import { named, problem } from "./schemas.js";
import { sentFields } from "./sent-fields.js";

const settingId = z.string().meta({
  description: "Id of an assumption, or a place of the study as messages write it: money.discountRate",
});
const settingValue = z.union([z.string(), z.number()]).meta({ description: "With its unit: 4 %/yr" });

export const sweepRequest = named(
  "SweepRequest",
  sentFields({
    study: z
      .union([z.string(), z.record(z.string(), z.unknown())])
      .meta({ description: "A study file as text, YAML or JSON, or the same as JSON" }),
    set: z
      .array(sentFields({ id: settingId, values: z.array(settingValue) }))
      .default([])
      .meta({ description: "Every combination of the values is a point; at most 2,000 points" }),
  }),
);

const sweptOption = z.object({
  id: z.string(),
  name: z.string(),
  programPerYear: z.number(),
  addedProgramCost: z.number(),
  avoidedDamage: z.number(),
  netBenefit: z.number(),
  benefitCostRatio: z.number().nullable(),
  expectedDamage: z.number(),
  chancePerYear: z.number(),
  chanceAtEnd: z.number(),
});

export const sweepReply = named(
  "Sweep",
  z
    .object({
      study: z.string(),
      currency: z.string(),
      priceYear: z.int(),
      horizon: z.int(),
      swept: z.array(settingId).readonly(),
      points: z
        .array(
          z.object({
            settings: z.array(z.object({ id: settingId, value: settingValue })).readonly(),
            options: z
              .array(sweptOption)
              .readonly()
              .meta({ description: "At central values; none where the study cannot be computed there" }),
            problems: z.array(problem).readonly().meta({ description: "Why it cannot" }),
          }),
        )
        .readonly(),
    })
    .meta({ description: "Amounts are present values in the study's money, but programPerYear" }),
);

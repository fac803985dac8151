import { z } from "zod";
import { identifier, monthly, monthlyOrOne, positive, quantity, shortText } from "./fields.js";

const count = (what: string) =>
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

const base = {
  id: identifier,
  name: shortText,
  bearer: identifier.meta({ description: "Who pays for this structure: an id from money.bearers" }),
  fixtures,
  pinned,
};

const rack = z
  .strictObject({
    width: positive("length"),
    height: positive("length"),
    barThickness: positive("smallLength"),
    clearSpacing: positive("smallLength"),
    barDepth: positive("smallLength"),
    barShape: z.enum(["rectangular", "rounded-upstream", "rounded-both", "round"]),
    angle: quantity("angle"),
    headLossLimit: positive("length"),
    velocityLimit: positive("speed").meta({
      description: "Largest permitted velocity through the clear openings",
    }),
  })
  .meta({ description: "Trash rack at the mouth" });

const pipeFields = {
  length: positive("length"),
  diameter: positive("smallLength"),
  roughness: positive("smallLength").meta({ description: "Absolute roughness of the clean wall" }),
  minorLoss: z.number().min(0, "a sum of loss coefficients of at least 0").max(100, "at most 100"),
};

const efficiency = quantity("share")
  .refine(({ value }) => value > 0, "an efficiency above 0")
  .meta({ description: "Efficiency, for instance 0.78 or 78 %" });

const supply = z.discriminatedUnion("by", [
  z.strictObject({ by: z.literal("gravity"), availableHead: positive("length") }),
  z.strictObject({
    by: z.literal("pump"),
    efficiency: efficiency.meta({ description: "Pump, motor and drive together" }),
    marginHead: quantity("length").meta({
      description: "Head that the pump has to spare at the largest demand",
    }),
    energyPrice: quantity("moneyPerEnergy"),
  }),
]);

const intake = z.strictObject({
  kind: z.literal("intake"),
  ...base,
  elevation: quantity("elevation"),
  demand: monthly("flow"),
  rack,
  conduit: z.strictObject(pipeFields),
  supply,
  alternativeWater: quantity("moneyPerVolume").meta({
    description: "Price of water from elsewhere while this intake falls short",
  }),
  oxidantAllowed: z.boolean().default(false),
});

const hydropower = z.strictObject({
  kind: z.literal("hydropower"),
  ...base,
  units: count("units"),
  elevation: quantity("elevation").meta({ description: "Centreline of the power intake" }),
  tailwaterElevation: quantity("elevation"),
  efficiency: efficiency.meta({ description: "Turbine, generator and transformer together" }),
  flow: monthly("flow").meta({ description: "Mean flow through one unit" }),
  energyPrice: monthlyOrOne("moneyPerEnergy"),
  rack,
  penstock: z.strictObject(pipeFields),
  coolingWater: z.strictObject({
    ...pipeFields,
    requiredFlow: positive("flow"),
    availableHead: positive("length"),
  }),
});

const dock = z.strictObject({
  kind: z.literal("dock"),
  ...base,
  count: count("docks"),
  floating: z.boolean(),
  depth: quantity("length").optional().meta({ description: "Depth of the wetted surface, if floating" }),
  elevation: quantity("elevation")
    .optional()
    .meta({ description: "Elevation of the wetted surface, if fixed" }),
  wettedArea: positive("area").meta({ description: "Wetted area of one" }),
  spareBuoyancy: positive("areaMass").optional(),
  replacementCost: quantity("money").meta({ description: "Replacement cost of one" }),
});

const ramp = z.strictObject({
  kind: z.literal("ramp"),
  ...base,
  width: positive("length"),
  topElevation: quantity("elevation"),
  bottomElevation: quantity("elevation"),
  slope: quantity("share")
    .refine(({ value }) => value > 0, "a slope above 0")
    .meta({ description: "Rise over run, for instance 14 %" }),
  launchesPerDay: monthlyOrOne("count"),
  launchFee: quantity("money"),
});

const lakeWide = z.strictObject({
  kind: z.literal("lake-wide"),
  ...base,
  items: z
    .array(
      z.strictObject({
        name: shortText,
        cost: quantity("moneyPerYear"),
        origin: shortText.meta({ description: "Where the figure comes from" }),
        apart: z
          .boolean()
          .default(false)
          .meta({ description: "True for losses that are not infrastructure" }),
        fromYear: z.int("a whole number of years").min(1, "at least 1").max(100, "at most 100").default(1),
      }),
    )
    .min(1, "at least one item"),
});

export const structureSchema = z.discriminatedUnion("kind", [intake, hydropower, dock, ramp, lakeWide]);
export const structureKinds = ["intake", "hydropower", "dock", "ramp", "lake-wide"] as const;

export type StructureDocument = z.output<typeof structureSchema>;

import { z } from "zod";
import { policies } from "../../model/structures/deliveries/yearly-items.js";
import { efficiency, lineFields, pipeFields, rack, supply } from "../prepare/structure-parts.js";
import { hatchery, pumpingPlant, treatmentPlant } from "./delivery-schema.js";
import { monthly, monthlyOrOne, positive, quantity, shortText, year } from "./fields.js";
import { base, count, fromYear } from "./structure-base.js";

const intake = z.strictObject({
  kind: z.literal("intake"),
  ...base,
  elevation: quantity("elevation"),
  demand: monthly("flow").meta({ where: "plant records: the largest daily demand of each month" }),
  rack,
  conduit: z.strictObject(pipeFields),
  supply,
  alternativeWater: quantity("moneyPerVolume").meta({
    description: "Price of water from elsewhere while this intake falls short",
  }),
  oxidantAllowed: z.boolean().default(false),
});

const running = z
  .strictObject({
    hours: monthlyOrOne("hours").optional().meta({
      description: "Hours in a month that one unit runs; this or units",
      where: "plant records of generation",
    }),
    units: monthlyOrOne("count")
      .optional()
      .meta({ description: "Units running, the mean over a month, for instance 1.5; this or hours" }),
    flow: monthlyOrOne("flow").meta({
      description: "Flow through one unit while it runs; 0 in a month in which it stands",
      where: "the turbine's records, or power while running by its performance curve",
    }),
  })
  .meta({ description: "How a unit runs; this or flow" });

const hydropower = z.strictObject({
  kind: z.literal("hydropower"),
  ...base,
  units: count("units"),
  elevation: quantity("elevation").meta({ description: "Centreline of the power intake" }),
  tailwaterElevation: quantity("elevation").meta({ where: "plant records at usual flow" }),
  efficiency: efficiency
    .optional()
    .meta({ description: "Turbine, generator and transformer together; this or turbine" }),
  turbine: z
    .strictObject({
      type: z.enum(["francis", "kaplan", "propeller", "crossflow", "pelton"]),
      ratedFlow: positive("flow").meta({
        description: "Largest flow through one unit",
        where: "the turbine's nameplate",
      }),
      generatorEfficiency: efficiency.meta({ description: "Generator and transformer together" }),
    })
    .optional()
    .meta({ description: "Efficiency by flow from the type of turbine; this or efficiency" }),
  flow: monthly("flow").optional().meta({
    description:
      "Mean flow through one unit over all hours of a month; this or running. With a turbine it is taken to run at its rated flow",
    where: "plant records of generation",
  }),
  running: running.optional(),
  energyPrice: monthlyOrOne("moneyPerEnergy").meta({
    where: "the power contract, or what replacement power costs",
  }),
  rack,
  penstock: z.strictObject(pipeFields),
  coolingWater: z.strictObject({
    ...pipeFields,
    ...lineFields,
  }),
});

const serviceLine = z.strictObject({
  kind: z.literal("service-line"),
  ...base,
  elevation: quantity("elevation"),
  count: count("lines").meta({ description: "Lines alike; every other field is for one of them" }),
  ...pipeFields,
  ...lineFields,
  shortageCostPerDay: quantity("moneyPerDay").meta({ description: "What a day without the line costs" }),
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
  wettedArea: positive("area").meta({
    description: "Wetted area of one",
    where: "drawings: bottom and sides of floats and their chains, below the waterline",
  }),
  spareBuoyancy: positive("areaMass").optional().meta({
    description: "Load per area that a float carries before its deck is awash",
    where: "the maker's data: live load of the deck",
  }),
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
  launchesPerDay: monthlyOrOne("count").meta({
    where: "ramp counters or fee receipts, divided by days of the month",
  }),
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
        apart: z.boolean().default(false).meta({
          description:
            "True for losses that are not infrastructure: recreation, property, curtailed deliveries, other waters",
        }),
        policy: z.enum(policies).optional().meta({
          description: "Which policy the authority is free to choose it pays for; none for a duty",
        }),
        pricesOf: year.optional().meta({
          description: "Year of whose prices the amount is; the study's price year where it is left out",
        }),
        fromYear,
      }),
    )
    .min(1, "at least one item"),
});

export const structureSchema = z.discriminatedUnion("kind", [
  intake,
  pumpingPlant,
  treatmentPlant,
  hydropower,
  serviceLine,
  hatchery,
  dock,
  ramp,
  lakeWide,
]);

export type StructureDocument = z.output<typeof structureSchema>;

import { z } from "zod";
import { policies } from "../../model/structures/kinds/lake-wide.js";
import { efficiency, lineFields, pipeFields, rack, supply } from "../prepare/structure-parts.js";
import {
  identifier,
  monthly,
  monthlyOrOne,
  positive,
  quantity,
  reference,
  shortText,
  year,
} from "./fields.js";

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

const bearerShares = z
  .record(identifier, quantity("share"))
  .meta({ refersTo: "money.bearers" })
  .transform((shares) => Object.entries(shares).map(([id, share]) => ({ id, share })));

/** Who pays: one of the study's bearers, or several with shares. */
export const bearer = z.union([reference("money.bearers"), bearerShares], {
  error: "an id from money.bearers, or ids with shares such as { city: 60 %, district: 40 % }",
});

const base = {
  id: identifier,
  name: shortText,
  bearer: bearer.meta({
    description: "Who pays for this structure: an id from money.bearers, or several with shares",
  }),
  fixtures,
  pinned,
};

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
        fromYear: z.int("a whole number of years").min(1, "at least 1").max(100, "at most 100").default(1),
      }),
    )
    .min(1, "at least one item"),
});

export const structureSchema = z.discriminatedUnion("kind", [
  intake,
  hydropower,
  serviceLine,
  dock,
  ramp,
  lakeWide,
]);

export type StructureDocument = z.output<typeof structureSchema>;

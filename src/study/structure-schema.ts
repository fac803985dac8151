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

const base = {
  id: identifier,
  name: shortText,
  bearer: identifier.meta({ description: "Who pays for this structure: an id from money.bearers" }),
  fixtures,
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
    formula: z
      .enum(["meusburger", "reclamation", "clark", "kirschmer"])
      .default("meusburger")
      .meta({ description: "Which head loss the costs use; the others are printed beside it" }),
    headLossLimit: positive("length"),
    velocityLimit: positive("speed").meta({
      description: "Largest permitted velocity through the clear openings",
    }),
  })
  .meta({ description: "Trash rack at the mouth" });

const pipeFields = {
  length: positive("length"),
  diameter: positive("smallLength"),
  roughness: positive("smallLength")
    .optional()
    .meta({ description: "Absolute roughness of the clean wall; this or hazenWilliamsC" }),
  hazenWilliamsC: z
    .number()
    .min(40, "a Hazen–Williams C of at least 40")
    .max(160, "a Hazen–Williams C of at most 160")
    .optional()
    .meta({ description: "Hazen–Williams C of the clean wall; this or roughness" }),
  minorLoss: z.number().min(0, "a sum of loss coefficients of at least 0").max(100, "at most 100"),
};

const efficiency = quantity("share")
  .refine(({ value }) => value > 0, "an efficiency above 0")
  .meta({ description: "Efficiency, for instance 0.78 or 78 %" });

const pumpPoint = z.strictObject({ flow: quantity("flow"), head: quantity("length") });

const supply = z.discriminatedUnion("by", [
  z.strictObject({
    by: z.literal("gravity"),
    availableHead: positive("length")
      .optional()
      .meta({ description: "Head to spend in every month; this or outletElevation" }),
    outletElevation: quantity("elevation")
      .optional()
      .meta({ description: "Head is that of the lake's monthly mean level above it; this or availableHead" }),
  }),
  z.strictObject({
    by: z.literal("pump"),
    efficiency: efficiency.meta({ description: "Pump, motor and drive together" }),
    energyPrice: quantity("moneyPerEnergy"),
    marginHead: quantity("length")
      .optional()
      .meta({ description: "Head that the pump has to spare at the largest demand; this or curve" }),
    curve: z
      .array(pumpPoint)
      .min(1, "at least one point of flow and head")
      .max(50, "at most 50 points")
      .optional()
      .meta({
        description: "One design point, or three and more by rising flow, at full speed; this or marginHead",
      }),
    deliveryElevation: quantity("elevation")
      .optional()
      .meta({ description: "Water level that a pump with a curve delivers to" }),
    control: z
      .enum(["on-off", "variable-speed"])
      .optional()
      .meta({ description: "How a pump with a curve is kept to the demand" }),
  }),
]);

const exchanger = z
  .strictObject({
    area: positive("area"),
    cleanCoefficient: positive("heatTransfer").meta({ description: "Overall coefficient when clean" }),
    hotCapacityRate: positive("capacityRate").meta({
      description: "Mass flow times specific heat on the hot side",
    }),
  })
  .meta({ description: "Counterflow heat exchanger that the line cools" });

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

const lineFields = {
  requiredFlow: positive("flow"),
  availableHead: positive("length"),
  oxidantAllowed: z.boolean().default(false),
  exchanger: exchanger.optional(),
};

const hydropower = z.strictObject({
  kind: z.literal("hydropower"),
  ...base,
  units: count("units"),
  elevation: quantity("elevation").meta({ description: "Centreline of the power intake" }),
  tailwaterElevation: quantity("elevation"),
  efficiency: efficiency
    .optional()
    .meta({ description: "Turbine, generator and transformer together; this or turbine" }),
  turbine: z
    .strictObject({
      type: z.enum(["francis", "kaplan", "propeller", "crossflow", "pelton"]),
      ratedFlow: positive("flow").meta({ description: "Largest flow through one unit" }),
      generatorEfficiency: efficiency.meta({ description: "Generator and transformer together" }),
    })
    .optional()
    .meta({ description: "Efficiency by flow from the type of turbine; this or efficiency" }),
  flow: monthly("flow").meta({ description: "Mean flow through one unit" }),
  energyPrice: monthlyOrOne("moneyPerEnergy"),
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

export const structureSchema = z.discriminatedUnion("kind", [
  intake,
  hydropower,
  serviceLine,
  dock,
  ramp,
  lakeWide,
]);
export const structureKinds = ["intake", "hydropower", "service-line", "dock", "ramp", "lake-wide"] as const;

export type StructureDocument = z.output<typeof structureSchema>;

import { z } from "zod";
import { positive, quantity } from "../format/fields.js";
import { fittingFields } from "../format/raw-water-schema.js";

export const rack = z
  .strictObject({
    width: positive("length"),
    height: positive("length"),
    barThickness: positive("smallLength").meta({ where: "as-built drawings of the rack" }),
    clearSpacing: positive("smallLength").meta({
      where: "as-built drawings: between bars, not from center to center",
    }),
    barDepth: positive("smallLength").meta({ where: "as-built drawings: along the flow" }),
    barShape: z.enum(["rectangular", "rounded-upstream", "rounded-both", "round"]),
    angle: quantity("angle").meta({ where: "as-built drawings: from the horizontal" }),
    formula: z
      .enum(["meusburger", "reclamation", "clark", "kirschmer"])
      .default("meusburger")
      .meta({ description: "Which head loss the costs use; the others are printed beside it" }),
    headLossLimit: positive("length").meta({
      where: "the rack's design load, or the alarm of its differential gauge",
    }),
    velocityLimit: positive("speed").meta({
      description: "Largest permitted velocity through the clear openings",
    }),
  })
  .meta({ description: "Trash rack at the mouth" });

export const pipeFields = {
  length: positive("length").meta({ where: "as-built drawings" }),
  diameter: positive("smallLength").meta({ where: "as-built drawings: inside" }),
  roughness: positive("smallLength")
    .optional()
    .meta({ description: "Absolute roughness of the clean wall; this or hazenWilliamsC" }),
  hazenWilliamsC: z
    .number()
    .min(40, "a Hazen–Williams C of at least 40")
    .max(160, "a Hazen–Williams C of at most 160")
    .optional()
    .meta({ description: "Hazen–Williams C of the clean wall; this or roughness" }),
  minorLoss: z.number().min(0, "a sum of loss coefficients of at least 0").max(100, "at most 100").meta({
    description: "Sum of the loss coefficients of entrance, bends and valves",
    where: "the design calculation; 1.5 for a plain line with an entrance and an exit",
  }),
};

export const efficiency = quantity("share")
  .refine(({ value }) => value > 0, "an efficiency above 0")
  .meta({ description: "Efficiency, for instance 0.78 or 78 %" });

const pumpPoint = z.strictObject({ flow: quantity("flow"), head: quantity("length") });

/** What a pump is known by, wherever one stands. */
export const pumpFields = {
  efficiency: efficiency.meta({
    description: "Pump, motor and drive together",
    where: "the latest pump test, or nameplates: pump times motor times drive",
  }),
  energyPrice: quantity("moneyPerEnergy").meta({ where: "power bills: the year's amount over its kWh" }),
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
};

export const supply = z.discriminatedUnion("by", [
  z.strictObject({
    by: z.literal("gravity"),
    availableHead: positive("length")
      .optional()
      .meta({ description: "Head to spend in every month; this or outletElevation" }),
    outletElevation: quantity("elevation")
      .optional()
      .meta({ description: "Head is that of the lake's monthly mean level above it; this or availableHead" }),
  }),
  z.strictObject({ by: z.literal("pump"), ...pumpFields }),
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

export const lineFields = {
  requiredFlow: positive("flow").meta({ where: "nameplate or manual of what the line serves" }),
  availableHead: positive("length").meta({
    where: "the line's design calculation, or gauge readings at full flow",
  }),
  oxidantAllowed: z.boolean().default(false),
  exchanger: exchanger.optional(),
  ...fittingFields,
};

import { z } from "zod";
import { pipeFields, pumpFields, rack } from "../prepare/structure-parts.js";
import { monthly, monthlyOrOne, positive, quantity, reference, shortText } from "./fields.js";
import { base, count, fromYear } from "./structure-base.js";

const { marginHead, curve, deliveryElevation, control } = pumpFields;

/** Pumps that lift water to irrigated land. */
export const pumpingPlant = z.strictObject({
  kind: z.literal("pumping-plant"),
  ...base,
  elevation: quantity("elevation").meta({ description: "Centreline of the suction" }),
  delivered: monthly("volume").meta({
    description: "Water brought to the land in each month",
    where: "meter readings of the pumps, or the crops' need over the season",
  }),
  area: positive("landArea").meta({ description: "Land irrigated" }),
  method: z.enum(["sprinklers", "surface"]).meta({ description: "How water comes onto the land" }),
  rack: rack.optional().meta({ description: "Trash rack or suction screen, where there is one" }),
  pump: z.strictObject({
    energyPrice: pumpFields.energyPrice,
    efficiency: pumpFields.efficiency.optional().meta({
      description: "Pump, motor and drive together; typical if left out",
      typical: ["irrigation.pump-efficiency"],
      where: "the latest pump test",
    }),
    marginHead: marginHead.meta({
      description:
        "Head that the pump has to spare at the largest delivery; typical if this and curve are left out",
      typical: ["irrigation.pump-margin"],
    }),
    curve,
    deliveryElevation,
    control,
  }),
  main: z.strictObject(pipeFields).meta({ description: "Discharge main from the pumps" }),
  canal: z
    .strictObject({
      length: positive("length").meta({ where: "as-built drawings" }),
      bottomWidth: positive("length").meta({ where: "as-built drawings" }),
      depth: positive("length").meta({ description: "Depth of water at the largest delivery" }),
      sideSlope: z
        .number()
        .min(0, "at least 0, a vertical wall")
        .max(10, "at most 10")
        .optional()
        .meta({
          description: "Horizontal over vertical; typical if left out",
          typical: ["irrigation.canal-side-slope"],
        }),
      capacity: positive("flow")
        .optional()
        .meta({
          description: "Flow that the clean canal carries; somewhat over the largest if left out",
          typical: ["irrigation.canal-spare"],
        }),
    })
    .optional()
    .meta({ description: "Concrete-lined canal; leave out an earth canal, which hardly fouls" }),
  laterals: z
    .strictObject({
      count: count("laterals").meta({ description: "Laterals alike; every other field is for one of them" }),
      ...pipeFields,
      availableHead: positive("length").meta({
        description: "Head to spend in one lateral at the largest delivery",
        where: "gauges at its two ends",
      }),
    })
    .optional()
    .meta({ description: "Pressurised pipes to the fields" }),
  sprinklerCount: count("sprinklers")
    .optional()
    .meta({
      description: "Sprinklers that run; typical for the area if left out",
      typical: ["irrigation.area-per-sprinkler"],
    }),
  nozzleBore: positive("smallLength")
    .optional()
    .meta({ description: "Bore of a nozzle; typical if left out", typical: ["irrigation.nozzle-bore"] }),
  lostDeliveries: quantity("moneyPerVolume").meta({
    description: "Value of water that is not delivered: of the crop, or of water from elsewhere",
  }),
  drainedWhenIdle: z
    .boolean()
    .default(true)
    .meta({ description: "Main, canal and laterals are emptied in months without water" }),
  oxidantAllowed: z.boolean().default(false),
});

/** What mussels change in the treatment of drinking water. */
export const treatmentPlant = z.strictObject({
  kind: z.literal("treatment-plant"),
  ...base,
  treated: monthlyOrOne("flow").meta({
    description: "Raw water treated",
    where: "plant records: the mean flow of each month",
  }),
  intake: reference("structures")
    .optional()
    .meta({ description: "Intake whose cost is told together with that of treatment" }),
  tasteAndOdour: z
    .strictObject({
      origin: shortText.meta({
        description: "Why mussels are expected to bring tastes here; without that leave the group out",
      }),
      dose: monthlyOrOne("concentration")
        .optional()
        .meta({
          description: "Extra powdered carbon in each month of a mature infestation; typical if left out",
          typical: ["taste-odour.dose"],
        }),
      carbonPrice: quantity("moneyPerMass")
        .optional()
        .meta({ description: "Typical if left out", typical: ["taste-odour.carbon-price"] }),
      totalPhosphorus: quantity("concentration")
        .optional()
        .meta({ description: "Of the lake in summer: in rich lakes mussels hold blue-green algae down" }),
    })
    .optional()
    .meta({ description: "Powdered carbon against tastes and odours that mussels bring" }),
  byProducts: z
    .strictObject({
      origin: shortText.meta({ description: "Where the figure comes from" }),
      cost: monthlyOrOne("moneyPerTreatedVolume").meta({
        description: "Extra treatment by volume in a mature infestation",
      }),
    })
    .optional()
    .meta({ description: "Extra treatment against disinfection by-products" }),
});

/** A hatchery that takes its water from the lake. */
export const hatchery = z.strictObject({
  kind: z.literal("hatchery"),
  ...base,
  elevation: quantity("elevation").meta({ description: "Centreline of the mouth" }),
  requiredFlow: monthlyOrOne("flow").meta({ where: "the rearing plan: fish held in each month" }),
  rack: rack.optional().meta({ description: "Trash rack or screen, where there is one" }),
  line: z.strictObject({
    ...pipeFields,
    availableHead: positive("length").meta({
      description: "Head to spend in the line and the aeration",
      where: "levels of the lake and the head box, or the pump's data",
    }),
  }),
  aerationHead: quantity("length")
    .optional()
    .meta({ description: "Head that the aeration column or tower needs; none if left out" }),
  filters: z
    .int("a whole number of filters")
    .min(0, "at least 0 filters")
    .max(10_000, "at most 10,000 filters")
    .default(0)
    .meta({ description: "Filters at the end of the line, with or without ultraviolet light" }),
  shortfall: z.discriminatedUnion("by", [
    z.strictObject({
      by: z.literal("fish"),
      lossPerDay: quantity("moneyPerDay").meta({ description: "Fish lost on a day without any water" }),
    }),
    z.strictObject({
      by: z.literal("trucking"),
      price: quantity("moneyPerVolume").meta({ description: "Water brought by truck" }),
    }),
  ]),
  duties: z
    .array(
      z.strictObject({
        name: shortText,
        cost: quantity("moneyPerYear"),
        origin: shortText.meta({ description: "Where the figure comes from" }),
        fromYear,
      }),
    )
    .default([])
    .meta({ description: "Yearly duties once mussels are there: checks of stocking trucks, tests of fish" }),
});

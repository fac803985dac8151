import { z } from "zod";
import { positive, reference, shortText } from "./fields.js";

const count = (what: string, most: number) =>
  z.int(`a whole number of ${what}`).min(1, `at least one of ${what}`).max(most, `at most ${most} ${what}`);

const cooler = z.strictObject({
  name: shortText,
  count: count("coolers", 1000).meta({ description: "Coolers alike on one line, side by side" }),
  tubes: count("tubes", 100_000).meta({
    description: "Tubes of one cooler",
    where: "the cooler's data sheet",
  }),
  bore: positive("smallLength").meta({
    description: "Inside diameter of a tube",
    where: "the cooler's data sheet: outside diameter less twice the wall",
  }),
  passes: count("passes", 100)
    .default(1)
    .meta({ description: "Times that the water runs through the bundle" }),
});

const strainer = z
  .strictObject({
    mesh: positive("smallLength").meta({
      description: "Width of one opening",
      where: "the strainer's data sheet, or a ruler on the basket",
    }),
    screenArea: positive("area").meta({ description: "Area of the screen of one basket" }),
    type: z.enum(["simplex", "duplex", "self-cleaning"]).meta({
      description:
        "Simplex: the line is shut to clean it. Duplex: one basket is cleaned while the other works",
    }),
  })
  .meta({ description: "Strainer at the head of the line" });

const orifice = z.strictObject({
  name: shortText,
  count: count("orifices", 1000),
  bore: positive("smallLength"),
});

/** What a small line carries: shells that break off it, or upstream of it, blind, plug and block these. */
export const fittingFields = {
  serves: shortText.optional().meta({
    description:
      "What it serves, for instance generator coolers, oil and air coolers, shaft-seal filters, fire protection, heating and ventilation, drainage pumps",
  }),
  upstream: reference("structures").optional().meta({
    description:
      "The structure that it is tapped from, whose shells come down it; of a plant's line its own penstock if left out",
  }),
  strainer: strainer.optional(),
  coolers: z.array(cooler).default([]).meta({ description: "Bundles of tubes that its water runs through" }),
  orifices: z
    .array(orifice)
    .default([])
    .meta({ description: "Narrow bores that a shell can block: orifices, nozzles, passages of seals" }),
};

import { z } from "zod";
import { conversionBetween } from "../../units/unit-conversion.js";
import { positive, quantity, year } from "../format/fields.js";
import { monthNames } from "../format/month-names.js";
import { latitudeOfState } from "./us-states.js";

const placeWords = 'a state of the United States, such as "Idaho", or degrees of latitude, such as "44.5"';
const degrees = /^([-+]?\d{1,2}(?:\.\d+)?)\s*(?:deg|degrees|°)?\s*([NS])?$/i;
/** Farther from the equator there are no lakes with boats. */
const farthest = 72;

/** Where the lake is, as degrees of latitude; south of the equator below 0. */
const place = z.union([z.string(), z.number()], { error: placeWords }).transform((given, context): number => {
  const text = String(given).trim();
  const [, number, side] = degrees.exec(text.slice(0, 40)) ?? [];
  const latitude =
    number === undefined ? latitudeOfState(text) : Number(number) * (side?.toUpperCase() === "S" ? -1 : 1);
  if (latitude !== undefined && Math.abs(latitude) <= farthest) return latitude;
  context.addIssue({ code: "custom", message: placeWords });
  return z.NEVER;
});

const powerWords = 'a power such as "12 MW", "800 kW" or "16,000 hp"';
const powerPattern = /^(\d{1,6}(?:,\d{3})*(?:\.\d+)?)\s*(MW|kW|hp)?$/;
/** The largest plant of the world has 22,500 MW. */
const mostPower = 25_000;

/** Megawatts of all units together. */
const power = z.union([z.string(), z.number()], { error: powerWords }).transform((given, context): number => {
  const [, number = "", unit = "MW"] = powerPattern.exec(String(given).trim().slice(0, 40)) ?? [];
  const megawatts = conversionBetween(unit, "MW")?.(Number(number.replaceAll(",", ""))) ?? 0;
  if (number !== "" && megawatts > 0 && megawatts <= mostPower) return megawatts;
  context.addIssue({ code: "custom", message: powerWords });
  return z.NEVER;
});

/** Shorter than the names of a study, which are made from it: "Mill Pond, first estimate", "River intake 2". */
const name = z
  .string()
  .trim()
  .min(1, "a text that is not empty")
  .max(180, "at most 180 characters")
  .optional();

const whole = (what: string, most: number) =>
  z
    .int(`a whole number of ${what}`)
    .min(0, `at least 0 ${what}`)
    .max(most, `at most ${most.toLocaleString("en-US")} ${what}`);

export const intakeUses = ["town", "irrigation", "industry"] as const;
export const hardnessClasses = ["soft", "moderate", "hard", "very-hard"] as const;

const intake = z.strictObject({
  name: name.meta({ description: "What it is called" }),
  use: z.enum(intakeUses).optional().meta({ description: "What its water is for" }),
  flow: positive("flow").optional().meta({ description: "Its largest flow" }),
  pipe: positive("smallLength").optional().meta({ description: "Inside diameter of its pipe" }),
  length: positive("length").optional().meta({ description: "From its mouth to the pumps or the canal" }),
  tastes: z
    .enum(["yes", "no"])
    .optional()
    .meta({ description: "Whether its water is treated against tastes and odours in some summers" }),
  depth: positive("length").optional().meta({ description: "How deep it lies below the lake in summer" }),
});

const plant = z.strictObject({
  power: power.optional().meta({ description: "Megawatts, all units together" }),
  head: positive("length").optional().meta({ description: "From the lake in summer to the tailwater" }),
  units: whole("units", 100).min(1, "at least one unit").optional(),
});

const docks = z.strictObject({
  slips: whole("slips", 20_000).optional(),
  area: positive("area").optional().meta({ description: "Wetted area of all floats, if known" }),
});

const program = z.strictObject({
  from: z.enum(monthNames).optional().meta({ description: "First month" }),
  until: z.enum(monthNames).optional().meta({ description: "Last month" }),
  hours: positive("hours")
    .refine(({ value }) => value <= 24, "at most 24 hours a day")
    .optional()
    .meta({ description: "Hours a day" }),
  stations: whole("stations", 100).min(1, "at least one station").optional(),
  gated: z
    .enum(["yes", "no"])
    .optional()
    .meta({ description: "Whether nobody can launch while no inspector is there" }),
  cost: quantity("moneyPerYear")
    .optional()
    .meta({ description: "What it costs a year, less its fees and grants; estimated if left out" }),
});

/** What a lake office knows without a manual; whatever is left out is filled up with typical values. */
export const factsSchema = z.strictObject({
  name,
  units: z.enum(["us", "si"]).default("us"),
  currency: z
    .string()
    .trim()
    .toUpperCase()
    .regex(/^[A-Z]{3}$/, "a currency code of three letters, for instance USD")
    .default("USD"),
  exchangeRate: z
    .number()
    .min(1e-6, "a rate of at least 0.000001")
    .max(1e9, "at most 1,000,000,000")
    .optional(),
  place: place.optional(),
  summerLevel: quantity("elevation").optional(),
  winterLevel: quantity("elevation").optional(),
  area: positive("landArea").optional(),
  depth: positive("length").optional(),
  hardness: z.enum(hardnessClasses).optional(),
  calcium: positive("concentration").optional(),
  warmestMonth: quantity("temperature").optional(),
  infestedSince: year.optional(),
  intakes: z.array(intake).max(20, "at most 20 intakes").default([]),
  plant: plant.optional(),
  docks: docks.optional(),
  ramps: whole("ramps", 100).optional(),
  launches: positive("count").optional(),
  fromAway: quantity("share").optional(),
  nearestInfested: quantity("duration").optional(),
  wanted: program.optional(),
  inForce: program.optional(),
  horizon: whole("years", 100).min(1, "at least 1 year").optional(),
});

export type ShortFacts = z.output<typeof factsSchema>;
export type IntakeFacts = ShortFacts["intakes"][number];
export type ProgramFacts = NonNullable<ShortFacts["wanted"]>;

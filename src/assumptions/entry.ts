import { z } from "zod";
import type { PriceIndex } from "../model/money/price-index.js";
import { measures, type PlanEntry, partKinds } from "../model/structures/catalogue.js";
import type { DimensionName } from "../units/dimensions.js";

/** How firm a value is, from firm to soft. */
export const bases = ["published", "operator record", "common practice", "from memory", "judged"] as const;
export type Basis = (typeof bases)[number];

/** Units that assumptions are written in, with the dimension by which an engineer's override is read. */
export const assumptionUnits = {
  share: { dimension: "share", perCoherent: 1 },
  "1/yr": { dimension: "yearlyShare", perCoherent: 1 },
  yr: { dimension: "years", perCoherent: 1 },
  d: { dimension: "duration", perCoherent: 1 },
  h: { dimension: "hours", perCoherent: 1 },
  degC: { dimension: "temperature", perCoherent: 1 },
  "m/s": { dimension: "speed", perCoherent: 1 },
  m: { dimension: "length", perCoherent: 1 },
  mm: { dimension: "smallLength", perCoherent: 1000 },
  "m3/s": { dimension: "flow", perCoherent: 1 },
  "mg/L": { dimension: "concentration", perCoherent: 1 },
  "g/L": { dimension: "salinity", perCoherent: 1 },
  "uS/cm": { dimension: "conductivity", perCoherent: 1 },
  "kg/m2": { dimension: "areaMass", perCoherent: 1 },
  $: { dimension: "money", perCoherent: 1 },
  "$/m2": { dimension: "moneyPerArea", perCoherent: 1 },
  "$/kg": { dimension: "moneyPerMass", perCoherent: 1 },
  "$/m3": { dimension: "moneyPerVolume", perCoherent: 1 },
  "$/h": { dimension: "moneyPerHour", perCoherent: 1 },
  "$/kWh": { dimension: "moneyPerEnergy", perCoherent: 1 },
  m2: { dimension: "area", perCoherent: 1 },
  "$/(m3/s)": undefined,
  "1": undefined,
  "1/m2": undefined,
  "kg/m3": undefined,
  "m2/s": undefined,
  "m2K/W": undefined,
  kPa: undefined,
  "1/degC.d": undefined,
  "kWh/m3.K": undefined,
} as const satisfies Record<string, { dimension: DimensionName; perCoherent: number } | undefined>;

export type AssumptionUnit = keyof typeof assumptionUnits;

const unitNames = Object.keys(assumptionUnits) as [AssumptionUnit, ...AssumptionUnit[]];

export const entrySchema = z.strictObject({
  id: z.string().regex(/^[a-z0-9.-]+$/, "lower-case words joined by dots and hyphens"),
  value: z.number(),
  unit: z.enum(unitNames),
  low: z.number(),
  high: z.number(),
  basis: z.enum(bases),
  source: z.string().min(1),
  note: z.string(),
  /** What a board calls it, to stand after "the": for the assumptions that move results most. */
  title: z.string().min(1).optional(),
  /** Year whose prices a money value is in. */
  priceYear: z.int().min(1980).max(2100).optional(),
  /** How values are drawn between low and high; P10 and P90 where they are normal or lognormal. */
  distribution: z.enum(["pert", "triangular", "uniform", "normal", "lognormal"]).default("pert"),
});

export type Assumption = z.infer<typeof entrySchema>;

export const sourceSchema = z.strictObject({
  citation: z.string().min(1),
  /** How far the source was read for this project. */
  read: z.enum(["text", "abstract", "secondary", "not read"]),
});

export type Source = z.infer<typeof sourceSchema>;

export const planSchema = z
  .strictObject({
    id: z.string().regex(/^[a-z0-9-]+$/, "lower-case words joined by hyphens"),
    name: z.string().min(1),
    measure: z.enum(measures),
    parts: z.array(z.enum(partKinds)).min(1),
    numbers: z.string().optional(),
    intervals: z.array(z.int().min(0).max(60)).min(1),
    sideEffects: z.string().min(1),
    permits: z.string().min(1),
    cautions: z.string().min(1),
  })
  .transform((plan) => ({ ...plan, numbers: plan.numbers ?? plan.id }));

/** Years of an index that were read in one place. */
export interface IndexPart {
  readonly basis: Basis;
  readonly source: string;
  readonly note: string;
  readonly values: ReadonlyMap<number, number>;
}

/** A price index as the files have it, with where each year's value was read. */
export interface PriceIndexTable extends PriceIndex {
  readonly parts: readonly IndexPart[];
}

/** Assumptions that move together when values are drawn. */
export interface CorrelationGroup {
  readonly id: string;
  readonly name: string;
  readonly members: readonly string[];
  /** Spearman's, between any two members. */
  readonly rankCorrelation: number;
  readonly basis: Basis;
  readonly source: string;
  readonly note: string;
}

export interface AssumptionSet {
  readonly entries: ReadonlyMap<string, Assumption>;
  readonly sources: ReadonlyMap<string, Source>;
  /** The catalogue of protection plans. */
  readonly plans: readonly PlanEntry[];
  readonly priceIndices: readonly PriceIndexTable[];
  readonly groups: readonly CorrelationGroup[];
}

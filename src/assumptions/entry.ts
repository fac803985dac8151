import { z } from "zod";
import type { PriceIndex } from "../model/money/price-index.js";
import { measures, type PlanEntry, partKinds } from "../model/structures/catalogue.js";
import type { Alteration } from "./shipped.js";
import { type AssumptionUnit, assumptionUnits } from "./units.js";

/** How firm a value is, from firm to soft. */
export const bases = ["published", "operator record", "common practice", "from memory", "judged"] as const;
export type Basis = (typeof bases)[number];

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
  /** What is not as this version of the program ships it. */
  readonly alterations: readonly Alteration[];
}

import { z } from "zod";
import type { PriceIndex } from "../model/money/price-index.js";
import { assumptionUnits, type Expected } from "../model/register/expected.js";
import type { PlanEntry } from "../model/structures/catalogue.js";
import type { AgencySet } from "./agency.js";
import { type Basis, bases } from "./basis.js";
import type { FoundingEvidence } from "./founding/evidence.js";
import type { HabitatLakes } from "./habitat/lakes.js";

/** What ids of assumptions look like. */
export const idPattern = /^[a-z0-9.-]+$/;

/** An assumption as the whole program has it: in the unit in which the model reads it, whatever its file is written in. */
export const entrySchema = z.strictObject({
  id: z.string().regex(idPattern, "lower-case words joined by dots and hyphens"),
  value: z.number(),
  unit: z.enum(assumptionUnits),
  low: z.number(),
  high: z.number(),
  basis: z.enum(bases),
  source: z.string().min(1),
  note: z.string(),
  /** Of a typical value: where an author finds the own one, and who knows it. */
  find: z.string().min(1).optional(),
  /** What a board calls it, to stand after "the". */
  title: z.string().min(1).max(70),
  /** Other words of the trade for it, by which it is found. */
  synonyms: z.array(z.string().min(1).max(40)).optional(),
  /** Year whose prices a money value is in. */
  priceYear: z.int().min(1980).max(2100).optional(),
  /** Set where a price is of works, and follows what they cost to build in place of consumer prices. */
  index: z.literal("works").optional(),
  /** How values are drawn between low and high; P10 and P90 where they are normal or lognormal. */
  distribution: z.enum(["pert", "triangular", "uniform", "normal", "lognormal"]).default("pert"),
});

export type Assumption = z.infer<typeof entrySchema>;

/** An assumption as its file writes it: in any unit that can be converted. */
export const writtenSchema = entrySchema.extend({ unit: z.string().min(1) });

export type WrittenAssumption = z.infer<typeof writtenSchema>;

export const sourceSchema = z.strictObject({
  citation: z.string().min(1),
  /** How far the source was read for this project. */
  read: z.enum(["text", "abstract", "secondary", "not read"]),
});

export type Source = z.infer<typeof sourceSchema>;

/** Years of an index that were read in one place. */
interface IndexPart {
  readonly basis: Basis;
  readonly source: string;
  readonly note: string;
  readonly values: ReadonlyMap<number, number>;
}

/** A price index as the files have it, with where each year's value was read. */
export interface PriceIndexTable extends PriceIndex {
  readonly parts: readonly IndexPart[];
}

/** The federal water-planning rate of a fiscal year, and the notice that set it. */
export interface PlanningNotice {
  readonly fiscalYear: number;
  /** Share a year: 3 % is 0.03. */
  readonly rate: number;
  readonly notice: string;
  readonly basis: Basis;
  readonly source: string;
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
  /** The unit and the bounds that each entry is held to. */
  readonly expected: ReadonlyMap<string, Expected>;
  readonly sources: ReadonlyMap<string, Source>;
  /** The catalogue of protection plans. */
  readonly plans: readonly PlanEntry[];
  readonly priceIndices: readonly PriceIndexTable[];
  /** Federal water-planning rates by fiscal year. */
  readonly planningRates: ReadonlyMap<number, PlanningNotice>;
  readonly groups: readonly CorrelationGroup[];
  /** Published counts from which the chance of a founding is estimated. */
  readonly foundingEvidence: FoundingEvidence;
  /** Lakes known to be infested, against which the classes of habitat are held; they change no figure. */
  readonly habitatLakes: HabitatLakes;
  /** Own values of the agency whose studies these are, where it has a set. */
  readonly agency?: AgencySet | undefined;
  /** What is not as this version of the program ships it. */
  readonly alterations: readonly Alteration[];
}

/** Something in the folder of assumptions that is not as this version of the program ships it. */
export interface Alteration {
  /** "assumption conduit.largest-layer", "source nyc-1999". */
  readonly what: string;
  readonly found: string;
  readonly shipped: string;
}

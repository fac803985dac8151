import type { Ninety } from "./log-density.js";

/** Numbers of foundings, each with its weight: more than one where another route may explain a founding. */
export interface WeightedCount {
  readonly count: number;
  readonly weight: number;
}

/** How far boats come: hours to two days out of infested water, or weeks. */
export type Reach = "near" | "far";

/** What inspectors counted in a season. */
export interface Season {
  /** Boats found with mussels, dead or alive. */
  readonly fouled?: number | undefined;
  /** Those of them whose mussels lived. */
  readonly alive?: number | undefined;
  /** Label of the row that holds this one's boats as well. */
  readonly within?: string | undefined;
}

/** A region that stops fouled boats: what got through follows from what was found. */
export interface InspectedRegion {
  readonly kind: "inspected";
  readonly seasons: readonly Season[];
  /** Fouled boats of these years beside those of the seasons' rows; below 0 where rows count too many. */
  readonly uncounted: Ninety;
  /** Share of fouled arrivals that meet an inspector. */
  readonly coverage: Ninety;
  /** Share of fouled boats bound for clean water of the region. */
  readonly destined: Ninety;
}

/** A region where the moves of fouled boats themselves are known. */
export interface MovesRegion {
  readonly kind: "moves";
  readonly moves: { readonly perYear: number; readonly years: number };
  /** Share of the moves that carry the species. */
  readonly carrying: Ninety;
  /** Share of those that go to a clean lake. */
  readonly toCleanLake: Ninety;
}

export type Region = (InspectedRegion | MovesRegion) & {
  readonly id: string;
  readonly name: string;
  readonly reach: Reach;
  readonly foundings: readonly WeightedCount[];
};

/** Lakes followed for years: how many of them became infested. */
export interface LakeYears {
  readonly id: string;
  readonly group: "open" | "inspected" | "all lakes";
  readonly infested: number;
  readonly lakes: number;
  readonly years: number;
  /** True where the years of each lake end when it was infested. */
  readonly untilInfested: boolean;
}

/** Before the counts: the logarithm of the typical rate is normal, and the spread between regions half-normal. */
export interface RatePrior {
  readonly median: number;
  readonly spread: number;
  /** Standard deviation of the half-normal of the spread between regions. */
  readonly betweenRegions: number;
}

/** Published counts from which the chance of a founding is estimated. */
export interface FoundingCounts {
  /** Share of the fouled boats it meets that an inspection finds. */
  readonly sensitivity: Ninety;
  /** Share of what is found that wash and hold stop. */
  readonly efficacy: Ninety;
  /** Share of fouled boats whose mussels live, by reach. */
  readonly living: Readonly<Record<Reach, Ninety>>;
  readonly prior: RatePrior;
  readonly lakePrior: RatePrior;
  readonly regions: readonly Region[];
  readonly lakeYears: readonly LakeYears[];
}

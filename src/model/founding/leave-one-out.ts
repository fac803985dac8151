import { sumOf } from "../../lists.js";
import { logGamma } from "../risk/beta.js";
import type { FoundingCounts, LakeYears, RatePrior, WeightedCount } from "./evidence.js";
import { lakeCountsOf, livingCounts, regionCounts } from "./founding-estimate.js";
import { type RatePosterior, type RegionCounts, ratesOf, tellingOf } from "./hierarchy.js";
import { type LogDensity, logStep, type Tenths, tenthsOf, times } from "./log-density.js";

/** A region held against what the others say of it. */
export interface LeftOut {
  readonly id: string;
  readonly exposure: Tenths;
  /** Foundings that the others predict here, with a chance of 80 %. */
  readonly predicted: { readonly low: number; readonly high: number };
  readonly seen: readonly WeightedCount[];
  /** True where at least half of the weight of what was seen is as predicted. */
  readonly isInside: boolean;
  /** Chance per fouled launch in a new region, and in the typical one, from the others alone. */
  readonly newRegion: Tenths;
  readonly typical: Tenths;
}

/** Each region of the counts left out once. */
export const regionsLeftOut = (counts: FoundingCounts): LeftOut[] =>
  leftOut(named(counts.regions, regionCounts(counts)), counts.prior);

/** The same by launches with living mussels alone. */
export const livingLeftOut = (counts: FoundingCounts): LeftOut[] =>
  leftOut(named(counts.regions, livingCounts(counts, regionCounts(counts))), counts.prior);

/** Each row of lake-years left out once. */
export function lakeYearsLeftOut(counts: FoundingCounts, wanted: LakeYears["group"]): LeftOut[] {
  const rows = counts.lakeYears.filter(({ group }) => group === wanted);
  return leftOut(named(rows, rows.map(lakeCountsOf)), counts.lakePrior);
}

interface Row {
  readonly id: string;
  readonly counted: RegionCounts;
}

const named = (rows: readonly { readonly id: string }[], counts: readonly RegionCounts[]): Row[] =>
  counts.flatMap((counted, index) => rows.slice(index, index + 1).map(({ id }) => ({ id, counted })));

function leftOut(rows: readonly Row[], prior: RatePrior): LeftOut[] {
  const tellings = rows.map(({ counted }) => tellingOf(counted));
  return rows.map((row, index) => ({
    id: row.id,
    ...heldAgainst(row.counted, ratesOf(tellings.toSpliced(index, 1), prior)),
  }));
}

function heldAgainst({ foundings, exposure }: RegionCounts, others: RatePosterior): Omit<LeftOut, "id"> {
  const predicted = likelyCounts(times(others.newRegion, exposure));
  const inside = foundings.filter(({ count }) => count >= predicted.low && count <= predicted.high);
  return {
    exposure: tenthsOf(exposure),
    predicted,
    seen: foundings,
    isInside: sumOf(inside.map(({ weight }) => weight)) >= 1 / 2,
    newRegion: tenthsOf(others.newRegion),
    typical: tenthsOf(others.typical),
  };
}

/** Beyond this nobody counts foundings. */
const mostFoundings = 100_000;

/** Poisson counts around a mean that is not known exactly, from their 10th to their 90th percentile. */
function likelyCounts({ first, chances }: LogDensity): { readonly low: number; readonly high: number } {
  let upTo = 0;
  let low: number | undefined;
  for (let count = 0; count < mostFoundings; count++) {
    const logFactorial = logGamma(count + 1);
    for (let cell = 0; cell < chances.length; cell++) {
      const logMean = (first + cell) * logStep;
      upTo += (chances[cell] ?? 0) * Math.exp(count * logMean - Math.exp(logMean) - logFactorial);
    }
    if (low === undefined && upTo >= 1 / 10) low = count;
    if (upTo >= 9 / 10) return { low: low ?? count, high: count };
  }
  return { low: low ?? mostFoundings, high: mostFoundings };
}

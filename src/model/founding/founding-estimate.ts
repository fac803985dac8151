import { at, sumOf } from "../../lists.js";
import { betaQuantile } from "../risk/beta.js";
import type { FoundingCounts, LakeYears, Reach } from "./evidence.js";
import { commonShares, exposureOf, lakeYearsAtRisk } from "./exposure.js";
import { commonRate, type RegionCounts, ratesOf, spreadSteps, type Telling, tellingOf } from "./hierarchy.js";
import { densityOf, exactly, type Tenths, tenthsOf, times } from "./log-density.js";
import { type BetaParameters, betaThrough, sharesThrough } from "./share-range.js";

/** What published counts say of the chance that a fouled launch founds a population, and of yearly rates of lakes. */
export interface FoundingEstimate {
  /** Chance per fouled launch, dead or alive, in a region not among those counted. */
  readonly unknown: Tenths;
  /** The same for boats hours to two days out of infested water: the rate that the near regions share. */
  readonly near: Tenths;
  /** The same for boats from weeks away: the typical rate of the far regions. */
  readonly far: Tenths;
  /** Chance per launch with living mussels, in a region not among those counted. */
  readonly perLivingLaunch: Tenths;
  /** Standard deviation of the logarithm of the chance between regions. */
  readonly between: Tenths;
  /** Share of fouled boats whose mussels live, by reach. */
  readonly living: Readonly<Record<Reach, Tenths>>;
  /** Of fouled boats whose mussels were looked at after long hauls. */
  readonly longHauls: LivingCount;
  /** Yearly rate of one lake of a region not among those counted, without checks of boats and with them. */
  readonly openLake: Tenths;
  readonly inspectedLake: Tenths;
}

export interface LivingCount {
  readonly alive: number;
  readonly examined: number;
}

/** What each region tells. */
export function regionCounts(counts: FoundingCounts): RegionCounts[] {
  const common = commonShares(counts);
  return counts.regions.map((region) => ({
    foundings: region.foundings,
    exposure: exposureOf(region, common),
  }));
}

export const lakeCountsOf = (row: LakeYears): RegionCounts => ({
  foundings: [{ count: row.infested, weight: 1 }],
  exposure: exactly(lakeYearsAtRisk(row)),
});

/** The counts without some regions, which a study may leave out. */
export const countsWithout = (counts: FoundingCounts, without: readonly string[]): FoundingCounts => ({
  ...counts,
  regions: counts.regions.filter(({ id }) => !without.includes(id)),
});

/** What the counts say; from no regions at all, what was held before any count. */
export function foundingEstimate(counts: FoundingCounts): FoundingEstimate {
  const counted = regionCounts(counts);
  const tellings = counted.map(tellingOf);
  const ofReach = <T>(each: readonly T[], reach: Reach) =>
    each.filter((_, index) => counts.regions[index]?.reach === reach);
  const all = ratesOf(tellings, counts.prior);
  const lakes = (group: LakeYears["group"]) =>
    tenthsOf(ratesOf(lakeTellings(counts, group), counts.lakePrior).newRegion);
  const longHauls = longHaulsOf(counts);
  return {
    unknown: tenthsOf(all.newRegion),
    near: tenthsOf(commonRate(ofReach(counted, "near"), counts.prior)),
    far: tenthsOf(ratesOf(ofReach(tellings, "far"), counts.prior).typical),
    perLivingLaunch: tenthsOf(ratesOf(livingCounts(counts, counted).map(tellingOf), counts.prior).newRegion),
    between: spreadTenths(all.between),
    living: { near: shareTenths(counts.living.near), far: livingFar(longHauls, counts) },
    longHauls,
    openLake: lakes("open"),
    inspectedLake: lakes("inspected"),
  };
}

/** What each region tells of launches with living mussels alone. */
export function livingCounts(
  { regions, living }: FoundingCounts,
  counted: readonly RegionCounts[],
): RegionCounts[] {
  const shares = { near: densityOf(sharesThrough(living.near)), far: densityOf(sharesThrough(living.far)) };
  return counted.map(({ foundings, exposure }, index) => ({
    foundings,
    exposure: times(exposure, shares[at(regions, index).reach]),
  }));
}

const lakeTellings = ({ lakeYears }: FoundingCounts, wanted: LakeYears["group"]): Telling[] =>
  lakeYears.filter(({ group }) => group === wanted).map((row) => tellingOf(lakeCountsOf(row)));

/** Boats of far regions whose mussels were told to be dead or alive. */
export function longHaulsOf({ regions }: FoundingCounts): LivingCount {
  const looked = regions
    .flatMap((region) => (region.kind === "inspected" && region.reach === "far" ? region.seasons : []))
    .flatMap(({ fouled, alive, within }) =>
      fouled === undefined || alive === undefined || within !== undefined ? [] : [{ fouled, alive }],
    );
  return {
    alive: sumOf(looked.map(({ alive }) => alive)),
    examined: sumOf(looked.map(({ fouled }) => fouled)),
  };
}

/** From counts after Jeffreys, whose prior is half a boat of each kind; without any, the range that is judged. */
function livingFar({ alive, examined }: LivingCount, { living }: FoundingCounts): Tenths {
  return examined === 0 ? shareTenths(living.far) : jeffreys(alive, examined - alive);
}

export const jeffreys = (some: number, others: number): Tenths =>
  betaTenths({ alpha: some + 1 / 2, beta: others + 1 / 2 });

const shareTenths = (range: FoundingCounts["living"]["far"]) => betaTenths(betaThrough(range));

const betaTenths = ({ alpha, beta }: BetaParameters): Tenths => ({
  p10: betaQuantile(1 / 10, alpha, beta),
  p50: betaQuantile(1 / 2, alpha, beta),
  p90: betaQuantile(9 / 10, alpha, beta),
});

/** Of the spread between regions, from the chance of each of its steps. */
function spreadTenths(chances: readonly number[]): Tenths {
  const upTo = (wanted: number) => {
    let below = 0;
    for (const [step, { from, to }] of spreadSteps.entries()) {
      const here = at(chances, step);
      if (below + here >= wanted) return from + ((to - from) * (wanted - below)) / here;
      below += here;
    }
    return at(spreadSteps, spreadSteps.length - 1).to;
  };
  return { p10: upTo(1 / 10), p50: upTo(1 / 2), p90: upTo(9 / 10) };
}

import { sumOf } from "../../lists.js";
import type { FoundingCounts, LakeYears, Region, Season } from "./evidence.js";
import {
  densityOf,
  exactly,
  type LogDensity,
  lognormalThrough,
  type Ninety,
  times,
  type WeightedValue,
} from "./log-density.js";
import { sharesThrough } from "./share-range.js";

/** Fouled boats that the rows of an inspected region count, none of them twice. */
export const countedFouled = (seasons: readonly Season[]): number =>
  sumOf(seasons.map(({ fouled = 0, within }) => (within === undefined ? fouled : 0)));

/** Fouled boats found in the years of a region: 5th and 95th percentiles. */
export function interceptedRange(seasons: readonly Season[], uncounted: Ninety): Ninety {
  const counted = countedFouled(seasons);
  return { low: counted + uncounted.low, high: counted + uncounted.high };
}

/** Fewer points for the shares of efficacy, which move little. */
const efficacyPoints = 2;

/** What is the same in all regions, worked out once. */
export interface CommonShares {
  readonly sensitivity: readonly WeightedValue[];
  readonly efficacy: readonly WeightedValue[];
}

export const commonShares = ({ sensitivity, efficacy }: FoundingCounts): CommonShares => ({
  sensitivity: sharesThrough(sensitivity),
  efficacy: sharesThrough(efficacy, efficacyPoints),
});

/** Fouled boats that reach the water for each that is found: (1 − k s)/(k s) not found, and 1 − e not stopped. */
function throughPerFound(coverage: Ninety, { sensitivity, efficacy }: CommonShares): LogDensity {
  const found = pairs(sharesThrough(coverage), sensitivity, (k, s) => k * s);
  return densityOf(pairs(found, efficacy, throughRatio));
}

/** @param found k s: share of the arrivals that are found */
export const throughRatio = (found: number, efficacy: number): number => (1 - found) / found + 1 - efficacy;

const pairs = (
  some: readonly WeightedValue[],
  others: readonly WeightedValue[],
  joined: (one: number, other: number) => number,
): WeightedValue[] =>
  some.flatMap((one) =>
    others.map((other) => ({
      value: joined(one.value, other.value),
      weight: one.weight * other.weight,
    })),
  );

/** E: launches in clean water of a region with mussels on the boat, dead or alive. */
export function exposureOf(region: Region, common: CommonShares): LogDensity {
  if (region.kind === "moves") {
    return times(
      times(exactly(region.moves.perYear * region.moves.years), lognormalThrough(region.carrying)),
      densityOf(sharesThrough(region.toCleanLake)),
    );
  }
  return times(
    times(
      lognormalThrough(interceptedRange(region.seasons, region.uncounted)),
      densityOf(sharesThrough(region.destined)),
    ),
    throughPerFound(region.coverage, common),
  );
}

/** Yearly rate of lakes of which a share was infested: h = −ln(1 − n/N)/T. */
export const yearlyRate = ({ infested, lakes, years }: LakeYears): number =>
  -Math.log1p(-infested / lakes) / years;

/** Lake-years at risk: n/h, which with none infested are N T. */
export function lakeYearsAtRisk(row: LakeYears): number {
  const { infested, lakes, years, untilInfested } = row;
  return infested === 0 || untilInfested ? lakes * years : infested / yearlyRate(row);
}

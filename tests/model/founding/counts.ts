import type { FoundingCounts, Region } from "../../../src/model/founding/evidence.js";
import type { Ninety } from "../../../src/model/founding/log-density.js";
import { realSet } from "../../assumptions/real.js";

/** The counts that the project ships. */
export const shipped: FoundingCounts = realSet().foundingEvidence;

/** Counts with one region altered. */
export const withRegion = (
  id: string,
  alter: (region: Region) => Region,
  counts = shipped,
): FoundingCounts => ({
  ...counts,
  regions: counts.regions.map((region) => (region.id === id ? alter(region) : region)),
});

/** A range at other odds: both its ends. */
export const atOdds = ({ low, high }: Ninety, factor: number): Ninety => ({
  low: shareAtOdds(low, factor),
  high: shareAtOdds(high, factor),
});

const shareAtOdds = (share: number, factor: number) => (share * factor) / (1 - share + share * factor);

/** Within a part of the value expected. */
export const near = (value: number, expected: number, part: number) => Math.abs(value / expected - 1) <= part;

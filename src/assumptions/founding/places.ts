import type { EvidenceRegion, FoundingEvidence, Origin } from "./evidence.js";

export const evidenceFile = "founding-evidence.yaml";

/** A range by its 5th and 95th percentiles, with where it was read. */
type OriginRange = Origin & { readonly low: number; readonly high: number };

type Placed<T> = readonly [place: string, found: T];

/** Every range of the evidence, by its place. */
export const rangesOf = (evidence: FoundingEvidence): Placed<OriginRange>[] => [
  ["sensitivity", evidence.sensitivity],
  ["efficacy", evidence.efficacy],
  ["living, near", evidence.living.near],
  ["living, far", evidence.living.far],
  ...evidence.regions.flatMap((region) =>
    regionRanges(region).map(([place, range]): Placed<OriginRange> => [`${region.id}, ${place}`, range]),
  ),
];

export const regionRanges = (region: EvidenceRegion): Placed<OriginRange>[] =>
  region.kind === "inspected"
    ? [
        ["uncounted", region.uncounted],
        ["coverage", region.coverage],
        ["destined", region.destined],
      ]
    : [
        ["carrying", region.carrying],
        ["toCleanLake", region.toCleanLake],
      ];

/** Every number of a region that says where it was read, by its place. */
export const regionOrigins = (region: EvidenceRegion): Placed<Origin>[] => [
  ...regionRanges(region),
  ...region.foundings.map((row): Placed<Origin> => [`foundings, ${row.count}`, row]),
  ...(region.kind === "inspected"
    ? region.seasons.map((row): Placed<Origin> => [`season ${row.season}`, row])
    : [["moves", region.moves] as const]),
];

/** The same of the whole evidence. */
export const originsOf = (evidence: FoundingEvidence): Placed<Origin>[] => [
  ...rangesOf({ ...evidence, regions: [] }),
  ["prior", evidence.prior],
  ["lakePrior", evidence.lakePrior],
  ...evidence.regions.flatMap((region) =>
    regionOrigins(region).map(([place, row]): Placed<Origin> => [`${region.id}, ${place}`, row]),
  ),
  ...evidence.lakeYears.map((row): Placed<Origin> => [row.id, row]),
];

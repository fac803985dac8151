import { z } from "zod";
import { bases } from "../basis.js";

/** Far above what anybody counts: larger numbers are slips of the keys. */
const largestCount = 1e8;
const longestYears = 500;

const text = z.string().min(1);
const origin = { basis: z.enum(bases), source: text, note: z.string().default("") };
const count = z.int("a whole number").min(0, "at least 0").max(largestCount, "at most 100,000,000");
const innerShare = z.number().gt(0, "above 0 and below 1").lt(1, "above 0 and below 1");
const years = z.number().gt(0, "above 0 years").max(longestYears, "at most 500 years");
const id = z.string().regex(/^[a-z0-9-]+$/, "lower-case words joined by hyphens");

/** A share by its 5th and 95th percentiles. */
const shareRange = z.strictObject({ low: innerShare, high: innerShare, ...origin });

const season = z.strictObject({
  /** What tells the rows of a region apart: a year, or several. */
  season: text,
  inspected: count.optional(),
  highRisk: count.optional(),
  fouled: count.optional(),
  alive: count.optional(),
  /** True where the season was not over when it was counted. */
  part: z.boolean().default(false),
  within: text.optional(),
  ...origin,
});

const uncountedBound = z
  .number()
  .min(-largestCount, "at least −100,000,000")
  .max(largestCount, "at most 100,000,000");

const founding = z.strictObject({
  count: z.int("a whole number").min(0, "at least 0").max(1000, "at most 1,000"),
  weight: z.number().gt(0, "above 0 and at most 1").max(1, "above 0 and at most 1"),
  ...origin,
});

const ofRegion = {
  id,
  name: text,
  period: text,
  reach: z.enum(["near", "far"]),
  foundings: z.array(founding).min(1, "at least one count"),
};

const region = z.discriminatedUnion("kind", [
  z.strictObject({
    kind: z.literal("inspected"),
    ...ofRegion,
    seasons: z.array(season),
    uncounted: z.strictObject({ low: uncountedBound, high: uncountedBound, ...origin }),
    coverage: shareRange,
    destined: shareRange,
  }),
  z.strictObject({
    kind: z.literal("moves"),
    ...ofRegion,
    moves: z.strictObject({
      perYear: z.number().gt(0, "above 0").max(largestCount, "at most 100,000,000"),
      years,
      ...origin,
    }),
    carrying: shareRange,
    toCleanLake: shareRange,
  }),
]);

const lakeRow = z.strictObject({
  id,
  group: z.enum(["open", "inspected", "all lakes"]),
  name: text,
  period: text,
  infested: count,
  lakes: count.min(1, "at least 1"),
  years,
  untilInfested: z.boolean().default(false),
  ...origin,
});

const prior = z.strictObject({
  median: z.number().min(1e-7, "at least 1e-7 and below 1").lt(1, "at least 1e-7 and below 1"),
  spread: z.number().min(0.1, "0.1 to 10").max(10, "0.1 to 10"),
  betweenRegions: z.number().gt(0, "above 0 and at most 3").max(3, "above 0 and at most 3"),
  ...origin,
});

/** Published counts, each with where it was read. */
export const evidenceSchema = z.strictObject({
  /** Key of the source that stands beside what is estimated from them all. */
  source: text,
  sensitivity: shareRange,
  efficacy: shareRange,
  living: z.strictObject({ near: shareRange, far: shareRange }),
  prior,
  lakePrior: prior,
  regions: z.array(region).min(1, "at least one region"),
  lakeYears: z.array(lakeRow),
});

export type FoundingEvidence = z.output<typeof evidenceSchema>;
export type EvidenceRegion = FoundingEvidence["regions"][number];
export type EvidenceSeason = z.output<typeof season>;
export type EvidenceLakes = z.output<typeof lakeRow>;

/** What says where a number was read. */
export type Origin = Pick<EvidenceLakes, "basis" | "source" | "note">;

import type { z } from "zod";
import { sumOf } from "../../lists.js";
import { interceptedRange } from "../../model/founding/exposure.js";
import type { Source } from "../entry.js";
import { shapeProblemAt, valueAt } from "../yaml-file.js";
import {
  type EvidenceLakes,
  type EvidenceRegion,
  type EvidenceSeason,
  evidenceSchema,
  type FoundingEvidence,
} from "./evidence.js";
import { evidenceFile, originsOf, rangesOf } from "./places.js";

/** Reads the published counts and adds what is wrong with them to `problems`. */
export function readEvidence(
  content: unknown,
  sources: ReadonlyMap<string, Source>,
  problems: string[],
): FoundingEvidence | undefined {
  if (content === undefined) return undefined;
  const parsed = evidenceSchema.safeParse(content);
  if (!parsed.success) {
    problems.push(...parsed.error.issues.map((issue) => shapeProblem(content, issue)));
    return undefined;
  }
  const found = [
    ...rangeProblems(parsed.data),
    ...parsed.data.regions.flatMap(regionProblems),
    ...parsed.data.lakeYears.flatMap(lakeProblems),
    ...repeated(parsed.data),
  ].map((problem) => `${evidenceFile}: ${problem}`);
  const ofSources = sourceProblems(parsed.data, sources);
  problems.push(...ofSources, ...found);
  return found.length + ofSources.length === 0 ? parsed.data : undefined;
}

function shapeProblem(content: unknown, issue: z.core.$ZodIssue): string {
  const place = `${evidenceFile}: ${placeOf(content, issue.path) || "the whole file"}`;
  return issue.code === "unrecognized_keys"
    ? `${place} has an unknown key "${issue.keys.join('", "')}". Correct or remove it.`
    : shapeProblemAt(place, valueAt(content, issue.path), issue);
}

/** A path in words: the items of lists by their ids or seasons, or by their number from 1. */
const placeOf = (content: unknown, path: readonly PropertyKey[]): string =>
  path
    .map((key, depth) => {
      if (typeof key !== "number") return String(key);
      const item = valueAt(content, path.slice(0, depth + 1));
      return String(valueAt(item, ["id"]) ?? valueAt(item, ["season"]) ?? `entry ${key + 1}`);
    })
    .join(", ");

/** Sources that nothing cites. */
export function sourceProblems(evidence: FoundingEvidence, sources: ReadonlyMap<string, Source>): string[] {
  const named = [["the whole file", evidence] as const, ...originsOf(evidence)];
  return named
    .filter(([, { source }]) => !sources.has(source))
    .map(
      ([place, { source }]) =>
        `${evidenceFile}: ${place} names the source "${source}", which sources.yaml does not hold. Add the citation there.`,
    );
}

const rangeProblems = (evidence: FoundingEvidence): string[] =>
  rangesOf(evidence)
    .filter(([, { low, high }]) => low > high)
    .map(
      ([place, { low, high }]) =>
        `${place}: low is ${low}; allowed: at most high, which is ${high}. Correct one of the two.`,
    );

/** What weights may miss 1 by: they are written with few digits. */
const weightTolerance = 1e-6;

function regionProblems(region: EvidenceRegion): string[] {
  const weight = sumOf(region.foundings.map((row) => row.weight));
  const weights =
    Math.abs(weight - 1) <= weightTolerance
      ? []
      : [
          `${region.id}: the weights of its foundings add up to ${Number(weight.toPrecision(6))}; allowed: 1. Correct the weights.`,
        ];
  if (region.kind === "moves") return weights;
  const { low } = interceptedRange(region.seasons, region.uncounted);
  const intercepted =
    low > 0
      ? []
      : [
          `${region.id}: its fouled boats, those of the seasons with the low of uncounted, are ${low}; allowed: above 0. Correct the seasons or uncounted.`,
        ];
  return [
    ...weights,
    ...intercepted,
    ...region.seasons.flatMap((row) =>
      seasonProblems(row, region).map((problem) => `${region.id}, season ${row.season}: ${problem}`),
    ),
  ];
}

function seasonProblems(row: EvidenceSeason, { seasons }: { readonly seasons: readonly EvidenceSeason[] }) {
  const atMost = (part: "highRisk" | "fouled" | "alive", whole: "inspected" | "fouled") => {
    const [some, all] = [row[part], row[whole]];
    return some !== undefined && all !== undefined && some > all
      ? [`${part} is ${some}; allowed: at most ${whole}, which is ${all}. Correct one of the two.`]
      : [];
  };
  const holder = seasons.find(({ season }) => season === row.within);
  const isHeld = row.within === undefined || (holder !== undefined && holder.within === undefined);
  return [
    ...atMost("highRisk", "inspected"),
    ...atMost("fouled", "inspected"),
    ...atMost("alive", "fouled"),
    ...(isHeld
      ? []
      : [
          `within is ${JSON.stringify(row.within)}; allowed: the season of another row of the region, which is within no other. Correct or remove it.`,
        ]),
  ];
}

function lakeProblems({ id, infested, lakes, untilInfested }: EvidenceLakes): string[] {
  if (infested > lakes) {
    return [
      `${id}: infested is ${infested}; allowed: at most lakes, which is ${lakes}. Correct one of the two.`,
    ];
  }
  return infested === lakes && !untilInfested
    ? [
        `${id}: all ${lakes} lakes were infested, so that their years at risk are not known; allowed: fewer, or untilInfested: true with the years until each was. Add it or leave the row out.`,
      ]
    : [];
}

function repeated({ regions, lakeYears }: FoundingEvidence): string[] {
  const twice = (names: readonly string[]) => [
    ...new Set(names.filter((name, index) => names.indexOf(name) !== index)),
  ];
  return [
    ...twice(regions.map(({ id }) => id)),
    ...twice(lakeYears.map(({ id }) => id)).map((id) => `lakeYears, ${id}`),
    ...regions.flatMap((region) => [
      ...twice(region.foundings.map(({ count }) => `${region.id}, foundings of ${count}`)),
      ...(region.kind === "inspected"
        ? twice(region.seasons.map(({ season }) => `${region.id}, season ${season}`))
        : []),
    ]),
  ].map((place) => `${place}: stands here a second time. Keep one of the two.`);
}

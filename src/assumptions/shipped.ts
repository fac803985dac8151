import { readFileSync } from "node:fs";
import { join } from "node:path";
import { z } from "zod";
import { projectRoot } from "../project-root.js";
import { sha256, stableJson } from "./digest.js";
import type { Alteration, AssumptionSet } from "./entry.js";
import { evidenceParts } from "./founding/parts.js";

/** The contents of a folder of assumptions without its alterations. */
type Contents = Omit<AssumptionSet, "alterations">;

const recordSchema = z.strictObject({
  /** Of all parts. */
  digest: z.string(),
  /** By what they are: in words, and the digest of all that is said of them. */
  parts: z.record(z.string(), z.strictObject({ shown: z.string(), digest: z.string() })),
});

/** What this version ships, so that a folder that was altered shows. `npm run ship` writes it. */
type ShippedRecord = z.infer<typeof recordSchema>;

export const shippedFile = join(projectRoot, "src", "assumptions", "shipped.json");

let read: ShippedRecord | undefined;

export function shippedRecord(): ShippedRecord {
  read ??= recordSchema.parse(JSON.parse(readFileSync(shippedFile, "utf8")));
  return read;
}

/** The record of a folder of assumptions. */
export function recordOf(contents: Contents): ShippedRecord {
  const parts = Object.fromEntries(
    partsOf(contents).map(([what, shown, content]) => [
      what,
      { shown, digest: sha256(stableJson(content)).slice(0, digestLength) },
    ]),
  );
  return { digest: sha256(stableJson(parts)).slice(0, digestLength), parts };
}

/** Of hexadecimal digits: enough to be told apart, few enough to be printed. */
const digestLength = 16;

/** Every part that is not as it is shipped, is missing, or is not shipped. */
export function alterationsOf(contents: Contents, shipped = shippedRecord()): Alteration[] {
  const found = recordOf(contents).parts;
  const names = [...new Set([...Object.keys(shipped.parts), ...Object.keys(found)])];
  return names.flatMap((what) => {
    const [current, asShipped] = [found[what], shipped.parts[what]];
    if (current?.digest === asShipped?.digest) return [];
    const isAlike = current?.shown === asShipped?.shown;
    return {
      what,
      found: isAlike ? "the same value with other words or another source" : (current?.shown ?? "nothing"),
      shipped: asShipped?.shown ?? "nothing",
    };
  });
}

type Part = readonly [what: string, shown: string, content: unknown];

function partsOf(contents: Contents): Part[] {
  const { entries, sources, plans, priceIndices, planningRates, groups, foundingEvidence, habitatLakes } =
    contents;
  return [
    ...[...entries.values()].map((entry): Part => {
      const { id, value, low, high, unit, basis, distribution } = entry;
      const drawn = distribution === "pert" ? "" : `, ${distribution}`;
      const measured = unit === "1" ? value : `${value} ${unit}`;
      return [`assumption ${id}`, `${measured} (${low} to ${high}), ${basis}${drawn}`, entry];
    }),
    ...[...sources].map(([key, source]): Part => [`source ${key}`, source.citation, source]),
    ...plans.map((plan): Part => [`protection plan ${plan.id}`, plan.name, plan]),
    ...priceIndices.map(({ values, parts, ...index }): Part => {
      const years = [...values].map(([year, value]) => `${year}: ${value}`).join(", ");
      const origins = parts.map((part) => ({ ...part, values: [...part.values] }));
      return [`price index ${index.id}`, years, { ...index, years, origins }];
    }),
    ...[...planningRates.values()].map((notice): Part => {
      const { fiscalYear, rate } = notice;
      return [
        `water-planning rate of ${fiscalYear}`,
        `${Number((rate * 100).toFixed(3))} %, ${notice.notice}`,
        notice,
      ];
    }),
    ...groups.map((group): Part => [`group ${group.id}`, `rank correlation ${group.rankCorrelation}`, group]),
    ...evidenceParts(foundingEvidence),
    ...habitatLakes.lakes.map((lake): Part => {
      const water = Object.entries(lake.water).map(([variable, value]) => `${variable} ${value}`);
      return [`infested lake ${lake.name}`, `${lake.species}, ${water.join(", ")}`, lake];
    }),
    ["infested lakes left out", habitatLakes.leftOut.join(", "), habitatLakes.leftOut] as const,
  ];
}

import { z } from "zod";
import { bases } from "./basis.js";
import type { PriceIndexTable, Source } from "./entry.js";

export const priceIndexFile = "price-index.yaml";

const valuesByYear = z
  .record(
    z.string().regex(/^(19|20)\d\d$/, "a year such as 2024"),
    z.number().positive("an index value above 0"),
  )
  .refine((values) => Object.keys(values).length > 0, "at least one year")
  .transform((values) => new Map(Object.entries(values).map(([year, value]) => [Number(year), value])));

const tableSchema = z.strictObject({
  id: z.string().regex(/^[a-z0-9-]+$/, "lower-case words joined by hyphens"),
  name: z.string().min(1),
  parts: z
    .array(
      z.strictObject({
        basis: z.enum(bases),
        source: z.string().min(1),
        note: z.string(),
        values: valuesByYear,
      }),
    )
    .min(1, "at least one part"),
});

/** Reads the price indices and adds what is wrong with them to `problems`. */
export function readPriceIndices(
  content: unknown,
  sources: ReadonlyMap<string, Source>,
  problems: string[],
): PriceIndexTable[] {
  const parsed = z.array(tableSchema).min(1, "at least one index").safeParse(content);
  if (!parsed.success) {
    problems.push(
      ...parsed.error.issues.map(
        (issue) => `${priceIndexFile}: ${placeText(issue.path)}: ${messageOf(issue)}. Correct it.`,
      ),
    );
    return [];
  }
  const seen = new Set<string>();
  return parsed.data.map((table) => {
    if (seen.has(table.id)) {
      problems.push(`${priceIndexFile}: ${table.id} stands here a second time. Keep one of the two.`);
    }
    seen.add(table.id);
    return { ...table, values: joined(table, sources, problems) };
  });
}

const placeText = (path: readonly PropertyKey[]) =>
  path.map((key) => (typeof key === "number" ? key + 1 : String(key))).join(", ") || "the whole file";

const messageOf = (issue: z.core.$ZodIssue) =>
  issue.code === "invalid_key" ? (issue.issues[0]?.message ?? issue.message) : issue.message;

function joined(
  { id, parts }: z.output<typeof tableSchema>,
  sources: ReadonlyMap<string, Source>,
  problems: string[],
): Map<number, number> {
  const values = new Map<number, number>();
  for (const part of parts) {
    if (!sources.has(part.source)) {
      problems.push(
        `${priceIndexFile}: ${id} names the source "${part.source}", which sources.yaml does not hold. Add the citation there.`,
      );
    }
    for (const [year, value] of part.values) {
      if (values.has(year)) {
        problems.push(`${priceIndexFile}: ${id} has ${year} in two parts. Keep one of the two values.`);
      }
      values.set(year, value);
    }
  }
  return values;
}

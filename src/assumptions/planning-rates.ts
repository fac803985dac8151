import { z } from "zod";
import { bases } from "./basis.js";
import type { PlanningNotice, Source } from "./entry.js";
import { type AssumptionFiles, readYaml } from "./yaml-file.js";

export const planningRatesFile = "planning-rates.yaml";

const eighthsPerPercent = 8;
const mostPercent = 20;

const noticesSchema = z.array(
  z.strictObject({
    fiscalYear: z.int().min(1975, "a fiscal year from 1975").max(2100, "at most 2100"),
    percent: z
      .number()
      .positive("above 0")
      .max(mostPercent, `at most ${mostPercent}`)
      .refine((percent) => Number.isInteger(percent * eighthsPerPercent), "eighths of a percent"),
    notice: z.string().min(1),
    basis: z.enum(bases),
    source: z.string().min(1),
  }),
);

/**
 * Federal water-planning rates by fiscal year; what is wrong with them is added to `problems`.
 * @param later those of this version, in place of those of an earlier one that had none
 */
export function readPlanningRates(
  files: AssumptionFiles,
  sources: ReadonlyMap<string, Source>,
  later: ReadonlyMap<number, PlanningNotice> | undefined,
  problems: string[],
): ReadonlyMap<number, PlanningNotice> {
  if (later && !files.has(planningRatesFile)) return later;
  const parsed = noticesSchema.safeParse(readYaml(files, planningRatesFile, problems));
  if (!parsed.success) {
    problems.push(
      ...parsed.error.issues.map(
        ({ path, message }) =>
          `${planningRatesFile}: ${path.map((key) => (typeof key === "number" ? key + 1 : String(key))).join(", ") || "the whole file"}: ${message}. Correct it.`,
      ),
    );
    return new Map();
  }
  const notices = new Map<number, PlanningNotice>();
  for (const { percent, ...notice } of parsed.data) {
    const { fiscalYear, source } = notice;
    if (notices.has(fiscalYear)) {
      problems.push(`${planningRatesFile}: ${fiscalYear} stands here a second time. Keep one of the two.`);
    }
    if (!sources.has(source)) {
      problems.push(
        `${planningRatesFile}: ${fiscalYear} names the source "${source}", which sources.yaml does not hold. Add the citation there.`,
      );
    }
    notices.set(fiscalYear, { ...notice, rate: percent / 100 });
  }
  return notices;
}

import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { parseDocument } from "yaml";
import { z } from "zod";
import { type Assumption, type AssumptionSet, entrySchema, type Source, sourceSchema } from "./entry.js";
import { groupsFile, readGroups } from "./groups.js";
import { plansFile, readPlans } from "./plans.js";
import { priceIndexFile, readPriceIndices } from "./price-indices.js";

/** Wrong assumption files: for the engineer, at start. Each problem names file, entry, value and remedy. */
export class AssumptionError extends Error {
  constructor(readonly problems: readonly string[]) {
    super(`The assumptions cannot be used.\n${problems.map((problem) => `  ${problem}`).join("\n")}`);
  }
}

const sourcesFile = "sources.yaml";

/**
 * Reads every assumption file of a folder and the sources beside them.
 * @throws AssumptionError with all problems at once
 */
export function loadAssumptions(folder: string): AssumptionSet {
  if (!existsSync(join(folder, sourcesFile))) {
    throw new AssumptionError([
      `${folder}: holds no ${sourcesFile}. Point to the project's folder of assumptions.`,
    ]);
  }
  const problems: string[] = [];
  const sources = readSources(folder, problems);
  const entries = new Map<string, Assumption>();
  const files = readdirSync(folder).filter(
    (name) => name.endsWith(".yaml") && ![sourcesFile, plansFile, priceIndexFile, groupsFile].includes(name),
  );
  for (const file of files.sort()) {
    for (const entry of readEntries(folder, file, problems)) {
      if (entries.has(entry.id)) {
        problems.push(`${file}: ${entry.id} stands here a second time. Keep one of the two.`);
      }
      problems.push(...entryProblems(file, entry, sources));
      entries.set(entry.id, entry);
    }
  }
  if (problems.length > 0) throw new AssumptionError(problems);
  const plans = readPlans(readYaml(folder, plansFile, problems), entries, problems);
  const priceIndices = readPriceIndices(readYaml(folder, priceIndexFile, problems), sources, problems);
  const groups = readGroups(readYaml(folder, groupsFile, problems), entries, sources, problems);
  if (problems.length > 0) throw new AssumptionError(problems);
  return { entries, sources, plans, priceIndices, groups };
}

function readYaml(folder: string, file: string, problems: string[]): unknown {
  if (!existsSync(join(folder, file))) {
    problems.push(`${folder}: holds no ${file}. Point to the project's folder of assumptions.`);
    return undefined;
  }
  const document = parseDocument(readFileSync(join(folder, file), "utf8"));
  problems.push(
    ...document.errors.map((error) => `${file}: ${error.message.split("\n")[0]} Correct the file.`),
  );
  return document.errors.length > 0 ? undefined : document.toJS();
}

function readSources(folder: string, problems: string[]): Map<string, Source> {
  const content = readYaml(folder, sourcesFile, problems) ?? {};
  const parsed = z.record(z.string(), sourceSchema).safeParse(content);
  if (parsed.success) return new Map(Object.entries(parsed.data));
  problems.push(...parsed.error.issues.map((issue) => sourceProblem(content, issue)));
  return new Map();
}

function sourceProblem(content: unknown, issue: z.core.$ZodIssue): string {
  return shapeProblemAt(`${sourcesFile}: ${issue.path.join(".")}`, valueAt(content, issue.path), issue);
}

function shapeProblemAt(place: string, found: unknown, issue: z.core.$ZodIssue): string {
  const what = found === undefined ? "is missing" : `is ${JSON.stringify(found)}`;
  const allowed =
    issue.code === "invalid_value"
      ? `one of ${issue.values.join(", ")}`
      : issue.message.replace("Invalid input: ", "").replace(/, received .*$/, "");
  return `${place} ${what}; allowed: ${allowed}. Add or correct it.`;
}

function readEntries(folder: string, file: string, problems: string[]): Assumption[] {
  const content = readYaml(folder, file, problems);
  if (content === undefined) return [];
  if (!Array.isArray(content)) {
    problems.push(`${file}: holds no list of assumptions. Write each as "- { id: …, value: … }".`);
    return [];
  }
  return content.flatMap((item: unknown, index) => {
    const parsed = entrySchema.safeParse(item);
    if (parsed.success) return [parsed.data];
    problems.push(...parsed.error.issues.map((issue) => shapeProblem(file, item, index, issue)));
    return [];
  });
}

function shapeProblem(file: string, item: unknown, index: number, issue: z.core.$ZodIssue): string {
  const id = z.looseObject({ id: z.string() }).safeParse(item).data?.id ?? `entry ${index + 1}`;
  const field = issue.path.join(".");
  if (issue.code === "unrecognized_keys") {
    return `${file}: ${id} has an unknown key "${issue.keys.join('", "')}". Allowed: ${Object.keys(entrySchema.shape).join(", ")}. Correct or remove it.`;
  }
  return shapeProblemAt(`${file}: ${id}: ${field}`, valueAt(item, issue.path), issue);
}

function valueAt(item: unknown, path: readonly PropertyKey[]): unknown {
  return path.reduce<unknown>(
    (value, key) => (typeof value === "object" && value !== null ? Reflect.get(value, key) : undefined),
    item,
  );
}

function entryProblems(file: string, entry: Assumption, sources: ReadonlyMap<string, Source>): string[] {
  const { id, value, low, high, unit, source, priceYear } = entry;
  const problems: string[] = [];
  if (value < low || value > high) {
    problems.push(
      `${file}: ${id} is ${value}; allowed ${low} to ${high} ${unit}. Correct the value or widen the range with a source.`,
    );
  }
  if (!sources.has(source)) {
    problems.push(
      `${file}: ${id} names the source "${source}", which ${sourcesFile} does not hold. Add the citation there.`,
    );
  }
  if (unit.startsWith("$") && priceYear === undefined) {
    problems.push(`${file}: ${id} is a price without priceYear. Add the year of its prices.`);
  }
  return problems;
}

import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { parseDocument } from "yaml";
import { z } from "zod";
import { type Assumption, type AssumptionSet, entrySchema, type Source, sourceSchema } from "./entry.js";
import { groupsFile, readGroups } from "./groups.js";
import { plansFile, readPlans } from "./plans.js";
import { priceIndexFile, readPriceIndices } from "./price-indices.js";
import { alterationsOf } from "./shipped.js";

/** Wrong assumption files: for the engineer, at start. Each problem names file, entry, value and remedy. */
export class AssumptionError extends Error {
  constructor(readonly problems: readonly string[]) {
    super(`The assumptions cannot be used.\n${problems.map((problem) => `  ${problem}`).join("\n")}`);
  }
}

const sourcesFile = "sources.yaml";

/** Texts of assumption files by their names. */
export type AssumptionFiles = ReadonlyMap<string, string>;

/** The assumption files of a folder, unread. @throws AssumptionError where the folder holds none */
export function assumptionFiles(folder: string): AssumptionFiles {
  if (!existsSync(join(folder, sourcesFile))) {
    throw new AssumptionError([
      `${folder}: holds no ${sourcesFile}. Point to the project's folder of assumptions.`,
    ]);
  }
  const names = readdirSync(folder).filter((name) => name.endsWith(".yaml"));
  return new Map(names.sort().map((name) => [name, readFileSync(join(folder, name), "utf8")]));
}

/**
 * Reads every assumption file of a folder and the sources beside them.
 * @throws AssumptionError with all problems at once
 */
export const loadAssumptions = (folder: string): AssumptionSet => readAssumptions(assumptionFiles(folder));

/** Reads the texts of a folder of assumptions. @throws AssumptionError with all problems at once */
export function readAssumptions(files: AssumptionFiles): AssumptionSet {
  const problems: string[] = [];
  const sources = readSources(files, problems);
  const entries = new Map<string, Assumption>();
  const others = [sourcesFile, plansFile, priceIndexFile, groupsFile];
  for (const file of [...files.keys()].filter((name) => !others.includes(name)).sort()) {
    for (const entry of readEntries(files, file, problems)) {
      if (entries.has(entry.id)) {
        problems.push(`${file}: ${entry.id} stands here a second time. Keep one of the two.`);
      }
      problems.push(...entryProblems(file, entry, sources));
      entries.set(entry.id, entry);
    }
  }
  if (problems.length > 0) throw new AssumptionError(problems);
  const plans = readPlans(readYaml(files, plansFile, problems), entries, problems);
  const priceIndices = readPriceIndices(readYaml(files, priceIndexFile, problems), sources, problems);
  const groups = readGroups(readYaml(files, groupsFile, problems), entries, sources, problems);
  if (problems.length > 0) throw new AssumptionError(problems);
  const contents = { entries, sources, plans, priceIndices, groups };
  return { ...contents, alterations: alterationsOf(contents) };
}

function readYaml(files: AssumptionFiles, file: string, problems: string[]): unknown {
  const text = files.get(file);
  if (text === undefined) {
    problems.push(`There is no ${file}. Point to the project's folder of assumptions.`);
    return undefined;
  }
  const document = parseDocument(text);
  problems.push(
    ...document.errors.map((error) => `${file}: ${error.message.split("\n")[0]} Correct the file.`),
  );
  return document.errors.length > 0 ? undefined : document.toJS();
}

function readSources(files: AssumptionFiles, problems: string[]): Map<string, Source> {
  const content = readYaml(files, sourcesFile, problems) ?? {};
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

function readEntries(files: AssumptionFiles, file: string, problems: string[]): Assumption[] {
  const content = readYaml(files, file, problems);
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

import type { z } from "zod";
import type { Source } from "../entry.js";
import { type AssumptionFiles, readYaml, shapeProblemAt, valueAt } from "../yaml-file.js";
import { type HabitatLakes, habitatSchema, type InfestedLake } from "./lakes.js";

export const habitatFile = "habitat-lakes.yaml";

/**
 * The infested lakes of a folder; what is wrong with them is added to `problems`.
 * @param later those of this version, in place of those of an earlier one that had none
 */
export function readHabitatLakes(
  files: AssumptionFiles,
  sources: ReadonlyMap<string, Source>,
  later: HabitatLakes | undefined,
  problems: string[],
): HabitatLakes | undefined {
  if (later && !files.has(habitatFile)) return later;
  const content = readYaml(files, habitatFile, problems);
  if (content === undefined) return undefined;
  const parsed = habitatSchema.safeParse(content);
  if (!parsed.success) {
    problems.push(...parsed.error.issues.map((issue) => shapeProblem(content, issue)));
    return undefined;
  }
  problems.push(...parsed.data.lakes.flatMap((each) => sourceProblems(each, sources)));
  problems.push(...repeated(parsed.data));
  return parsed.data;
}

function shapeProblem(content: unknown, issue: z.core.$ZodIssue): string {
  const names = issue.path.map((key, depth) => {
    const item = valueAt(content, issue.path.slice(0, depth + 1));
    return typeof key === "number" ? String(valueAt(item, ["name"]) ?? `entry ${key + 1}`) : String(key);
  });
  const place = `${habitatFile}: ${names.join(", ") || "the whole file"}`;
  return issue.code === "unrecognized_keys"
    ? `${place} has an unknown key "${issue.keys.join('", "')}". Correct or remove it.`
    : shapeProblemAt(place, valueAt(content, issue.path), issue);
}

const sourceProblems = (
  { name, waterSource, infestedSource }: InfestedLake,
  sources: ReadonlyMap<string, Source>,
): string[] =>
  [...new Set([waterSource, infestedSource])]
    .filter((source) => !sources.has(source))
    .map(
      (source) =>
        `${habitatFile}: ${name} names the source "${source}", which sources.yaml does not hold. Add the citation there.`,
    );

function repeated({ lakes, leftOut }: HabitatLakes): string[] {
  const names = [...lakes.map(({ name }) => name), ...leftOut];
  const twice = new Set(names.filter((name, index) => names.indexOf(name) !== index));
  return [...twice].map((name) => `${habitatFile}: ${name} stands here a second time. Keep one of the two.`);
}

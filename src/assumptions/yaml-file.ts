import { parseDocument } from "yaml";
import type { z } from "zod";
import { contentAtBuild } from "./read-at-build.js";

/** Texts of assumption files by their names. */
export type AssumptionFiles = ReadonlyMap<string, string>;

/** Content of one file; undefined where it cannot be read, which is added to `problems`. */
export function readYaml(files: AssumptionFiles, file: string, problems: string[]): unknown {
  const text = files.get(file);
  if (text === undefined) {
    problems.push(`There is no ${file}. Point to the project's folder of assumptions.`);
    return undefined;
  }
  const kept = contentAtBuild(file, text);
  if (kept !== undefined) return kept;
  const document = parseDocument(text);
  problems.push(
    ...document.errors.map((error) => `${file}: ${error.message.split("\n")[0]} Correct the file.`),
  );
  return document.errors.length > 0 ? undefined : document.toJS();
}

/** A value of a wrong kind, by its place. */
export function shapeProblemAt(place: string, found: unknown, issue: z.core.$ZodIssue): string {
  const allowed =
    issue.code === "invalid_value"
      ? `one of ${issue.values.join(", ")}`
      : issue.message.replace("Invalid input: ", "").replace(/, received .*$/, "");
  return wrongValue(place, found, allowed);
}

export function wrongValue(place: string, found: unknown, allowed: string): string {
  const what = found === undefined ? "is missing" : `is ${JSON.stringify(found)}`;
  return `${place} ${what}; allowed: ${allowed}. Add or correct it.`;
}

export function valueAt(item: unknown, path: readonly PropertyKey[]): unknown {
  return path.reduce<unknown>(
    (value, key) => (typeof value === "object" && value !== null ? Reflect.get(value, key) : undefined),
    item,
  );
}

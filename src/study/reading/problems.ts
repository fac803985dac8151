import type { z } from "zod";
import { counted } from "../../counted.js";
import { structureKinds } from "../../model/structures/kinds.js";
import { PlainError } from "../../plain-error.js";
import { codeOf, forPrint, unseenIn } from "./characters.js";
import type { Contradiction } from "./contradiction.js";

/** One problem of a study, in words for its author. */
export interface Problem {
  /** Place in the document: structures[2].rack.clearSpacing. */
  readonly path: string;
  /** The same place key by key; absent for a place in the text. */
  readonly at?: readonly PropertyKey[];
  readonly found: string;
  readonly allowed: string;
  readonly remedy: string;
  /** True if it is merely unusual and does not prevent computing. */
  readonly unusual?: boolean;
}

/** A study that cannot be computed. Holds every problem found, not only the first. */
export class InputError extends PlainError {
  override readonly isToCorrect = true;

  constructor(
    readonly subject: string,
    readonly problems: readonly Problem[],
  ) {
    const count = counted(problems.length, "problem");
    super(`${subject}: ${count}.\n${problems.map((problem) => `  ${sentence(problem)}`).join("\n")}`);
  }
}

export function sentence({ path, found, allowed, remedy }: Problem): string {
  return `${path}: found ${found}; allowed: ${allowed}. ${remedy}`;
}

/** Issues of a failed parse as problems, with the value found. */
export function problemsOf(issues: readonly z.core.$ZodIssue[], document: unknown): Problem[] {
  return issues.flatMap((issue) => problemsOfIssue(issue, document));
}

function problemsOfIssue(issue: z.core.$ZodIssue, document: unknown): Problem[] {
  const found = valueAt(document, issue.path);
  if (issue.code === "unrecognized_keys") {
    return issue.keys.map((key) => ({
      path: pathText([...issue.path, key], document),
      at: [...issue.path, key],
      found: "an unknown key",
      allowed: issue.message.startsWith("Unrecognized key") ? keysOfStudy : issue.message,
      remedy: "Correct its spelling or remove it.",
    }));
  }
  const given = issue.message.startsWith("Invalid input");
  if (issue.code === "invalid_union" && issue.errors.length > 0 && given) {
    const branch = closestBranch(issue.errors, found);
    return branch.flatMap((nested) =>
      problemsOfIssue({ ...nested, path: [...issue.path, ...nested.path] } as z.core.$ZodIssue, document),
    );
  }
  const rows = rowsOfShortList(issue, found);
  const shown = rows === undefined ? found : undefined;
  return [
    {
      path: pathText(rows ? [...issue.path, rows] : issue.path, document),
      at: issue.path,
      found: describe(shown),
      allowed: allowedText(issue),
      remedy: remedyOf(shown, issue),
    },
  ];
}

/** How many rows a list has that must have more: what it lacks is missing, as a field that was left empty. */
const rowsOfShortList = (issue: z.core.$ZodIssue, found: unknown): number | undefined =>
  issue.code === "too_small" && Array.isArray(found) ? found.length : undefined;

export const keysOfStudy = "only the keys of the study format (see the schema command)";

function remedyOf(found: unknown, issue: z.core.$ZodIssue): string {
  const { path, message } = issue;
  if (found === undefined) return "Add it.";
  if (path.length === 0) return noStudyRemedy;
  if (found === null) return "Enter a value, or take the line out.";
  if (issue.code === "too_big" && issue.origin === "string") return "Shorten it.";
  const full = typeof found === "string" && counts.test(message) ? writtenInFull(found) : undefined;
  return full === undefined ? "Correct this value." : `Write ${full} if that is meant.`;
}

/** Where a letter after a number is no unit. */
const counts = /\bmoney\b|\bnumber\b/;
const shortened = /^(?:[$€£]|[A-Z]{3}\s)?\s*(\d{1,6}(?:\.\d{1,6})?)\s*(k|K|thousand|M|million)\b/;

/** The number of "154k" or "$1.5 million" in full. */
function writtenInFull(text: string): string | undefined {
  const [, number, word = ""] = shortened.exec(text.trim().slice(0, longestFound)) ?? [];
  if (number === undefined) return undefined;
  const size = /^[kKt]/.test(word) ? 1e3 : 1e6;
  return Number((Number(number) * size).toPrecision(12)).toLocaleString("en-US");
}

const noStudyRemedy =
  "Choose a study file; a table of structures is taken on the page of structures, as CSV.";

/** The branch of a union that the author seems to have meant: months if an object, else one value. */
function closestBranch(
  errors: readonly (readonly z.core.$ZodIssue[])[],
  found: unknown,
): readonly z.core.$ZodIssue[] {
  const isObject = typeof found === "object" && found !== null;
  const index = isObject ? 0 : errors.length - 1;
  return errors[index] ?? [];
}

function allowedText(issue: z.core.$ZodIssue): string {
  switch (issue.code) {
    case "invalid_value":
      return `one of ${issue.values.join(", ")}`;
    case "invalid_union":
      return issue.discriminator === undefined
        ? issue.message
        : (namesOf[issue.discriminator] ?? issue.message);
    case "invalid_type":
      return issue.message.startsWith("Invalid input: expected ")
        ? (typeNames[issue.expected] ?? issue.expected)
        : issue.message;
    default:
      return issue.message;
  }
}

const kindNames = structureKinds.map(({ kind }) => kind);

const namesOf: Record<string, string> = {
  kind: `kind ${kindNames.slice(0, -1).join(", ")} or ${kindNames.at(-1)}`,
  by: "by gravity or pump",
};

const typeNames: Record<string, string> = {
  object: "a group of fields",
  array: "a list",
  string: "a text",
  number: "a number",
  boolean: "true or false",
};

const longestFound = 60;

/** A value as its author would recognise it, at a readable length. */
export function describe(value: unknown): string {
  if (value === undefined || value === null) return "nothing";
  if (Array.isArray(value)) return `a list of ${value.length}`;
  if (typeof value === "object") return "a group of fields";
  const unprintable = typeof value === "string" ? unseenIn(value) : undefined;
  if (unprintable !== undefined) return `${unprintable} of ${describe(forPrint(String(value)))}`;
  const start = typeof value === "string" ? value.slice(0, longestFound + 1) : value;
  const text = typeof start === "number" ? String(start) : (JSON.stringify(start) ?? String(start));
  return text.length > longestFound ? `${text.slice(0, longestFound)}…` : text;
}

/** The value at a place in a document; undefined if there is none. */
export function valueAt(document: unknown, path: readonly PropertyKey[]): unknown {
  return path.reduce<unknown>(
    (value, key) =>
      typeof value === "object" && value !== null && Object.hasOwn(value, key)
        ? Reflect.get(value, key)
        : undefined,
    document,
  );
}

/** A path as text, with the id of a structure or option beside its index: structures[2 "intake"].rack.width. */
export function pathText(path: readonly PropertyKey[], document: unknown): string {
  if (path.length === 0) return "the document";
  return path
    .map((key, index) => {
      if (typeof key !== "number") return `${index === 0 ? "" : "."}${keyText(key)}`;
      const id = valueAt(document, [...path.slice(0, index + 1), "id"]);
      return typeof id === "string" ? `[${key} "${id.slice(0, longestFound)}"]` : `[${key}]`;
    })
    .join("");
}

/** A key in print; blanks and invisible characters are given by code. */
function keyText(key: PropertyKey): string {
  const text = String(key);
  if (text.trim() !== "" && !unseen.test(text)) return text;
  const coded = Array.from(text, (each) => (each.trim() === "" || unseen.test(each) ? codeOf(each) : each));
  return `"${coded.join("")}"`;
}

const unseen = /[\p{C}\p{Zl}\p{Zp}]/u;

/** A contradiction in words for the author. */
export function problemOf({ path, line, found, allowed, remedy }: Contradiction, document: unknown): Problem {
  return {
    path: pathText(path, document) + (line === undefined ? "" : `, line ${line}`),
    at: path,
    found,
    allowed,
    remedy: remedy ?? (found === "nothing" ? "Add it." : "Correct this value or the other."),
  };
}

/** The text typed for a quantity at a place; empty if there is none. */
export function typedText(document: object, at: readonly PropertyKey[]): string {
  const text = valueAt(document, [...at, "text"]);
  return typeof text === "string" ? text : "";
}

import { describe, type Problem, valueAt } from "../../study/reading/problems.js";
import { namedThings } from "../choices.js";
import { problemText } from "../form-node.js";
import type { Place } from "../study-text.js";
import { columnWords } from "./structure-columns.js";
import type { Head } from "./structure-heads.js";

/** A column whose cells name something of the study. */
export interface Reference {
  readonly at: Place;
  readonly ids: ReadonlySet<string>;
  /** Of what can be named, in words. */
  readonly names: string;
}

/** @param structures those of the study and of the table, which may name each other by their ids */
export function referencesIn(
  heads: readonly (Head | undefined)[],
  document: unknown,
  structures: readonly unknown[],
): Reference[] {
  const whole = { ...Object(document), structures };
  return heads.flatMap((head) => {
    if (head?.column.field.kind !== "reference") return [];
    const { at, field } = head.column;
    const ids = new Set(namedThings(field.to, whole).map(({ id }) => id));
    return [{ at, ids, names: namesTold(namedThings(field.to, document).map(({ name }) => name)) }];
  });
}

const mostNamed = 12;

function namesTold(names: readonly string[]): string {
  if (names.length === 0) return "none yet";
  const rest = names.length - mostNamed;
  return `${names.slice(0, mostNamed).join(", ")}${rest > 0 ? ` and ${rest} more` : ""}`;
}

/** Problems of a line by its columns; of a name that the study does not have, which it has. */
export function lineProblems(
  structure: object,
  problems: readonly Problem[],
  references: readonly Reference[],
): string[] {
  const unknown = new Map(
    references.flatMap(({ at, ids, names }) => {
      const found = valueAt(structure, at);
      if (typeof found !== "string" || ids.has(found)) return [];
      const text = `Found ${describe(found)}; allowed: one of those that this study names: ${names}. Correct it, or add it there first.`;
      return [[columnWords(at), text] as const];
    }),
  );
  const others = problems.filter(({ at = [] }) => !unknown.has(columnWords(keysOf(at))));
  return [...[...unknown].map(([words, text]) => `${words}: ${text}`), ...others.map(inWords)];
}

const keysOf = (at: readonly PropertyKey[]): Place =>
  at.slice(2).map((key) => (typeof key === "symbol" ? "" : key));

const inWords = (problem: Problem): string =>
  `${columnWords(keysOf(problem.at ?? []))}: ${problemText(problem)}`;

import type { StudyDocument } from "../format/schema.js";

/** A contradiction between fields that are each well formed. */
export interface Contradiction {
  readonly path: readonly PropertyKey[];
  readonly found: string;
  readonly allowed: string;
  /** Line of the CSV text that stands at that place. */
  readonly line?: number;
  /** What to do, if it is not plain from what is allowed. */
  readonly remedy?: string;
}

/** One thing wrong with a record of levels; without a line where it is the record as a whole. */
export type RecordProblem = Omit<Required<Contradiction>, "path" | "line"> & Pick<Contradiction, "line">;

/** The parts of a document that are well formed; the rest is absent and reported elsewhere. */
export interface SoundParts {
  readonly study?: StudyDocument["study"] | undefined;
  readonly lake?: StudyDocument["lake"] | undefined;
  readonly boats?: StudyDocument["boats"] | undefined;
  readonly options?: StudyDocument["options"] | undefined;
  readonly money?: StudyDocument["money"] | undefined;
  readonly overrides?: StudyDocument["overrides"] | undefined;
  readonly report?: StudyDocument["report"] | undefined;
  readonly structures: ReadonlyArray<{
    readonly index: number;
    readonly value: StudyDocument["structures"][number];
  }>;
}

export function repeatedIds(
  items: ReadonlyArray<{ id: string }>,
  path: readonly PropertyKey[],
): Contradiction[] {
  const seen = new Set<string>();
  return items.flatMap(({ id }, index) => {
    const isRepeated = seen.has(id);
    seen.add(id);
    return isRepeated
      ? [{ path: [...path, index, "id"], found: `"${id}" a second time`, allowed: "an id used once" }]
      : [];
  });
}

/** Two fields of which a group holds exactly one. */
export function exactlyOne<Field extends string>(
  group: Readonly<Partial<Record<Field, unknown>>>,
  first: Field,
  second: Field,
): Contradiction[] {
  const given = [first, second].filter((field) => group[field] !== undefined);
  if (given.length === 1) return [];
  return [
    {
      path: [first],
      found: given.length === 2 ? `both ${first} and ${second}` : `neither ${first} nor ${second}`,
      allowed: `exactly one of ${first} and ${second}`,
    },
  ];
}

/** As far as typed shares may miss 100 % by their binary form: cents are split by them. */
const bearerTolerance = 1e-9;

/** Bearers of a structure or of a response: known ones, with shares that make up the whole. */
export function bearerShareProblems(
  bearer: SoundParts["structures"][number]["value"]["bearer"],
  path: Contradiction["path"],
  known: readonly string[],
): Contradiction[] {
  const ids = typeof bearer === "string" ? [bearer] : bearer.map(({ id }) => id);
  const problems: Contradiction[] = ids
    .filter((id) => !known.includes(id))
    .map((id) => ({ path, found: `"${id}"`, allowed: `an id from money.bearers: ${known.join(", ")}` }));
  if (typeof bearer === "string") return problems;
  const sum = bearer.reduce((total, { share }) => total + share.value, 0);
  return Math.abs(sum - 1) <= bearerTolerance
    ? problems
    : [
        ...problems,
        {
          path,
          found: `shares that add up to ${Number((sum * 100).toFixed(4))} %`,
          allowed: "shares that add up to 100 %",
        },
      ];
}

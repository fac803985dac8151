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

/** A part of a study as the rest of the program takes it, or what is wrong with it. */
export type Judged<Part> =
  | { readonly sound: Part; readonly problems?: undefined }
  | { readonly problems: Contradiction[] };

/** Parts that are all sound, or everything that is wrong with any of them. */
export function allSound<Part>(parts: readonly Judged<Part>[]): Judged<Part[]> {
  const sound = parts.flatMap((part) => (part.problems ? [] : [part.sound]));
  if (sound.length === parts.length) return { sound };
  return { problems: parts.flatMap(({ problems }) => problems ?? []) };
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

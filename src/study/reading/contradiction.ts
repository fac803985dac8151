/** A contradiction between fields that are each well formed. */
export interface Contradiction {
  readonly path: readonly PropertyKey[];
  readonly found: string;
  readonly allowed: string;
  /** Line of the CSV text at that place. */
  readonly line?: number;
  /** What to do, if `allowed` does not make it plain. */
  readonly remedy?: string;
}

/** A fault of a record; without a line if it concerns the record as a whole. */
export type RecordProblem = Omit<Required<Contradiction>, "path" | "line"> & Pick<Contradiction, "line">;

/** A part of a study that passed its checks, or its problems. */
export type Judged<Part> =
  | { readonly sound: Part; readonly problems?: undefined }
  | { readonly problems: Contradiction[] };

/** All parts if every one is sound, otherwise the problems of all. */
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

/** A problem unless exactly one of two fields is given. */
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

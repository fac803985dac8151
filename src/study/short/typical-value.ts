/** A value of a study that nobody entered: it comes from an entry of the assumptions. */
export class TypicalValue {
  constructor(
    /** Id of the entry. */
    readonly entry: string,
    /** As the study writes it. */
    written: unknown,
    /** The same where its place in the study decides. */
    readonly writtenAt: (path: readonly PropertyKey[]) => unknown = () => written,
  ) {}
}

/** A study's plain object, and the places of its typical values with the ids of their entries. */
interface Unwrapped {
  readonly value: unknown;
  readonly typical: Readonly<Record<string, string>>;
}

/** A tree with its typical values in place of what wraps them. */
export function unwrapped(tree: unknown): Unwrapped {
  const found = partOf(tree, [], []);
  return { value: found.value, typical: Object.fromEntries(found.marks) };
}

type Mark = readonly [place: string, entry: string];

interface Part {
  readonly value: unknown;
  readonly marks: readonly Mark[];
  /** The entry from which all of it comes. */
  readonly entry: string | undefined;
}

/** A group or list all of whose values come from one entry is one place. */
function partOf(tree: unknown, path: readonly PropertyKey[], names: readonly string[]): Part {
  if (tree instanceof TypicalValue) {
    return {
      value: tree.writtenAt(path),
      marks: [[names.join("/"), tree.entry]],
      entry: tree.entry,
    };
  }
  if (typeof tree !== "object" || tree === null) return { value: tree, marks: [], entry: undefined };
  const parts = Object.entries(tree)
    .filter(([, item]) => item !== undefined)
    .map(([key, item]: [string, unknown]) => {
      const at = [...path, Array.isArray(tree) ? Number(key) : key];
      return [key, partOf(item, at, [...names, placeName(item) ?? key])] as const;
    });
  const values = parts.map(([key, { value }]) => [key, value] as const);
  const [entry] = new Set(parts.map(([, part]) => part.entry));
  const isOne = entry !== undefined && parts.every(([, part]) => part.entry === entry);
  return {
    value: Array.isArray(tree) ? values.map(([, value]) => value) : Object.fromEntries(values),
    marks: isOne ? [[names.join("/"), entry]] : parts.flatMap(([, { marks }]) => marks),
    entry: isOne ? entry : undefined,
  };
}

/** What an item is called in a place: its id, which stays when rows are moved; else its key or its number. */
export function placeName(item: unknown): string | undefined {
  return typeof item === "object" && item !== null && "id" in item && typeof item.id === "string"
    ? item.id
    : undefined;
}

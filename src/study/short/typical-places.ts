import { placeName } from "./typical-value.js";

/** A typical value or group of values in a study. */
export interface TypicalPlace {
  /** By names, as the study lists it: "structures/docks/wettedArea". */
  readonly place: string;
  readonly path: readonly (string | number)[];
  /** Id of the assumption that it comes from. */
  readonly entry: string;
}

type Listed = Readonly<Record<string, string>> | undefined;

/** The places that a study lists as typical and that are there. @param document as written or as read */
export const typicalPlacesIn = (document: unknown, listed: Listed): TypicalPlace[] =>
  Object.entries(listed ?? {}).flatMap(([place, entry]) => {
    const path = pathOf(document, place);
    return path ? [{ place, path, entry }] : [];
  });

/** The keys to a place. */
function pathOf(document: unknown, place: string): (string | number)[] | undefined {
  const path: (string | number)[] = [];
  let value = document;
  for (const name of place.split("/")) {
    const key = keyOf(value, name);
    if (key === undefined) return undefined;
    path.push(key);
    value = Reflect.get(Object(value), key);
  }
  return path;
}

function keyOf(value: unknown, name: string): string | number | undefined {
  if (Array.isArray(value)) {
    const index = value.findIndex((item: unknown, place) => (placeName(item) ?? String(place)) === name);
    return index < 0 ? undefined : index;
  }
  return typeof value === "object" && value !== null && Object.hasOwn(value, name) ? name : undefined;
}

/** Whether one path leads to a part of what another leads to, or to all of it. */
export const isWithin = (path: readonly PropertyKey[], whole: readonly PropertyKey[]): boolean =>
  whole.length <= path.length && whole.every((key, index) => key === path[index]);

/**
 * The list of typical places once the author has edited some. Of a group of values the others stay.
 * @param edited paths in the document before the edits
 */
export function withoutEdited(
  document: unknown,
  listed: Readonly<Record<string, string>>,
  edited: readonly (readonly PropertyKey[])[],
): Record<string, string> {
  const kept = typicalPlacesIn(document, listed).flatMap((each) => leftOf(each, document, edited));
  return Object.fromEntries(kept.map(({ place, entry }) => [place, entry]));
}

function leftOf(
  found: TypicalPlace,
  document: unknown,
  edited: readonly (readonly PropertyKey[])[],
): TypicalPlace[] {
  if (edited.some((path) => isWithin(found.path, path))) return [];
  if (!edited.some((path) => isWithin(path, found.path))) return [found];
  const value = found.path.reduce<unknown>((within, key) => Reflect.get(Object(within), key), document);
  return Object.entries(Object(value)).flatMap(([key, item]: [string, unknown]) =>
    leftOf(
      {
        place: `${found.place}/${placeName(item) ?? key}`,
        path: [...found.path, Array.isArray(value) ? Number(key) : key],
        entry: found.entry,
      },
      document,
      edited,
    ),
  );
}

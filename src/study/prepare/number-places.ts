import { monthNames } from "../format/month-names.js";

/** Where numbers stand in a group: found once, so that many sets of numbers are put there without looking again. */
interface NumberPlaces {
  /** Keys of the group itself, each with the index of its number. */
  readonly numbers: { readonly key: PropertyKey; readonly index: number }[];
  /** Keys of the groups in it. */
  readonly groups: { readonly key: PropertyKey; readonly places: NumberPlaces }[];
}

/** A quantity of a study by its path there. */
interface PlacedQuantity {
  readonly path: readonly PropertyKey[];
  readonly quantity: { readonly value: number };
}

/**
 * Places of a study's quantities in what the model takes of it, where every one of them is a number under the same path,
 * and months are lists of twelve. @throws Error where another number stands there
 */
export function placesOf(model: object, quantities: readonly PlacedQuantity[]): NumberPlaces {
  const places: NumberPlaces = { numbers: [], groups: [] };
  quantities.forEach(({ path, quantity: { value } }, index) => {
    addPlace(places, model, path, { index, value, at: path.map(String).join("/") });
  });
  return places;
}

function addPlace(
  places: NumberPlaces,
  group: object,
  [key = "", ...rest]: readonly PropertyKey[],
  number: { readonly index: number; readonly value: number; readonly at: string },
): void {
  for (const own of keysIn(group, key)) {
    const known: unknown = Reflect.get(group, own);
    if (rest.length === 0 && known === number.value) places.numbers.push({ key: own, index: number.index });
    else if (rest.length > 0 && typeof known === "object" && known !== null) {
      addPlace(placesUnder(places, own), known, rest, number);
    } else throw new Error(`${number.at}: no ${number.value} there, but ${String(known)}`);
  }
}

function placesUnder({ groups }: NumberPlaces, key: PropertyKey): NumberPlaces {
  const known = groups.find((each) => each.key === key);
  if (known) return known.places;
  const places = { numbers: [], groups: [] };
  groups.push({ key, places });
  return places;
}

const months: readonly string[] = monthNames;

/** A month, or all of them, by their places in a list. */
function keysIn(group: object, key: PropertyKey): readonly PropertyKey[] {
  if (!Array.isArray(group) || typeof key !== "string") return [key];
  return key === "all" ? [...group.keys()] : [months.indexOf(key)];
}

/** A copy of the group with numbers in their places; what holds none of them is shared. */
export function withNumbers<T extends object>(group: T, places: NumberPlaces, numbers: readonly number[]): T {
  const copy = (Array.isArray(group) ? group.slice() : { ...group }) as Record<PropertyKey, unknown>;
  for (const { key, index } of places.numbers) copy[key] = numbers[index];
  for (const inner of places.groups)
    copy[inner.key] = withNumbers(copy[inner.key] as object, inner.places, numbers);
  return copy as T;
}

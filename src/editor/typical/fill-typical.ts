import type { TypicalValues } from "../../study/short/filling.js";
import { typicalStructure } from "../../study/short/typical-structure.js";
import { placeName } from "../../study/short/typical-value.js";
import { groupFieldsAt } from "../field-at.js";
import type { NamedField } from "../fields.js";
import { childOf, itemsOf, nameOf } from "../form-values.js";
import type { Edit, Place } from "../study-text.js";
import { listedIn } from "./typical-edits.js";

/** What a structure is, and not how large: never filled up. */
const ownMatters = new Set(["id", "kind", "name", "bearer", "fixtures"]);
/** What may be left out and is needed all the same, while this is so of the structure. */
const neededWhile: Readonly<Record<string, (own: unknown) => boolean>> = {
  efficiency: (own) => childOf(own, "turbine") === undefined,
  flow: (own) => childOf(own, "running") === undefined,
  roughness: (own) => childOf(own, "hazenWilliamsC") === undefined,
  depth: (own) => childOf(own, "floating") !== false,
};

/** Fills what a structure lacks with typical values, which the study lists as such. Nothing that is there changes. */
export function fillEdits(document: unknown, index: number, values: TypicalValues): Edit[] {
  const own = itemsOf(childOf(document, "structures"))[index];
  const found = own === undefined ? undefined : typicalStructure(document, own, values);
  if (!found) return [];
  const missing = missingPlaces(found.value, own, ["structures", index], document).map((place) =>
    place.slice(2),
  );
  const marks = missing.flatMap((place) => marksOf(nameOf(place), found.typical));
  const name = placeName(own) ?? String(index);
  const listed = marks.map(([place, entry]) => [`structures/${name}/${place}`, entry] as const);
  if (missing.length === 0) return [];
  return [
    ...missing.map((place) => ({ at: ["structures", index, ...place], value: valueIn(found.value, place) })),
    { at: ["study", "typical"], value: { ...listedIn(document), ...Object.fromEntries(listed) } },
  ];
}

const valueIn = (value: unknown, at: Place) => at.reduce<unknown>((found, key) => childOf(found, key), value);

const isGroup = (value: unknown): value is object =>
  typeof value === "object" && value !== null && !Array.isArray(value);

/** What may be left out stays out: left out, it means something of its own. */
const isRequired = (fields: readonly NamedField[], key: string) =>
  fields.some((field) => field.key === key && field.required);

function missingPlaces(typical: object, own: unknown, way: Place, document: unknown): Place[] {
  const fields = groupFieldsAt(way, document) ?? [];
  return Object.entries(typical).flatMap(([key, value]: [string, unknown]): Place[] => {
    const isNeeded = neededWhile[key]?.(own) ?? isRequired(fields, key);
    if (ownMatters.has(key) || !isNeeded) return [];
    const present = childOf(own, key);
    if (present === undefined || present === "") return [[...way, key]];
    return isGroup(value) && isGroup(present) ? missingPlaces(value, present, [...way, key], document) : [];
  });
}

/** The marks within a place that was filled, or the mark of what holds it. */
function marksOf(place: string, typical: Readonly<Record<string, string>>): (readonly [string, string])[] {
  const inside = Object.entries(typical).filter(([each]) => each === place || each.startsWith(`${place}/`));
  if (inside.length > 0) return inside;
  const around = Object.entries(typical).find(([each]) => place.startsWith(`${each}/`));
  return around ? [[place, around[1]]] : [];
}

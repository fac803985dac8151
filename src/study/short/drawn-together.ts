import type { AssumptionSet } from "../../assumptions/entry.js";
import type { StudyDocument } from "../format/schema.js";
import { rangedQuantities } from "../reading/ranged.js";
import { isWithin, typicalPlacesIn } from "./typical-places.js";

interface Together {
  readonly id: string;
  readonly name: string;
  readonly members: readonly string[];
  readonly rankCorrelation: number;
}

/** Keys of a path to an item of the study: "structures" and a number. */
const itemKeys = 2;

/**
 * Groups of typical values that are guessed wrong together: those of one structure, or of the lake, that come from one
 * assumption, as the values of the twelve months.
 */
export function typicalTogether(
  document: StudyDocument,
  { entries }: Pick<AssumptionSet, "entries">,
): Together[] {
  const places = typicalPlacesIn(document, document.study.typical);
  if (places.length === 0) return [];
  const groups = new Map<string, { entry: string; members: string[] }>();
  for (const { id, path } of rangedQuantities(document)) {
    const place = places.find((each) => isWithin(path, each.path));
    if (!place) continue;
    const item = typeof path[1] === "number" ? path.slice(0, itemKeys) : path.slice(0, 1);
    const key = `${item.join("/")}/${place.entry}`;
    const group = groups.get(key) ?? { entry: place.entry, members: [] };
    group.members.push(id);
    groups.set(key, group);
  }
  const rankCorrelation = entries.get("typical.months-together")?.value ?? 1;
  return [...groups]
    .filter(([, { members }]) => members.length > 1)
    .map(([id, { entry, members }]) => ({
      id,
      name: entries.get(entry)?.title ?? entry,
      members,
      rankCorrelation,
    }));
}

import { sumOf } from "../../lists.js";
import { quantity } from "../format/fields.js";
import type { Contradiction } from "../reading/contradiction.js";
import { valueAt } from "../reading/problems.js";
import { shareProblems, type Whole } from "./share-sums.js";
import type { SoundParts } from "./sound-parts.js";

type Place = Contradiction["path"];

/** Shares that cannot make up a whole, told while fields beside them are still missing. */
export function earlyShares(document: unknown, { boats, options, structures }: SoundParts): Contradiction[] {
  const read = new Set(structures.map(({ index }) => index));
  const names = new Map(
    rowsAt(document, ["money", "bearers"]).map((row) => [valueAt(row, ["id"]), valueAt(row, ["name"])]),
  );
  const payersAt = (path: Place) => earlyPayers(valueAt(document, path), path, names);
  return [
    ...(boats ? [] : [...earlyLaunches(document, "classes"), ...earlyLaunches(document, "sites")]),
    ...rowsAt(document, ["structures"]).flatMap((_row, index) =>
      read.has(index) ? [] : payersAt(["structures", index, "bearer"]),
    ),
    ...(options ? [] : rowsAt(document, ["options"])).flatMap((_row, index) =>
      payersAt(["options", index, "response", "bearer"]),
    ),
  ];
}

function rowsAt(document: unknown, path: Place): readonly unknown[] {
  const rows = valueAt(document, path);
  return Array.isArray(rows) ? rows : [];
}

function earlyLaunches(document: unknown, list: "classes" | "sites"): Contradiction[] {
  const path = ["boats", list];
  const rows = rowsAt(document, path).map((row, index) => ({
    name: String(valueAt(row, ["name"]) ?? index + 1),
    typed: valueAt(row, ["share"]),
  }));
  return earlyProblems(rows, path, "launches");
}

function earlyPayers(shares: unknown, path: Place, names: ReadonlyMap<unknown, unknown>): Contradiction[] {
  if (typeof shares !== "object" || shares === null || Array.isArray(shares)) return [];
  const rows = Object.entries(shares).map(([id, typed]: [string, unknown]) => ({
    name: String(names.get(id) ?? id),
    typed,
  }));
  return earlyProblems(rows, path, "cost");
}

const readShare = quantity("share");

/** While a share is missing only those are told that make up more than the whole. */
function earlyProblems(
  rows: ReadonlyArray<{ readonly name: string; readonly typed: unknown }>,
  path: Place,
  whole: Whole,
): Contradiction[] {
  const parts = rows.flatMap(({ name, typed }) => {
    const share = readShare.safeParse(typed).data;
    return share ? [{ name, share }] : [];
  });
  const isPartial = parts.length < rows.length && sumOf(parts.map(({ share }) => share.value)) <= 1;
  return parts.length === 0 || isPartial ? [] : shareProblems(parts, path, whole);
}

import { isDeepStrictEqual } from "node:util";
import { asWritten } from "../format/as-written.js";
import type { StudyDocument } from "../format/schema.js";
import { quantityName } from "../reading/ranged.js";
import { asTyped, bothTyped } from "./as-typed.js";
import { isQuantity, pairsOf } from "./pairs.js";

/** An input that differs between two studies. */
export interface InputDifference {
  /** Its place, by names: "structures/marina/wettedArea", "assumptions/growth.settlers-per-month". */
  readonly place: string;
  /** In words: "wetted area of Marina docks". */
  readonly name: string;
  /** The part of the study, and within it the structure, option or other item. */
  readonly owner: string;
  /** The owner in words. */
  readonly ownerName: string;
  readonly kind: "changed" | "added" | "removed";
  /** As typed; absent if that study has none. */
  readonly left: string | undefined;
  readonly right: string | undefined;
  /** False for names, descriptions and origins, which are only printed. */
  readonly movesFigures: boolean;
}

/** Paths in both documents, which differ if items have moved within a list. */
interface Paths {
  readonly left: readonly PropertyKey[];
  readonly right: readonly PropertyKey[];
  readonly names: readonly string[];
}

/** Parts of a study that are compared separately. */
const comparedElsewhere = ["overrides"];

/**
 * Inputs that differ between two studies, in the order of the format. Quantities are equal if value and range are,
 * whatever their units; the order of items in a list does not matter.
 */
export function inputDifferences(left: StudyDocument, right: StudyDocument): InputDifference[] {
  const documents = { left, right };
  const written = asWritten(right);
  return Object.entries(asWritten(left))
    .filter(([key]) => !comparedElsewhere.includes(key))
    .flatMap(([key, value]: [string, unknown]) =>
      differencesIn(value, Reflect.get(written, key), { left: [key], right: [key], names: [key] }, documents),
    );
}

interface Documents {
  readonly left: StudyDocument;
  readonly right: StudyDocument;
}

function differencesIn(
  left: unknown,
  right: unknown,
  { left: leftPath, right: rightPath, names }: Paths,
  documents: Documents,
): InputDifference[] {
  const pairs = pairsOf(left, right);
  if (!pairs) {
    return isSame(left, right)
      ? []
      : [differenceAt(left, right, { left: leftPath, right: rightPath, names }, documents)];
  }
  return pairs.flatMap((pair) => {
    const paths = {
      left: pair.leftKey === undefined ? leftPath : [...leftPath, pair.leftKey],
      right: pair.rightKey === undefined ? rightPath : [...rightPath, pair.rightKey],
      names: [...names, pair.key],
    };
    return differencesIn(pair.left, pair.right, paths, documents);
  });
}

function differenceAt(left: unknown, right: unknown, paths: Paths, documents: Documents): InputDifference {
  const { names } = paths;
  const owner = isItem(names) ? names.slice(0, 2) : names.slice(0, 1);
  const isAdded = left === undefined;
  const [document, path] = isAdded ? [documents.right, paths.right] : [documents.left, paths.left];
  const typed = bothTyped(left, right);
  return {
    place: names.join("/"),
    name: nameAt(document, path, names),
    owner: owner.join("/"),
    ownerName: owner.length === 1 ? wholePart(owner[0]) : itemName(document, path, owner),
    kind: isAdded ? "added" : right === undefined ? "removed" : "changed",
    left: isAdded ? undefined : typed.left,
    right: right === undefined ? undefined : typed.right,
    movesFigures: !isPrintedOnly(names),
  };
}

/** Lists whose items own the inputs within them. */
const listsOfItems = ["structures", "options"];
const isItem = ([first, second]: readonly string[]) =>
  listsOfItems.includes(first ?? "") && second !== undefined;

const parts: Record<string, string> = {
  study: "the request",
  lake: "lake and levels",
  boats: "boats",
  money: "money and who pays",
  workOrders: "work orders and outages",
};
const wholePart = (key: string | undefined) => parts[key ?? ""] ?? key ?? "";

function itemName(
  document: StudyDocument,
  [list = "", index = 0]: readonly PropertyKey[],
  names: readonly string[],
): string {
  const item: unknown = Reflect.get(Object(Reflect.get(document, list)), index);
  const name: unknown = Reflect.get(Object(item), "name");
  return typeof name === "string" ? name : names.join(" ");
}

/**
 * The name of a quantity without the part of the study; for a whole item, its list and its name.
 */
function nameAt(document: StudyDocument, path: readonly PropertyKey[], names: readonly string[]): string {
  const value = path.reduce<unknown>((inner, key) => Reflect.get(Object(inner), key), document);
  const isNamed = typeof value === "object" && value !== null && !isQuantity(value) && "name" in value;
  const words = isNamed
    ? `${quantityName(document, path.slice(0, -1))}: ${asTyped(value)}`
    : quantityName(document, path);
  return words.startsWith(`${names[0]}, `) ? words.slice(`${names[0]}, `.length) : words;
}

function isSame(left: unknown, right: unknown): boolean {
  return isDeepStrictEqual(comparable(left), comparable(right));
}

/** A value without the wording of its quantities. */
function comparable(value: unknown): unknown {
  if (typeof value !== "object" || value === null) return value;
  if (Array.isArray(value)) return value.map(comparable);
  if (isQuantity(value)) return [rounded(value.value), Reflect.get(value, "spread")];
  return Object.fromEntries(
    Object.entries(value)
      .filter(([, item]) => item !== undefined)
      .map(([key, item]) => [key, comparable(item)]),
  );
}

/** Significant digits; beyond them values differ only by unit conversion. */
const digits = 12;
const rounded = (value: number) => Number(value.toPrecision(digits));

const printedKeys = /^(name|description|origin|.*Origin|reason|lastWater|moored|residualWater|unit|note)$/;
const printedInStudy =
  /^(authority|board|prepared|preparedBy|invented|units|uncertainty|fromEarlier|confirmed)$/;

/** Whether a field is printed, or says how a file was read, but affects no figure. */
function isPrintedOnly(names: readonly string[]): boolean {
  return (
    printedKeys.test(names.at(-1) ?? "") ||
    names.includes("export") ||
    (names[0] === "study" && printedInStudy.test(names[1] ?? ""))
  );
}

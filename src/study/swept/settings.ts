import type { AssumptionSet } from "../../assumptions/entry.js";
import type { StudyDocument } from "../format/schema.js";
import { type Problem, valueAt } from "../reading/problems.js";
import { type ParsedStudy, studyOf } from "../reading/read.js";
import type { RecordReaders } from "../reading/record-readers.js";

/** An assumption or a place of the study, and the value that it has for one computation. */
export interface Setting {
  /** Id of an assumption, or a place as messages write it: money.discountRate, options[1 "weekends"].steps.coverage. */
  readonly id: string;
  readonly value: string | number;
}

/** The keys of a place as messages write it. An item of a list may stand by its id alone. @returns undefined if unreadable */
function keysOf(id: string, document: unknown): PropertyKey[] | undefined {
  const words = [...id.matchAll(/([^.[\]]+)|\[(\d+)?\s*(?:"([^"]*)")?\]/g)];
  if (words.map(([word]) => word).join("").length !== id.replaceAll(".", "").length) return undefined;
  const keys: PropertyKey[] = [];
  for (const [, name, index, quoted] of words) {
    const holder = valueAt(document, keys);
    const word = name ?? quoted ?? index;
    const key = Array.isArray(holder) ? placeInList(holder, index, word) : (name ?? quoted);
    if (key === undefined) return undefined;
    keys.push(key);
  }
  return keys;
}

function placeInList(
  list: readonly unknown[],
  index: string | undefined,
  id: string | undefined,
): number | undefined {
  const named = list.findIndex((item) => valueAt(item, ["id"]) === id);
  const place = index === undefined && named >= 0 ? named : Number(index ?? id);
  return place in list ? place : undefined;
}

/** Whether an id names an assumption, before any place of the study of that name. */
export const isAssumption = ({ id }: Pick<Setting, "id">, set: AssumptionSet): boolean => set.entries.has(id);

/**
 * The study with some of its values, or of the assumptions behind it, set for one computation.
 * @throws InputError if it contradicts itself then
 */
export function withSettings(
  parsed: ParsedStudy,
  settings: readonly Setting[],
  set: AssumptionSet,
  readers: RecordReaders,
): StudyDocument {
  const document = settings.reduce((changed, setting) => {
    const value = typedValue(setting.value);
    if (isAssumption(setting, set)) return withOwnValue(changed, { ...setting, value });
    const keys = keysOf(setting.id, changed) ?? [];
    const withSetting = withValue(changed, keys, value);
    return keys.join(".") === "money.discountRate" ? withOrigin(withSetting) : withSetting;
  }, parsed.document);
  return studyOf({ ...parsed, document }, readers);
}

/** Ids that name neither an assumption nor a place of the study. */
export const unknownSettings = (
  { document }: ParsedStudy,
  settings: readonly Pick<Setting, "id">[],
  set: AssumptionSet,
): Problem[] =>
  settings
    .filter((setting) => !isAssumption(setting, set) && !isPlace(setting.id, document))
    .map(({ id }) => unknownProblem(id, set));

const isPlace = (id: string, document: unknown): boolean => {
  const [section, ...rest] = keysOf(id, document) ?? [];
  return rest.length > 0 && valueAt(document, [section ?? ""]) !== undefined;
};

const numberText = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i;

/** As a file would have it: a number where it is written as one. */
function typedValue(value: string | number): string | number | boolean {
  const text = String(value).trim();
  if (text === "true" || text === "false") return text === "true";
  return numberText.test(text) ? Number(text) : text;
}

/** An own value in place of the study's; a list of them that is none is left for the reader to refuse. */
function withOwnValue(document: unknown, { id, value }: { id: string; value: unknown }): unknown {
  const own = valueAt(document, ["overrides"]) ?? [];
  if (!Array.isArray(own)) return document;
  const others = own.filter((each: unknown) => valueAt(each, ["id"]) !== id);
  return withValue(document, ["overrides"], [...others, { id, value, reason: setHere }]);
}

const setHere = "Set for this computation";

/** A rate in place of the federal planning rate needs an origin, which one computation has not. */
const withOrigin = (document: unknown): unknown =>
  valueAt(document, originOfRate) === undefined ? withValue(document, originOfRate, setHere) : document;
const originOfRate = ["money", "discountRateOrigin"];

/** A copy with another value at a place; what does not lie on the way to it is shared. */
function withValue(holder: unknown, [key, ...rest]: readonly PropertyKey[], value: unknown): unknown {
  if (key === undefined) return value;
  const inner = withValue(valueAt(holder, [key]), rest, value);
  if (!Array.isArray(holder)) return { ...Object(holder), [key]: inner };
  return holder.map((item: unknown, index) => (index === key ? inner : item));
}

function unknownProblem(id: string, set: AssumptionSet): Problem {
  const family = id.split(".")[0];
  const near = [...set.entries.keys()]
    .filter((each) => each.split(".")[0] === family)
    .sort((one, other) => sharedStart(other, id) - sharedStart(one, id))
    .slice(0, mostNear);
  return {
    path: toldId(id),
    found: "neither an assumption nor a place in the study",
    allowed: `the id of an assumption${near.length > 0 ? `, as ${near.join(", ")}` : ""}, or a place as messages write it, such as money.discountRate or options[1].steps.coverage`,
    remedy: "Correct its spelling.",
  };
}

/** An id as problems name it. */
export const toldId = (id: string): string => (id.trim() === "" ? "a setting without a name" : id);

const mostNear = 4;

/** Characters with which both begin. */
function sharedStart(one: string, other: string): number {
  const first = [...one].findIndex((letter, index) => letter !== other[index]);
  return first < 0 ? one.length : first;
}

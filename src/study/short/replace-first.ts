import type { Assumption } from "../../assumptions/entry.js";
import { monthNames } from "../format/month-names.js";
import type { StudyDocument } from "../format/schema.js";
import type { Sensitivity } from "../odds/odds.js";
import { barWidth } from "../odds/tornado.js";
import { plainWords } from "../reading/plain-words.js";
import { quantityWords, rangedQuantities } from "../reading/ranged.js";
import { typedQuantities } from "../typed/typed-quantities.js";
import { isWithin, type TypicalPlace, typicalPlacesIn } from "./typical-places.js";

/** A typical value that would move the answer if it were known. */
export interface ReplaceFirst {
  /** In words: "Town water intake: length of the pipe". */
  readonly name: string;
  /** Where it stands in the study. */
  readonly path: readonly (string | number)[];
  /** Where the author's own is found, and who knows it. */
  readonly find: string;
  /** From the least to the greatest net benefit over its range; absent without a bar that is wide enough to say something. */
  readonly moves: number | undefined;
  readonly correlation: number;
}

const mostShown = 10;

/**
 * The typical values whose knowledge would move the net benefit most, the widest bars first and after them the strongest by
 * rank. Values of one place, as the twelve months of a temperature, are told once.
 */
export function replaceFirst(
  document: StudyDocument,
  { tornado, ranks, netBenefit }: Sensitivity,
  entries: ReadonlyMap<string, Assumption>,
): ReplaceFirst[] {
  const places = typicalPlacesIn(document, document.study.typical);
  const drawn = new Map([
    ...rangedQuantities(document).map(({ id, path }) => [id, path] as const),
    ...typedQuantities(document, { entries }).map(({ id, members }) => [id, members[0].path] as const),
  ]);
  const correlations = new Map(ranks.map(({ id, correlation }) => [id, Math.abs(correlation)]));
  const idsOf = (place: TypicalPlace) =>
    [...drawn].filter(([, path]) => isWithin(path, place.path)).map(([id]) => id);
  const found = places.flatMap((place) => {
    const ids = idsOf(place);
    const [first] = ids;
    const path = first === undefined ? undefined : drawn.get(first);
    if (path === undefined) return [];
    const bars = tornado.filter(({ id, members }) =>
      members ? members.every((member) => ids.includes(member)) : ids.includes(id),
    );
    const widths = bars.map((bar) => barWidth(bar, netBenefit));
    return [
      {
        name: placeWords(document, place, ids.length, path),
        path: path.map((key) => (typeof key === "number" ? key : String(key))),
        find: entries.get(place.entry)?.find ?? "",
        moves: widths.length === 0 ? undefined : Math.max(...widths),
        correlation: Math.max(...ids.map((id) => correlations.get(id) ?? 0)),
      },
    ];
  });
  const least = leastPart * Math.max(0, ...found.map(({ moves = 0 }) => moves));
  const barOf = ({ moves = 0 }: ReplaceFirst) => (moves >= least ? moves : 0);
  return found
    .filter(({ moves = 0, correlation }) => moves > 0 || correlation > 0)
    .toSorted((one, other) => barOf(other) - barOf(one) || other.correlation - one.correlation)
    .slice(0, mostShown)
    .map((each) => ({ ...each, moves: barOf(each) || undefined }));
}

/** Narrower bars, of the widest, say less than the rank of what has none. */
const leastPart = 0.02;

/** A place in words; of several values of a group, and of a month, that of the group. */
function placeWords(
  document: StudyDocument,
  place: TypicalPlace,
  count: number,
  path: readonly PropertyKey[],
): string {
  const isMonth = monthNames.some((month) => month === path.at(-1));
  const own = isMonth ? path.slice(0, -1) : path;
  const whole = count > 1 ? place.path : own;
  const { owner, words: named } = quantityWords(document, whole);
  const words = plainWords(place.path) ?? plainWords(whole) ?? named;
  return owner === undefined ? words : `${owner}: ${words}`;
}

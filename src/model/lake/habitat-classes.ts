import type { Bounds } from "./suitability-ids.js";

/** From the poorest. */
const classes = ["none", "low", "moderate", "high"] as const;

export type PublishedClass = (typeof classes)[number];

interface Weighing {
  /** Part of the poorer class, next to a bound, over which its weight leads to that of the better class. */
  readonly partLeading: number;
  readonly weightOf: (found: PublishedClass) => number;
}

/** A value on a bound belongs to the better class. */
export function classOf(value: number, bounds: Bounds): PublishedClass {
  return classAt(Math.min(...sidesOf(value, bounds).map(reached)));
}

/** The class's own weight, and just short of the next bound a straight line from it to that of the better class. */
export function weightAt(value: number, bounds: Bounds, weighing: Weighing): number {
  return Math.min(...sidesOf(value, bounds).map((side) => weightOn(side, weighing)));
}

/** A value that is the better the larger it is, and the bounds at which classes better than the poorest begin. */
interface Side {
  readonly value: number;
  readonly froms: readonly number[];
}

/** Too little, and too much with its sign turned. */
function sidesOf(value: number, bounds: Bounds): Side[] {
  const { lowFrom, moderateFrom, highFrom, highTo, moderateTo, lowTo } = bounds;
  return [
    { value, froms: [lowFrom, moderateFrom, highFrom] },
    { value: -value, froms: [-lowTo, -moderateTo, -highTo] },
  ];
}

const reached = ({ value, froms }: Side): number => froms.filter((from) => value >= from).length;
const classAt = (place: number): PublishedClass => classes[place] ?? "none";

function weightOn({ value, froms }: Side, { partLeading, weightOf }: Weighing): number {
  const place = reached({ value, froms });
  const own = weightOf(classAt(place));
  const next = froms[place];
  if (next === undefined) return own;
  const better = weightOf(classAt(reached({ value: next, froms })));
  const leading = widthBelow(next, froms[place - 1], froms) * partLeading;
  return own + (better - own) * Math.max(0, 1 - (next - value) / leading);
}

/** Of the class that ends at a bound; the poorest has no other end and is taken as wide as its neighbour, or as far as 0. */
const widthBelow = (end: number, start: number | undefined, froms: readonly number[]): number =>
  start === undefined
    ? Math.min(Math.abs(end), ...froms.filter((from) => from > end).map((from) => from - end))
    : end - start;

import { at } from "../lists.js";

/**
 * A place where a function of one variable is zero, with the points of the grid next to it on either side; at an end of
 * the grid, that end.
 */
export interface Root {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

export interface RootSearch {
  readonly low: number;
  readonly high: number;
  /** Number of cells of the grid, at least 1. */
  readonly steps: number;
  /** Grid of equal steps, or of equal ratios (both ends above 0). */
  readonly scale: "linear" | "logarithmic";
  /** Largest error of a root, beside a few units in its last digit. */
  readonly tolerance: number;
  /** The caller has proved that the function only rises or only falls; then there is no root beside those found. */
  readonly monotone?: boolean;
}

export interface Roots {
  /** In rising order; none if the function has one sign on the grid. */
  readonly roots: readonly Root[];
  /** True if no other root can exist in the interval; false if one may hide between two points of the grid. */
  readonly all: boolean;
}

/** A function or an interval that cannot be searched. */
export class RootSearchError extends Error {}

/** A value of the function. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/**
 * Roots of a continuous function in an interval: a sign change between neighbours of a grid brackets a root, which is
 * then closed in on. Points of the grid where the function is zero are roots themselves, a run of them is one root at
 * its middle point. Two roots in one cell, or one where the function touches zero without a change of sign, are not
 * found unless a point of the grid lies between them or on it.
 * @throws RootSearchError for an empty interval, a value that is not finite, or values that contradict `monotone`
 */
export function findRoots(evaluate: (x: number) => number, search: RootSearch): Roots {
  const points = grid(search).map((x) => ({ x, y: finite(evaluate, x) }));
  if (search.monotone) refuseOtherDirection(points);
  const roots: Root[] = [];
  for (let index = 0; index < points.length; index++) {
    const point = at(points, index);
    const before = points[index - 1];
    if (point.y === 0) {
      const end = endOfZeros(points, index);
      const after = points[end + 1] ?? at(points, end);
      roots.push({ value: at(points, (index + end) >> 1).x, low: (before ?? point).x, high: after.x });
      index = end;
    } else if (before && before.y * Math.sign(point.y) < 0) {
      const value = bracketedRoot(evaluate, [before, point], search.tolerance);
      roots.push({ value, low: before.x, high: point.x });
    }
  }
  return { roots, all: search.monotone === true };
}

function grid({ low, high, steps, scale }: RootSearch): number[] {
  if (!(low < high && Number.isFinite(high - low))) {
    throw new RootSearchError(
      `an interval from ${low} to ${high}; allowed: finite, the first end below the second`,
    );
  }
  if (!(Number.isInteger(steps) && steps >= 1)) {
    throw new RootSearchError(`${steps} steps; allowed: a whole number from 1`);
  }
  if (scale === "logarithmic" && low <= 0) {
    throw new RootSearchError(`a logarithmic grid from ${low}; allowed: from above 0`);
  }
  return Array.from({ length: steps + 1 }, (_, step) => {
    if (step === steps) return high;
    const share = step / steps;
    return scale === "linear" ? low + (high - low) * share : low * (high / low) ** share;
  });
}

function finite(evaluate: (x: number) => number, x: number): number {
  const y = evaluate(x);
  if (!Number.isFinite(y)) throw new RootSearchError(`the function is ${y} at ${x}; allowed: a finite value`);
  return y;
}

function endOfZeros(points: readonly Point[], start: number): number {
  let end = start;
  while (points[end + 1]?.y === 0) end += 1;
  return end;
}

function refuseOtherDirection(points: readonly Point[]): void {
  const direction = Math.sign(at(points, points.length - 1).y - at(points, 0).y);
  points.forEach((point, index) => {
    const before = points[index - 1];
    if (!before || point.y === before.y || Math.sign(point.y - before.y) === direction) return;
    throw new RootSearchError(
      `called monotone, but it goes from ${before.y} at ${before.x} to ${point.y} at ${point.x} against its way from end to end`,
    );
  });
}

/**
 * The root between two points of opposite sign: inverse quadratic interpolation or the secant where they close in fast
 * enough, else bisection; in plain numbers, since it runs for each month of each pipe. Brent R.P. 1973. Algorithms for Minimization without Derivatives, chapter 4 (zero).
 * @throws RootSearchError if the values have one sign, or one that is not finite is met
 */
export function bracketedRoot(
  evaluate: (x: number) => number,
  [first, second]: readonly [Point, Point],
  tolerance: number,
): number {
  if (first.y * Math.sign(second.y) > 0) {
    throw new RootSearchError(`values of one sign at ${first.x} and ${second.x}; allowed: opposite signs`);
  }
  let [best, bestValue] = [second.x, second.y];
  let [previous, previousValue] = [first.x, first.y];
  let [opposite, oppositeValue] = [first.x, first.y];
  let step = best - previous;
  let stepBefore = step;
  while (true) {
    if (bestValue * Math.sign(oppositeValue) > 0) {
      [opposite, oppositeValue] = [previous, previousValue];
      step = stepBefore = best - previous;
    }
    if (Math.abs(oppositeValue) < Math.abs(bestValue)) {
      [previous, previousValue] = [best, bestValue];
      [best, bestValue] = [opposite, oppositeValue];
      [opposite, oppositeValue] = [previous, previousValue];
    }
    const least = 2 * Number.EPSILON * Math.abs(best) + tolerance / 2;
    const half = (opposite - best) / 2;
    if (Math.abs(half) <= least || bestValue === 0) return best;
    const closesIn = Math.abs(stepBefore) >= least && Math.abs(previousValue) > Math.abs(bestValue);
    const proposed = closesIn
      ? interpolated(best, bestValue, previous, previousValue, opposite, oppositeValue)
      : half;
    if (closesIn && isSmallEnough(proposed, half, least, stepBefore)) {
      stepBefore = step;
      step = proposed;
    } else step = stepBefore = half;
    [previous, previousValue] = [best, bestValue];
    best += Math.abs(step) > least ? step : least * Math.sign(half);
    bestValue = finite(evaluate, best);
  }
}

/** Step from the best point to where the inverse parabola, or the secant, through the points is zero. */
function interpolated(
  best: number,
  bestValue: number,
  previous: number,
  previousValue: number,
  opposite: number,
  oppositeValue: number,
): number {
  const s = bestValue / previousValue;
  if (previous === opposite) return -((opposite - best) * s) / (1 - s);
  const q = previousValue / oppositeValue;
  const r = bestValue / oppositeValue;
  const numerator = s * ((opposite - best) * q * (q - r) - (best - previous) * (r - 1));
  return -numerator / ((q - 1) * (r - 1) * (s - 1));
}

/** Brent's test: within three quarters of the way to the opposite point, and less than half the step before last. */
function isSmallEnough(step: number, half: number, least: number, stepBefore: number): boolean {
  const share = step / half;
  return (
    share > 0 && 2 * Math.abs(step) < 3 * Math.abs(half) - least && 2 * Math.abs(step) < Math.abs(stepBefore)
  );
}

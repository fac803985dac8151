import { at } from "../../lists.js";
import { type RandomStream, randomStream } from "../random/generator.js";
import { requireCount } from "./allowed.js";

/** Shares in (0, 1) by the id of what they are drawn for: one column of as many draws each. */
export type Shares = ReadonlyMap<string, readonly number[]>;

/** Up to here a jitter in steps of 2⁻³⁰ keeps every share inside its stratum in spite of rounding. */
export const mostDraws = 2 ** 20;

/**
 * Latin hypercube sample: each column has one share in each of the `count` equal parts of (0, 1), at an even place in
 * it, in an order of its own. A column is set by the seed, its id and the count alone: with other ids beside it, or
 * fewer, it is the same. Another count gives other columns throughout.
 * Source: McKay, Beckman and Conover 1979. Technometrics 21(2):239-245 (from memory).
 * @throws RangeError if the count is no whole number from 1 to 2²⁰, an id is given twice, or the seed is not allowed
 */
export function latinHypercube(seed: number, ids: readonly string[], count: number): Shares {
  requireDistinct(ids);
  return new Map(ids.map((id) => [id, latinHypercubeColumn(seed, id, count)]));
}

function latinHypercubeColumn(seed: number, id: string, count: number): number[] {
  requireCount("count of draws", count, 1, mostDraws);
  const stream = randomStream(seed, `latin-hypercube/${count}/${id}`);
  return shuffled(count, stream).map((stratum) => (stratum + jitter(stream)) / count);
}

/**
 * Sliced Latin hypercube sample: a Latin hypercube of all slices together, of which each slice has one share in each of
 * as many equal parts of (0, 1) as it has draws. The draws of a slice follow one another. A column is set by the seed,
 * its id and the counts alone.
 * Source: Qian 2012. Sliced Latin hypercube designs. JASA 107(497):393-399 (from memory).
 * @throws RangeError if a count is no whole number from 1, they make up more than 2²⁰, an id is given twice, or the seed
 * is not allowed
 */
export function slicedLatinHypercube(
  seed: number,
  ids: readonly string[],
  { slices, each }: { readonly slices: number; readonly each: number },
): Shares {
  requireDistinct(ids);
  requireCount("count of slices", slices, 1, mostDraws);
  requireCount("draws of a slice", each, 1, mostDraws / slices);
  return new Map(ids.map((id) => [id, slicedColumn(randomStream(seed, `sliced/${slices}/${each}/${id}`))]));

  function slicedColumn(stream: RandomStream): number[] {
    const ofSlices = Array.from({ length: each }, () => shuffled(slices, stream));
    const column: number[] = [];
    for (let slice = 0; slice < slices; slice++) {
      for (const part of shuffled(each, stream)) {
        const stratum = part * slices + at(at(ofSlices, part), slice);
        column.push((stratum + jitter(stream)) / (slices * each));
      }
    }
    return column;
  }
}

/** A place in (0, 1): the middle of one of 2³⁰ equal cells. */
function jitter({ uniform }: RandomStream): number {
  const cells = 2 ** 30;
  return (Math.floor(uniform() * cells) + 1 / 2) / cells;
}

/** Whole numbers from 0 to below the count in random order, by the shuffle of Fisher and Yates. */
function shuffled(count: number, { uniform }: RandomStream): number[] {
  const order: number[] = [];
  for (let index = 0; index < count; index++) order.push(index);
  for (let last = count - 1; last > 0; last--) {
    const other = Math.floor(uniform() * (last + 1));
    const moved = at(order, last);
    order[last] = at(order, other);
    order[other] = moved;
  }
  return order;
}

/** @throws RangeError that names an id given twice */
export function requireDistinct(ids: readonly string[]): void {
  if (new Set(ids).size === ids.length) return;
  const twice = ids.find((id, index) => ids.indexOf(id) !== index);
  throw new RangeError(`the id ${twice} is given twice; allowed: each id once`);
}

import { at } from "../../lists.js";
import type { LakeFutures } from "./draws.js";

/** An option's figures over the futures of all draws of the lake, in the order of blocks, lakes and futures. */
export interface JoinedFutures {
  readonly expected: Float64Array;
  readonly cost: Float64Array;
  readonly program: Float64Array;
  readonly everInfested: Float64Array;
  readonly infestedAtEnd: Float64Array;
  /** Chance to have established by the end of each year, on average over all futures. */
  readonly establishedBy: Float64Array;
  /** What staff entered, by account; the other losses also as they come out. */
  readonly duty: Float64Array;
  readonly policy: Float64Array;
  readonly other: Float64Array;
  readonly otherCost: Float64Array;
  /** Of the first blocks alone, future after future. */
  readonly byYear: Float64Array;
}

/** Of each option, in their order. */
export function joinedFutures(lakes: readonly LakeFutures[], options: number): JoinedFutures[] {
  return Array.from({ length: options }, (_, option) => ({
    expected: joined(lakes.map(({ expected }) => at(expected, option))),
    cost: joined(lakes.map(({ cost }) => at(cost, option))),
    program: joined(lakes.map(({ program }) => at(program, option))),
    everInfested: joined(lakes.map(({ everInfested }) => at(everInfested, option))),
    infestedAtEnd: joined(lakes.map(({ infestedAtEnd }) => at(infestedAtEnd, option))),
    establishedBy: meanOfLists(lakes.map(({ establishedBy }) => at(establishedBy, option))),
    duty: joined(lakes.map(({ duty }) => at(duty, option))),
    policy: joined(lakes.map(({ policy }) => at(policy, option))),
    other: joined(lakes.map(({ other }) => at(other, option))),
    otherCost: joined(lakes.map(({ otherCost }) => at(otherCost, option))),
    byYear: joined(lakes.flatMap(({ byYear }) => byYear[option] ?? [])),
  }));
}

/** Year by year; each draw of the lake has as many futures. */
function meanOfLists(lists: ReadonlyArray<readonly number[]>): Float64Array {
  const mean = new Float64Array(lists[0]?.length ?? 0);
  for (const list of lists) {
    for (const [year, value] of list.entries()) mean[year] = at(mean, year) + value / lists.length;
  }
  return mean;
}

/** Lists put together in their order. */
export function joined(lists: ReadonlyArray<ArrayLike<number>>): Float64Array {
  const all = new Float64Array(lists.reduce((sum, { length }) => sum + length, 0));
  let place = 0;
  for (const list of lists) {
    all.set(list, place);
    place += list.length;
  }
  return all;
}

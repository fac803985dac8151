import { at } from "../../lists.js";

/** One way of filling a choice: paid hours a year, a whole number, and the launches met with them. */
export interface Level {
  readonly hours: number;
  readonly met: number;
}

/** Something of which exactly one level is taken: the opening at one site on days of one type, or a month. */
export interface Choice {
  readonly levels: readonly [Level, ...Level[]];
}

/** Levels taken, by their places in the choices, with their sums. */
export interface Taken extends Level {
  readonly levels: readonly number[];
}

/**
 * All that is efficient of taking one level of each choice: most met for the hours, by rising hours. Exact, by dynamic
 * programming over the choices: m(h) = max over levels of m(h − hours) + met, a multiple-choice knapsack for every
 * capacity at once (Kellerer, Pferschy and Pisinger 2004, from memory).
 */
export function efficient(choices: readonly Choice[]): Taken[] {
  const most = choices.reduce((sum, { levels }) => sum + Math.max(...levels.map(({ hours }) => hours)), 0);
  let best = new Float64Array(most + 1).fill(Number.NEGATIVE_INFINITY);
  best[0] = 0;
  const chosen = choices.map(({ levels }) => {
    const next = new Float64Array(most + 1).fill(Number.NEGATIVE_INFINITY);
    const taken = new Int16Array(most + 1);
    levels.forEach(({ hours, met }, level) => {
      for (let sum = hours; sum <= most; sum++) {
        const value = at(best, sum - hours) + met;
        if (value <= at(next, sum)) continue;
        next[sum] = value;
        taken[sum] = level;
      }
    });
    best = next;
    return taken;
  });
  const found: Taken[] = [];
  let met = Number.NEGATIVE_INFINITY;
  best.forEach((value, hours) => {
    if (value <= met) return;
    met = value;
    found.push({ hours, met: value, levels: levelsAt(hours, choices, chosen) });
  });
  return found;
}

function levelsAt(
  hours: number,
  choices: readonly Choice[],
  chosen: ReadonlyArray<ArrayLike<number>>,
): number[] {
  const levels = Array<number>(choices.length);
  let left = hours;
  for (let index = choices.length - 1; index >= 0; index--) {
    const level = at(at(chosen, index), left);
    levels[index] = level;
    left -= at(at(choices, index).levels, level).hours;
  }
  return levels;
}

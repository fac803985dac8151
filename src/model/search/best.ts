import { at } from "../../lists.js";
import type { Met } from "./evaluate.js";

/** Programs of one set of measures by rising hours, each meeting more than the one before. */
export interface Ladder {
  readonly length: number;
  /** Hours over those of the option that the search starts from. */
  readonly hours: (rung: number) => number;
  /** Expected present costs: of the infestation, of the program in no hours, of its fees, and of what the hours add. */
  readonly met: (rung: number) => Pick<Met, "loss" | "idle" | "fees" | "perHours">;
}

export interface Rung {
  readonly ladder: number;
  readonly rung: number;
}

export interface Best {
  /** Absent where the ladders have no rung. */
  readonly best: (Rung & { readonly cost: number }) | undefined;
  /** No program costs less than this. */
  readonly bound: number;
  readonly evaluated: number;
}

interface Stretch {
  readonly ladder: number;
  readonly from: number;
  readonly to: number;
  readonly bound: number;
}

const mostEvaluated = 600;

/**
 * The rung that costs least, by branch and bound. Along a ladder more is met: the loss falls, and the program is paid in
 * more clean years, with more fees. A stretch of rungs therefore costs at least the loss at its top and the program, with the hours at
 * its foot, as it weighs at its foot.
 * @param tolerance how far above the bound the best may be left
 */
export function leastCost(ladders: readonly Ladder[], tolerance: number): Best {
  const known = new Set<string>();
  let best: (Rung & { cost: number }) | undefined;
  const workedOut = (ladder: number, rung: number) => {
    const { hours, met } = at(ladders, ladder);
    const parts = met(rung);
    const cost = parts.loss + parts.idle + parts.fees + hours(rung) * parts.perHours;
    known.add(`${ladder}/${rung}`);
    if (!best || cost < best.cost) best = { ladder, rung, cost };
    return parts;
  };
  /** Bound of what lies between its ends. */
  const stretch = (ladder: number, from: number, to: number): Stretch => {
    const [foot, top] = [workedOut(ladder, from), workedOut(ladder, to)];
    const least = (part: keyof typeof foot) => Math.min(foot[part], top[part]);
    const hours = at(ladders, ladder).hours(from);
    const inside = least("loss") + least("idle") + least("fees") + hours * least("perHours");
    return { ladder, from, to, bound: to - from <= 1 ? Number.POSITIVE_INFINITY : inside };
  };
  const open = ladders.flatMap(({ length }, ladder) => (length > 0 ? [stretch(ladder, 0, length - 1)] : []));
  let bound = Number.POSITIVE_INFINITY;
  for (;;) {
    open.sort((one, other) => other.bound - one.bound);
    const next = open.at(-1);
    bound = next?.bound ?? best?.cost ?? 0;
    if (!next || !best || best.cost - bound <= tolerance || known.size >= mostEvaluated) break;
    open.pop();
    const middle = Math.floor((next.from + next.to) / 2);
    open.push(stretch(next.ladder, next.from, middle), stretch(next.ladder, middle, next.to));
  }
  return {
    best,
    bound: Math.min(bound, best?.cost ?? bound),
    evaluated: known.size,
  };
}

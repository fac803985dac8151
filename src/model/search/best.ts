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
  const known = new Map<string, number>();
  let best: (Rung & { cost: number }) | undefined;
  const costAt = (ladder: number, rung: number): number => {
    const key = `${ladder}/${rung}`;
    const found = known.get(key);
    if (found !== undefined) return found;
    const { hours, met } = at(ladders, ladder);
    const { loss, idle, fees, perHours } = met(rung);
    const cost = loss + idle + fees + hours(rung) * perHours;
    known.set(key, cost);
    if (!best || cost < best.cost) best = { ladder, rung, cost };
    return cost;
  };
  const stretch = (ladder: number, from: number, to: number): Stretch => {
    const { hours, met } = at(ladders, ladder);
    const ends = [costAt(ladder, from), costAt(ladder, to)];
    const [foot, top] = [met(from), met(to)];
    const least = (part: "loss" | "idle" | "fees" | "perHours") => Math.min(foot[part], top[part]);
    const inside = least("loss") + least("idle") + least("fees") + hours(from) * least("perHours");
    return {
      ladder,
      from,
      to,
      bound: to - from <= 1 ? Math.min(...ends) : Math.min(...ends, inside),
    };
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

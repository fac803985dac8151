/** Between which values a quantity is taken to lie that is given as one. */
export interface Reached {
  readonly low: number;
  readonly high: number;
}

/** How the size of a reach makes a range of a value: by a share of it, in log odds, or by so much in its own unit. */
export type Reach = "relative" | "log-odds" | "absolute";

/**
 * Range of a value x by a size s: x (1 ± s), or x ± s; of a share p the shares q with ln(q/(1−q)) = ln(p/(1−p)) ± s, which
 * stay within 0 and 1.
 */
export function reached(reach: Reach, value: number, size: number): Reached {
  switch (reach) {
    case "relative":
      return { low: value * (1 - size), high: value * (1 + size) };
    case "absolute":
      return { low: value - size, high: value + size };
    case "log-odds":
      return { low: oddsMoved(value, Math.exp(-size)), high: oddsMoved(value, Math.exp(size)) };
  }
}

/** A share whose odds are multiplied. */
const oddsMoved = (share: number, by: number) => (share * by) / (1 - share + share * by);

/**
 * The value at a place u in its range from l to h, −1 at its low, 0 as given, 1 at its high: x + u (x − l) below 0 and
 * x + u (h − x) above.
 */
export function valueAtPlace(value: number, { low, high }: Reached, place: number): number {
  return place < 0 ? value + place * (value - low) : value + place * (high - value);
}

import { at } from "../../../src/lists.js";

/** Whether each box 2^-a by 2^-b with a + b = m holds one of 2^m points: a (0, m, 2)-net in base 2. */
export function isNet(first: readonly number[], second: readonly number[], m: number): boolean {
  return Array.from({ length: m + 1 }, (_, a) => {
    const boxes = first.map(
      (x, index) => Math.floor(x * 2 ** a) * 2 ** (m - a) + Math.floor(at(second, index) * 2 ** (m - a)),
    );
    return new Set(boxes).size;
  }).every((size) => size === 2 ** m);
}

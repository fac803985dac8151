import { stringify } from "safe-stable-stringify";
import { valueAt } from "../../study/reading/problems.js";

/** Whether two values say the same, whatever the order of their keys. */
export const saysSame = (one: unknown, other: unknown): boolean =>
  one === other || stringify(one) === stringify(other);

/** What became of an item: it stayed or changed (both places), went (no later place) or came (no earlier one). */
export interface Step {
  readonly from?: number | undefined;
  readonly to?: number | undefined;
}

/** Most pairs of items that are held against each other. */
const mostPairs = 250_000;

/**
 * Items of a list as it was and as it is, in an order in which the earlier places rise. Items with the same id, or the
 * same content, are the same; else those in the same place between such.
 * @returns undefined where the lists are too long to be told apart
 */
export function aligned(before: readonly unknown[], after: readonly unknown[]): Step[] | undefined {
  const isSame = (one: unknown, other: unknown) => {
    const [id, otherId] = [valueAt(one, ["id"]), valueAt(other, ["id"])];
    return id !== undefined && id === otherId ? true : saysSame(one, other);
  };
  let start = 0;
  while (start < before.length && start < after.length && isSame(before[start], after[start])) start += 1;
  let tail = 0;
  const least = Math.min(before.length, after.length) - start;
  while (tail < least && isSame(before.at(-1 - tail), after.at(-1 - tail))) tail += 1;
  const middle = between(
    before.slice(start, before.length - tail),
    after.slice(start, after.length - tail),
    isSame,
  );
  if (!middle) return undefined;
  const kept = (count: number, from: number, to: number): Step[] =>
    Array.from({ length: count }, (_, index) => ({ from: from + index, to: to + index }));
  return [
    ...kept(start, 0, 0),
    ...middle.map(({ from, to }) => ({
      from: from === undefined ? undefined : from + start,
      to: to === undefined ? undefined : to + start,
    })),
    ...kept(tail, before.length - tail, after.length - tail),
  ];
}

/** By the longest common part; of the rest, as many as there are on both sides changed. */
function between(
  before: readonly unknown[],
  after: readonly unknown[],
  isSame: (one: unknown, other: unknown) => boolean,
): Step[] | undefined {
  if (before.length * after.length > mostPairs) return undefined;
  const longest = Array.from({ length: before.length + 1 }, () => new Uint32Array(after.length + 1));
  const lengthAt = (from: number, to: number) => longest[from]?.[to] ?? 0;
  for (let from = before.length - 1; from >= 0; from--) {
    const row = longest[from];
    if (!row) continue;
    for (let to = after.length - 1; to >= 0; to--) {
      row[to] = isSame(before[from], after[to])
        ? lengthAt(from + 1, to + 1) + 1
        : Math.max(lengthAt(from + 1, to), lengthAt(from, to + 1));
    }
  }
  const steps: Step[] = [];
  let [from, to] = [0, 0];
  while (from < before.length || to < after.length) {
    const isBoth = from < before.length && to < after.length;
    if (isBoth && isSame(before[from], after[to])) steps.push({ from: from++, to: to++ });
    else if (isBoth && lengthAt(from + 1, to + 1) === lengthAt(from, to))
      steps.push({ from: from++, to: to++ });
    else if (to >= after.length || (isBoth && lengthAt(from + 1, to) >= lengthAt(from, to + 1)))
      steps.push({ from: from++ });
    else steps.push({ to: to++ });
  }
  return steps;
}

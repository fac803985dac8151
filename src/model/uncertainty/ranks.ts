import { at } from "../../lists.js";

/** Places of the values from least to greatest; equal values keep their order. */
export function risingOrder(values: readonly number[]): number[] {
  return values
    .map((_, index) => index)
    .sort((one, other) => at(values, one) - at(values, other) || one - other);
}

/** Rank of each value, 1 the least; equal values all get the mean of the ranks that they share. */
export function ranks(values: readonly number[]): number[] {
  const order = risingOrder(values);
  const found = Array<number>(values.length).fill(0);
  for (let start = 0; start < order.length; ) {
    let end = start + 1;
    while (end < order.length && at(values, at(order, end)) === at(values, at(order, start))) end += 1;
    for (const place of order.slice(start, end)) found[place] = (start + 1 + end) / 2;
    start = end;
  }
  return found;
}

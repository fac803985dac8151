/** The element at `index`, or an error that names the index: for lists whose length the model guarantees. */
export function at<T>(list: ArrayLike<T>, index: number): T {
  return list[index] ?? noElement(list, index);
}

/**
 * The error of `at`. Inner loops read `list[index] ?? noElement(list, index)` themselves: the engine reads each kind of
 * list in its own fast way where it sees one kind only, and `at` is given all of them.
 */
export function noElement(list: ArrayLike<unknown>, index: number): never {
  throw new RangeError(`no element ${index} in a list of ${list.length}`);
}

/**
 * A list of numbers without gaps. The engine takes lists of `fill`, and of `map` in much-used code, for lists with gaps, and
 * makes an object of each fractional number that `at` reads from them: such a read takes three times as long.
 */
export function numbersBy(count: number, numberAt: (index: number) => number): number[] {
  const numbers: number[] = [];
  for (let index = 0; index < count; index++) numbers.push(numberAt(index));
  return numbers;
}

export function sumOf(values: readonly number[]): number {
  let sum = 0;
  for (let index = 0; index < values.length; index++) sum += values[index] ?? noElement(values, index);
  return sum;
}

export const meanOf = (values: readonly number[]): number => sumOf(values) / values.length;

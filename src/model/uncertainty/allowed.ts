/** @throws RangeError that names the value and what is allowed, unless it is finite */
export function requireFinite(name: string, value: number): void {
  if (!Number.isFinite(value)) throw new RangeError(`${name} is ${value}; allowed: a finite number`);
}

/** @throws RangeError that names the value and the range, unless it lies from `low` to `high`, both included */
export function requireWithin(name: string, value: number, low: number, high: number): void {
  if (!(value >= low && value <= high)) {
    throw new RangeError(`${name} is ${value}; allowed: ${low} to ${high}`);
  }
}

/** @throws RangeError that names the value, unless it is finite and 0 or more */
export function requireNotNegative(name: string, value: number): void {
  if (!(value >= 0 && value < Number.POSITIVE_INFINITY)) {
    throw new RangeError(`${name} is ${value}; allowed: a finite number of 0 or more`);
  }
}

/** @throws RangeError that names the value and the range, unless it lies between `low` and `high`, both excluded */
export function requireBetween(name: string, value: number, low: number, high: number): void {
  if (!(value > low && value < high)) {
    throw new RangeError(`${name} is ${value}; allowed: above ${low} and below ${high}`);
  }
}

/** @throws RangeError that names the value and the range, unless it is whole and lies from `low` to `high` */
export function requireCount(name: string, value: number, low: number, high = Number.MAX_SAFE_INTEGER): void {
  if (!(Number.isSafeInteger(value) && value >= low && value <= high)) {
    throw new RangeError(`${name} is ${value}; allowed: whole numbers from ${low} to ${high}`);
  }
}

/** @throws RangeError that names the first value that is not finite, or the length if there are fewer than `least` */
export function requireValues(name: string, values: ArrayLike<number>, least: number): void {
  if (values.length < least) {
    throw new RangeError(`${name}: ${values.length} values; allowed: ${least} or more`);
  }
  for (let index = 0; index < values.length; index++) {
    if (Number.isFinite(values[index])) continue;
    throw new RangeError(`${name}: value ${index} is ${values[index]}; allowed: finite numbers`);
  }
}

/** @throws RangeError that names both lengths, unless they are equal */
export function requireSameLength(
  name: string,
  values: readonly unknown[],
  otherName: string,
  others: readonly unknown[],
): void {
  if (values.length !== others.length) {
    throw new RangeError(
      `${name} has ${values.length} values and ${otherName} ${others.length}; allowed: as many in both`,
    );
  }
}

import { logStep } from "./log-density.js";

/** Chances of a normal deviation of 0, 1, … steps. */
export function kernelOf(spread: number): Float64Array {
  const reach = Math.ceil((4 * spread) / logStep);
  const half = Float64Array.from({ length: reach + 1 }, (_, away) =>
    Math.exp(-(((away * logStep) / spread) ** 2) / 2),
  );
  const sum = half.reduce((total, chance) => total + 2 * chance, -1);
  return half.map((chance) => chance / sum);
}

/** Beyond its ends the grid goes on as it ends. */
export function smooth(chances: Float64Array, kernel: Float64Array): Float64Array {
  const reach = kernel.length - 1;
  const wide = new Float64Array(chances.length + 2 * reach);
  wide.fill(chances[0] ?? 0, 0, reach);
  wide.set(chances, reach);
  wide.fill(chances[chances.length - 1] ?? 0, reach + chances.length);
  const result = new Float64Array(chances.length);
  for (let cell = 0; cell < result.length; cell++) {
    const middle = cell + reach;
    let sum = (wide[middle] ?? 0) * (kernel[0] ?? 0);
    for (let away = 1; away <= reach; away++) {
      sum += (kernel[away] ?? 0) * ((wide[middle - away] ?? 0) + (wide[middle + away] ?? 0));
    }
    result[cell] = sum;
  }
  return result;
}

import type { Colony } from "./cohorts.js";
import { bareSurface, type Layer, layerThickness } from "./layer.js";

/** Numbers that are kept of a month: number, cover, mass, killed, shed. */
export const sumsKept = 5;

const mmPerM = 1e3;

/** Keeps what a month left, at a place in a list of numbers. */
export function keepSums(
  sums: Float64Array,
  start: number,
  { number, cover, mass, killed, shed }: Readonly<Colony>,
): void {
  sums[start + 3] = killed;
  if (number === 0) return;
  sums[start] = number;
  sums[start + 1] = cover;
  sums[start + 2] = mass;
  sums[start + 4] = shed;
}

/** Live wet mass that was kept of a month, kg/m². */
export const massKept = (sums: Float64Array, start: number): number => sums[start + 2] ?? 0;

/** Whether drying or frost left nobody alive in a month that was kept. */
export const isBareKept = (sums: Float64Array, start: number): boolean =>
  sums[start] === 0 && (sums[start + 3] ?? 0) > 0;

/** True where nothing that is kept of two months differs. */
export function areAlike(sums: Float64Array, one: number, other: number): boolean {
  for (let place = 0; place < sumsKept; place++) if (sums[one + place] !== sums[other + place]) return false;
  return true;
}

/** A month as it was kept. */
export function layerKept(sums: Float64Array, start: number, packing: Packing): Layer {
  if (sums[start] === 0 && sums[start + 3] === 0) return bareSurface;
  return new KeptLayer(sums, start, packing);
}

/** How mussels pack: an object, since the engine makes one of each number that an object holds. */
interface Packing {
  readonly bulkDensity: number;
}

/** Length and thickness are reckoned when read. */
class KeptLayer implements Layer {
  readonly #sums: Float64Array;
  readonly #start: number;
  readonly #packing: Packing;

  constructor(sums: Float64Array, start: number, packing: Packing) {
    this.#sums = sums;
    this.#start = start;
    this.#packing = packing;
  }
  get number(): number {
    return this.#sums[this.#start] ?? 0;
  }
  get cover(): number {
    return this.#sums[this.#start + 1] ?? 0;
  }
  get mass(): number {
    return this.#sums[this.#start + 2] ?? 0;
  }
  get killed(): number {
    return this.#sums[this.#start + 3] ?? 0;
  }
  get shed(): number {
    return this.#sums[this.#start + 4] ?? 0;
  }
  get thickness(): number {
    return layerThickness(this.mass, this.#packing.bulkDensity);
  }
  get lengthMm(): number {
    const { number } = this;
    return number === 0 ? 0 : Math.sqrt(this.cover / number) * mmPerM;
  }
}

import type { Colony } from "./cohorts.js";

/** What stands on a surface at the end of a month. */
export interface Layer {
  /** Live mussels, 1/m². */
  readonly number: number;
  /** Root mean square shell length, mm: the one for which number × length² is the cover. */
  readonly lengthMm: number;
  /** Number × length², a pure number; 1 is about a closed single layer. */
  readonly cover: number;
  /** Live wet mass, kg/m². */
  readonly mass: number;
  /** Mean over the surface, m. */
  readonly thickness: number;
  /** Wet mass killed by drying or frost in the month, kg/m². */
  readonly killed: number;
  /** Wet mass that died of age or was crowded off in the month, kg/m². */
  readonly shed: number;
}

export const bareSurface: Layer = {
  number: 0,
  lengthMm: 0,
  cover: 0,
  mass: 0,
  thickness: 0,
  killed: 0,
  shed: 0,
};

const mmPerM = 1e3;

/** Sums that are kept of a month: number, cover, mass, killed, shed. */
const kept = 5;

/** A layer within a list of months: of tens of thousands in a lake few are looked at, so that only sums are kept. */
class MonthLayer implements Layer {
  readonly #sums: Float64Array;
  readonly #start: number;
  readonly #bulkDensity: number;

  constructor(sums: Float64Array, start: number, bulkDensity: number) {
    this.#sums = sums;
    this.#start = start;
    this.#bulkDensity = bulkDensity;
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
    return layerThickness(this.mass, this.#bulkDensity);
  }
  get lengthMm(): number {
    const { number } = this;
    return number === 0 ? 0 : Math.sqrt(this.cover / number) * mmPerM;
  }
}

/** Keeps the layers of a square metre month by month. @param months most that are kept */
export function layerKeeper(months: number, bulkDensity: number): (colony: Readonly<Colony>) => Layer {
  const sums = new Float64Array(months * kept);
  let start = -kept;
  return ({ number, cover, mass, killed, shed }) => {
    if (number === 0 && killed === 0) return bareSurface;
    start += kept;
    sums[start + 3] = killed;
    if (number > 0) {
      sums[start] = number;
      sums[start + 1] = cover;
      sums[start + 2] = mass;
      sums[start + 4] = shed;
    }
    return new MonthLayer(sums, start, bulkDensity);
  };
}

/** True where nothing that is kept of two layers differs. */
export const areAlike = (one: Layer, other: Layer): boolean =>
  one === other ||
  (one.number === other.number &&
    one.cover === other.cover &&
    one.mass === other.mass &&
    one.killed === other.killed &&
    one.shed === other.shed);

/** The same layer by itself, without the months that it was kept with. */
export function aloneOf({ number, lengthMm, cover, mass, thickness, killed, shed }: Layer): Layer {
  return { number, lengthMm, cover, mass, thickness, killed, shed };
}

/**
 * Mean layer thickness, m: the room that the mussels of a square metre take as shells pack, t = M/ρb. Shells that stand
 * apart rise above it; what they do to the flow is the roughness that follows from their length and cover.
 */
export function layerThickness(mass: number, bulkDensity: number): number {
  return mass / bulkDensity;
}

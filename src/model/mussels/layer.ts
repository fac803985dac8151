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

/** The layer that stands on a square metre. */
export function layerOf({ number, cover, mass, killed, shed }: Readonly<Colony>, bulkDensity: number): Layer {
  if (number === 0) return killed === 0 ? bareSurface : { ...bareSurface, killed };
  const lengthMm = Math.sqrt(cover / number) * mmPerM;
  return {
    number,
    lengthMm,
    cover,
    mass,
    thickness: layerThickness(mass, bulkDensity),
    killed,
    shed,
  };
}

/**
 * Mean layer thickness, m: the room that the mussels of a square metre take as shells pack, t = M/ρb. Shells that stand
 * apart rise above it; what they do to the flow is the roughness that follows from their length and cover.
 */
export function layerThickness(mass: number, bulkDensity: number): number {
  return mass / bulkDensity;
}

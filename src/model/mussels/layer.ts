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

/** The same layer by itself, without the months that it was kept with. */
export function aloneOf({ number, lengthMm, cover, mass, thickness, killed, shed }: Layer): Layer {
  return { number, lengthMm, cover, mass, thickness, killed, shed };
}

/** The thickest of layers; a bare surface where none has mussels. */
export function thickestOf(layers: readonly Layer[]): Layer {
  return layers.reduce((best, layer) => (layer.thickness > best.thickness ? layer : best), bareSurface);
}

/**
 * Mean layer thickness, m: the room that the mussels of a square metre take as shells pack, t = M/ρb. Shells that stand
 * apart rise above it; what they do to the flow is the roughness that follows from their length and cover.
 */
export function layerThickness(mass: number, bulkDensity: number): number {
  return mass / bulkDensity;
}

import type { Assumed } from "../assumed.js";
import type { Layer } from "../mussels/layer.js";
import type { Waterway } from "./waterway.js";

export interface RoughnessParameters {
  /** Cover (number × length²) above which the layer is closed. */
  readonly closedCover: number;
  /** Cover below which shells stand alone. */
  readonly openCover: number;
  /** Sand roughness over shell length of a closed layer. */
  readonly closedRatio: number;
  /** Largest ratio, between open and closed. */
  readonly largestRatio: number;
}

export function roughnessParameters(assumed: Assumed): RoughnessParameters {
  return {
    closedCover: assumed("hydraulics.closed-cover"),
    openCover: assumed("hydraulics.open-cover"),
    closedRatio: assumed("hydraulics.closed-roughness-ratio"),
    largestRatio: assumed("hydraulics.largest-roughness-ratio"),
  };
}

/**
 * Sand roughness over shell length for a cover c = N·L²: 1.5 for a closed layer (N·L² > 1.2), up to 2.4 between
 * 0.5 and 1.2, below 1.5 for single shells (Water Resources Research, doi 10.1029/2023WR036503, abstract).
 * The abstract gives ranges; the lines between them are drawn here, with cm midway between c0 and c1:
 * κ = κ1 where c ≥ c1, κ = κ2 − (κ2 − κ1)·|c − cm|/(cm − c0) where c0 < c < c1, κ = κ1 c/c0 where c ≤ c0.
 */
export function roughnessRatio(cover: number, parameters: RoughnessParameters): number {
  const { openCover, closedCover, closedRatio, largestRatio } = parameters;
  if (cover >= closedCover) return closedRatio;
  if (cover <= openCover) return (closedRatio * cover) / openCover;
  const middle = (openCover + closedCover) / 2;
  const fromMiddle = Math.abs(cover - middle) / (middle - openCover);
  return largestRatio - (largestRatio - closedRatio) * fromMiddle;
}

const metresPerMm = 1e-3;

/**
 * The pipe with its bore narrowed by the layer on both sides and its wall roughened, never smoother than clean:
 * Df = max(0, D − 2 t), kf = max(k, κ L) (roughness of shells: doi 10.1029/2023WR036503). The loss is by
 * Darcy–Weisbach even where the clean wall is known by its Hazen–Williams C: C is not constant on shells.
 */
export function fouledPipe(clean: Waterway, layer: Layer, parameters: RoughnessParameters): Waterway {
  const shells = roughnessRatio(layer.cover, parameters) * layer.lengthMm * metresPerMm;
  const fouled = {
    length: clean.length,
    diameter: Math.max(0, clean.diameter - 2 * layer.thickness),
    roughness: Math.max(clean.roughness, shells),
    minorLoss: clean.minorLoss,
  };
  return clean.hazenWilliamsC === undefined ? fouled : { ...fouled, clean };
}

import type { Layer } from "../mussels/layer.js";
import { type RoughnessParameters, roughnessRatio } from "./fouled-pipe.js";

/** A lined canal of trapezoidal section at its full depth. */
export interface CanalSection {
  readonly bottomWidth: number;
  readonly depth: number;
  /** Horizontal over vertical. */
  readonly sideSlope: number;
}

export const canalArea = ({ bottomWidth, depth, sideSlope }: CanalSection): number =>
  (bottomWidth + sideSlope * depth) * depth;

/** Wetted perimeter, m: what mussels sit on, by metre of length. */
export const canalPerimeter = ({ bottomWidth, depth, sideSlope }: CanalSection): number =>
  bottomWidth + 2 * depth * Math.hypot(1, sideSlope);

const metresPerMm = 1e-3;

/**
 * Flow of a canal under a layer over the same clean, at the same depth and slope, by Manning's formula with a layer t
 * on the perimeter P: Af = max(0, A − P t). Manning's n grows with the sixth root of the sand roughness (Strickler
 * 1923), of shells as in a pipe, never smoother than clean: kf = max(k, κ L), q = (Af/A)^(5/3) (k/kf)^(1/6).
 */
export function canalCapacityLeft(
  canal: CanalSection & { readonly roughness: number },
  layer: Layer,
  parameters: RoughnessParameters,
): number {
  const area = canalArea(canal);
  const open = Math.max(0, area - canalPerimeter(canal) * layer.thickness);
  const shells = roughnessRatio(layer.cover, parameters) * layer.lengthMm * metresPerMm;
  return (open / area) ** (5 / 3) * (canal.roughness / Math.max(canal.roughness, shells)) ** (1 / 6);
}

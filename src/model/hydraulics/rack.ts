import type { Rack, RackFormula } from "../structures/inputs.js";
import { gravity } from "./friction.js";

const radians = (degrees: number) => (degrees * Math.PI) / 180;

/**
 * Kirschmer 1926 (from memory): h = kF (s/b)^(4/3) sin α V²/2g, V the approach velocity.
 * @param barShapeFactor kF, 2.42 for a rectangular bar
 * @param angle of the rack from the horizontal, degrees
 */
export function kirschmerLoss(
  rack: { barThickness: number; clearSpacing: number; angle: number },
  barShapeFactor: number,
  approachVelocity: number,
): number {
  const ratio = rack.barThickness / rack.clearSpacing;
  return barShapeFactor * ratio ** (4 / 3) * Math.sin(radians(rack.angle)) * velocityHead(approachVelocity);
}

/**
 * Meusburger 2002, flow square to the rack (from memory): ξ = kF (p/(1−p))^1.5 sin α on the approach velocity,
 * h = ξ V²/2g, p the blocked share of the rack area: bars, spacers and whatever sits on them.
 */
export function meusburgerLoss(
  rack: { blockedShare: number; angle: number },
  barShapeFactor: number,
  approachVelocity: number,
): number {
  const { blockedShare, angle } = rack;
  const ratio = blockedShare / (1 - blockedShare);
  const coefficient = barShapeFactor * ratio * Math.sqrt(ratio) * Math.sin(radians(angle));
  return coefficient * velocityHead(approachVelocity);
}

/**
 * Bureau of Reclamation, Design of Small Dams (from memory): K = 1.45 − 0.45 R − R² on the velocity through
 * the net area, h = K (V/R)²/2g, R = net over gross area.
 */
export function reclamationLoss(netShare: number, approachVelocity: number): number {
  return (1.45 - 0.45 * netShare - netShare ** 2) * velocityHead(approachVelocity / netShare);
}

/**
 * Clark, Tsikata and Haresign 2010, Journal of Hydraulic Research 48(1):113-118 (from memory), flow square to an
 * upright rack: ξ = 7.43 η p² on the approach velocity, h = ξ V²/2g. Measured on clean bars; it stays below 7.43 η even where the
 * rack is nearly closed, and so tells too little under thick layers.
 * @param barFactor η, 1 for square-edged bars
 */
export function clarkLoss(blockedShare: number, barFactor: number, approachVelocity: number): number {
  return 7.43 * barFactor * blockedShare ** 2 * velocityHead(approachVelocity);
}

const velocityHead = (velocity: number) => velocity ** 2 / (2 * gravity);

/**
 * Share of the rack's face that bars and a layer on both sides of each gap block, p = 1 − max(0, b − 2 t)/(s + b); 1
 * when the gaps are closed. Blocked share in the sense of Meusburger 2002.
 */
export function blockedShare(rack: Rack, layerThickness: number): number {
  const gap = Math.max(0, rack.clearSpacing - 2 * layerThickness);
  return 1 - gap / (rack.barThickness + rack.clearSpacing);
}

/** What the shape of the bars does in each formula that asks for it. */
export interface BarFactors {
  /** kF of Kirschmer's and Meusburger's formulas. */
  readonly shape: number;
  /** η of Clark's formula. */
  readonly clark: number;
}

/**
 * Head loss of a rack under a layer by one of the formulas, m. The layer thickens each bar and narrows each gap; a
 * closed rack loses an infinite head.
 */
export function rackLoss(
  formula: RackFormula,
  rack: Rack,
  state: { readonly layerThickness: number; readonly approachVelocity: number },
  factors: BarFactors,
): number {
  const { layerThickness, approachVelocity } = state;
  const blocked = blockedShare(rack, layerThickness);
  if (blocked >= 1) return Infinity;
  switch (formula) {
    case "meusburger":
      return meusburgerLoss({ blockedShare: blocked, angle: rack.angle }, factors.shape, approachVelocity);
    case "reclamation":
      return reclamationLoss(1 - blocked, approachVelocity);
    case "clark":
      return clarkLoss(blocked, factors.clark, approachVelocity);
    case "kirschmer":
      return kirschmerLoss(
        {
          angle: rack.angle,
          barThickness: rack.barThickness + 2 * layerThickness,
          clearSpacing: rack.clearSpacing - 2 * layerThickness,
        },
        factors.shape,
        approachVelocity,
      );
  }
}

export const rackFace = (rack: Rack): number => rack.width * rack.height;

/** Wetted surface of the bars over the rack's face: both sides, front and back of each bar, 2 (s + d)/(s + b). */
export function barSurfaceRatio(rack: Rack): number {
  return (2 * (rack.barThickness + rack.barDepth)) / (rack.barThickness + rack.clearSpacing);
}

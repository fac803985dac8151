import { barSurfaceRatio, blockedShare, meusburgerLoss, rackFace } from "../hydraulics/rack.js";
import type { Rack } from "../inputs.js";
import { at } from "../lake/calendar.js";
import type { Layer } from "../mussels/layer.js";
import { cleaningOf } from "./cleaning.js";
import type { Component, Priced } from "./component.js";
import type { LakeContext } from "./context.js";

/** The physical effect of a layer on a rack at a flow. */
export interface RackState {
  readonly blocked: number;
  readonly headLoss: number;
  /** Velocity through what is left of the openings, m/s. */
  readonly throughVelocity: number;
}

/** Head loss by Meusburger's formula and velocity through the openings; a closed rack passes nothing. */
export function rackState(
  rack: Rack,
  layerThickness: number,
  flow: number,
  barShapeFactor: number,
): RackState {
  const blocked = blockedShare(rack, layerThickness);
  const approach = flow / rackFace(rack);
  if (blocked >= 1) return { blocked, headLoss: Infinity, throughVelocity: Infinity };
  return {
    blocked,
    headLoss: meusburgerLoss({ blockedShare: blocked, angle: rack.angle }, barShapeFactor, approach),
    throughVelocity: approach / (1 - blocked),
  };
}

/**
 * A trash rack in a structure.
 * @param input.lossPriced what extra head loss costs in a month; the head handed over is never above the limit,
 *   since the rack is cleaned when it is reached
 */
export function rackComponent(
  input: {
    rack: Rack;
    elevation: number;
    flow: readonly number[];
    lossPriced: (extraHead: number, month: number) => readonly Priced[];
    outage?: Component["outage"];
  },
  context: LakeContext,
): Component {
  const { rack, flow } = input;
  const factorId = `hydraulics.bar-shape.${rack.barShape}`;
  const state = (layer: Layer, month: number) =>
    rackState(rack, layer.thickness, at(flow, month), context.assumed(factorId));
  const cleanLoss = flow.map((each) => rackState(rack, 0, each, context.assumed(factorId)).headLoss);
  return {
    name: "trash rack",
    kind: "rack",
    designFlow: Math.max(...flow),
    count: 1,
    surface: {
      place: { at: "elevation", elevation: input.elevation },
      velocity: flow.map((each) => each / rackFace(rack)),
    },
    wettedArea: rackFace(rack) * barSurfaceRatio(rack),
    cleaning: cleaningOf("rack", rackFace(rack), context),
    outage: input.outage,
    losses: (layer, month) => {
      const loss = Math.min(state(layer, month).headLoss, rack.headLossLimit);
      const lines = input.lossPriced(Math.max(0, loss - at(cleanLoss, month)), month);
      return lines.map((line) => ({ ...line, assumptionIds: [factorId, "growth.bulk-density"] }));
    },
    brokenLimit: (layer, month) => {
      const gapClosed = Math.min(1, (2 * layer.thickness) / rack.clearSpacing);
      return gapClosed > context.assumed("rack.gap-closed-limit")
        ? "gaps between the bars closed beyond the limit"
        : brokenLimit(rack, state(layer, month));
    },
  };
}

function brokenLimit(rack: Rack, state: RackState): string | undefined {
  if (state.headLoss > rack.headLossLimit) return "head loss above the limit";
  if (state.throughVelocity > rack.velocityLimit) return "velocity through the rack above the limit";
  return undefined;
}

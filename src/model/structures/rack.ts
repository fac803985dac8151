import { noElement } from "../../lists.js";
import { type BarFactors, barSurfaceRatio, blockedShare, rackFace, rackLoss } from "../hydraulics/rack.js";
import type { Layer } from "../mussels/layer.js";
import type { AssumptionId } from "../register/register.js";
import { cleaningOf, timesAsMuch } from "./cleaning.js";
import type { Component, Limit, Tell } from "./component.js";
import type { LakeContext } from "./context.js";
import type { Rack, RackFormula } from "./inputs.js";
import type { PipeFlow } from "./pipe.js";

/** The formula that the costs use; Meusburger's unless the study asks for another. */
export const costFormula = (rack: Rack): RackFormula => rack.formula ?? "meusburger";

/** Factors of each shape of bar, for the formulas that have one. */
export const barFactorIds = {
  rectangular: {
    shape: "hydraulics.bar-shape.rectangular",
    clark: "hydraulics.clark-bar-factor.rectangular",
  },
  "rounded-upstream": {
    shape: "hydraulics.bar-shape.rounded-upstream",
    clark: "hydraulics.clark-bar-factor.rounded-upstream",
  },
  "rounded-both": {
    shape: "hydraulics.bar-shape.rounded-both",
    clark: "hydraulics.clark-bar-factor.rounded-both",
  },
  round: { shape: "hydraulics.bar-shape.round", clark: "hydraulics.clark-bar-factor.round" },
} as const;

export function barFactors(rack: Rack, { assumed }: Pick<LakeContext, "assumed">): BarFactors {
  const { shape, clark } = barFactorIds[rack.barShape];
  return { shape: assumed(shape), clark: assumed(clark) };
}

/** Assumptions behind the head loss of a rack under a layer. */
function rackIds(rack: Rack): AssumptionId[] {
  const formula = costFormula(rack);
  const { shape, clark } = barFactorIds[rack.barShape];
  const ids = formula === "reclamation" ? [] : [formula === "clark" ? clark : shape];
  return [...ids, bulkDensityId];
}

/** In m; infinite once the rack is closed. */
export const rackHeadLoss = (rack: Rack, layerThickness: number, flow: number, factors: BarFactors): number =>
  rackLoss(costFormula(rack), rack, { layerThickness, approachVelocity: flow / rackFace(rack) }, factors);

/** Velocity through what is left of the openings, m/s; infinite once the rack is closed. */
export function rackVelocity(rack: Rack, layerThickness: number, flow: number): number {
  const blocked = blockedShare(rack, layerThickness);
  return blocked < 1 ? flow / rackFace(rack) / (1 - blocked) : Infinity;
}

/** The bars of a rack as a surface to grow on, at the velocity between them when they are clean. */
export function rackWall(
  rack: Rack,
  elevation: number,
  { flow, share }: PipeFlow,
): Pick<Component, "surface" | "wettedArea"> {
  const openArea = rackFace(rack) * (1 - blockedShare(rack, 0));
  return {
    surface: {
      place: { at: "elevation", elevation },
      velocity: flow.map((each) => each / openArea),
      running: share,
    },
    wettedArea: rackFace(rack) * barSurfaceRatio(rack),
  };
}
const gapLimitId = "rack.gap-closed-limit";
const bulkDensityId = "growth.bulk-density";
const gapsClosed: Limit = {
  broken: "gaps between the bars closed beyond the limit",
  assumptionIds: [gapLimitId, bulkDensityId],
};
const lossTooHigh: Limit = { broken: "head loss above the limit", assumptionIds: [bulkDensityId] };
const tooFast: Limit = {
  broken: "velocity through the rack above the limit",
  assumptionIds: [bulkDensityId],
};

/** Head loss of a rack under a layer in a month; losses and limits of one month ask for the same one after the other. */
function lossIn(rack: Rack, flow: readonly number[], factors: BarFactors) {
  let last: Layer | undefined;
  let lastMonth = 0;
  let known = 0;
  return (layer: Layer, month: number): number => {
    if (last !== layer || lastMonth !== month) {
      known = rackHeadLoss(rack, layer.thickness, flow[month] ?? noElement(flow, month), factors);
      last = layer;
      lastMonth = month;
    }
    return known;
  };
}

/** Tells what an extra head costs in a month. */
export type HeadLost = (tell: Tell, extraHead: number, month: number) => void;

/**
 * A trash rack in a structure, or several alike.
 * @param input.headLost tells what extra head loss costs in a month on all of them, by the assumptions handed over; the head
 *   handed over is never above the limit, since the rack is cleaned when it is reached
 */
export function rackComponent(
  input: {
    rack: Rack;
    /** Racks alike; one if left out. */
    count?: number;
    elevation: number;
    /** Through one of them while water runs. */
    flow: readonly number[];
    /** Share of each month in which it runs; all of it if left out. */
    share?: readonly number[];
    headLost: (assumptionIds: readonly AssumptionId[]) => HeadLost;
    /** Assumptions behind the price of a lost head, apart from the rack's own. */
    lossIds?: readonly AssumptionId[];
    outage?: Component["outage"];
    outageDaysId?: Component["outageDaysId"];
  },
  context: LakeContext,
): Component {
  const { rack, flow, count = 1 } = input;
  const factors = barFactors(rack, context);
  const wall = rackWall(rack, input.elevation, input);
  const headLost = input.headLost([...rackIds(rack), ...(input.lossIds ?? [])]);
  const headLoss = lossIn(rack, flow, factors);
  const gapLimit = context.assumed(gapLimitId);
  const cleanLoss = flow.map((each) => rackHeadLoss(rack, 0, each, factors));
  const cleanVelocity = flow.map((each) => rackVelocity(rack, 0, each));
  return {
    name: "trash rack",
    kind: "rack",
    surface: wall.surface,
    wettedArea: wall.wettedArea * count,
    designFlow: Math.max(...flow) * count,
    count,
    cleaning: timesAsMuch(cleaningOf("rack", rackFace(rack), context), count),
    outage: input.outage,
    outageDaysId: input.outageDaysId,
    losses: (tell, layer, month) => {
      const loss = Math.min(headLoss(layer, month), rack.headLossLimit);
      const clean = cleanLoss[month] ?? noElement(cleanLoss, month);
      headLost(tell, Math.max(0, loss - clean), month);
    },
    limit: (meet, layer, month) => {
      const { thickness } = layer;
      const velocity = rackVelocity(rack, thickness, flow[month] ?? noElement(flow, month));
      meet(gapsClosed, (2 * thickness) / rack.clearSpacing, gapLimit);
      meet(
        lossTooHigh,
        headLoss(layer, month),
        rack.headLossLimit,
        cleanLoss[month] ?? noElement(cleanLoss, month),
      );
      meet(tooFast, velocity, rack.velocityLimit, cleanVelocity[month] ?? noElement(cleanVelocity, month));
    },
  };
}

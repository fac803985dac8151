import { at } from "../../../lists.js";
import type { ByMonth } from "../../lake/calendar.js";
import type { Layer } from "../../mussels/layer.js";
import type { AssumptionId } from "../../register/register.js";
import type { Charge, Component } from "../component.js";
import type { LakeContext } from "../context.js";

/** Sprinklers at the end of the pipes; what is not given is typical. */
export interface Sprinklers {
  readonly area: number;
  readonly sprinklerCount?: number | undefined;
  readonly nozzleBore?: number | undefined;
  /** No sprinkler runs in a month without water. */
  readonly delivered: ByMonth;
}

const areaId = "irrigation.area-per-sprinkler";
const boreId = "irrigation.nozzle-bore";
const shareId = "irrigation.plugged-share";
const timeId = "irrigation.nozzle-time";
const labourId = "labour.maintenance-rate";
const mmPerM = 1e3;

/**
 * Share of nozzles that shells from the pipes before them plug in a month: that under a closed layer of shells as long
 * as the bore is wide, less where the layer is open, c < c1, or its shells are shorter than the bore,
 * p = p1 min(1, c/c1) min(1, L/b). Judged; no count was found.
 */
export function pluggedNozzles(
  layer: Layer,
  { share, closedCover, bore }: { share: number; closedCover: number; bore: number },
): number {
  const length = layer.lengthMm / mmPerM;
  return share * Math.min(1, layer.cover / closedCover) * Math.min(1, length / bore);
}

/** The pipe before the sprinklers, with the hours that its shells cost at the nozzles. */
export function withSprinklers(part: Component, sprinklers: Sprinklers, context: LakeContext): Component {
  const { assumed, roughness } = context;
  const count = sprinklers.sprinklerCount ?? sprinklers.area / assumed(areaId);
  const nozzle = {
    share: assumed(shareId),
    closedCover: roughness.closedCover,
    bore: sprinklers.nozzleBore ?? assumed(boreId),
  };
  const hoursEach = assumed(timeId);
  const assumptionIds: readonly AssumptionId[] = [
    shareId,
    "hydraulics.closed-cover",
    timeId,
    labourId,
    ...(sprinklers.nozzleBore === undefined ? ([boreId] as const) : []),
    ...(sprinklers.sprinklerCount === undefined ? ([areaId] as const) : []),
  ];
  const clearing: Charge = {
    what: "clearing plugged sprinklers",
    type: "work",
    quantityKind: "hours",
    unitRate: assumed(labourId),
    assumptionIds,
  };
  return {
    ...part,
    losses: (tell, layer, month) => {
      part.losses(tell, layer, month);
      if (at(sprinklers.delivered, month) === 0) return;
      tell(clearing, count * pluggedNozzles(layer, nozzle) * hoursEach);
    },
  };
}

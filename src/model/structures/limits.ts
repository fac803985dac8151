import { once, remembered } from "../computed-once.js";
import type { Layer } from "../mussels/layer.js";
import { cleaningOutage } from "./cleaning.js";
import type { Component, Limit, LimitLoad, Priced, Tell } from "./component.js";
import type { LakeContext } from "./context.js";

export const noLoad: LimitLoad = { limit: { broken: "", assumptionIds: [] }, load: 0 };

/** A part that has no limit. */
export const noLimit: Component["limit"] = () => noLoad;

/** What the layer adds over the room that the clean part leaves; infinite where that is none. */
export function loadOf(limit: Limit, value: number, allowed: number, clean = 0): LimitLoad {
  const added = value - clean;
  if (added <= 0) return { limit, load: 0 };
  const room = allowed - clean;
  return { limit, load: room > 0 ? added / room : Infinity };
}

/** The limit that is nearer; the first where both are as near. */
export const nearer = (one: LimitLoad, other: LimitLoad): LimitLoad => (other.load > one.load ? other : one);

const firstId = "limit.first-share";
const certainId = "limit.certain-share";
const factorId = "limit.forced-factor";
const forcedIds = [firstId, certainId, factorId] as const;

/** Tells what nearing its limits costs a part in a month: nothing far from them. */
export type ForcedCleaning = (tell: Tell, nearest: LimitLoad, month: number) => void;

/**
 * No limit is a wall: the nearer a layer comes to one, the likelier is a cleaning forced by it in the month, at short
 * notice and so dearer than one that was planned. F = P (f W + O), with a chance of P = u²(3 − 2u) by the load of the
 * nearest limit, x = (y − yc)/(yl − yc): u = min(1, max(0, (x − x0)/(x1 − x0))). What a rack's cleaning costs by mass is
 * not in W, and the layer is not taken to be gone after it.
 */
export function forcedCleaning(component: Component, { assumed }: LakeContext): ForcedCleaning {
  const chance = chanceAt(assumed(firstId), assumed(certainId));
  const factor = assumed(factorId);
  const work = once(() => component.cleaning.work().map((line) => forced(line, factor)));
  const certain = remembered((month: number): readonly Priced[] => [
    ...work(),
    ...cleaningOutage(component, assumed, month).map((line) => forced(line, 1)),
  ]);
  const underLimit = remembered((limit: Limit) =>
    remembered((month: number) =>
      certain(month).map((line) => ({
        ...line,
        assumptionIds: [...line.assumptionIds, ...limit.assumptionIds],
      })),
    ),
  );
  return (tell, { limit, load }, month) => {
    const share = chance(load);
    if (share === 0) return;
    for (const line of underLimit(limit)(month)) tell(line, line.quantity * share);
  };
}

function chanceAt(first: number, certain: number): (load: number) => number {
  return (load) => {
    if (load <= first) return 0;
    if (load >= certain) return 1;
    const way = (load - first) / (certain - first);
    return way * way * (3 - 2 * way);
  };
}

const forced = (line: Priced, factor: number): Priced => ({
  ...line,
  what: `${line.what}, forced`,
  type: "loss",
  unitRate: line.unitRate * factor,
  assumptionIds: [...line.assumptionIds, ...forcedIds],
});

/** The limit that a layer passes in a month, in words; undefined if none. */
export function brokenLimit({ limit }: Component, layer: Layer, month: number): string | undefined {
  const nearest = limit(layer, month);
  return nearest.load > 1 ? nearest.limit.broken : undefined;
}

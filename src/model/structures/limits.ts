import { once, remembered } from "../computed-once.js";
import { outageDays } from "./cleaning.js";
import type { Charge, Component, Limit, LimitLoad, Meet, Tell } from "./component.js";
import type { LakeContext } from "./context.js";

export const noLoad: LimitLoad = { limit: { broken: "", assumptionIds: [] }, load: 0 };

/** A part that has no limit. */
export const noLimit: Component["limit"] = () => {};

/** What the layer adds over the room that the clean part leaves; infinite where that is none. */
export function loadOf(value: number, allowed: number, clean = 0): number {
  const added = value - clean;
  if (added <= 0) return 0;
  const room = allowed - clean;
  return room > 0 ? added / room : Infinity;
}

/** The limit that comes nearest of those that a layer is held against; the first where two are as near. */
export class NearestLimit implements LimitLoad {
  limit: Limit = noLoad.limit;
  load = 0;

  readonly meet: Meet = (limit, value, allowed, clean) => {
    const load = loadOf(value, allowed, clean);
    if (load > this.load) {
      this.limit = limit;
      this.load = load;
    }
  };

  clear(): void {
    this.limit = noLoad.limit;
    this.load = 0;
  }
}

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
  const { outage } = component;
  const usualWork = once(() => component.cleaning.work());
  const underLimit = remembered((limit: Limit) => ({
    work: usualWork().map((line) => ({ quantity: line.quantity, charge: forced(line, factor, limit) })),
    outage: remembered((charge: Charge) => forced(charge, 1, limit)),
    days: outage === undefined ? 0 : outageDays(component, assumed),
  }));
  return (tell, { limit, load }, month) => {
    const share = chance(load);
    if (share === 0) return;
    const known = underLimit(limit);
    for (const { charge, quantity } of known.work) tell(charge, quantity * share);
    if (outage) tell(known.outage(outage.charge(month)), outage.quantity(known.days, month) * share);
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

const forced = (
  { what, quantityKind, unitRate, assumptionIds }: Charge,
  factor: number,
  limit: Limit,
): Charge => ({
  what: `${what}, forced`,
  type: "loss",
  quantityKind,
  unitRate: unitRate * factor,
  assumptionIds: [...assumptionIds, ...forcedIds, ...limit.assumptionIds],
});

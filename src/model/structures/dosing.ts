import type { ByMonth } from "../inputs.js";
import { at, daysInYear, daysOf, months, secondsPerDay } from "../lake/calendar.js";
import type { Component } from "./component.js";
import type { LakeContext } from "./context.js";

/**
 * Dosing an oxidant where water enters: settlers held off, cost by volume treated. The unit cost falls with the
 * plant's size: a power law from the published cost at 1 mgd to that above 10 mgd, level beyond (Chakraborti and
 * others 2016).
 * @param what name of the cost line
 */
export function oxidantOf(
  what: string,
  flow: ByMonth,
  context: LakeContext,
): NonNullable<Component["oxidant"]> {
  const ids = ["small-plant-cost", "small-plant-flow", "large-plant-cost", "large-plant-flow"].map(
    (name) => `oxidant.${name}`,
  );
  const [smallCost, smallFlow, largeCost, largeFlow] = ids.map((id) => context.assumed(id));
  const ends = {
    small: { cost: smallCost ?? 0, flow: smallFlow ?? 0 },
    large: { cost: largeCost ?? 0, flow: largeFlow ?? 0 },
  };
  const meanFlow = months.reduce((sum, month) => sum + at(flow, month) * daysOf(month), 0) / daysInYear;
  return {
    settlementFactor: context.assumed("oxidant.settlement-factor"),
    monthly: (month) => ({
      what,
      type: "protection",
      quantity: at(flow, month) * daysOf(month) * secondsPerDay,
      quantityKind: "volume",
      unitRate: costAtSize(meanFlow, ends),
      assumptionIds: [...ids, "oxidant.settlement-factor"],
    }),
  };
}

interface SizedCost {
  readonly cost: number;
  readonly flow: number;
}

/** Unit cost between two sizes on a power law; level beyond them. */
export function costAtSize(flow: number, ends: { small: SizedCost; large: SizedCost }): number {
  const { small, large } = ends;
  const bounded = Math.min(large.flow, Math.max(small.flow, flow));
  const exponent = Math.log(large.cost / small.cost) / Math.log(large.flow / small.flow);
  return small.cost * (bounded / small.flow) ** exponent;
}

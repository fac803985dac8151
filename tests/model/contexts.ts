import type { Assumed } from "../../src/model/assumed.js";
import type { Lake } from "../../src/model/lake/lake.js";
import { type LakeContext, lakeWater } from "../../src/model/structures/context.js";
import { planWeights } from "../../src/model/structures/plans/weights.js";
import { assumed, assumptionSet } from "./assumptions.js";

/** The contexts of a lake with the shipped catalogue of plans, at 3 %. */
export function contextsOf(lake: Lake, years: number, source: Assumed = assumed) {
  const water = lakeWater(lake, years, source, {
    plans: assumptionSet.plans,
    discountRate: 0.03,
    assumed: source,
    planWeights: planWeights(
      { horizon: years, discountRate: 0.03, timing: "mid-year", priceYear: 2025, startYear: 2026 },
      { isInfested: false, yearsInfested: 0 },
    ),
  });
  return water.under(lake);
}

/** The context of a lake with a schedule, which has one possible operating year. */
export function contextOf(lake: Lake, years: number, source: Assumed = assumed): LakeContext {
  return contextsOf(lake, years, source)[0];
}

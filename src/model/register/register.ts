import { comparisonAssumptions } from "./comparison.js";
import { deliveryAssumptions } from "./deliveries.js";
import { entryAssumptions } from "./entries.js";
import type { Expected } from "./expected.js";
import { hydraulicsAssumptions } from "./hydraulics.js";
import { musselAssumptions } from "./mussels.js";
import { rawWaterAssumptions } from "./raw-water.js";
import { suitabilityAssumptions } from "./suitability.js";
import { typedAssumptions } from "./typed.js";
import { upkeepAssumptions } from "./upkeep.js";

/**
 * Every assumption that the model reads by its id, with the unit and the bounds in which it expects it. The numbers of
 * protection plans are not here: a plan is data, and names the ids of its numbers itself (`plan-numbers.ts`).
 */
export const register = {
  ...comparisonAssumptions,
  ...deliveryAssumptions,
  ...entryAssumptions,
  ...hydraulicsAssumptions,
  ...musselAssumptions,
  ...rawWaterAssumptions,
  ...suitabilityAssumptions,
  ...typedAssumptions,
  ...upkeepAssumptions,
} as const satisfies Record<string, Expected>;

export type RegisteredId = keyof typeof register;

declare const namedByPlan: unique symbol;

/** The id of a number that an entry of the catalogue of protection plans names; only reading the catalogue makes one. */
type PlanNumberId = string & { readonly [namedByPlan]: true };

export type AssumptionId = RegisteredId | PlanNumberId;

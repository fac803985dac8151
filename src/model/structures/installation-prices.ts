import type { Assumed } from "../assumed.js";
import { capitalRecoveryFactor } from "../money/interest.js";
import type { PlanEntry } from "./catalogue.js";
import { planIds } from "./plan-ids.js";

/** What an installation of a plan costs by its size, and for how long it stands. */
export interface InstallationPrices {
  readonly assumptionIds: readonly string[];
  readonly capitalAtReference: number;
  readonly referenceSize: number;
  readonly sizeExponent: number;
  /** Share of the capital that a year costs: capital recovery and upkeep. */
  readonly yearlyShare: number;
  /** Days out of service while it is installed, and its life in years. */
  readonly outageIds: readonly string[];
}

const pricesIds = planIds(["capital", "reference-size", "size-exponent", "life", "upkeep"]);
const outageIds = planIds(["outage-days", "life"]);

/** Prices by the plan's entry; each is read once, since every part of the lake is offered it. */
export function installationPrices(
  discountRate: number,
  assumed: Assumed,
): (entry: PlanEntry) => InstallationPrices {
  const known = new Map<string, InstallationPrices>();
  return ({ numbers }) => {
    const prices = known.get(numbers) ?? read(numbers, discountRate, assumed);
    known.set(numbers, prices);
    return prices;
  };
}

function read(numbers: string, discountRate: number, assumed: Assumed): InstallationPrices {
  const assumptionIds = pricesIds({ numbers });
  const [capital = 0, referenceSize = 1, sizeExponent = 1, life = 1, upkeep = 0] = assumptionIds.map(assumed);
  return {
    assumptionIds,
    capitalAtReference: capital * referenceSize,
    referenceSize,
    sizeExponent,
    yearlyShare: capitalRecoveryFactor(discountRate, life) + upkeep,
    outageIds: outageIds({ numbers }),
  };
}

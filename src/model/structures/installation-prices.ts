import type { Assumed } from "../assumed.js";
import { capitalRecoveryFactor } from "../money/interest.js";
import type { AssumptionId } from "../register/register.js";
import type { InstalledPlan } from "./catalogue.js";

/** What an installation of a plan costs by its size, and for how long it stands. */
export interface InstallationPrices {
  readonly assumptionIds: readonly AssumptionId[];
  readonly capitalAtReference: number;
  readonly referenceSize: number;
  readonly sizeExponent: number;
  /** Share of the capital that a year costs: capital recovery and upkeep. */
  readonly yearlyShare: number;
  /** Assumptions on the days out of service while it is installed, and on its life in years. */
  readonly outage: { readonly days: AssumptionId; readonly life: AssumptionId };
}

/** Prices by the plan's entry; each is read once, since every part of the lake is offered it. */
export function installationPrices(
  discountRate: number,
  assumed: Assumed,
): (entry: InstalledPlan) => InstallationPrices {
  const known = new Map<InstalledPlan["numbers"], InstallationPrices>();
  return ({ numbers }) => {
    const prices = known.get(numbers) ?? read(numbers, discountRate, assumed);
    known.set(numbers, prices);
    return prices;
  };
}

function read(
  { capital, referenceSize, sizeExponent, life, upkeep, outageDays }: InstalledPlan["numbers"],
  discountRate: number,
  assumed: Assumed,
): InstallationPrices {
  const price = assumed(capital);
  const size = assumed(referenceSize);
  return {
    assumptionIds: [capital, referenceSize, sizeExponent, life, upkeep],
    capitalAtReference: price * size,
    referenceSize: size,
    sizeExponent: assumed(sizeExponent),
    yearlyShare: capitalRecoveryFactor(discountRate, assumed(life)) + assumed(upkeep),
    outage: { days: outageDays, life },
  };
}

import { at } from "../../lists.js";
import { clusteredMean } from "../../model/futures/clusters.js";
import type { JoinedFutures } from "./joined-futures.js";
import type { AvoidedByAccount } from "./odds.js";

/** The same futures with the other losses that staff entered; absent where they entered none. */
export function withOtherLosses(futures: JoinedFutures): JoinedFutures | undefined {
  const { expected, cost, other, otherCost } = futures;
  if (!other.some((loss) => loss !== 0) && !otherCost.some((loss) => loss !== 0)) return undefined;
  return {
    ...futures,
    expected: expected.map((amount, future) => amount + at(other, future)),
    cost: cost.map((amount, future) => amount + at(otherCost, future)),
  };
}

/** What an option avoids on average, told apart by what it is; damage is the rest of the loss avoided. */
export function avoidedByAccount(
  option: JoinedFutures,
  baseline: JoinedFutures,
  { blocks, avoidedLoss }: { readonly blocks: number; readonly avoidedLoss: number },
): AvoidedByAccount {
  const less = (account: "duty" | "policy" | "other") =>
    clusteredMean(
      option[account].map((loss, future) => at(baseline[account], future) - loss),
      blocks,
    ).value;
  const [duty, policy] = [less("duty"), less("policy")];
  return { damage: avoidedLoss - duty - policy, duty, policy, other: less("other") };
}

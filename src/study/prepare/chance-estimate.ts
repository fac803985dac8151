import type { Assumption } from "../../assumptions/entry.js";
import type { AppliedOverride } from "../../assumptions/override.js";
import type { Assumed } from "../../model/assumed.js";
import { isBaseline } from "../../model/compare.js";
import type { StudyInput } from "../../model/inputs.js";
import { throughBoats } from "../../model/program/arrivals.js";
import { foundingChances } from "../../model/program/founding-chances.js";
import { type LogSpreads, lakesVariance, launchesVariance, weightOf } from "../../model/risk/weighing.js";
import { normalQuantile } from "../../model/uncertainty/normal-quantile.js";
import type { StudyDocument } from "../format/schema.js";
import type { ChanceEstimate } from "./to-model.js";

/** What stands in place of an estimate until the boats themselves are known. */
export const notYetEstimated: ChanceEstimate = { weightOfBoats: 1, checksLetThrough: 1, learned: undefined };

/** How the two ways to the chance weigh, and what of an own rate its checks let through. */
export function estimateOf(
  { boats: { chance } }: StudyDocument,
  input: StudyInput,
  assumed: Assumed,
  spreads: LogSpreads,
): ChanceEstimate {
  const { boats } = input;
  return {
    weightOfBoats:
      chance.drivenBy === "both"
        ? weightOf(launchesVariance(boats, assumed, spreads), lakesVariance(boats, assumed, spreads))
        : Number(chance.drivenBy === "launches"),
    checksLetThrough:
      chance.ownRate?.under === undefined ? 1 : letThrough(chance.ownRate.under, input, assumed),
    learned: undefined,
  };
}

/** Share of fouled launches that an option's checks let through, by the foundings they would make. */
function letThrough(optionId: string, { boats, options, lake }: StudyInput, assumed: Assumed): number {
  const chances = foundingChances(boats, assumed);
  const foundingsOf = (option: StudyInput["options"][number] | undefined) =>
    option ? throughBoats(boats, option, lake, assumed, chances).foundings : 0;
  const open = foundingsOf(options.find(isBaseline));
  const through = foundingsOf(options.find(({ id }) => id === optionId));
  return open === 0 || through === 0 ? 1 : through / open;
}

/** Standard deviations of ln of assumptions, with a study's own values: nothing for one that it gives without a range. */
export function logSpreadsOf(
  entries: ReadonlyMap<string, Assumption>,
  overrides: readonly AppliedOverride[],
): LogSpreads {
  const own = new Map(overrides.map(({ entry, spread }) => [entry.id, spread]));
  return (id) => {
    const entry = entries.get(id);
    if (own.has(id)) {
      const spread = own.get(id);
      return spread && "low" in spread ? logSpread(spread.low, spread.high) : 0;
    }
    return entry ? logSpread(entry.low, entry.high) : 0;
  };
}

/** From the range that holds a quantity with a chance of 80 %. */
const logSpread = (low: number, high: number) => (low > 0 ? Math.log(high / low) / 2 / toNinetieth : 0);
/** Standard deviations from the median to the 90th percentile of a normal distribution. */
const toNinetieth = normalQuantile(0.9);

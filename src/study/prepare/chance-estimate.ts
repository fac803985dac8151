import type { Assumption } from "../../assumptions/entry.js";
import type { AppliedOverride } from "../../assumptions/override.js";
import { at } from "../../lists.js";
import type { Assumed } from "../../model/assumed.js";
import { isBaseline, ratesOf } from "../../model/compare.js";
import { lakeRecord } from "../../model/founding/lake-record.js";
import type { LearnedRate, StudyInput } from "../../model/inputs.js";
import { suitability } from "../../model/lake/suitability.js";
import { throughBoats } from "../../model/program/arrivals.js";
import { foundingChances, togetherOf } from "../../model/program/founding-chances.js";
import { chanceBySamples, foundWithin } from "../../model/risk/detection.js";
import { type LogSpreads, lakesVariance, launchesVariance, weightOf } from "../../model/risk/weighing.js";
import { normalQuantile } from "../../model/uncertainty/normal-quantile.js";
import type { StudyDocument } from "../format/schema.js";
import type { ChanceEstimate } from "./to-model.js";

/** What stands in place of an estimate until the boats themselves are known. */
export const notYetEstimated: ChanceEstimate = { weightOfBoats: 1, checksLetThrough: 1, learned: undefined };

/** How the two ways to the chance weigh, and what of an own rate its checks let through. */
export function estimateOf(
  { boats: { chance, cleanPeriods } }: StudyDocument,
  input: StudyInput,
  assumed: Assumed,
  spreads: LogSpreads,
): ChanceEstimate {
  const { boats } = input;
  const variances = {
    launches: launchesVariance(boats, assumed, spreads),
    lakes: lakesVariance(boats, assumed, spreads),
  };
  const weights: Record<typeof chance.drivenBy, number> = {
    both: weightOf(variances.launches, variances.lakes),
    launches: 1,
    lakes: 0,
  };
  const weightOfBoats = weights[chance.drivenBy];
  const { under } = chance.ownRate ?? {};
  const checksLetThrough = under === undefined ? 1 : letThrough(under, input, assumed);
  const weighed = withWeights(input, { weightOfBoats, checksLetThrough });
  const variance = weightOfBoats ** 2 * variances.launches + (1 - weightOfBoats) ** 2 * variances.lakes;
  return {
    weightOfBoats,
    checksLetThrough,
    learned: learnedFrom(cleanPeriods, weighed, Math.sqrt(variance), assumed),
  };
}

const withWeights = (input: StudyInput, weights: Omit<ChanceEstimate, "learned">): StudyInput => ({
  ...input,
  boats: { ...input.boats, comparable: { ...input.boats.comparable, ...weights } },
});

/** What years without a find make of the rate without a program, all ways in together; nothing where none are entered. */
function learnedFrom(
  periods: StudyDocument["boats"]["cleanPeriods"],
  input: StudyInput,
  spreadOfBoats: number,
  assumed: Assumed,
): LearnedRate | undefined {
  if (periods.length === 0) return undefined;
  const rates = ratesOf(input, suitability(input.lake, assumed).weight, assumed);
  const ofBoats = rates.ofBoats * openFoundings(input, assumed);
  const [unchecked, checked] = [at(rates.unchecked, 0), at(rates.checked, 0)];
  const all = ofBoats + unchecked + checked;
  if (all === 0) return undefined;
  const spread = (spreadOfBoats * ofBoats) / all;
  const clean = periods.map(({ from, to, launches, under }) => {
    const through = launches.value * (under === undefined ? 1 : letThrough(under, input, assumed));
    return { years: to - from + 1, factor: ((ofBoats + checked) * through + unchecked) / all };
  });
  const found = lakeRecord({ median: all, spread }, clean, usualDetection(assumed));
  return {
    medianBefore: all,
    medianAfter: all * found.medianFactor,
    narrowing: spread === 0 ? 1 : found.spread / spread,
    chanceOfClean: found.chanceOfClean,
    infestedUnseen: found.infestedUnseen,
  };
}

/** As a lake is usually watched for mussels. */
const usualDetection = (assumed: Assumed) =>
  chanceBySamples({ planktonTows: assumed("detection.usual-tows") }, foundWithin.length, assumed);

function openFoundings({ boats, options, lake }: StudyInput, assumed: Assumed): number {
  const open = options.find(isBaseline);
  if (!open) return 0;
  const through = throughBoats(boats, open, lake, assumed, foundingChances(boats, assumed));
  return togetherOf(through, assumed);
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

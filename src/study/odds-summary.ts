import { clusteredMean, clusteredQuantile, type Estimate } from "../model/futures/clusters.js";
import { at } from "../model/lake/calendar.js";
import { discountFactors, equivalentYearly } from "../model/money/interest.js";
import { normalQuantile } from "../model/uncertainty/normal-quantile.js";
import type { DrawSettings, LakeFutures } from "./draws.js";
import { type Odds, type OptionOdds, type ToldQuantile, type ToldShare, toldShares } from "./odds.js";
import type { StudyDocument } from "./schema.js";

/** What the futures say of the costs. */
export type OddsSummary = Pick<Odds, "settings" | "futures" | "lakes" | "inputs" | "baseline"> & {
  readonly options: readonly OptionSummary[];
};

export type OptionSummary = Pick<
  OptionOdds,
  "id" | "name" | "meanCost" | "cost" | "infested" | "against" | "budget"
>;

/** Share of the futures in which the budget is enough. */
const budgetConfidence = 0.8;
/** Of the intervals. */
const confidence = 0.95;

/** What was drawn. */
interface Drawn {
  readonly settings: DrawSettings;
  /** How many quantities were. */
  readonly inputs: number;
  /** Two or more draws of the lake, in the order of their blocks and places. */
  readonly lakes: readonly LakeFutures[];
}

export function summaryOf(document: StudyDocument, { settings, inputs, lakes }: Drawn): OddsSummary {
  const costs = document.options.map((_, option) => ({
    expected: joined(lakes.map(({ expected }) => at(expected, option))),
    cost: joined(lakes.map(({ cost }) => at(cost, option))),
    establishment: joined(lakes.map(({ establishment }) => at(establishment, option))),
  }));
  const { horizon, discountRate, timing } = document.money;
  const factors = discountFactors(horizon, discountRate.value, timing);
  const place = document.options.findIndex(({ steps, schedule }) => !steps && schedule === undefined);
  const clusters = lakes.length;
  return {
    settings,
    futures: at(costs, 0).cost.length,
    lakes: clusters,
    inputs,
    baseline: at(document.options, place).id,
    options: document.options.map(({ id, name }, option) => {
      const { expected, cost, establishment } = at(costs, option);
      const budget = clusteredQuantile(cost, clusters, budgetConfidence, confidence);
      const yearly = (amount: number) => equivalentYearly(amount, factors);
      return {
        id,
        name,
        meanCost: clusteredMean(expected, clusters),
        cost: quantiles(cost, clusters),
        infested: shareOf(
          establishment.map((year) => Number(year < horizon)),
          clusters,
        ),
        against: option === place ? undefined : against(at(costs, option), at(costs, place), clusters),
        budget: {
          confidence: budgetConfidence,
          value: yearly(budget.value),
          low: yearly(budget.low),
          high: yearly(budget.high),
        },
      };
    }),
  };
}

type Costs = Record<"expected" | "cost" | "establishment", Float64Array>;

function against(option: Costs, baseline: Costs, clusters: number): OptionOdds["against"] {
  const less = (of: "expected" | "cost") => option[of].map((cost, future) => at(baseline[of], future) - cost);
  const positive = (values: Float64Array) => values.map((value) => Number(value > 0));
  const netBenefits = less("cost");
  const onAverage = less("expected");
  return {
    cheaper: shareOf(positive(netBenefits), clusters),
    worthIt: shareOf(positive(onAverage), clusters),
    netBenefit: clusteredMean(onAverage, clusters),
    netBenefits: quantiles(netBenefits, clusters),
  };
}

const quantiles = (values: Float64Array, clusters: number): ToldQuantile[] =>
  toldShares.map((share) => ({ share, ...clusteredQuantile(values, clusters, share, confidence) }));

function shareOf(flags: Float64Array, clusters: number): ToldShare {
  const { value, standardError }: Estimate = clusteredMean(flags, clusters);
  const margin = normalQuantile((1 + confidence) / 2) * standardError;
  return { value, low: Math.max(0, value - margin), high: Math.min(1, value + margin) };
}

function joined(lists: readonly (Float64Array | Int16Array)[]): Float64Array {
  const all = new Float64Array(lists.reduce((sum, { length }) => sum + length, 0));
  let place = 0;
  for (const list of lists) {
    all.set(list, place);
    place += list.length;
  }
  return all;
}

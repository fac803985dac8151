import type { Comparison } from "../../model/compare.js";
import type { Bearer } from "../../model/money/bearer.js";
import type { OptionResult } from "../../model/option.js";
import type { OptionBalance } from "../../model/option-balance.js";
import type { FoundOdds, FuturesOdds, Odds, PlanTurn } from "../../study/odds/odds.js";
import type { StudyRun } from "../../study/prepare/compute.js";
import type { SearchResult } from "../../study/search/result.js";
import type { Confidences } from "../../study/traced/confidence.js";
import type { TracedResult } from "../../study/traced/traced.js";
import type { TracedOption } from "../../study/traced/traced-option.js";
import type { TracedRequest } from "../../study/traced/traced-request.js";
import { type Formatter, formatter, percent } from "../words/format.js";
import type { StudyUnits } from "../words/usual-and-own.js";
import { type Headline, headlineOf, type WeighedBalance, weighedBy } from "./headline.js";

/** What every part of the report works from. */
export interface ReportContext {
  readonly run: StudyRun;
  readonly comparison: Comparison;
  readonly traced: TracedResult;
  /** At central values. */
  readonly requested: OptionBalance;
  /**
   * The answer by the odds. Absent where the lake is infested and nothing is to be kept out, and while a person types,
   * where figures come before their odds are drawn; every report has it.
   */
  readonly headline: Headline | undefined;
  /** Parts for which another plan wins in some of the draws; none where no odds were drawn. */
  readonly planTurns: readonly PlanTurn[];
  /** What it says to a budget office; absent where it says nothing of that. */
  readonly request: TracedRequest | undefined;
  /** What is done once mussels are found, by the odds; absent without them, and where the study says nothing of it. */
  readonly foundOdds: { readonly without: FoundOdds; readonly withIt: FoundOdds } | undefined;
  /** How firm its findings are; absent without what matters in the odds. */
  readonly confidence: Confidences | undefined;
  /** What the study's search found; absent where it has none. */
  readonly search: SearchResult | undefined;
  /** What the answer rests on: the headline, or the case at central values in its place. */
  readonly weighed: (option: OptionBalance) => WeighedBalance;
  readonly format: Formatter;
  readonly horizon: number;
  readonly priceYear: number;
  /** Set where the lake is infested already: the report is then a maintenance budget. */
  readonly infestedSince: number | undefined;
  /** The program in force, where it is another than none and the lake is not infested yet. */
  readonly existing: OptionResult | undefined;
  /** A bearer's name, or the names of several with their shares. */
  readonly bearerName: (bearer: Bearer) => string;
  /** Number of an assumption in the appendix: "A12". */
  readonly assumptionNumber: (id: string) => string;
}

type ContextOdds = FuturesOdds & Partial<Pick<Odds, "matters" | "planTurns" | "search">>;

/** @param odds those of the run, if they were drawn */
export function reportContext(run: StudyRun, odds?: ContextOdds): ReportContext {
  const { document, comparison, usedAssumptions } = run;
  const traced = run.traced();
  const numbers = new Map([...usedAssumptions].sort().map((id, index) => [id, `A${index + 1}`]));
  const headline =
    document.lake.infestedSince === undefined && odds ? headlineOf(odds, comparison) : undefined;
  const bearers = new Map(document.money.bearers.map(({ id, name }) => [id, name]));
  return {
    run,
    comparison,
    traced,
    requested: requestedOption(run),
    headline,
    planTurns: odds?.planTurns ?? [],
    request: run.request(odds),
    foundOdds: odds && foundOddsOf(odds),
    confidence: headline && hasMatters(odds) ? run.confidence(odds) : undefined,
    search: odds?.search,
    weighed: (option) => weighedBy(headline, option, comparison.discountFactors),
    format: formatter(document.money.currency, document.study.units),
    horizon: document.money.horizon,
    priceYear: document.money.priceYear,
    infestedSince: document.lake.infestedSince,
    existing: traced.existing,
    bearerName: (bearer) =>
      typeof bearer === "string"
        ? (bearers.get(bearer) ?? bearer)
        : bearer.map(({ id, share }) => `${bearers.get(id) ?? id} ${percent(share, 4)}`).join(", "),
    assumptionNumber: (id) => numbers.get(id) ?? "",
  };
}

function foundOddsOf({ options, baseline, requested }: ContextOdds): ReportContext["foundOdds"] {
  const [without, withIt] = [baseline, requested].map((id) => options.find((each) => each.id === id)?.found);
  return without && withIt && { without, withIt };
}

const hasMatters = (odds: ContextOdds | undefined): odds is FuturesOdds & Pick<Odds, "matters"> =>
  odds?.matters !== undefined;

/** The units and the money that values of assumptions are told in. */
export const studyUnits = ({ format, run }: Pick<ReportContext, "format" | "run">): StudyUnits => ({
  format,
  factorOf: run.prices.factorOf,
});

export function requestedOption({
  document,
  comparison,
}: Pick<StudyRun, "document" | "comparison">): OptionBalance {
  const found = comparison.options.find(({ result }) => result.option.id === document.study.requestedOption);
  if (!found) throw new Error(`no option ${document.study.requestedOption}`);
  return found;
}

export const allOptions = ({ comparison }: Pick<ReportContext, "comparison">): OptionResult[] => [
  comparison.baseline,
  ...comparison.options.map(({ result }) => result),
];

/** What is told of an option of the comparison. */
export function tracedOf({ traced }: Pick<ReportContext, "traced">, optionId: string): TracedOption {
  const found = traced.options.find(({ result }) => result.option.id === optionId);
  if (!found) throw new Error(`no traced option ${optionId}`);
  return found;
}

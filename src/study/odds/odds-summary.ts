import { at } from "../../lists.js";
import { clusteredMean } from "../../model/futures/clusters.js";
import { lakesPerBlock } from "../../model/futures/draw-plan.js";
import { expectedRegret } from "../../model/uncertainty/expected-regret.js";
import { sampleQuantiles } from "../../model/uncertainty/sample-quantile.js";
import type { StudyDocument } from "../format/schema.js";
import { isCounted } from "../papers/phase-prices.js";
import type { DrawnStudy } from "./draws.js";
import { foundOdds } from "./found-odds.js";
import type { DrawnFutures, JoinedFutures } from "./joined-futures.js";
import type { FuturesOdds, Odds, OptionOdds } from "./odds.js";
import type { OddsSettings } from "./odds-settings.js";
import { oddsOfOption, confidence as ofIntervals, yearlyBudget } from "./option-odds.js";
import { comparedOptions } from "./stop-drawing.js";

/** A study and how it was drawn. */
interface SummarisedStudy {
  readonly document: StudyDocument;
  readonly drawn: DrawnStudy;
  readonly settings: OddsSettings;
}

/**
 * What all futures of a study say together.
 * @param futures of whole blocks, two or more
 */
export function oddsSummary(
  { document, drawn, settings }: SummarisedStudy,
  futures: DrawnFutures,
  end: Odds["end"],
): FuturesOdds {
  const { options, money, study } = document;
  const { annuities } = futures;
  const lakes = annuities.length;
  const blocks = lakes / lakesPerBlock;
  const { baseline } = comparedOptions(document);
  const benefits = futures.options.map(({ expected }) => Array.from(expected, (cost) => -cost));
  const regrets = expectedRegret(benefits);
  const perfect = clusteredMean(regrets.ofBest, blocks);
  const { confidence } = settings;
  const counted = (document.report.found?.phases ?? []).map(isCounted);
  const ofBlocks = { blocks, startYear: money.startYear, horizon: money.horizon };
  return {
    settings: { seed: settings.seed, sampling: settings.sampling },
    futures: at(benefits, 0).length,
    lakes,
    blocks,
    end,
    inputs: drawn.inputs.length,
    requested: study.requestedOption,
    baseline: at(options, baseline).id,
    options: options.map(({ id, name }, option) => {
      const own = at(futures.options, option);
      return {
        id,
        name,
        ...oddsOfOption(own, option === baseline ? undefined : at(futures.options, baseline), ofBlocks),
        budget: { confidence, ...yearlyBudget(own, { annuities, blocks }, confidence) },
        ...cleanProgram(document, own, { annuities, central: at(drawn.cleanProgram, option) }),
        found: foundOdds(own, { blocks, confidence: ofIntervals, isCounted: counted }),
        regret: at(regrets.byOption, option),
      };
    }),
    perfectInformation: perfect.value,
    perfectInformationError: perfect.standardError,
  };
}

/** What the program alone costs a year, by the draws of the lake, where a contingency is asked for. */
function cleanProgram(
  { report }: StudyDocument,
  own: Pick<JoinedFutures, "cleanProgram">,
  { annuities, central }: { readonly annuities: Float64Array; readonly central: number },
): Pick<OptionOdds, "cleanProgram"> {
  const confidence = report.ask.contingency?.confidence.value;
  if (confidence === undefined) return {};
  const yearly = own.cleanProgram.map((cost, lake) => cost / at(annuities, lake));
  const value = at(sampleQuantiles(yearly, [confidence]), 0);
  return { cleanProgram: { central, value, confidence } };
}

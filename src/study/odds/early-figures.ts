import { at, meanOf } from "../../lists.js";
import type { StudyDocument } from "../format/schema.js";
import type { DrawnFutures } from "./joined-futures.js";
import { comparedOptions } from "./stop-drawing.js";

/** What the first draws say while more are made: for the screen alone, since a few points of it still move. */
export interface EarlyFigures {
  readonly lakes: number;
  readonly options: readonly EarlyOption[];
}

interface EarlyOption {
  readonly name: string;
  readonly meanCost: number;
  readonly everInfested: number;
  /** Against the option that does nothing; absent for that one. */
  readonly against: { readonly netBenefit: number; readonly cheaper: number } | undefined;
}

/** Of each option on average over the futures so far. */
export function earlyFigures(document: StudyDocument, futures: DrawnFutures): EarlyFigures {
  const { baseline } = comparedOptions(document);
  const own = (option: number) => at(futures.options, option);
  const mean = (figures: Float64Array) => meanOf([...figures]);
  const meanCost = (option: number) => mean(own(option).expected);
  const cheaper = (option: number) => {
    const { cost } = own(baseline);
    return mean(own(option).cost.map((amount, future) => Number(amount < at(cost, future))));
  };
  const options = document.options.map(({ name }, option): EarlyOption => {
    const against =
      option === baseline
        ? undefined
        : { netBenefit: meanCost(baseline) - meanCost(option), cheaper: cheaper(option) };
    const everInfested = mean(own(option).everInfested);
    return { name, meanCost: meanCost(option), everInfested, against };
  });
  return { lakes: futures.annuities.length, options };
}

import { at, meanOf, sumOf } from "../../lists.js";
import type { StudyDocument } from "../format/schema.js";
import type { DrawnFutures } from "./joined-futures.js";
import type { Sensitivity } from "./odds.js";
import { comparedOptions } from "./stop-drawing.js";

/** What the first draws say while more are made: for the screen alone, since a few points of it still move. */
export interface EarlyFigures {
  readonly lakes: number;
  readonly options: readonly EarlyOption[];
  /** Once there are enough draws to tell. */
  readonly matters?: Sensitivity;
}

interface EarlyOption {
  readonly name: string;
  readonly meanCost: number;
  readonly everInfested: number;
  /** Against the option that does nothing; absent for that one. */
  readonly against: { readonly netBenefit: number; readonly cheaper: number } | undefined;
}

/** Of each option on average over the futures so far. */
export function earlyFigures(document: StudyDocument, parts: readonly DrawnFutures[]): EarlyFigures {
  const { baseline } = comparedOptions(document);
  const mean = (figures: (of: DrawnFutures["options"]) => Float64Array) =>
    meanOf(parts.flatMap((part) => [...figures(part.options)]));
  const meanCost = (option: number) => mean((of) => at(of, option).expected);
  const cheaper = (option: number) =>
    mean((of) =>
      at(of, option).cost.map((amount, future) => Number(amount < at(at(of, baseline).cost, future))),
    );
  const options = document.options.map(({ name }, option): EarlyOption => {
    const against =
      option === baseline
        ? undefined
        : { netBenefit: meanCost(baseline) - meanCost(option), cheaper: cheaper(option) };
    const everInfested = mean((of) => at(of, option).everInfested);
    return { name, meanCost: meanCost(option), everInfested, against };
  });
  return { lakes: sumOf(parts.map(({ annuities }) => annuities.length)), options };
}

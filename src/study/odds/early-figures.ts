import { at, meanOf } from "../../lists.js";
import type { StudyDocument } from "../format/schema.js";
import type { LakeFutures } from "./draws.js";
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
export function earlyFigures(document: StudyDocument, lakes: readonly LakeFutures[]): EarlyFigures {
  const { baseline } = comparedOptions(document);
  const mean = (ofLake: (lake: LakeFutures) => readonly number[]) =>
    meanOf(lakes.map((lake) => meanOf(ofLake(lake))));
  const meanCost = (option: number) => mean(({ expected }) => at(expected, option));
  const cheaper = (option: number) =>
    mean(({ cost }) =>
      at(cost, option).map((amount, future) => Number(amount < at(at(cost, baseline), future))),
    );
  const options = document.options.map(({ name }, option): EarlyOption => {
    const against =
      option === baseline
        ? undefined
        : { netBenefit: meanCost(baseline) - meanCost(option), cheaper: cheaper(option) };
    const everInfested = mean((lake) => at(lake.everInfested, option));
    return { name, meanCost: meanCost(option), everInfested, against };
  });
  return { lakes: lakes.length, options };
}

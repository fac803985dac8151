import type { AssumptionSet } from "#product/assumptions/entry.js";
import { clusteredMean, clusteredQuantiles, type Estimate } from "#product/model/futures/clusters.js";
import { lakesPerBlock } from "#product/model/futures/draw-plan.js";
import type { StudyDocument } from "#product/study/format/schema.js";
import { oddsSettings } from "#product/study/format/uncertainty-schema.js";
import { drawnStudy, type LakeFutures } from "#product/study/odds/draws.js";
import { joinedFutures } from "#product/study/odds/joined-futures.js";
import { oddsSummary } from "#product/study/odds/odds-summary.js";
import { blocksToDo, comparedOptions } from "#product/study/odds/stop-drawing.js";
import type { LakeFigures } from "./plain-lakes.js";

/** Figures of lakes that are independent of one another, each with its standard error. */
export interface Told {
  readonly lakes: number;
  readonly netBenefit: Estimate;
  readonly loss: Estimate;
  readonly cheaper: Estimate;
  readonly worthIt: Estimate;
  readonly everInfested: Estimate;
  /** The cost without a program that 19 of 20 futures do not exceed, and the limits of its interval of 95 %. */
  readonly p95: { readonly value: number; readonly low: number; readonly high: number };
}

export function told(lakes: readonly LakeFigures[]): Told {
  const meanOf = (key: "netBenefit" | "loss" | "cheaper" | "worthIt" | "everInfested") =>
    clusteredMean(
      lakes.map((lake) => lake[key]),
      lakes.length,
    );
  const costs = lakes.flatMap((lake) => lake.costs);
  const [p95 = { value: 0, low: 0, high: 0 }] = clusteredQuantiles(costs, lakes.length, [0.95], 0.95);
  return {
    ...{ lakes: lakes.length, netBenefit: meanOf("netBenefit"), loss: meanOf("loss") },
    ...{ cheaper: meanOf("cheaper"), worthIt: meanOf("worthIt"), everInfested: meanOf("everInfested"), p95 },
  };
}

interface Changes {
  readonly mostFutures?: number;
  /** Lakes drawn already, of whole blocks from the first on. */
  readonly known?: readonly LakeFutures[];
}

/** What the odds of a study say, drawn as they always are, or of fewer futures. */
export function estimated(
  document: StudyDocument,
  assumptions: AssumptionSet,
  { known = [], ...changes }: Changes = {},
) {
  const settings = { ...oddsSettings(document.study.uncertainty), ...changes };
  const drawn = drawnStudy(document, assumptions, settings);
  const lakes: LakeFutures[] = [];
  let next = blocksToDo([], comparedOptions(document), settings);
  while (!("end" in next)) {
    for (let added = 0; added < next.blocks; added++) {
      const block = lakes.length / lakesPerBlock;
      for (let lake = 0; lake < lakesPerBlock; lake++)
        lakes.push(known[lakes.length] ?? drawn.futures(block, lake));
    }
    next = blocksToDo([joinedFutures(lakes)], comparedOptions(document), settings);
  }
  const odds = oddsSummary({ document, drawn, settings }, joinedFutures(lakes), next.end);
  const none = odds.options.find(({ id }) => id === odds.baseline);
  const against = odds.options.find(({ id }) => id === odds.requested)?.against;
  if (!none || !against) throw new Error("the odds lack an option");
  return {
    ...{ seed: settings.seed, lakes: lakes.length, netBenefit: against.netBenefit },
    ...{
      loss: none.meanCost.value - none.programCost.value,
      cheaper: against.cheaper,
      worthIt: against.worthIt,
    },
    ...{ everInfested: none.everInfested, p95: none.cost.find(({ share }) => share === 0.95) },
  };
}

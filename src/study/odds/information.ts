import { meanOf } from "../../lists.js";
import { futuresPerBlock, lakesPerBlock } from "../../model/futures/draw-plan.js";
import type { Benefits } from "../../model/uncertainty/expected-regret.js";
import { parameterInformation } from "../../model/uncertainty/parameter-information.js";
import { sharesOf } from "./block-values.js";
import type { DrawnStudy } from "./draws.js";
import type { Information } from "./odds.js";

/** Most inputs that are told. */
const mostShown = 10;
/** Draws of a parameter that are taken together: lakes, or futures. */
const together = { lake: 16, chances: 128 };

/**
 * What knowing an input exactly before choosing is worth, of those inputs for which that is more than two standard errors.
 * An input of the lake's stage has one value for all futures of a lake: it is held against the mean over these, an input
 * of the other stage against each future. Only the order of its values counts, which is that of their shares.
 * @param benefits of each option on average over luck, in the order of blocks, lakes and futures
 */
export function inputInformation({ inputs, plan }: DrawnStudy, benefits: Benefits): Information[] {
  const futures = benefits[0]?.length ?? 0;
  const draws = Array.from({ length: futures / futuresPerBlock }, (_, block) => sharesOf(plan, block));
  const byStage = { lake: benefits.map(lakeMeans), chances: benefits };
  return inputs
    .map(({ id, name, stage }) => {
      const shares = draws.flatMap((block) => block[stage].get(id) ?? []);
      const found = parameterInformation(shares, byStage[stage], Math.ceil(shares.length / together[stage]));
      return { id, name, ...found };
    })
    .filter(({ value, standardError }) => value > 2 * standardError)
    .toSorted((one, other) => other.value - one.value)
    .slice(0, mostShown);
}

function lakeMeans(values: readonly number[]): number[] {
  const futures = futuresPerBlock / lakesPerBlock;
  return Array.from({ length: values.length / futures }, (_, lake) =>
    meanOf(values.slice(lake * futures, (lake + 1) * futures)),
  );
}

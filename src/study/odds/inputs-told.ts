import { at } from "../../lists.js";
import type { DrawnStudy, LakeFutures } from "./draws.js";
import { inputInformation } from "./information.js";
import { joined } from "./joined-futures.js";
import type { InputsTold } from "./odds.js";
import { planTurns } from "./plan-turns.js";

/** What is told of single inputs rests on this of each draw. */
export type OfInputs = Pick<LakeFutures, "expected" | "plans">;

/**
 * What knowing each input is worth, and which turn plans.
 * @param lakes of whole blocks, in the order of blocks and lakes
 */
export function inputsTold(drawn: DrawnStudy, lakes: readonly OfInputs[]): InputsTold {
  const options = lakes[0]?.expected ?? [];
  const benefits = options.map((_, option) =>
    Array.from(joined(lakes.map(({ expected }) => at(expected, option))), (cost) => -cost),
  );
  return { information: inputInformation(drawn, benefits), planTurns: planTurns(drawn, lakes) };
}

import type { DrawnStudy } from "./draws.js";
import { inputInformation } from "./information.js";
import type { DrawnFutures, JoinedFutures } from "./joined-futures.js";
import type { InputsTold } from "./odds.js";
import { planTurns } from "./plan-turns.js";

/** What is told of single inputs rests on this of all draws. */
export interface OfInputs extends Pick<DrawnFutures, "plans"> {
  readonly options: ReadonlyArray<Pick<JoinedFutures, "expected">>;
}

/**
 * What knowing each input is worth, and which turn plans.
 * @param futures of whole blocks
 */
export function inputsTold(drawn: DrawnStudy, { options, plans }: OfInputs): InputsTold {
  const benefits = options.map(({ expected }) => Array.from(expected, (cost) => -cost));
  return { information: inputInformation(drawn, benefits), planTurns: planTurns(drawn, plans) };
}

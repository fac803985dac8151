import { at } from "../../../lists.js";
import type { ByMonth } from "../../lake/calendar.js";
import type { Layer } from "../../mussels/layer.js";
import type { LakeContext } from "../context.js";
import type { Pipe } from "../inputs.js";
import { serviceShare } from "../small-line.js";

/** A line of small bore whose required flow changes through the year, with the head that drives it. */
export interface MonthlyLine {
  readonly pipe: Pipe;
  readonly requiredFlow: ByMonth;
  readonly availableHead: number;
}

/** Share of the month's required flow that the line still brings under a layer; 1 in a month without any. */
export function monthlyShare(
  { pipe, requiredFlow, availableHead }: MonthlyLine,
  context: LakeContext,
): (layer: Layer, month: number) => number {
  const byFlow = new Map(
    [...new Set(requiredFlow)]
      .filter((flow) => flow > 0)
      .map((flow) => [flow, serviceShare({ ...pipe, requiredFlow: flow, availableHead }, context)]),
  );
  return (layer, month) => byFlow.get(at(requiredFlow, month))?.(layer) ?? 1;
}

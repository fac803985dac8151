import type { DrawPlan } from "../../model/futures/draw-plan.js";
import { sobolIndices } from "../../model/uncertainty/sobol-indices.js";
import type { TornadoBar, VarianceShare } from "./odds.js";
import { type Factor, factorDesign } from "./sensitivity-design.js";
import type { InputGroup } from "./sensitivity-moves.js";
import { netBenefitsOf, type RunPoints } from "./sensitivity-points.js";
import type { NamedInput } from "./uncertain-inputs.js";

/** What the inputs that are not told by themselves are called. */
export const restName = "all others together";

/**
 * The inputs and groups with the widest bars, each a factor, and all others as one more: `most` in all. Inputs of a group
 * are drawn together, so that only the group as a whole has a share.
 * @param bars widest first
 */
export function strongestFactors(
  bars: readonly TornadoBar[],
  inputs: readonly NamedInput[],
  groups: readonly InputGroup[],
  most: number,
): Factor[] {
  const grouped = new Set(groups.flatMap(({ members }) => members.map(({ id }) => id)));
  const strongest = bars
    .filter(({ id }) => !grouped.has(id))
    .slice(0, most - 1)
    .map(({ id, name, members }) => ({ name, ids: members ?? [id] }));
  const told = new Set(strongest.flatMap(({ ids }) => ids));
  const rest = inputs.map(({ id }) => id).filter((id) => !told.has(id));
  return rest.length === 0 ? strongest : [...strongest, { name: restName, ids: rest }];
}

export interface ShareSettings {
  readonly seed: number;
  readonly count: number;
  readonly resamples: number;
}

/** First-order and total shares of the variance by factor; none where the net benefit does not vary. */
export async function varianceShares(
  factors: readonly Factor[],
  { inputs, groups }: { inputs: readonly NamedInput[]; groups: DrawPlan["groups"] },
  { seed, count, resamples }: ShareSettings,
  run: RunPoints,
): Promise<VarianceShare[]> {
  if (factors.length === 0) return [];
  const design = factorDesign({ seed, count, inputs, groups, factors });
  const values = design.valuesOf(await netBenefitsOf(design.sets, run));
  const both = [...values.first, ...values.second];
  if (both.every((value) => value === both[0])) return [];
  const indices = sobolIndices(values, { seed, resamples });
  return factors.flatMap(({ name, ids }) => {
    const found = indices.get(name);
    return found ? [{ ids, name, ...found }] : [];
  });
}

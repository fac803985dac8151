import { at } from "../lake/calendar.js";
import type { DistributionInput } from "../uncertainty/distribution-of.js";
import { distributionOf } from "../uncertainty/distribution-of.js";
import { withCommonFactor } from "../uncertainty/induced-correlation.js";
import { latinHypercube } from "../uncertainty/latin-hypercube.js";
import { scrambledSobol } from "../uncertainty/sobol.js";

/** Something that is drawn. */
export interface UncertainInput {
  readonly id: string;
  readonly distribution: DistributionInput;
  /** Whether the lake and its structures must be worked out again for it, or only chances and boats. */
  readonly stage: "lake" | "chances";
  /** Values beyond these are taken as these. */
  readonly limits?: { readonly low: number; readonly high: number } | undefined;
}

export interface DrawPlan {
  /** A whole number from 0. */
  readonly seed: number;
  readonly sampling: "latin-hypercube" | "sobol";
  readonly inputs: readonly UncertainInput[];
  /** Ids of inputs that move together, with the rank correlation of any two. */
  readonly groups: ReadonlyArray<{ readonly members: readonly string[]; readonly rankCorrelation: number }>;
}

/** Draws of the lake in a block, and futures for each: both powers of two, as a Sobol sequence wants. */
export const lakesPerBlock = 16;
export const futuresPerLake = 128;
export const futuresPerBlock = lakesPerBlock * futuresPerLake;

/** Values of the inputs in the draws of one block, by their ids. */
export interface BlockDraws {
  /** Sixteen values of each input of the lake's stage. */
  readonly lake: ReadonlyMap<string, readonly number[]>;
  /** A value for each future of each input of the other stage; the futures of one lake follow one another. */
  readonly chances: ReadonlyMap<string, readonly number[]>;
  /** From 0 to below 1, uniform over the futures of the block: in which year mussels establish. */
  readonly luck: readonly number[];
}

const luckId = "year-of-establishment";

/**
 * The draws of a block. Blocks are samples of their own: each is a Latin hypercube, or a scrambled Sobol sequence, set by
 * the seed, the block and the ids, so that one more input leaves the others' draws alone (of a Sobol sequence, one that
 * comes after them). Sixteen draws of the lake with 128 futures each: a lake takes a thousand times as long as a future.
 */
export function blockDraws({ seed, sampling, inputs, groups }: DrawPlan, block: number): BlockDraws {
  const sample = sampling === "sobol" ? scrambledSobol : latinHypercube;
  const columnsOf = (ids: readonly string[], count: number) => {
    const shares = sample(
      seed,
      ids.map((id) => `${id}/${block}`),
      count,
    );
    return new Map(ids.map((id) => [id, shares.get(`${id}/${block}`) ?? []]));
  };
  const valuesOf = (stage: UncertainInput["stage"], count: number, others: readonly string[] = []) => {
    const own = inputs.filter((input) => input.stage === stage);
    const columns = movedTogether(columnsOf([...own.map(({ id }) => id), ...others], count), groups);
    return { columns, values: new Map(own.map((input) => [input.id, valuesFor(input, columns)])) };
  };
  const { columns, values: chances } = valuesOf("chances", futuresPerBlock, [luckId]);
  return { lake: valuesOf("lake", lakesPerBlock).values, chances, luck: columns.get(luckId) ?? [] };
}

/** Shares of the members of each group put into an order in which any two have its rank correlation. */
export function movedTogether(
  columns: Map<string, readonly number[]>,
  groups: DrawPlan["groups"],
): Map<string, readonly number[]> {
  for (const { members, rankCorrelation } of groups) {
    const present = members.filter((id) => columns.has(id));
    if (present.length < 2) continue;
    const moved = withCommonFactor(
      present.map((id) => columns.get(id) ?? []),
      rankCorrelation,
    );
    present.forEach((id, index) => {
      columns.set(id, at(moved, index));
    });
  }
  return columns;
}

function valuesFor(input: UncertainInput, columns: ReadonlyMap<string, readonly number[]>): number[] {
  return (columns.get(input.id) ?? []).map(valueAtShare(input));
}

/** The value that an input does not exceed with a chance from 0 to 1, within its limits. */
export function valueAtShare({ distribution, limits }: UncertainInput): (share: number) => number {
  const { quantile } = distributionOf(distribution);
  if (!limits) return quantile;
  return (share) => Math.min(limits.high, Math.max(limits.low, quantile(share)));
}

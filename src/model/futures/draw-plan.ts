import { at } from "../../lists.js";
import type { DistributionInput } from "../uncertainty/distribution-of.js";
import { distributionOf } from "../uncertainty/distribution-of.js";
import { withCommonFactor } from "../uncertainty/induced-correlation.js";
import { latinHypercube, slicedLatinHypercube } from "../uncertainty/latin-hypercube.js";
import { scrambledSobol, sobolDimensions } from "../uncertainty/sobol.js";

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
export const futuresPerLake = 8;
export const futuresPerBlock = lakesPerBlock * futuresPerLake;

/** Draws of one block by the ids of the inputs, each as the share of its distribution that the value does not exceed. */
export interface BlockShares {
  /** One for each draw of the lake of each input of its stage. */
  readonly lake: ReadonlyMap<string, readonly number[]>;
  /** One for each future of each input of the other stage; the futures of one lake follow one another. */
  readonly chances: ReadonlyMap<string, readonly number[]>;
  /** From 0 to below 1, uniform over the futures of the block: in which year mussels establish. */
  readonly luck: readonly number[];
}

const luckId = "year-of-establishment";

/**
 * The draws of a block as shares. Blocks are samples of their own: each is a Latin hypercube (of futures one that is sliced by
 * their lakes), or a scrambled Sobol sequence, set by the seed, the block and the ids, so that one more input leaves the others' draws alone (of a Sobol sequence, one that
 * comes after them). A Sobol sequence has 128 dimensions: the first goes to luck, the next to the inputs in their order,
 * and inputs beyond have the columns of a Latin hypercube. Many draws of the lake with few futures each: what a future
 * costs differs more from lake to lake than few futures of one leave open.
 */
export function blockShares(plan: DrawPlan, block: number): BlockShares {
  const { columns, own: chances } = stageShares(plan, block, "chances");
  return { lake: stageShares(plan, block, "lake").own, chances, luck: columnOf(columns, luckId) };
}

type Columns = Map<string, readonly number[]>;

const columnOf = (columns: Columns, id: string) => columns.get(id) ?? [];

interface BlockStage {
  readonly block: number;
  readonly stage: UncertainInput["stage"];
}

/** Members of a group that are not drawn themselves have columns all the same: what moves with them rests on them. */
function stageShares(
  { seed, sampling, inputs, groups }: DrawPlan,
  block: number,
  stage: UncertainInput["stage"],
) {
  const own = inputs.filter((input) => input.stage === stage);
  const ids = own.map(({ id }) => id);
  const moved = groups.filter(({ members }) => members.some((id) => ids.includes(id)));
  const all = [
    ...new Set([...(stage === "lake" ? [] : [luckId]), ...ids, ...moved.flatMap(({ members }) => members)]),
  ];
  const columns = movedTogether(columnsOf(all, { seed, sampling, block, stage }), moved);
  return { columns, own: new Map(ids.map((id) => [id, columnOf(columns, id)])) };
}

const drawsOf = { lake: lakesPerBlock, chances: futuresPerBlock };
/** Futures fill the ranges evenly in each lake by itself too. */
const futuresOfLakes = { slices: lakesPerBlock, each: futuresPerLake };

function columnsOf(
  ids: readonly string[],
  { seed, sampling, block, stage }: Pick<DrawPlan, "seed" | "sampling"> & BlockStage,
): Columns {
  const dimensions = sampling === "sobol" ? sobolDimensions : 0;
  const names = ids.map((id) => `${id}/${block}`);
  const shares = new Map([
    ...scrambledSobol(seed, names.slice(0, dimensions), drawsOf[stage]),
    ...(stage === "lake"
      ? latinHypercube(seed, names.slice(dimensions), lakesPerBlock)
      : slicedLatinHypercube(seed, names.slice(dimensions), futuresOfLakes)),
  ]);
  return new Map(ids.map((id, index) => [id, columnOf(shares, at(names, index))]));
}

/** Shares of the members of each group put into an order in which any two have its rank correlation. */
function movedTogether(columns: Columns, groups: DrawPlan["groups"]): Columns {
  for (const { members, rankCorrelation } of groups) {
    const moved = withCommonFactor(
      members.map((id) => columnOf(columns, id)),
      rankCorrelation,
    );
    members.forEach((id, index) => {
      columns.set(id, at(moved, index));
    });
  }
  return columns;
}

/** The value that an input does not exceed with a chance from 0 to 1, within its limits. */
export function valueAtShare({ distribution, limits }: UncertainInput): (share: number) => number {
  const { quantile } = distributionOf(distribution);
  if (!limits) return quantile;
  return (share) => Math.min(limits.high, Math.max(limits.low, quantile(share)));
}

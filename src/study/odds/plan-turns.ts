import { at } from "../../lists.js";
import { lakesPerBlock } from "../../model/futures/draw-plan.js";
import { ranks } from "../../model/uncertainty/ranks.js";
import { sharesOf } from "./block-values.js";
import type { DrawnStudy } from "./draws.js";
import type { PlanTurn, TurningInput } from "./odds.js";

/** Share of the draws with another plan from which an input is looked for that turns it, and up to 1 less it. */
const leastShare = 0.1;
/** Standard errors by which an input must tell the draws apart: of hundreds that do not, chance puts hardly one beyond. */
const beyondDoubt = 4;

/**
 * Parts for which another plan than at the study's own values is the best in some draws of the lake; no lake is worked out
 * for it. The input that turns a plan is the one whose values differ most between the m draws with another plan and the n
 * others: r = 2 U/(m n) − 1, with a standard error of √((m+n+1)/(3 m n)) where there is no difference (Mann and Whitney
 * 1947. Annals of Mathematical Statistics 18(1):50-60, from memory).
 * @param chosen of each draw of the lake, of whole blocks: the plan of each part
 */
export function planTurns(
  drawn: Pick<DrawnStudy, "plan" | "plans" | "catalogue">,
  chosen: ReadonlyArray<readonly string[]>,
): PlanTurn[] {
  const inputs = rankedInputs(drawn, chosen.length);
  return drawn.plans
    .flatMap(({ plan, ...part }, index): PlanTurn[] => {
      const ofPart = chosen.map((plans) => at(plans, index));
      const others = ofPart.filter((id) => id !== plan.id);
      const [other] = frequencies(others);
      if (!other) return [];
      const name = drawn.catalogue.find(({ id }) => id === other.id)?.name ?? other.id;
      return [
        {
          ...part,
          plan,
          share: others.length / chosen.length,
          other: { id: other.id, name, share: other.count / chosen.length },
          by: turningInput(
            ofPart.map((id) => id !== plan.id),
            inputs,
          ),
        },
      ];
    })
    .toSorted((one, other) => other.share - one.share);
}

/** The most frequent first; of equals the first that came. */
function frequencies(ids: readonly string[]): { readonly id: string; readonly count: number }[] {
  const counts = new Map<string, number>();
  for (const id of ids) counts.set(id, (counts.get(id) ?? 0) + 1);
  return [...counts].map(([id, count]) => ({ id, count })).toSorted((one, other) => other.count - one.count);
}

interface RankedInput {
  readonly id: string;
  readonly name: string;
  readonly ranks: readonly number[];
}

/** Inputs of the lake with the ranks of their values over the draws: those of their shares. */
function rankedInputs({ plan }: Pick<DrawnStudy, "plan">, lakes: number): RankedInput[] {
  const blocks = Array.from({ length: lakes / lakesPerBlock }, (_, block) => sharesOf(plan, block).lake);
  return plan.inputs
    .filter(({ stage }) => stage === "lake")
    .map(({ id, name }) => ({ id, name, ranks: ranks(blocks.flatMap((shares) => shares.get(id) ?? [])) }));
}

function turningInput(isOther: readonly boolean[], inputs: readonly RankedInput[]): TurningInput | undefined {
  const all = isOther.length;
  const others = isOther.filter(Boolean).length;
  const rest = all - others;
  if (Math.min(others, rest) < leastShare * all) return undefined;
  const least = beyondDoubt * Math.sqrt((all + 1) / (3 * others * rest));
  const [best] = inputs
    .map((input) => ({ id: input.id, name: input.name, apart: apartOf(input.ranks, isOther, others) }))
    .toSorted((one, other) => Math.abs(other.apart) - Math.abs(one.apart));
  return best && Math.abs(best.apart) > least ? best : undefined;
}

function apartOf(ranked: readonly number[], isOther: readonly boolean[], count: number): number {
  const sum = ranked.reduce((total, rank, draw) => total + (at(isOther, draw) ? rank : 0), 0);
  const above = sum - (count * (count + 1)) / 2;
  return (2 * above) / (count * (ranked.length - count)) - 1;
}

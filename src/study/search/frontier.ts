import { at } from "../../lists.js";
import { lastAffordable, reaches } from "./answers.js";
import { type Placed, placedId, type Searching } from "./points.js";

/** Budgets at which the frontier is told beside those that are asked for. */
const shown = 16;

/**
 * Efficient programs: at each of some budgets a year the least chance of all programs within it. They are spread evenly
 * from the cheapest program to the dearest that the study's limits leave.
 * @param asked budgets of interest, such as those of the options
 */
export function frontier(search: Searching, asked: readonly number[]): Placed[] {
  const { costPerYear } = search;
  const { budget } = search.plan.rules;
  const ladders = reaches(search, { budget, chance: undefined }).filter(({ last }) => last >= 0);
  if (ladders.length === 0) return [];
  const ends = (rung: "least" | "most") =>
    ladders.map(({ set, ladder, last }) =>
      costPerYear({ set, taken: at(ladder, rung === "least" ? 0 : last) }),
    );
  const [least, most] = [Math.min(...ends("least")), Math.max(...ends("most"))];
  const budgets = Array.from({ length: shown }, (_, index) => least + ((most - least) * index) / (shown - 1));
  const found = new Map<string, Placed>();
  for (const most of [...budgets, ...asked].sort((one, other) => one - other)) {
    const best = leastChance(search, ladders, most);
    if (best) found.set(placedId(best), best);
  }
  return efficientOf(search, [...found.values()]);
}

/** Of all programs within a budget the one with the least chance. */
export function leastChance(
  search: Searching,
  ladders: ReturnType<typeof reaches>,
  budget: number,
): Placed | undefined {
  const { costPerYear, of } = search;
  const within = ladders.flatMap(({ set, ladder, last }) => {
    const rung = Math.min(last, lastAffordable(search, { set, ladder }, budget));
    return rung < 0 ? [] : [{ set, taken: at(ladder, rung) }];
  });
  return within
    .map((placed) => ({ placed, chance: of(placed).chance, cost: costPerYear(placed) }))
    .sort((one, other) => one.chance - other.chance || one.cost - other.cost)[0]?.placed;
}

/** By rising cost, each with less chance than all that cost less. */
function efficientOf({ costPerYear, of }: Searching, all: readonly Placed[]): Placed[] {
  const sorted = all
    .map((placed) => ({ placed, cost: costPerYear(placed), chance: of(placed).chance }))
    .sort((one, other) => one.cost - other.cost || one.chance - other.chance);
  let least = Number.POSITIVE_INFINITY;
  return sorted.flatMap(({ placed, chance }) => {
    if (chance >= least) return [];
    least = chance;
    return [placed];
  });
}

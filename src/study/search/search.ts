import { at, meanOf, sumOf } from "../../lists.js";
import { isBaseline } from "../../model/compare.js";
import { discountFactors } from "../../model/money/interest.js";
import { totalOf } from "../../model/money/line.js";
import { programLines } from "../../model/program/cost.js";
import type { LakeTerms } from "../../model/search/lake-terms.js";
import { bestAnswer, cheapestUnder } from "./answers.js";
import { frontier } from "./frontier.js";
import { nextSteps } from "./next-steps.js";
import type { SearchPlan } from "./plan.js";
import { isByHours } from "./plan.js";
import { type Searching, searching } from "./points.js";
import type { ProgramSearch, SearchAnswer, SearchPoint, Standing, TypedPoint } from "./result.js";
import { timings, worthByYear } from "./timing.js";

/** All that the search says of programs, from lakes as drawn. */
export function programSearch(plan: SearchPlan, lakes: readonly LakeTerms[]): ProgramSearch {
  const search = searching(plan, lakes);
  const typed = typedOptions(search);
  const requested = typed.find(({ mark }) => mark === "requested");
  const answers = answersOf(search, requested);
  const asked = [
    ...typed.map(({ costPerYear }) => costPerYear),
    ...answers.flatMap(({ point }) => (point ? [point.costPerYear] : [])),
  ];
  const efficient = frontier(search, asked).map((placed) => ({
    point: search.point(placed),
    byLake: search.of(placed).byLake,
  }));
  const standings = standingsOf([...efficient, ...typed].map(({ byLake }) => byLake));
  const { money } = plan.prepared.input;
  const cells = plan.sets.flatMap((set) => set.cells);
  return {
    baseId: plan.base.id,
    baseName: plan.base.name,
    lumpShare: plan.searched.lumpShare,
    lakes: lakes.length,
    futures: sumOf(lakes.map(({ futures }) => futures.length)),
    programs: plan.programs,
    evaluated: search.evaluate.count(),
    hours: isByHours(plan) ? { earliest: plan.rules.earliest, latest: plan.rules.latest } : undefined,
    unkept: sumOf(cells.map((cell) => ("unkept" in cell ? cell.unkept : 0))),
    annuity: sumOf(discountFactors(money.horizon, money.discountRate, money.timing)),
    frontier: efficient.map(({ point }, index) => ({ ...point, standing: at(standings, index) })),
    typed: typed.map(({ byLake: _, ...each }, index) => ({
      ...each,
      dominatedBy: dominating(
        each,
        efficient.map(({ point }) => point),
      ),
      standing: at(standings, efficient.length + index),
    })),
    answers,
    steps: nextSteps(search),
    timings: timings(search),
    worthByYear: worthByYear(search),
  };
}

function answersOf(
  search: Searching,
  requested: { costPerYear: number; chance: number } | undefined,
): SearchAnswer[] {
  const { budget, chance } = search.plan.rules;
  const limits = { budget, chance };
  const within = { budget: budget ?? requested?.costPerYear, chance };
  const under = chance ?? requested?.chance;
  return [
    bestAnswer(search, "best", limits, budget !== undefined || chance !== undefined),
    ...(under === undefined ? [] : [cheapestUnder(search, { budget, chance: under }, chance !== undefined)]),
    bestAnswer(search, "within-budget", within, budget !== undefined),
  ];
}

type TypedInLakes = Omit<TypedPoint, "dominatedBy" | "standing"> & { readonly byLake: readonly number[] };

function typedOptions({ plan, lakes }: Searching): TypedInLakes[] {
  const { document, prepared } = plan;
  const { requestedOption, existingOption } = document.study;
  return prepared.input.options.map((option, index) => {
    const means = lakes.map(({ typed }) => at(typed, index));
    const [cost, program] = [
      meanOf(means.map((each) => each.cost)),
      meanOf(means.map((each) => each.program)),
    ];
    return {
      id: option.id,
      name: option.name,
      mark: markOf(option.id, isBaseline(option), { requestedOption, existingOption }),
      costPerYear: totalOf(programLines(option, prepared.input.money)).toNumber(),
      chance: meanOf(means.map((each) => each.chance)),
      ...{ cost, program, loss: cost - program },
      byLake: means.map((each) => each.cost),
    };
  });
}

function markOf(
  id: string,
  isNothing: boolean,
  { requestedOption, existingOption }: { requestedOption: string; existingOption?: string | undefined },
): TypedPoint["mark"] {
  if (id === requestedOption) return "requested";
  if (id === existingOption) return "in-force";
  return isNothing ? "nothing" : undefined;
}

/** The cheapest of the efficient programs that beat an option on both counts. */
const dominating = (
  option: Pick<TypedPoint, "costPerYear" | "chance">,
  efficient: readonly SearchPoint[],
): string | undefined =>
  efficient.find(
    ({ costPerYear, chance }) =>
      costPerYear <= option.costPerYear + 0.005 && chance < option.chance * (1 - 1e-9),
  )?.id;

/** In how many lakes each is the best, and by how much it is not. */
function standingsOf(costs: ReadonlyArray<readonly number[]>): Standing[] {
  const lakes = costs[0]?.length ?? 0;
  const best = Array.from({ length: lakes }, (_, lake) => Math.min(...costs.map((each) => at(each, lake))));
  return costs.map((each) => {
    const regrets = each.map((cost, lake) => cost - at(best, lake));
    return {
      bestIn: regrets.filter((regret) => regret <= 0).length / lakes,
      regret: meanOf(regrets),
      mostRegret: Math.max(...regrets),
    };
  });
}

import { at } from "../../lists.js";
import { type Best, leastCost } from "../../model/search/best.js";
import type { Taken } from "../../model/search/choices.js";
import { hoursShare, variantAt } from "./plan.js";
import type { Placed, Searching } from "./points.js";
import type { Binding, SearchAnswer, StepChange } from "./result.js";

/** Rungs of a set of measures that may be taken: from the first up to the last. */
interface Reach {
  readonly set: number;
  readonly ladder: readonly Taken[];
  readonly first: number;
  readonly last: number;
  readonly binds: Binding;
}

export interface Limits {
  readonly budget: number | undefined;
  readonly chance: number | undefined;
}

/** How far above the bound the best program may be left, as a share of its cost. */
const tolerance = 1e-4;

const placed = ({ set, ladder }: Pick<Reach, "set" | "ladder">, rung: number): Placed => ({
  set,
  taken: at(ladder, rung),
});

/** The last rung that stays within a budget; −1 where none does. The cost need not rise from rung to rung: fees come in. */
export const lastAffordable = (
  { quickCost }: Searching,
  { set, ladder }: Pick<Reach, "set" | "ladder">,
  budget: number,
): number => ladder.findLastIndex((taken) => quickCost({ set, taken }) <= budget + cent);

const cent = 0.01;

/** The rung up to which something that rises along a ladder stays within a limit; −1 where none does. */
function lastWithin(length: number, isWithin: (rung: number) => boolean): number {
  let [low, high] = [-1, length - 1];
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if (isWithin(middle)) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** What the limits leave of each set of measures. */
export function reaches(search: Searching, limits: Limits): Reach[] {
  const { plan, of } = search;
  const { staffHours } = plan.rules;
  const inspectors = plan.base.staff
    .filter(({ group = "wages" }) => group === "wages")
    .reduce((sum, { hoursPerYear }) => sum + hoursPerYear, 0);
  return plan.sets.map(({ ladder }, set) => {
    const taken = (rung: number) => placed({ set, ladder }, rung);
    const within = (isWithin: (rung: number) => boolean) => lastWithin(ladder.length, isWithin);
    const ends: Array<readonly [number, Binding]> = [[ladder.length - 1, "all-open"]];
    const { budget, chance } = limits;
    if (budget !== undefined) ends.push([lastAffordable(search, { set, ladder }, budget), "budget"]);
    if (staffHours !== undefined)
      ends.push([
        within((rung) => inspectors * hoursShare(plan, at(ladder, rung)) <= staffHours),
        "staff-hours",
      ]);
    const [last, binds] = ends.reduce((least, each) => (each[0] < least[0] ? each : least));
    const first = chance === undefined ? 0 : within((rung) => of(taken(rung)).chance > chance) + 1;
    return { set, ladder, first, last, binds };
  });
}

/** The program with the least expected cost that the limits leave. */
export function bestAnswer(
  search: Searching,
  question: "best" | "within-budget",
  limits: Limits,
  isStated: boolean,
): SearchAnswer {
  const { plan, evaluate, of, point } = search;
  const open = reaches(search, limits).filter(({ first, last }) => first <= last);
  const found = open.map(
    ({ set, ladder, first, last }): Best =>
      leastCost(
        [
          {
            length: last - first + 1,
            hours: (rung) => hoursShare(plan, at(ladder, first + rung)),
            met: (rung) => {
              const { coverage } = variantAt(plan, set, at(ladder, first + rung));
              return evaluate.met({ set, coverage, years: plan.ownYears });
            },
          },
        ],
        tolerance * of(placed({ set, ladder }, first)).cost,
      ),
  );
  const limit = question === "best" ? undefined : limits.budget;
  const none = { question, limit, isStated, relaxed: undefined };
  const ranked = found
    .flatMap(({ best }, index) =>
      best ? [{ reach: at(open, index), rung: at(open, index).first + best.rung, cost: best.cost }] : [],
    )
    .sort((one, other) => one.cost - other.cost);
  const [top, second] = ranked;
  if (!top) {
    const least = Math.min(
      ...plan.sets.map(({ ladder }, set) => search.costPerYear(placed({ set, ladder }, 0))),
    );
    return {
      ...none,
      point: undefined,
      nextBest: undefined,
      binds: "nothing",
      bound: undefined,
      nearest: least,
    };
  }
  const neighbours = [top.rung - 1, top.rung + 1]
    .filter((rung) => rung >= top.reach.first && rung <= top.reach.last)
    .map((rung) => ({ reach: top.reach, rung, cost: of(placed(top.reach, rung)).cost }));
  const [next] = [...neighbours, ...(second ? [second] : [])].sort((one, other) => one.cost - other.cost);
  const binds = bindingAt(top.reach, top.rung, limits);
  return {
    ...none,
    point: point(placed(top.reach, top.rung)),
    nextBest: next && point(placed(next.reach, next.rung)),
    binds,
    relaxed: relaxedBy(search, top.reach, top.rung, binds),
    bound: Math.min(...found.map(({ bound }) => bound)),
    nearest: undefined,
  };
}

function bindingAt({ first, last, binds, ladder }: Reach, rung: number, { chance }: Limits): Binding {
  if (rung === last && !(binds === "all-open" && ladder.length === 1)) return binds;
  if (rung === first && chance !== undefined && first > 0) return "chance";
  return rung === 0 && ladder.length > 1 ? "all-closed" : "nothing";
}

/** Steps of at least this share of all hours: an hour a year more says little. */
const stepShare = 0.02;

function relaxedBy(search: Searching, reach: Reach, rung: number, binds: Binding): StepChange | undefined {
  if (binds === "nothing" || binds === "all-open" || binds === "all-closed") return undefined;
  const step = at(reach.ladder, reach.ladder.length - 1).hours * stepShare;
  const { hours } = at(reach.ladder, rung);
  const next =
    binds === "chance"
      ? reach.ladder.findLastIndex((each) => each.hours <= hours - step)
      : reach.ladder.findIndex((each) => each.hours >= hours + step);
  if (next < 0) return undefined;
  const [before, after] = [placed(reach, rung), placed(reach, next)];
  const [now, then] = [search.of(before), search.of(after)];
  return {
    costPerYear: search.costPerYear(after) - search.costPerYear(before),
    chance: then.chance - now.chance,
    cost: then.cost - now.cost,
  };
}

/** From the rung on that costs least a year: where fees come in, more may cost less. */
function cheapestFrom({ quickCost }: Searching, reach: Reach): Reach {
  let first = reach.first;
  for (let rung = first + 1; rung <= reach.last; rung++)
    if (quickCost(placed(reach, rung)) < quickCost(placed(reach, first)) - cent) first = rung;
  return { ...reach, first };
}

/** The program that costs least a year of those that keep the chance. */
export function cheapestUnder(
  search: Searching,
  limits: Limits & { readonly chance: number },
  isStated: boolean,
): SearchAnswer {
  const { plan, costPerYear, of, point } = search;
  const all = reaches(search, limits);
  const open = all.filter(({ first, last }) => first <= last);
  const ranked = open
    .map((reach) => ({ reach: cheapestFrom(search, reach) }))
    .map(({ reach }) => ({ reach, cost: costPerYear(placed(reach, reach.first)) }))
    .sort((one, other) => one.cost - other.cost);
  const [top, second] = ranked;
  const common = { question: "under-chance", limit: limits.chance, isStated, bound: undefined } as const;
  if (!top) {
    const least = Math.min(
      ...all.filter(({ last }) => last >= 0).map((reach) => of(placed(reach, reach.last)).chance),
    );
    const nearest = Number.isFinite(least) ? least : undefined;
    return { ...common, point: undefined, nextBest: undefined, binds: "chance", relaxed: undefined, nearest };
  }
  const { reach } = top;
  const oneMore = reach.first < reach.last ? placed(reach, reach.first + 1) : undefined;
  const other = second && placed(second.reach, second.reach.first);
  const nextBest = [oneMore, other]
    .flatMap((each) => (each ? [each] : []))
    .sort((one, two) => costPerYear(one) - costPerYear(two))[0];
  const binds: Binding = reach.first > 0 ? "chance" : plan.sets.length > 1 ? "nothing" : "all-closed";
  return {
    ...common,
    point: point(placed(reach, reach.first)),
    nextBest: nextBest && point(nextBest),
    binds,
    relaxed: relaxedBy(search, reach, reach.first, binds),
    nearest: undefined,
  };
}

import { at, meanOf } from "../../lists.js";
import type { PinnedPlan } from "./catalogue.js";
import type { ComponentResult, ImpossiblePlan, Plan, Priced, TriedPlan } from "./component.js";
import { type PartYear, thickest } from "./growth-between-visits.js";
import { type Candidates, candidatePlans } from "./plan.js";
import { type Followed, followPlan, mergeLines } from "./plan-over-years.js";
import { type PlanTrial, type Trial, trialOf } from "./plan-trial.js";

/** A plan as it is in each possible operating year. */
type Contender = readonly [Plan, ...Plan[]];

/** A plan tried in each of them. */
type Tried = readonly PlanTrial[];

/**
 * Chooses the cheapest plan that keeps the part's limits in a mature infestation, then works out its lines for every
 * year since establishment. With a level record, each of its years is one possible operating year: a plan must be
 * possible and keep the limits in all of them, and its cost is the mean, L = Σ Li/n. If no plan keeps the limits, the one with
 * the shortest interval is taken and its broken limit is kept for the reader. A plan that the study prescribes is
 * taken whatever it costs.
 */
export function keepInService(
  parts: readonly [PartYear, ...PartYear[]],
  pinned: readonly PinnedPlan[] = [],
): ComponentResult {
  const trials = parts.map(trialOf);
  const { contenders, impossible } = contendersOf(parts);
  const cheapest = cheapestOf(contenders, trials);
  const { name } = parts[0].component;
  const prescribed = pinned.find(({ part }) => part === name);
  const byStudy = prescribed && contenders.find(([{ id }]) => id === prescribed.plan);
  const chosen = byStudy ? tryOut(byStudy, trials) : cheapest;
  const followed = chosen.map(({ plan }, year) =>
    followPlan(plan, { ...at(parts, year), surface: at(trials, year).surface }),
  );
  return {
    name,
    chosen: triedPlan(chosen),
    pinned: byStudy && prescribed ? { reason: prescribed.reason, cheapest: triedPlan(cheapest) } : undefined,
    everyPlan: everyPlanOf(parts),
    impossible,
    thickestLayer: thickest(followed.flatMap(({ thickestByYear }) => thickestByYear)),
    untouchedLayer: thickest(trials.map(({ untouchedLayer }) => untouchedLayer)),
    years: meanLines(followed),
    thicknessByYear: thicknessByYear(followed),
  };
}

/** The thickest of the possible operating years. */
function thicknessByYear([first, ...others]: readonly Followed[]): number[] {
  const thicknesses = (first?.thickestByYear ?? []).map(({ thickness }) => thickness);
  for (const { thickestByYear } of others) {
    thickestByYear.forEach(({ thickness }, year) => {
      thicknesses[year] = Math.max(thicknesses[year] ?? 0, thickness);
    });
  }
  return thicknesses;
}

/** Holds on to the parts alone: what grew in the trials takes much memory. */
function everyPlanOf(parts: readonly PartYear[]): ComponentResult["everyPlan"] {
  return () => {
    const trials = parts.map(trialOf);
    return contendersOf(parts).contenders.map((contender) => triedPlan(tryOut(contender, trials)));
  };
}

function contendersOf(parts: readonly PartYear[]) {
  const [first, ...others] = parts.map(({ component, context }) => candidatePlans(component, context));
  if (first === undefined) return { contenders: [], impossible: [] };
  const impossible = impossibleIn([first, ...others], parts);
  const contenders = first.plans
    .filter(({ entry }) => !impossible.some(({ id }) => id === entry.id))
    .map((plan): Contender => [plan, ...others.map((year) => samePlan(plan, year))]);
  return { contenders, impossible };
}

const samePlan = (plan: Plan, { plans }: Candidates) => plans.find(({ id }) => id === plan.id) ?? plan;

const tryOut = (contender: Contender, trials: readonly Trial[]): Tried =>
  contender.map((plan, year) => at(trials, year).of(plan));

/** Plans that are not possible in some operating year; the year is named unless it is so in all. */
function impossibleIn(byYear: readonly Candidates[], parts: readonly PartYear[]): ImpossiblePlan[] {
  const found = new Map<string, ImpossiblePlan & { readonly years: number }>();
  byYear.forEach((year, index) => {
    for (const each of year.impossible) {
      const first = found.get(each.id);
      const reason = first?.reason ?? each.reason + at(parts, index).context.levelLabel;
      const years = (first?.years ?? 0) + 1;
      found.set(each.id, { ...each, reason: years === byYear.length ? each.reason : reason, years });
    }
  });
  return [...found.values()].map(({ id, label, reason }) => ({ id, label, reason }));
}

function brokenLimit(tried: Tried): string | undefined {
  for (const trial of tried) {
    const broken = trial.brokenLimit();
    if (broken !== undefined) return broken;
  }
  return undefined;
}

const yearlyCost = (tried: Tried) => meanOf(tried.map(({ cost }) => cost()));

function triedPlan(tried: Tried): TriedPlan {
  return { plan: at(tried, 0).plan, yearlyCost: yearlyCost(tried), brokenLimit: brokenLimit(tried) };
}

/**
 * The plan of least yearly cost that keeps the limits; the first listed wins a tie. Plans are tried in the order of
 * what they cost at least, and the search ends where that exceeds the best found: the result is that of trying all.
 */
function cheapestOf(contenders: readonly Contender[], trials: readonly Trial[]): Tried {
  const least = (contender: Contender) =>
    meanOf(contender.map((plan, year) => at(trials, year).leastCost(plan)));
  const inOrder = contenders
    .map((contender, index) => ({ contender, index, least: least(contender) }))
    .sort((a, b) => a.least - b.least);
  let best: { tried: Tried; index: number; cost: number } | undefined;
  for (const { contender, index, least } of inOrder) {
    if (best && least > best.cost) break;
    const tried = tryOut(contender, trials);
    const cost = yearlyCost(tried);
    if (!best || cost < best.cost || (cost === best.cost && index < best.index)) {
      best = { tried, index, cost };
    }
  }
  if (!best)
    throw new Error("no plan of the catalogue is possible for a part: it must offer one that always is");
  return best.tried;
}

/** Lines of each year since establishment, the mean over the possible operating years. */
function meanLines(followed: readonly Followed[]): readonly (readonly Priced[])[] {
  const [first, ...others] = followed;
  if (first === undefined || others.length === 0) return first?.years ?? [];
  const share = 1 / followed.length;
  return first.years.map((_, year) =>
    mergeLines(
      followed.flatMap(({ years }) =>
        at(years, year).map((line) => ({ ...line, quantity: line.quantity * share })),
      ),
    ),
  );
}

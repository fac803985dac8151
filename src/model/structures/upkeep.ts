import { at } from "../lake/calendar.js";
import type { Layer } from "../mussels/layer.js";
import type { PinnedPlan } from "./catalogue.js";
import type { ComponentResult, Priced, TriedPlan } from "./component.js";
import { type Followed, followPlan, mergeLines } from "./follow.js";
import { type Candidates, candidatePlans, type ImpossiblePlan, type Plan } from "./plan.js";
import { type PartYear, thickest } from "./stretch.js";
import { type PlanTrial, type Trial, trialOf } from "./trial.js";

/** A plan in each possible operating year, with what its trials tell. */
interface Contender {
  readonly plan: Plan;
  readonly byYear: readonly PlanTrial[];
}

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
  const { contenders, impossible, trials } = contendersOf(parts);
  const cheapest = cheapestOf(contenders);
  const { name } = parts[0].component;
  const prescribed = pinned.find(({ part }) => part === name);
  const byStudy = contenders.find(({ plan }) => plan.id === prescribed?.plan);
  const chosen = byStudy ?? cheapest;
  const followed = chosen.byYear.map(({ plan }, year) =>
    followPlan(plan, { ...at(parts, year), surface: at(trials, year).surface }),
  );
  let untouched: Layer | undefined;
  const layers = followed.flatMap(({ thickestByYear }) => thickestByYear);
  return {
    name,
    chosen: tried(chosen),
    pinned: byStudy && prescribed ? { reason: prescribed.reason, cheapest: tried(cheapest) } : undefined,
    everyPlan: () => contendersOf(parts).contenders.map(tried),
    impossible,
    thickestLayer: thickest(layers),
    get untouchedLayer() {
      untouched ??= thickest(trials.map(({ untouchedLayer }) => untouchedLayer()));
      return untouched;
    },
    years: meanLines(followed),
    thicknessByYear: at(followed, 0).thickestByYear.map((_, year) =>
      Math.max(...followed.map(({ thickestByYear }) => at(thickestByYear, year).thickness)),
    ),
  };
}

function contendersOf(parts: readonly PartYear[]) {
  const trials = parts.map(trialOf);
  const byYear = parts.map(({ component, context }) => candidatePlans(component, context));
  const impossible = impossibleIn(byYear, parts);
  const contenders = at(byYear, 0)
    .plans.filter(({ entry }) => !impossible.some(({ id }) => id === entry.id))
    .map((plan): Contender => ({ plan, byYear: inEachYear(plan, byYear, trials) }));
  return { contenders, impossible, trials };
}

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

function inEachYear(plan: Plan, byYear: readonly Candidates[], trials: readonly Trial[]) {
  return byYear.map(({ plans }, year) =>
    at(trials, year).of(year === 0 ? plan : (plans.find(({ id }) => id === plan.id) ?? plan)),
  );
}

const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;

function brokenLimit({ byYear }: Contender): string | undefined {
  for (const trial of byYear) {
    const broken = trial.brokenLimit();
    if (broken !== undefined) return broken;
  }
  return undefined;
}

const yearlyCost = ({ byYear }: Contender) => mean(byYear.map(({ cost }) => cost()));
const leastCost = ({ byYear }: Contender) => mean(byYear.map((trial) => trial.leastCost));

function tried(contender: Contender): TriedPlan {
  return {
    plan: contender.plan,
    yearlyCost: yearlyCost(contender),
    brokenLimit: brokenLimit(contender),
  };
}

/**
 * The plan of least yearly cost that keeps the limits; the first listed wins a tie. Plans are tried in the order of
 * what they cost at least, and the search ends where that exceeds the best found: the result is that of trying all.
 */
function cheapestOf(contenders: readonly Contender[]): Contender {
  const inOrder = contenders
    .map((contender, index) => ({ contender, index, least: leastCost(contender) }))
    .sort((a, b) => a.least - b.least);
  let best: { contender: Contender; index: number; cost: number } | undefined;
  for (const { contender, index, least } of inOrder) {
    if (best && least > best.cost) break;
    if (brokenLimit(contender) !== undefined) continue;
    const cost = yearlyCost(contender);
    if (!best || cost < best.cost || (cost === best.cost && index < best.index)) {
      best = { contender, index, cost };
    }
  }
  return best?.contender ?? busiest(contenders);
}

function busiest(contenders: readonly Contender[]): Contender {
  const interval = ({ plan: { routine } }: Contender) =>
    routine.by === "interval" ? routine.months : Infinity;
  return contenders.reduce((best, each) => (interval(each) < interval(best) ? each : best));
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

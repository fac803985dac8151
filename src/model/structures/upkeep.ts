import { at } from "../../lists.js";
import { withLater } from "../computed-once.js";
import { aloneOf, thickestOf } from "../mussels/layer.js";
import type { PinnedPlan } from "./catalogue.js";
import type { ComponentResult, LimitLoad, Plan, TriedPlan, WayOut } from "./component.js";
import { noLoad } from "./limits.js";
import { followPlan, meanOfYears } from "./plan-over-years.js";
import { contendersOf, impossibleIn } from "./plans/contenders.js";
import { thickestUnder } from "./plans/course.js";
import { firstCleaned } from "./plans/course-months.js";
import { type Contender, cheapestOf, meanValue, reckonedOut, type Tried } from "./plans/search.js";
import { planTools } from "./plans/tools.js";
import {
  type GrowingYears,
  growingYears,
  type PartYear,
  type PartYears,
  untouchedLayer,
} from "./plans/untouched.js";
import { type PlanValue, planValues } from "./plans/value.js";

/**
 * Chooses the plan of least present value, V = Σ w(a) C(a), among all that the catalogue offers a part, and works out its
 * lines for every year since establishment. With a level record, each of its years is one possible operating year and
 * the cost is the mean, L = Σ Li/n: a plan is operated by the year that comes, and in a year that does not allow it the
 * part is kept by its way out. A plan that the study prescribes is taken whatever it costs.
 * @param again makes the part anew when more is asked of it: one that was worked out holds on to much memory
 */
export function keepInService(
  parts: GrowingYears,
  pinned: readonly PinnedPlan[],
  again: () => PartYears,
): ComponentResult {
  const { kept, plans } = bestKept(parts, pinned, () => everyPlan(again()));
  return withLater(kept, {
    impossible: () => impossibleIn(again()),
    thickestLayer: () =>
      aloneOf(thickestOf(again().map((part, year) => thickestUnder(at(plans, year), part)))),
    untouchedLayer: () => aloneOf(thickestOf(again().map(untouchedLayer))),
  });
}

type MadeLater = "impossible" | "thickestLayer" | "untouchedLayer";

/** A function of its own, so that what is made when asked for does not hold on to all that grew. */
function bestKept(
  parts: GrowingYears,
  pinned: readonly PinnedPlan[],
  everyPlanTried: ComponentResult["everyPlan"],
): { kept: Omit<ComponentResult, MadeLater>; plans: Contender["byYear"] } {
  const { tools, contenders, tryOut } = reckoning(parts);
  const cheapest = cheapestOf(contenders, tryOut);
  const { name } = parts[0].component;
  const prescribed = pinned.find(({ part }) => part === name);
  const byStudy = prescribed && contenders.find(({ plan: { id } }) => id === prescribed.plan);
  const chosen = byStudy ? reckonedOut(tryOut(byStudy)) : cheapest;
  const followed = chosen.byYear.map(({ plan, course }, year) => followPlan(plan, at(tools, year), course));
  const kept = {
    name,
    chosen: triedPlan(chosen, parts),
    pinned:
      byStudy && prescribed ? { reason: prescribed.reason, cheapest: triedPlan(cheapest, parts) } : undefined,
    everyPlan: everyPlanTried,
    told: meanOfYears(followed),
  };
  return { kept, plans: chosen.contender.byYear };
}

/** All that trying plans on one part takes; what is reckoned for a plan in a year is reckoned once. */
function reckoning(parts: GrowingYears) {
  const tools = parts.map(planTools);
  const values = tools.map(planValues);
  const reckoned = (plan: Plan, year: number) => at(values, year)(plan);
  const tryOut = (contender: Contender): Tried => ({ contender, byYear: contender.byYear.map(reckoned) });
  const cheapestIn = (year: number, plans: Contender["byYear"]) =>
    cheapestOf(
      plans.map((plan) => ({ plan, byYear: [plan] })),
      (contender) => ({ contender, byYear: [reckoned(contender.plan, year)] }),
    ).contender.plan;
  return { tools, tryOut, contenders: contendersOf(parts, cheapestIn) };
}

function everyPlan(parts: PartYears): TriedPlan[] {
  const { contenders, tryOut } = reckoning(growingYears(parts));
  return contenders.map((contender) => triedPlan(reckonedOut(tryOut(contender)), parts));
}

function triedPlan(tried: Tried, parts: PartYears): TriedPlan {
  const nearest = tried.byYear.reduce<LimitLoad>((most, each) => {
    return each.nearest.load > most.load ? each.nearest : most;
  }, noLoad);
  const { plan } = tried.contender;
  return {
    plan,
    yearlyCost: meanValue(tried) / parts[0].context.planWeights.whole,
    nearestLimit: nearest.load > 0 ? { words: nearest.limit.broken, load: nearest.load } : undefined,
    brokenLimit: nearest.load > 1 ? nearest.limit.broken : undefined,
    wayOut: wayOutOf(tried.contender),
    comesToLeaving:
      plan.entry.measure !== "leave" && tried.byYear.every((each, year) => isLeft(each, at(parts, year))),
  };
}

/** Whether nothing of a plan is done: a protection is in place, and inspections are made, once mussels are regularly found. */
const isLeft = ({ plan: { protection }, course }: PlanValue, { context }: PartYear): boolean =>
  !(protection && context.found.ever) && firstCleaned(course) === Infinity;

/** Years of the record that do not allow the plan, with what is done in them. */
function wayOutOf({ plan, byYear }: Contender): WayOut | undefined {
  const others = byYear.filter(({ id }) => id !== plan.id);
  if (others.length === 0) return undefined;
  const labels = [...new Set(others.map(({ label }) => label))];
  return { years: others.length, ofYears: byYear.length, labels };
}

import type { ComponentResult, ImpossiblePlan, TriedPlan } from "../../model/structures/component.js";
import type { StudyRun } from "../../study/prepare/compute.js";
import { reportContext } from "../document/context.js";
import type { Formatter } from "../words/format.js";
import { type IntervalsView, intervalsView } from "./interval-chart.js";
import { remarkOf, runnerUpOf, triedPlans } from "./tried-plans.js";

/** A part of a structure, as a study names it where it prescribes its plan. */
export interface PartName {
  readonly structure: string;
  readonly part: string;
}

/** The parts of a study with their plans, and one of them with every plan priced. */
export interface PlanPicks {
  readonly parts: readonly PickedPart[];
  readonly open: OpenPart | undefined;
  readonly priceYear: number;
}

interface PickedPart extends PartName {
  readonly name: string;
  readonly plan: string;
  readonly cost: string;
  /** The reason of the study, where it prescribes the plan. */
  readonly prescribed: string | undefined;
}

interface OpenPart extends PartName {
  readonly name: string;
  readonly plans: readonly PricedPlan[];
  readonly impossible: readonly ImpossiblePlan[];
  readonly prescribed: string | undefined;
  readonly intervals: IntervalsView | undefined;
}

interface PricedPlan {
  readonly id: string;
  readonly label: string;
  readonly cost: string;
  /** Over the cheapest. */
  readonly more: string;
  readonly keeps: string;
  /** The limit that it passes at times, whose costs are in its own, or that it has no visit. */
  readonly remark: string;
  readonly mark: string;
  readonly isTaken: boolean;
}

/** @param asked the part that is open; none of it where there is no such part */
export function planPicks(run: StudyRun, asked: PartName | undefined): PlanPicks {
  const { format, priceYear } = reportContext(run);
  const found = run.comparison.structures.flatMap(({ structure, components }) =>
    components.map((component) => ({ structure, component })),
  );
  const open = found.find(
    ({ structure, component }) => structure.id === asked?.structure && component.name === asked.part,
  );
  return {
    priceYear,
    parts: found.map(({ structure, component }) => ({
      ...{ structure: structure.id, part: component.name },
      name: `${structure.name}: ${component.name}`,
      plan: component.chosen.plan.label,
      cost: format.exactMoney(component.chosen.yearlyCost),
      prescribed: component.pinned?.reason,
    })),
    open: open && openPart(open, run),
  };
}

type Found = {
  readonly structure: { readonly id: string; readonly name: string };
  readonly component: ComponentResult;
};

function openPart({ structure, component }: Found, run: StudyRun): OpenPart {
  const context = reportContext(run);
  const name = `${structure.name}: ${component.name}`;
  const yearlyCost = component.chosen.yearlyCost;
  const group = { component, name, structures: [structure.name], ids: [structure.id], yearlyCost };
  return {
    ...{ structure: structure.id, part: component.name, name },
    plans: triedPlans(component).map((tried) => pricedPlan(tried, component, context.format)),
    impossible: component.impossible,
    prescribed: component.pinned?.reason,
    intervals: intervalsView(group, 1, context),
  };
}

function pricedPlan(tried: TriedPlan, component: ComponentResult, format: Formatter): PricedPlan {
  const { plan, yearlyCost, nearestLimit } = tried;
  const cheapest = triedPlans(component)[0] ?? tried;
  const room = nearestLimit === undefined ? undefined : Math.round(nearestLimit.load * 100);
  return {
    id: plan.id,
    label: plan.label,
    cost: format.exactMoney(yearlyCost),
    more: tried === cheapest ? "–" : format.exactMoney(yearlyCost - cheapest.yearlyCost),
    keeps: keepsText(tried, room),
    remark: remarkOf(tried),
    mark: markOf(tried, component),
    isTaken: plan.id === component.chosen.plan.id,
  };
}

function keepsText({ brokenLimit, wayOut }: TriedPlan, room: number | undefined): string {
  const years = wayOut ? `; not possible in ${wayOut.years} of ${wayOut.ofYears} years of the record` : "";
  if (brokenLimit !== undefined) return `not every limit${years}`;
  return room === undefined || room === 0
    ? `every limit${years}`
    : `every limit; the nearest is ${room}% used up${years}`;
}

function markOf({ plan }: TriedPlan, component: ComponentResult): string {
  const { chosen, pinned } = component;
  const isCheapest = triedPlans(component)[0]?.plan.id === plan.id;
  if (plan.id === chosen.plan.id) return pinned ? "prescribed" : "chosen: cheapest";
  if (isCheapest) return "cheapest";
  return plan.id === runnerUpOf(component)?.plan.id ? "next best" : "";
}

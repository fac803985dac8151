import type { ComponentResult, TriedPlan } from "../../model/structures/component.js";
import type { ReportContext } from "../document/context.js";
import { listedWithin, percent } from "../words/format.js";
import { groupRow, head, num, type RowView, row, type TableView } from "../words/view-types.js";
import type { PartGroup } from "./part-groups.js";
import { intervalOf, keepsLimits, remarkOf, runnerUpOf, triedPlans, whyLeft } from "./tried-plans.js";

const listed = (items: readonly string[]) => listedWithin(items, items.length);

/** What was chosen for a part and why, in sentences. */
export function partFacts({ component, ids }: PartGroup, context: ReportContext): string[] {
  const { chosen, impossible } = component;
  const tried = triedPlans(component);
  const kept = tried.filter(keepsLimits).length;
  const { exactMoney } = context.format;
  const count = countText({ tried: tried.length, kept, impossible: impossible.length });
  const cost = `${exactMoney(chosen.yearlyCost)} a year`;
  const facts = component.pinned
    ? [`Prescribed by the study: ${chosen.plan.label}, at ${cost}.`, ...pinnedFacts(component, context)]
    : [`Chosen: ${chosen.plan.label}, at ${cost}. ${nextText(component, context)}`];
  return [
    ...facts,
    ...(chosen.comesToLeaving ? [`It comes to leaving the part: ${whyLeft(chosen.plan)}.`] : []),
    ...limitFacts(chosen),
    ...wayOutFacts(chosen),
    ...turnFacts(component, ids, context),
    count,
  ];
}

/** Share of a limit's room from which the report tells of it. */
const worthTelling = 0.5;

/** How near the layer comes to a limit, where that tells on the cost. */
function limitFacts({ nearestLimit }: TriedPlan): string[] {
  if (nearestLimit === undefined || nearestLimit.load < worthTelling) return [];
  const { words, load } = nearestLimit;
  return [
    load > 1
      ? `At its thickest the layer passes a limit (${words}); the cleanings that this forces are in the cost.`
      : `At its thickest the layer uses ${percent(load)} of what a limit allows (“${words}” beyond it); any cleaning that this forces is in the cost.`,
  ];
}

/** Share of the draws with another plan from which the report tells of it. */
const oftenTurned = 0.1;

/** Where what is uncertain turns the plan: how often, and by what. */
function turnFacts(
  { name }: ComponentResult,
  ids: readonly string[],
  { planTurns }: ReportContext,
): string[] {
  const turn = planTurns.find(
    ({ structure, part, share }) => part === name && ids.includes(structure) && share >= oftenTurned,
  );
  if (!turn) return [];
  const { other, by, share } = turn;
  const most = other.share < share ? `, most often: ${other.name}` : `: ${other.name}`;
  const where = by
    ? ` They differ from the rest most in the ${by.name}, which is ${by.apart > 0 ? "higher" : "lower"} there.`
    : "";
  return [`In ${percent(share, 2)} of simulated lakes another plan costs less${most}.${where}`];
}

/** What is done in the years of a record that do not allow the plan. */
function wayOutFacts({ wayOut }: TriedPlan): string[] {
  if (wayOut === undefined) return [];
  const { years, ofYears, labels } = wayOut;
  return [
    `In ${years} of the ${ofYears} years of the record the levels do not allow it; the part is then kept otherwise (${listed(labels)}), and those years are costed so.`,
  ];
}

function countText({ tried, kept, impossible }: Record<"tried" | "kept" | "impossible", number>): string {
  const limits =
    kept === tried
      ? "all keep every limit"
      : `${kept} keep every limit, ${tried - kept} pass one at times, with the cleanings that it forces in their cost`;
  const others =
    impossible === 1
      ? " One other plan is not feasible here."
      : ` ${impossible} other plans are not feasible here.`;
  return `${tried} plans were tried: ${limits}.${impossible === 0 ? "" : others}`;
}

function nextText(component: ComponentResult, { format }: ReportContext): string {
  const next = runnerUpOf(component);
  if (!next)
    return triedPlans(component).length > 1
      ? "Every other plan comes to leaving the part here."
      : "No other plan is feasible here.";
  const more = next.yearlyCost - component.chosen.yearlyCost;
  return `Next best: ${next.plan.label}, ${format.exactMoney(more)} a year more.`;
}

function pinnedFacts({ chosen, pinned }: ComponentResult, { format }: ReportContext): string[] {
  if (!pinned) return [];
  const { reason, cheapest } = pinned;
  const more = chosen.yearlyCost - cheapest.yearlyCost;
  const compared =
    cheapest.plan.id === chosen.plan.id
      ? "It is also the cheapest."
      : `Cheapest: ${cheapest.plan.label}, at ${format.exactMoney(cheapest.yearlyCost)} a year. The prescription costs ${format.exactMoney(more)} a year more.`;
  return [`Reason given: “${reason}”.`, compared];
}

/** Every plan of the catalogue for a part: those that keep its limits, those that pass one, those not possible. */
export function partPlansTable(group: PartGroup, number: number, context: ReportContext): TableView {
  const { component } = group;
  const tried = triedPlans(component);
  return {
    id: `table-plans-${number}`,
    caption: `${group.name}: plans tried, prices of ${context.priceYear}`,
    head: head("Plan", num("Cost a year"), "Limit passed at times, or why not"),
    rows: [
      ...section("Keep every limit", keptRows(component, context)),
      ...section(
        "Pass a limit at times",
        alike(tried.filter((each) => !keepsLimits(each))).map((plans) =>
          planRow(plans, `${markOf(plans, component)}${remarkOf(plans[0])}`, context),
        ),
      ),
      ...section("Not feasible here", impossibleRows(component)),
    ],
    compact: true,
  };
}

const section = (title: string, rows: readonly RowView[]): RowView[] =>
  rows.length === 0 ? [] : [groupRow(title), ...rows];

function keptRows(component: ComponentResult, context: ReportContext): RowView[] {
  const { chosen } = component;
  const kept = triedPlans(component).filter(keepsLimits);
  const next = runnerUpOf(component);
  const apart = [chosen.plan.id, next?.plan.id];
  const rest = kept.filter(({ plan }) => !apart.includes(plan.id));
  return [
    ...kept.flatMap((each) => {
      if (each.plan.id === chosen.plan.id) return [planRow([each], markOf([each], component), context)];
      return each.plan.id === next?.plan.id ? [planRow([each], nextMark(each, chosen), context)] : [];
    }),
    ...alike(rest).map((plans) => planRow(plans, remarkOf(plans[0]), context)),
  ];
}

const nextMark = (next: TriedPlan, chosen: TriedPlan) =>
  next.yearlyCost < chosen.yearlyCost ? "cheapest" : "next best";

function markOf(plans: Alike, { chosen, pinned }: ComponentResult): string {
  if (!plans.some(({ plan }) => plan.id === chosen.plan.id)) return "";
  const mark = pinned ? "prescribed" : "chosen";
  return keepsLimits(chosen) ? mark : `${mark} (${chosen.plan.label}): `;
}

type Alike = readonly [TriedPlan, ...TriedPlan[]];

/** Plans of one entry that fare alike, at their several intervals, in order of their least cost. */
function alike(plans: readonly TriedPlan[]): Alike[] {
  const groups = new Map<string, [TriedPlan, ...TriedPlan[]]>();
  for (const each of plans) {
    const key = JSON.stringify([each.plan.entry.id, remarkOf(each), intervalOf(each) === 0]);
    const group = groups.get(key);
    if (group) group.push(each);
    else groups.set(key, [each]);
  }
  return [...groups.values()];
}

function planRow(plans: Alike, mark: string, { format }: ReportContext): RowView {
  const [cheapest] = plans;
  const dearest = plans.at(-1) ?? cheapest;
  const [from, to] = [format.exactMoney(cheapest.yearlyCost), format.exactMoney(dearest.yearlyCost)];
  return row(labelOf(plans), num(from === to ? from : `${from} to ${to}`), mark);
}

function labelOf(plans: Alike): string {
  const [{ plan }] = plans;
  if (plans.length === 1) return plan.label;
  const intervals = plans.map(intervalOf).sort((a, b) => a - b);
  return plan.label.replace(/every (month|\d+ months)$/, `every ${listed(intervals.map(String))} months`);
}

function impossibleRows({ impossible }: ComponentResult): RowView[] {
  const reasons = [...new Set(impossible.map(({ reason }) => reason))];
  return reasons.map((reason) =>
    row(
      listed(impossible.filter((each) => each.reason === reason).map(({ label }) => label)),
      num("–"),
      reason,
    ),
  );
}

import { boardMoney } from "../board/board-money.js";
import type { ReportContext } from "../document/context.js";
import { head, num, type RowView, row, type TableView } from "../words/view-types.js";
import { type IntervalsView, intervalsView } from "./interval-chart.js";
import { type PartGroup, partGroups } from "./part-groups.js";
import { partFacts, partPlansTable } from "./part-plans.js";
import { type PlanRegister, planRegister } from "./plan-register.js";
import { remarkOf, runnerUpOf, triedPlans } from "./tried-plans.js";

/** How each part is kept in service, with what else was tried. */
export interface PlansView {
  readonly intro: string;
  readonly overview: TableView;
  /** The most expensive and those whose plan the study prescribes, in detail. */
  readonly shown: readonly PartView[];
  /** Plans tried on the others, for the tables as files. */
  readonly others: readonly TableView[];
  readonly register: PlanRegister;
}

interface PartView {
  readonly name: string;
  readonly isPrescribed: boolean;
  readonly facts: readonly string[];
  readonly intervals: IntervalsView | undefined;
  readonly tried: TableView;
}

/** A study may have thousands of parts, and a board's report ends. */
const most = { charts: 1, shown: 1, details: 12, rows: 60 };

/** Absent where the study has no part that fouls. */
export function plansView(context: ReportContext): PlansView | undefined {
  const groups = partGroups(context.comparison);
  if (groups.length === 0) return undefined;
  const parts = groups.slice(0, most.details).map((group, index) => ({
    name: group.name,
    isPrescribed: group.component.pinned !== undefined,
    facts: partFacts(group, context),
    intervals: index < most.charts ? intervalsView(group, index + 1, context) : undefined,
    tried: partPlansTable(group, index + 1, context),
  }));
  const isShown = ({ isPrescribed }: PartView, index: number) => index < most.shown || isPrescribed;
  return {
    intro: intro(groups),
    overview: overviewTable(groups, context),
    shown: parts.filter(isShown),
    others: parts.filter((part, index) => !isShown(part, index)).map(({ tried }) => tried),
    register: planRegister(context),
  };
}

function intro(groups: readonly PartGroup[]): string {
  const isPrescribed = groups.some(({ component }) => component.pinned !== undefined);
  const prescribed = isPrescribed ? " Where the study prescribes a plan, that one is followed." : "";
  const rule = `For each part every plan that the catalogue offers is followed from establishment on. The one of least present value over the horizon is chosen, one for all options.${prescribed} A cost is that of the plan, of the losses that remain under it and of the cleanings that a limit forces when a layer nears it, as an average year of the horizon in which an infestation may begin in any year.`;
  const detail =
    groups.length <= most.shown
      ? "It is shown in detail"
      : "The most expensive part is shown in detail, the others in a line each";
  const capped =
    groups.length > most.rows
      ? `, of which the table below has the first ${most.rows}; the tables as files have the plan of every part`
      : "";
  return `${rule} ${detail}${capped}. Parts that are alike in every figure are shown once. The tables as files have the plans tried on ${groups.length <= most.details ? "every part" : `the ${most.details} most expensive parts`}.`;
}

function overviewTable(groups: readonly PartGroup[], context: ReportContext): TableView {
  const { format, priceYear } = context;
  const shown = groups.slice(0, most.rows);
  const rest = groups.slice(most.rows);
  return {
    id: "table-plans",
    caption: `The plan of each part, the most expensive first, prices of ${priceYear}`,
    head: head(
      "Part",
      num("Parts alike"),
      "Plan",
      num("Cost a year, each"),
      "Best of the others",
      num("Cost a year, each"),
      num("Plans tried"),
    ),
    rows: [...shown.map((group) => overviewRow(group, context)), ...restRows(rest, context)],
    total: row(
      "All parts",
      num(String(partsOf(groups))),
      "",
      num(format.exactMoney(costOf(groups))),
      "",
      num(""),
      num(""),
    ),
    note: "The total counts parts that are alike as often as they occur. Sweeping of ramps, fixtures and lake-wide duties have no plan and are not in it.",
    compact: true,
  };
}

const partsOf = (groups: readonly PartGroup[]) =>
  groups.reduce((sum, { structures }) => sum + structures.length, 0);
const costOf = (groups: readonly PartGroup[]) => groups.reduce((sum, { yearlyCost }) => sum + yearlyCost, 0);

function overviewRow({ component, structures, name }: PartGroup, context: ReportContext): RowView {
  const next = runnerUpOf(component);
  const format = boardMoney(context.format);
  return row(
    name,
    num(String(structures.length)),
    chosenText(component),
    num(format.exactMoney(component.chosen.yearlyCost)),
    next?.plan.label ?? "none",
    num(next ? format.exactMoney(next.yearlyCost) : "–"),
    num(String(triedPlans(component).length)),
  );
}

function restRows(rest: readonly PartGroup[], { format }: ReportContext): RowView[] {
  if (rest.length === 0) return [];
  const count = String(partsOf(rest));
  const cost = `${format.exactMoney(costOf(rest))} together`;
  return [row(`${count} other parts`, num(count), "in the tables as files", num(cost), "", num(""), num(""))];
}

function chosenText({ chosen, pinned }: PartGroup["component"]): string {
  const by = pinned ? " (prescribed by the study)" : "";
  return `${chosen.plan.label}${by}${remarkOf(chosen) && `; ${remarkOf(chosen)}`}`;
}

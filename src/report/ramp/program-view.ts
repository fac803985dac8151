import { counted } from "../../counted.js";
import { at } from "../../lists.js";
import type { StationRun } from "../../study/prepare/staffing.js";
import { budgetTable } from "../board/budget-table.js";
import { optionsAskedTable } from "../board/options-asked.js";
import { allOptions, type ReportContext } from "../document/context.js";
import { percent } from "../words/format.js";
import type { TableView } from "../words/view-types.js";
import { coverageTables, trafficTable } from "./coverage-view.js";
import { effectTable } from "./effect-table.js";
import { feesTable } from "./fees-view.js";
import { type FunnelView, funnelView } from "./funnel-view.js";
import { growthTable } from "./growth-table.js";
import { programByOptionTable } from "./program-by-option.js";
import { everyProgramCostTable, programCostTable } from "./program-cost-table.js";
import { type StationView, stationViews } from "./staffing-view.js";
import { vesselClassesTable } from "./vessel-classes-view.js";

export interface ProgramView {
  readonly heading: string;
  /** Absent where the lake is infested: what boats carry no longer matters. */
  readonly classes: TableView | undefined;
  /** Absent where the lake is infested, or no option has steps: no chance of infestation is lowered. */
  readonly funnel: FunnelView | undefined;
  /** Absent where all options run in full from the first year, or the lake is infested. */
  readonly growth: TableView | undefined;
  /** What each option asks of the next budgets, and what decides the effect of those that check boats. */
  readonly asked: TableView;
  readonly effect: TableView | undefined;
  readonly byOption: TableView;
  readonly cost: TableView;
  /** Absent where the other table has every line. */
  readonly everyCost: TableView | undefined;
  /** Absent where no option has a fee, or the lake is infested. */
  readonly fees: TableView | undefined;
  /** Absent where the lake is infested, or the requested option has no program. */
  readonly budget: TableView | undefined;
  readonly stepsNote: string;
  /** Absent where the study gives no traffic. */
  readonly traffic: TableView | undefined;
  /** One for each option that gives its open hours. */
  readonly coverage: readonly TableView[];
  /** A line for each option with steps: its coverage, and what its stations need. */
  readonly atTheRamp: readonly string[];
  /** One for each option whose study gives its station. */
  readonly stations: readonly StationView[];
}

export function programView(context: ReportContext): ProgramView {
  const hasSteps = context.comparison.options.some(({ result }) => result.option.steps !== undefined);
  const funnel =
    context.infestedSince === undefined && hasSteps ? funnelView(context, allOptions(context)) : undefined;
  return {
    heading: hasSteps ? "At the ramp: the program options" : "The options and what they cost",
    classes: context.infestedSince === undefined ? vesselClassesTable(context) : undefined,
    funnel,
    growth: growthTable(context),
    asked: optionsAskedTable(context) ?? programByOptionTable(context),
    effect: effectTable(context),
    byOption: programByOptionTable(context),
    cost: programCostTable(context),
    everyCost: everyProgramCostTable(context),
    fees: feesTable(context),
    budget: budgetTable(context),
    stepsNote: stepsNote(context),
    traffic: trafficTable(context),
    coverage: coverageTables(context),
    atTheRamp: rampLines(context),
    stations: stationViews(context),
  };
}

function stepsNote({ run }: ReportContext): string {
  return run.document.options
    .flatMap((option) => (option.steps ? [`${option.name}: ${option.steps.origin}.`] : []))
    .join(" ");
}

/** A line for each option with steps: what it covers, and what its stations need. */
export function rampLines({ traced, run, format }: ReportContext): string[] {
  const [, ...programs] = traced.options;
  return programs.flatMap(({ result: { option }, inspectorHours: paid }) => {
    if (!option.steps) return [];
    const computed = run.coverage.some(({ optionId }) => optionId === option.id);
    const origin = computed ? "computed from its open hours" : "as entered";
    const station = run.staffing.find(({ optionId }) => optionId === option.id);
    const hours = (value: number) => `${format.number(value, "hours")} h`;
    const covers = `${option.name}: coverage ${percent(option.steps.coverage, 3)} of launches, ${origin}`;
    const needed = station?.staffing.staffHoursPerYear ?? 0;
    const short = paid < needed ? `, ${hours(needed - paid)} short` : "";
    return [
      station
        ? `${covers}; inspectors needed ${hours(needed)} a year, paid ${hours(paid)}${short}; ${waitText(station)}.`
        : `${covers}; waiting time not assessed.`,
    ];
  });
}

function waitText({ days, staffing }: StationRun): string {
  const failing = days.filter((_, index) => !at(staffing.dayTypes, index).keepsTarget).length;
  if (failing === 0) return "the waiting-time target is met every day";
  return `the waiting-time target is missed on ${failing} of ${counted(days.length, "type")} of day and site`;
}

import type { ScheduleResult } from "../../../model/schedules.js";
import type { TracedSchedule } from "../../../study/levels/traced-schedule.js";
import type { ReportContext } from "../../document/context.js";
import { listedWithin } from "../../words/format.js";
import type { ChartView, TableView } from "../../words/view-types.js";
import { scheduleCautions } from "./schedule-cautions.js";
import { scheduleTables } from "./schedule-tables.js";
import { scheduleLevelsTable, schedulesChart } from "./schedules-chart.js";

/** The lake's own levels and the others of the study side by side. */
export interface SchedulesView {
  readonly intro: string;
  readonly findings: readonly string[];
  readonly tables: readonly TableView[];
  readonly chart: ChartView;
  readonly levels: TableView;
  readonly cautions: readonly string[];
}

/** Absent where the study has only the lake's own levels. */
export function schedulesView(context: ReportContext): SchedulesView | undefined {
  const [, ...others] = context.traced.schedules;
  if (others.length === 0) return undefined;
  return {
    intro: intro(context),
    findings: others.map((other) => finding(other, context)),
    tables: scheduleTables(context),
    chart: schedulesChart(context),
    levels: scheduleLevelsTable(context),
    cautions: scheduleCautions(context),
  };
}

function intro({ run, comparison }: ReportContext): string {
  const { storageValue, storageValueOrigin } = run.document.lake;
  const worth =
    storageValue === undefined
      ? "The study sets no value on stored water: storage given up is counted at nothing."
      : `Storage given up is priced at ${storageValue.text} (${storageValueOrigin}).`;
  const followers = comparison.options
    .filter(({ result }) => result.option.schedule !== undefined)
    .map(({ result }) => `“${result.option.name}”`);
  const followed =
    followers.length === 0
      ? "No option of this study follows one."
      : `${listedWithin(followers, followers.length)} ${followers.length === 1 ? "follows" : "follow"} one of them in the balance.`;
  return `Different lake levels expose different mussels, and cost energy, water, launches and storage. Each schedule is compared here with the levels as operated. ${worth} ${followed}`;
}

/** What a schedule saves and costs in a year of a mature infestation. */
function finding(
  { schedule, matureSaving: saved, operatingPerYear }: TracedSchedule,
  { format, infestedSince, traced }: ReportContext,
): string {
  const cost = operatingPerYear.toNumber();
  const net = saved - cost;
  const when = infestedSince === undefined ? "Followed once the lake is infested" : "Followed from now on";
  const saves =
    saved < 0
      ? `adds ${format.money(-saved)} a year to upkeep and losses`
      : `saves ${format.money(saved)} a year of upkeep and losses`;
  const costs =
    cost < 0 ? `brings in ${format.money(-cost)} a year` : `costs ${format.money(cost)} a year to follow`;
  const together =
    net < 0
      ? `Together it costs ${format.money(-net)} a year more than the levels as operated.`
      : `Together it saves ${format.money(net)} a year against the levels as operated.`;
  return `${when}, “${schedule.name}” ${saves} and ${costs}. ${together}${fewerKilled(schedule, { format, traced })}`;
}

/** Why levels that fall lower may kill less and cost more. */
function fewerKilled(schedule: ScheduleResult, { format, traced }: Pick<ReportContext, "format" | "traced">) {
  const own = traced.schedules[0].schedule;
  const isLower = schedule.levels.band.lowest < own.levels.band.lowest;
  if (!isLower || schedule.killed() >= own.killed()) return "";
  const amount = (each: ScheduleResult) => format.quantity(each.killed(), "areaMass");
  return ` Though it falls lower, it kills fewer mussels by area of its band, ${amount(schedule)} a year against ${amount(own)}: ground that is exposed longer grows fewer mussels between drawdowns, and those living below go on seeding it.`;
}

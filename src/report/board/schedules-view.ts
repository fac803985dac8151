import { totalOf } from "../../model/money/line.js";
import type { ScheduleResult } from "../../model/schedules.js";
import type { ReportContext } from "../document/context.js";
import { matureMeanOf } from "../rack/infestation-view.js";
import { listedWithin } from "../words/format.js";
import type { ChartView, TableView } from "../words/view-types.js";
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
  const [own, ...others] = context.comparison.schedules;
  if (others.length === 0) return undefined;
  return {
    intro: intro(context),
    findings: others.map((other) => finding(own, other, context)),
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
  return `Other levels of the lake dry out other mussels, and cost energy, water, launches and storage. Each schedule is held here against the levels as operated. ${worth} ${followed}`;
}

/** What a schedule saves and costs in a year of a mature infestation. */
function finding(own: ScheduleResult, other: ScheduleResult, context: ReportContext): string {
  const { format, infestedSince } = context;
  const saved = matureSaving(own, other, context);
  const cost = totalOf(other.operating).toNumber();
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
  return `${when}, “${other.name}” ${saves} and ${costs}. ${together}`;
}

/** Upkeep and losses of a mature year that other levels save; negative where they add to them. */
export const matureSaving = (own: ScheduleResult, other: ScheduleResult, context: ReportContext): number =>
  matureMeanOf(own.infestation.byYear, context) - matureMeanOf(other.infestation.byYear, context);

const mostNames = 6;

/** What must be settled before a lake is drawn down against mussels. */
function scheduleCautions(context: ReportContext): string[] {
  return [
    "Rate. Draw the lake down no faster than the dam's operating rules and its safety engineer allow: a fast fall can make banks and embankment dams slide.",
    ...exposedIntakes(context),
    "Intakes. Near the surface they draw air, ice and debris: check submergence, frost and water for fire-fighting first.",
    "Shells. Dead mussels on beaches and ramps are razor-sharp and rot: keep people and animals off until they are swept.",
    "Other life. Native mussels, fish that winter or spawn in the shallows, plants and burrowing animals dry out too, and some are protected. Stranded fish must be looked for.",
    "Permits. Other levels need the consent of those who rule on the dam, on water rights, power, navigation and wildlife. No saving stands before it is given.",
    "Limits. Mussels below the lowest level live on. The fall must come each year, and a mild or wet winter kills fewer.",
  ];
}

function exposedIntakes({ comparison }: ReportContext): string[] {
  return comparison.schedules.slice(1).flatMap(({ name, levels }) => {
    const exposed = comparison.input.structures.flatMap((structure) =>
      (structure.kind === "intake" || structure.kind === "hydropower" || structure.kind === "service-line") &&
      structure.elevation > levels.band.lowest
        ? [structure.name]
        : [],
    );
    return exposed.length === 0
      ? []
      : [
          `Exposed under “${name}”: ${listedWithin(exposed, mostNames)}. An intake gives no water while it stands above the lake.`,
        ];
  });
}

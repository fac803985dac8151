import { at } from "../../../lists.js";
import { months } from "../../../model/lake/calendar.js";
import type { ScheduleResult } from "../../../model/schedules.js";
import type { ReportContext } from "../../document/context.js";
import { safeJson } from "../../print/chart-parts.js";
import { chartMonths, levelPoints, levelScales, placeLines } from "../../rack/levels-chart.js";
import { monthLabels } from "../../rack/levels-view.js";
import { capitalised, listedWithin, oneDecimal } from "../../words/format.js";
import { colours, dashes } from "../../words/palette.js";
import { fixedPlaces } from "../../words/places.js";
import { type ChartView, head, num, row, type TableView } from "../../words/view-types.js";

/** More lines than this are not told apart. */
const mostSchedules = 5;
const mostNames = 3;
const lineColours = [colours.water, colours.brick, colours.shell, colours.ink, colours.water] as const;

const drawn = ({ comparison }: ReportContext): ScheduleResult[] =>
  comparison.schedules.slice(0, mostSchedules);

/** The levels over the year of each schedule, with the elevations of structures. */
export function schedulesChart(context: ReportContext): ChartView {
  const { schedules } = context.comparison;
  const shown = drawn(context);
  const title = chartTitle(context);
  const left =
    schedules.length > shown.length
      ? ` ${shown.length} of ${schedules.length} schedules, in the study's order.`
      : "";
  return {
    id: "chart-schedules",
    title,
    alternative: `Line chart of the lake's level over the year under ${shown.length} schedules, with the elevations of structures. ${title}.`,
    source: `Levels of the study; the mean where a record has several years.${left}`,
    height: 250,
    tableId: "table-schedule-levels",
    json: safeJson({
      type: "line",
      data: {
        labels: chartMonths,
        datasets: [
          ...shown.map(({ name, levels }, index) => ({
            label: capitalised(name),
            data: levelPoints(levels.daily, context.format),
            borderColor: at(lineColours, index),
            borderDash: at(dashes, index % dashes.length),
            borderWidth: 2.5,
            pointRadius: 0,
          })),
          ...placeLines(fixedPlaces(context), context).map((line) => ({
            ...line,
            borderColor: colours.ink,
            borderWidth: 0.9,
          })),
        ],
      },
      options: { monthTicks: true, scales: levelScales(context.format) },
    }),
  };
}

function chartTitle(context: ReportContext): string {
  const { comparison, format } = context;
  const [own, ...others] = comparison.schedules;
  const lowest = [...others].sort((a, b) => a.levels.band.lowest - b.levels.band.lowest)[0];
  const fall = lowest ? own.levels.band.lowest - lowest.levels.band.lowest : 0;
  if (!lowest || fall <= 0) return "No other schedule takes the lake lower than as operated";
  const newlyDry = fixedPlaces(context)
    .filter(({ elevation }) => elevation <= own.levels.band.lowest && elevation > lowest.levels.band.lowest)
    .flatMap(({ names }) => names);
  const dry =
    newlyDry.length === 0
      ? "no further intake, plant or fixed dock is exposed"
      : `${listedWithin(newlyDry, mostNames)} would fall dry as well`;
  return `“${lowest.name}” takes the lake ${format.quantity(fall, "length")} lower than as operated; ${dry}`;
}

/** Mean level of each month under each schedule that is drawn. */
export function scheduleLevelsTable(context: ReportContext): TableView {
  const { format } = context;
  const means = context.traced.schedules.slice(0, mostSchedules).map(({ monthlyMeans }) => monthlyMeans);
  return {
    id: "table-schedule-levels",
    caption: `Mean level of each month, ${format.unit("elevation")}`,
    head: head("Month", ...drawn(context).map(({ name }) => num(capitalised(name)))),
    rows: months.map((month) =>
      row(
        at(monthLabels, month),
        ...means.map((each) => num(oneDecimal(format.display(at(each, month), "elevation")))),
      ),
    ),
    compact: true,
  };
}

import { counted } from "../../counted.js";
import type { BudgetPoint } from "../../model/program/staffing.js";
import type { ReportContext } from "../document/context.js";
import { axis, safeJson } from "../print/chart-parts.js";
import { boatShareText, minutesText } from "../words/format.js";
import { colours } from "../words/palette.js";
import type { ChartView } from "../words/view-types.js";
import { hasSites, type Station } from "./station.js";

/** Shorter waits are not drawn: on a logarithmic axis they would press the others together. */
const shortestDrawn = 0.1;

/** Mean wait against yearly cost, a point for each number of inspectors, and one for the least of each day type. */
export function staffingChart(station: Station, context: ReportContext): ChartView {
  const { run } = station;
  const { curve } = run.staffing;
  const title = chartTitle(station, context);
  const minutes = (hours: number) => context.format.display(hours, "shortTime");
  const points = (all: readonly Waiting[]) =>
    all
      .map((each) => ({ x: each.costPerYear, y: minutes(each.meanWaitHours.mean) }))
      .filter(({ y }) => y >= shortestDrawn);
  return {
    id: `chart-staffing-${run.optionId}`,
    title,
    alternative: `Line chart of the mean wait against yearly cost for ${curve.length === 1 ? "" : "1 to "}${counted(curve.length, "inspector")}. ${title}.`,
    source:
      "Cost of the inspectors alone. The wait is on a logarithmic scale; under 0.1 minutes it is not drawn.",
    height: 215,
    tableId: `table-wait-budget-${run.optionId}`,
    json: safeJson({
      type: "line",
      data: {
        datasets: [
          {
            label: `Same number ${hasSites(station) ? "at each site " : ""}on all days`,
            data: points(curve),
            borderColor: colours.water,
            backgroundColor: colours.water,
            borderWidth: 2.25,
            pointRadius: 4,
          },
          {
            label: "Least for each type of day",
            data: points([run.staffing]),
            borderColor: colours.brick,
            backgroundColor: colours.brick,
            pointStyle: "rectRot",
            pointRadius: 6,
            showLine: false,
            note: { text: "least for each type of day", right: -60, up: -20 },
          },
        ],
      },
      options: {
        scales: {
          x: axis(`${context.run.document.money.currency} a year, inspectors`, { type: "linear", min: 0 }),
          y: axis("Mean wait, minutes", { type: "logarithmic", min: shortestDrawn }),
        },
      },
    }),
  };
}

type Waiting = Pick<BudgetPoint, "costPerYear" | "meanWaitHours">;

/** The step that first keeps the target over the year's boats, or why there is none. */
function chartTitle(station: Station, { format }: ReportContext): string {
  const { run, document } = station;
  const where = hasSites(station) ? " at each site" : "";
  const { curve } = run.staffing;
  const { target } = run.input;
  const kept = curve.findIndex(({ shareOverTarget }) => 1 - shareOverTarget.mean >= target.share);
  const most = curve.at(-1);
  if (kept === -1 && most) {
    return `With ${inspectorsText(most)}${where} on all days ${boatShareText(most.shareOverTarget.mean)} of boats still wait over ${document.target.wait.text}`;
  }
  const [before, after] = [curve[kept - 1], curve[kept]];
  if (before?.oneMore && after) {
    return `${oneMoreText(before)}${where} cuts the mean wait from ${minutesText(before.meanWaitHours.mean)} to ${minutesText(after.meanWaitHours.mean)} minutes for ${format.money(before.oneMore.costAdded)} a year`;
  }
  return `One inspector${where} on all days keeps the mean wait at ${minutesText(after?.meanWaitHours.mean ?? 0)} minutes`;
}

const oneMoreText = ({ inspectors }: BudgetPoint) =>
  inspectors === 1 ? "A second inspector" : `One inspector more than ${inspectors}`;

const inspectorsText = ({ inspectors }: BudgetPoint) =>
  inspectors === 1 ? "one inspector" : `${inspectors} inspectors`;

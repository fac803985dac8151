import type { BudgetPoint } from "../../model/program/staffing.js";
import type { ReportContext } from "../document/context.js";
import { boatShareText, minutesText, percent, significant } from "../words/format.js";
import { type ChartView, head, num, type RowView, row, type TableView } from "../words/view-types.js";
import { staffingChart } from "./staffing-chart.js";
import { estimateText, minutesHead, needsTable, overHead } from "./staffing-needs.js";
import { staffingNotes } from "./staffing-notes.js";
import { hasSites, type Station } from "./station.js";

/** An option's station: how many inspectors it needs, and what the wait costs. */
export interface StationView {
  readonly heading: string;
  readonly intro: string;
  readonly needs: TableView;
  readonly notes: readonly string[];
  readonly chart: ChartView;
  readonly curve: TableView;
}

export function stationViews(context: ReportContext): StationView[] {
  const { document, staffing } = context.run;
  return document.options.flatMap(({ id, name, station }) => {
    const run = staffing.find(({ optionId }) => optionId === id);
    if (!station || !run) return [];
    const asked = { name, document: station, run };
    return [
      {
        heading: `Inspectors at the ramp and the wait: ${name}`,
        intro: intro(asked),
        needs: needsTable(asked, context),
        notes: staffingNotes(asked, context),
        chart: staffingChart(asked, context),
        curve: curveTable(asked, context),
      },
    ];
  });
}

function intro({ document, run }: Station): string {
  const { quickCheck, fullInspection, setAsideShare, spread } = document.service;
  const varies = spread === "exponential" ? "vary exponentially about their mean" : "are always the same";
  return `At least ${percent(run.input.target.share)} of a day’s boats shall wait no longer than ${document.target.wait.text}. Each boat takes ${quickCheck.text} of an inspector, and ${fullInspection.text} more if it is held for full inspection (${setAsideShare.text}); both times ${varies}. The boats are the launches in open hours, less those with a seal. Origin: ${document.origin}.`;
}

function curveTable(station: Station, context: ReportContext): TableView {
  return {
    id: `table-wait-budget-${station.run.optionId}`,
    caption: `The wait against the budget, with the same number of inspectors ${hasSites(station) ? "at each site " : ""}on all days`,
    head: head(
      num("Inspectors"),
      minutesHead,
      overHead(station),
      num("Staff hours a year"),
      num("Cost a year"),
      num("One more saves, boat-hours"),
      num("Boats fewer over"),
      num("Costs more"),
    ),
    rows: station.run.staffing.curve.map((point) => curveRow(point, context)),
    note: "Of all boats of the year. All numbers of inspectors meet the same boats. Boats at the ramp at closing are served, and that time is paid.",
    compact: true,
  };
}

function curveRow(point: BudgetPoint, { format }: ReportContext): RowView {
  const { inspectors, meanWaitHours, shareOverTarget, staffHoursPerYear, costPerYear, oneMore } = point;
  return row(
    num(String(inspectors)),
    num(estimateText(meanWaitHours, minutesText)),
    num(estimateText(shareOverTarget, boatShareText)),
    num(format.number(staffHoursPerYear, "hours")),
    num(format.exactMoney(costPerYear)),
    num(oneMore ? significant(oneMore.boatHoursSaved, 3) : ""),
    num(oneMore ? significant(oneMore.boatsSaved, 3) : ""),
    num(oneMore ? format.exactMoney(oneMore.costAdded) : ""),
  );
}

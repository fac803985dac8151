import { at } from "../model/lake/calendar.js";
import type { DayWait, Judgement } from "../model/program/day-wait.js";
import type { Estimate } from "../model/program/estimate.js";
import type { BudgetPoint, DayTypeStaffing } from "../model/program/staffing.js";
import type { ReportContext } from "./context.js";
import { boatShareText, listedWithin, minutesText, percent, significant } from "./format.js";
import { staffingChart } from "./staffing-chart.js";
import { staffingNotes } from "./staffing-notes.js";
import type { Station } from "./station.js";
import { type ChartView, head, num, type RowView, row, type TableView } from "./view-types.js";

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
  return `At least ${percent(run.input.target.share)} of a day’s boats shall wait no longer than ${document.target.wait.text}. Each boat takes ${quickCheck.text} of an inspector, and ${fullInspection.text} more if it is set aside (${setAsideShare.text}); both times ${varies}. Origin: ${document.origin}.`;
}

/** The mean, with its standard error where it is simulated and large enough to be told. */
function estimateText({ mean, standardError }: Estimate, text: (value: number) => string): string {
  const isTold = standardError > 0 && !text(mean).startsWith("under");
  return isTold ? `${text(mean)} ± ${text(standardError)}` : text(mean);
}

const overHead = ({ document }: Station) => num(`Over ${document.target.wait.text}`);
const minutesHead = num("Mean wait, min");

function needsTable(station: Station, context: ReportContext): TableView {
  const { run } = station;
  const { format } = context;
  const { staffing } = run;
  return {
    id: `table-staffing-${run.optionId}`,
    caption: "Least inspectors that keep the target on each type of day",
    head: head(
      "Day",
      num("Days a year"),
      num("Boats a day"),
      num("Inspectors"),
      minutesHead,
      overHead(station),
      "Judged by",
      num("Staff hours a year"),
      num("Cost a year"),
    ),
    rows: staffing.dayTypes.map((each) => dayTypeRow(each, station, context)),
    total: row(
      "All days",
      num(significant(totalDays(staffing.dayTypes), 3)),
      num(""),
      num(""),
      num(estimateText(staffing.meanWaitHours, minutesText)),
      num(""),
      "",
      num(format.number(staffing.staffHoursPerYear, "hours")),
      num(format.exactMoney(staffing.costPerYear)),
    ),
    compact: true,
  };
}

const totalDays = (dayTypes: readonly DayTypeStaffing[]) =>
  dayTypes.reduce((sum, { dayType }) => sum + dayType.daysPerYear, 0);

function dayTypeRow(each: DayTypeStaffing, { document, run }: Station, { format }: ReportContext): RowView {
  const { dayType, inspectors, keepsTarget, staffHoursPerDay, waits } = each;
  const wait = at(waits, inspectors - 1);
  const staffHours = staffHoursPerDay * dayType.daysPerYear;
  return {
    ...row(
      `${dayType.name}, ${openText(document.opens, dayType.arrivalsByHour.length)}`,
      num(significant(dayType.daysPerYear, 3)),
      num(
        significant(
          dayType.arrivalsByHour.reduce((sum, boats) => sum + boats, 0),
          3,
        ),
      ),
      num(keepsTarget ? String(inspectors) : `${inspectors}, too few`),
      num(estimateText(wait.meanWaitHours, minutesText)),
      num(estimateText(wait.shareOverTarget, boatShareText)),
      methodText(wait),
      num(format.number(staffHours, "hours")),
      num(format.exactMoney(staffHours * run.input.wagePerHour)),
    ),
    failed: !keepsTarget,
  };
}

function openText(opens: string, hours: number): string {
  const closes = String((Number(opens.slice(0, 2)) + hours) % 24).padStart(2, "0");
  return `${opens}–${closes}${opens.slice(2)}`;
}

const methodNames = { "erlang-c": "Erlang C", simulation: "simulation" } as const;

function methodText({ hours }: DayWait): string {
  const used = new Set(hours.map(({ judgement }: { judgement: Judgement }) => methodNames[judgement.method]));
  return listedWithin([...used], used.size);
}

function curveTable(station: Station, context: ReportContext): TableView {
  return {
    id: `table-wait-budget-${station.run.optionId}`,
    caption: "The wait against the budget, with the same number of inspectors on all days",
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

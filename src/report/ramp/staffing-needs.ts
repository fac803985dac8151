import { at, sumOf } from "../../lists.js";
import type { DayWait, Judgement } from "../../model/program/day-wait.js";
import type { Estimate } from "../../model/program/estimate.js";
import type { SiteDay } from "../../model/program/site-days.js";
import type { DayTypeStaffing } from "../../model/program/staffing.js";
import type { ReportContext } from "../document/context.js";
import { boatShareText, listedWithin, minutesText, significant } from "../words/format.js";
import { groupRow, head, num, type RowView, row, type TableView } from "../words/view-types.js";
import { hoursText } from "./coverage-view.js";
import { hasSites, type Station } from "./station.js";

/** The mean, with its standard error where it is simulated and large enough to be told. */
export function estimateText({ mean, standardError }: Estimate, text: (value: number) => string): string {
  const hasPrintedError = standardError > 0 && !text(mean).startsWith("under");
  return hasPrintedError ? `${text(mean)} ± ${text(standardError)}` : text(mean);
}

export const overHead = ({ document }: Station) => num(`Over ${document.target.wait.text}`);
export const minutesHead = num("Mean wait, min");

/** Least inspectors, site by site. */
export function needsTable(station: Station, context: ReportContext): TableView {
  const { run } = station;
  const { staffing } = run;
  return {
    id: `table-staffing-${run.optionId}`,
    caption: `Least inspectors that keep the target ${hasSites(station) ? "at each site " : ""}on each type of day`,
    head: head(
      "Day and open hours",
      num("Days a year"),
      num("Boats a day"),
      num("Inspectors"),
      minutesHead,
      overHead(station),
      "Judged by",
      num("Staff hours a year"),
      num("Cost a year"),
    ),
    rows: siteIds(run.days).flatMap((siteId) => siteRows(siteId, station, context)),
    total: row(
      hasSites(station) ? "All sites" : "All days",
      num(""),
      num(""),
      num(""),
      num(estimateText(staffing.meanWaitHours, minutesText)),
      num(""),
      "",
      ...hoursAndCost(staffing.staffHoursPerYear, station, context),
    ),
    compact: true,
  };
}

const siteIds = (days: readonly SiteDay[]) => [...new Set(days.map(({ siteId }) => siteId))];

interface Line {
  readonly day: SiteDay;
  readonly staffed: DayTypeStaffing;
}

function siteRows(siteId: string, station: Station, context: ReportContext): RowView[] {
  const { days, staffing } = station.run;
  const lines = days
    .map((day, index) => ({ day, staffed: at(staffing.dayTypes, index) }))
    .filter(({ day }) => day.siteId === siteId);
  const rows = lines.map((line) => dayRow(line, station, context));
  if (!hasSites(station)) return rows;
  const hours = lines.reduce((sum, line) => sum + hoursPerYear(line), 0);
  return [
    groupRow(lines[0]?.day.siteName ?? siteId),
    ...rows,
    row("Sum", num(""), num(""), num(""), num(""), num(""), "", ...hoursAndCost(hours, station, context)),
  ];
}

const hoursPerYear = ({ day, staffed }: Line) => staffed.staffHoursPerDay * day.daysPerYear;

const hoursAndCost = (hours: number, { run }: Station, { format }: ReportContext) =>
  [num(format.number(hours, "hours")), num(format.exactMoney(hours * run.input.wagePerHour))] as const;

function dayRow(line: Line, station: Station, context: ReportContext): RowView {
  const { day, staffed } = line;
  const { inspectors, keepsTarget, waits } = staffed;
  const wait = at(waits, inspectors - 1);
  const boats = sumOf(day.arrivalsByHour);
  return {
    ...row(
      `${day.name}, ${hoursText(day.open)}`,
      num(significant(day.daysPerYear, 3)),
      num(significant(boats, 3)),
      num(keepsTarget ? String(inspectors) : `${inspectors}, too few`),
      num(estimateText(wait.meanWaitHours, minutesText)),
      num(estimateText(wait.shareOverTarget, boatShareText)),
      methodText(wait),
      ...hoursAndCost(hoursPerYear(line), station, context),
    ),
    failed: !keepsTarget,
  };
}

const methodNames = { "erlang-c": "Erlang C", simulation: "simulation" } as const;

function methodText({ hours }: DayWait): string {
  const used = new Set(hours.map(({ judgement }: { judgement: Judgement }) => methodNames[judgement.method]));
  return listedWithin([...used], used.size);
}

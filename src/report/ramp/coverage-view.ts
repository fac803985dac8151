import { at, sumOf } from "../../lists.js";
import type { LaunchSite, Traffic } from "../../model/inputs.js";
import type { MetLaunches, OpenHours } from "../../model/program/traffic.js";
import type { CoverageRun } from "../../study/prepare/traffic.js";
import type { TrafficCounts } from "../../study/reading/traffic-counts.js";
import type { ReportContext } from "../document/context.js";
import { listedWithin, percent, significant } from "../words/format.js";
import { head, num, type RowView, row, type TableView } from "../words/view-types.js";

/** A time of day of hours since midnight: "07:30". */
function timeText(hours: number): string {
  const minutes = Math.round(hours * 60);
  const two = (value: number) => String(value).padStart(2, "0");
  return `${two(Math.floor(minutes / 60))}:${two(minutes % 60)}`;
}

export const hoursText = ({ from, to }: OpenHours): string => `${timeText(from)}–${timeText(to)}`;

/** The traffic of a study: what a day of each type brings. */
export function trafficTable({ run }: ReportContext): TableView | undefined {
  if (!run.traffic) return undefined;
  const { scaled, counts } = run.traffic;
  const lines = scaled.dayTypes.map((dayType) => {
    const byHour = hoursOfLake(dayType.launchesBySite);
    return { ...dayType, byHour, launches: sumOf(byHour) };
  });
  return {
    id: "table-traffic",
    caption: "Launches by type of day, scaled to the launches of the year",
    head: head(
      "Day",
      num("Days a year"),
      num("Launches a day"),
      num("In the busiest hour"),
      num("Launches a year"),
      ...(counts ? [num("Dates counted")] : []),
    ),
    rows: lines.map(({ name, daysPerYear, byHour, launches }, index) =>
      row(
        name,
        num(significant(daysPerYear, 3)),
        num(significant(launches, 3)),
        num(busiestText(byHour)),
        num(significant(daysPerYear * launches, 3)),
        ...(counts ? [num(String(at(counts.daysCounted, index)))] : []),
      ),
    ),
    total: row(
      "All days",
      num(significant(sumOf(lines.map(({ daysPerYear }) => daysPerYear)), 3)),
      num(""),
      num(""),
      num(significant(sumOf(lines.map(({ daysPerYear, launches }) => daysPerYear * launches)), 3)),
      ...(counts ? [num("")] : []),
    ),
    note: [`Origin: ${run.document.boats.traffic?.origin}.`, sitesText(scaled), countsNote(counts)]
      .filter(Boolean)
      .join(" "),
  };
}

function hoursOfLake([first = [], ...others]: Traffic["dayTypes"][number]["launchesBySite"]): number[] {
  return first.map((launches, hour) => launches + sumOf(others.map((byHour) => at(byHour, hour))));
}

function busiestText(byHour: readonly number[]): string {
  const most = Math.max(...byHour);
  return `${significant(most, 3)} from ${timeText(byHour.indexOf(most))}`;
}

function sitesText({ sites }: Traffic): string {
  if (sites.length === 1) return "";
  const shares = sites.map(({ name, share }) => `${name} ${percent(share)}`);
  return `Sites: ${listedWithin(shares, shares.length)} of the launches.`;
}

function countsNote(counts: TrafficCounts | undefined): string {
  if (!counts) return "";
  const { monthsWithout } = counts;
  const without =
    monthsWithout.length === 0
      ? ""
      : ` No date was counted in ${listedWithin(monthsWithout, monthsWithout.length)}: taken to be as their group of months.`;
  return `Means by hour of the dates counted; an hour without a count has no launches.${without} Two days in seven are a weekend; public holidays are not known and count by their day of the week.`;
}

/** For each option with open hours, how its coverage comes from them. */
export function coverageTables(context: ReportContext): TableView[] {
  const { traffic, coverage } = context.run;
  return traffic ? coverage.map((each) => coverageTable(each, traffic.scaled, context)) : [];
}

function coverageTable(run: CoverageRun, { sites, dayTypes }: Traffic, { run: { document } }: ReportContext) {
  const name = document.options.find(({ id }) => id === run.optionId)?.name ?? run.optionId;
  const launches = sumOf(run.rows.map((each) => each.launches));
  const met = sumOf(run.rows.map((each) => each.met));
  return {
    id: `table-coverage-${run.optionId}`,
    caption: `Hours open against launches: ${name}`,
    head: head(
      "Day",
      "Where",
      "Open",
      num("Days a year"),
      num("Launches a year"),
      num("Launches met"),
      num("Share met"),
    ),
    rows: dayTypes.flatMap((dayType) =>
      groupsOf(run.rows.filter((each) => each.dayType === dayType.id)).map((group) =>
        groupOfSites(dayType.name, group, sites),
      ),
    ),
    total: row(
      "Coverage",
      "",
      "",
      num(""),
      num(significant(launches, 3)),
      num(significant(met, 3)),
      num(percent(run.coverage, 3)),
    ),
    note: "The coverage is computed: launches in open hours over all launches. Within an hour launches come evenly, and boats of every class at the same hours.",
  };
}

/** Sites with the same open hours, to be told in one row. */
function groupsOf(rows: readonly MetLaunches[]): MetLaunches[][] {
  const groups = new Map<string, MetLaunches[]>();
  for (const each of rows) {
    const key = each.open ? hoursText(each.open) : "";
    groups.set(key, [...(groups.get(key) ?? []), each]);
  }
  return [...groups.values()];
}

function groupOfSites(day: string, group: readonly MetLaunches[], sites: readonly LaunchSite[]): RowView {
  const names = group.map(({ site }) => sites.find(({ id }) => id === site)?.name ?? site);
  const [first] = group;
  const launches = sumOf(group.map((each) => each.launches));
  const met = sumOf(group.map((each) => each.met));
  return row(
    day,
    names.length === sites.length && names.length > 1 ? "All sites" : listedWithin(names, names.length),
    first?.open ? hoursText(first.open) : "closed",
    num(significant(first?.daysPerYear ?? 0, 3)),
    num(significant(launches, 3)),
    num(significant(met, 3)),
    num(launches > 0 ? percent(met / launches, 3) : "–"),
  );
}

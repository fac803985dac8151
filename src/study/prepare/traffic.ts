import type { LaunchSite, Traffic, TrafficDayType } from "../../model/inputs.js";
import { hoursPerDay } from "../../model/lake/calendar.js";
import {
  coverage,
  launchesMet,
  type MetLaunches,
  type Opening,
  scaledTraffic,
} from "../../model/program/traffic.js";
import type { BoatsDocument } from "../format/boats-schema.js";
import { monthNames } from "../format/month-names.js";
import type { StudyDocument } from "../format/schema.js";
import type { DayTypeDocument, OpenDocument } from "../format/traffic-schema.js";
import type { RecordProblem } from "../reading/contradiction.js";
import { readTrafficCounts, type TrafficCounts } from "../reading/traffic-counts.js";
import { sitesOf } from "./sites.js";

/** Traffic as it was entered or counted, or what is wrong with the counts. */
export interface TrafficReading {
  readonly entered: Traffic | undefined;
  /** Present where the traffic is made of counts. */
  readonly counts: TrafficCounts | undefined;
  readonly problems: readonly RecordProblem[];
}

export function readTraffic(boats: BoatsDocument): TrafficReading {
  const sites = sitesOf(boats);
  const { dayTypes, csv, monthGroups } = boats.traffic ?? {};
  if (dayTypes) {
    const entered = { sites, dayTypes: dayTypes.map((dayType) => dayTypeOf(dayType, sites)) };
    return { entered, counts: undefined, problems: [] };
  }
  if (csv === undefined || !monthGroups) return { entered: undefined, counts: undefined, problems: [] };
  const reading = readTrafficCounts(csv, { monthGroups, sites });
  if (!reading.counts) return { entered: undefined, counts: undefined, problems: reading.problems };
  return { entered: { sites, dayTypes: reading.counts.dayTypes }, counts: reading.counts, problems: [] };
}

/** Traffic of a study that was checked. */
export interface StudyTraffic {
  readonly entered: Traffic;
  /** With as many launches a year as the study says. */
  readonly scaled: Traffic;
  readonly counts: TrafficCounts | undefined;
}

/** Absent where a checked study gives no traffic. */
export function trafficOf(boats: BoatsDocument): StudyTraffic | undefined {
  const { entered, counts } = readTraffic(boats);
  return entered && { entered, counts, scaled: scaledTraffic(entered, launchesOf(boats)) };
}

export const launchesOf = ({ launches }: BoatsDocument): number =>
  monthNames.reduce((sum, month) => sum + launches[month].value, 0);

export function yearOfDays(days: DayTypeDocument["days"]): number {
  return typeof days === "number" ? days : monthNames.reduce((sum, month) => sum + days[month], 0);
}

function dayTypeOf(
  { id, name, days, firstHour = 0, launchesByHour }: DayTypeDocument,
  sites: readonly LaunchSite[],
): TrafficDayType {
  const byHour = Array.from({ length: hoursPerDay }, (_, hour) => launchesByHour[hour - firstHour] ?? 0);
  return {
    id,
    name,
    daysPerYear: yearOfDays(days),
    daysByMonth: typeof days === "number" ? undefined : monthNames.map((month) => days[month]),
    launchesBySite: sites.map(({ share }) => byHour.map((launches) => launches * share)),
  };
}

/** Hours since midnight of "07:30": 7.5. */
export function hourOf(time: string): number {
  const [hours = 0, minutes = 0] = time.split(":").map(Number);
  return hours + minutes / 60;
}

/** An entry for each day type and site that the open hours name. */
export function openingsOf(open: OpenDocument, { sites, dayTypes }: Traffic): Opening[] {
  return open.flatMap((entry) => {
    const days = entry.dayTypes ?? dayTypes.map(({ id }) => id);
    const places = entry.sites ?? sites.map(({ id }) => id);
    const hours = { from: hourOf(entry.from), to: hourOf(entry.to) };
    return places.flatMap((site) => days.map((dayType) => ({ dayType, site, ...hours })));
  });
}

/** How the coverage of an option comes from its open hours. */
export interface CoverageRun {
  readonly optionId: string;
  readonly coverage: number;
  readonly rows: readonly MetLaunches[];
}

/** For each option that gives its open hours. @param traffic scaled to the launches of the year */
export function coverageRuns(options: StudyDocument["options"], traffic: Traffic | undefined): CoverageRun[] {
  if (!traffic) return [];
  return options.flatMap(({ id, open }) => {
    if (!open) return [];
    const openings = openingsOf(open, traffic);
    return [{ optionId: id, coverage: coverage(traffic, openings), rows: launchesMet(traffic, openings) }];
  });
}

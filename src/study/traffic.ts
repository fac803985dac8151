import type { LaunchSite, Traffic, TrafficDayType } from "../model/inputs.js";
import { hoursPerDay } from "../model/lake/calendar.js";
import {
  coverage,
  launchesMet,
  type MetLaunches,
  type Opening,
  scaledTraffic,
} from "../model/program/traffic.js";
import type { BoatsDocument } from "./boats-schema.js";
import { monthNames } from "./fields.js";
import type { StudyDocument } from "./schema.js";
import { readTrafficCounts, type TrafficCounts } from "./traffic-counts.js";
import type { DayTypeDocument, OpenDocument } from "./traffic-schema.js";

/** What stands for the sites of a study that names none. */
const wholeLake: LaunchSite = { id: "lake", name: "All ramps", share: 1 };

export function sitesOf({ sites }: Pick<BoatsDocument, "sites">): LaunchSite[] {
  return sites?.map(({ id, name, share }) => ({ id, name, share: share.value })) ?? [wholeLake];
}

/** The counts of a study that was checked, if its traffic is made of counts. */
export function countsOf(boats: BoatsDocument): TrafficCounts | undefined {
  const { csv, monthGroups = [] } = boats.traffic ?? {};
  if (csv === undefined) return undefined;
  const reading = readTrafficCounts(csv, { monthGroups, sites: sitesOf(boats) });
  if (reading.counts) return reading.counts;
  throw new Error(`counts that were not checked: ${reading.problems[0]?.found}`);
}

/** Traffic of a checked study as it was entered or counted, before it is scaled to the launches. */
export function trafficOf(boats: BoatsDocument): Traffic | undefined {
  if (!boats.traffic) return undefined;
  const sites = sitesOf(boats);
  const entered = boats.traffic.dayTypes?.map((dayType) => dayTypeOf(dayType, sites));
  return { sites, dayTypes: entered ?? countsOf(boats)?.dayTypes ?? [] };
}

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

/** Traffic with as many launches a year as the study says. */
export function scaledTrafficOf(boats: BoatsDocument): Traffic | undefined {
  const traffic = trafficOf(boats);
  const launches = monthNames.reduce((sum, month) => sum + boats.launches[month].value, 0);
  return traffic && scaledTraffic(traffic, launches);
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

/** For each option of a checked study that gives its open hours. */
export function coverageRuns({ boats, options }: StudyDocument): CoverageRun[] {
  const traffic = scaledTrafficOf(boats);
  if (!traffic) return [];
  return options.flatMap(({ id, open }) => {
    if (!open) return [];
    const openings = openingsOf(open, traffic);
    return [{ optionId: id, coverage: coverage(traffic, openings), rows: launchesMet(traffic, openings) }];
  });
}

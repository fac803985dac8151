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
import type { ReadBoats, ReadTraffic } from "../format/read-records.js";
import type { StudyDocument } from "../format/schema.js";
import type { ReadHours } from "../format/sound-options.js";
import type { DayTypeDocument, OpenDocument } from "../format/traffic-schema.js";
import type { TrafficCounts } from "../reading/traffic-counts.js";
import { sitesOf } from "./sites.js";

/** Traffic of a study. */
export interface StudyTraffic {
  readonly entered: Traffic;
  /** Scaled to the study's launches a year. */
  readonly scaled: Traffic;
  /** Present if the traffic comes from counts. */
  readonly counts: TrafficCounts | undefined;
}

/** Absent if the study gives no traffic. */
export function trafficOf(boats: ReadBoats): StudyTraffic | undefined {
  if (!boats.traffic) return undefined;
  const entered = enteredTraffic(boats.traffic, boats);
  return { entered, counts: boats.traffic.counts, scaled: scaledTraffic(entered, launchesOf(boats)) };
}

/** Traffic as entered or counted, by site. */
export function enteredTraffic(traffic: ReadTraffic, boats: Pick<BoatsDocument, "sites">): Traffic {
  const sites = sitesOf(boats);
  const dayTypes = traffic.dayTypes
    ? traffic.dayTypes.map((each) => dayTypeOf(each, sites))
    : countedDayTypes(traffic.counts, sites);
  return { sites, dayTypes };
}

/** Day types of counts; counts without sites are split by the sites' shares. */
export function countedDayTypes(
  { dayTypes }: Pick<TrafficCounts, "dayTypes">,
  sites: readonly LaunchSite[],
): TrafficDayType[] {
  return dayTypes.map(({ id, name, daysPerYear, daysByMonth, ...launches }) => {
    const launchesBySite = "bySite" in launches ? launches.bySite : spreadOver(sites, launches.allSites);
    return { id, name, daysPerYear, daysByMonth, launchesBySite };
  });
}

const spreadOver = (sites: readonly LaunchSite[], byHour: readonly number[]): number[][] =>
  sites.map(({ share }) => byHour.map((launches) => launches * share));

export const launchesOf = ({ launches }: Pick<BoatsDocument, "launches">): number =>
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
    launchesBySite: spreadOver(sites, byHour),
  };
}

/** Hours since midnight of "07:30": 7.5. */
export function hourOf(time: string): number {
  const [hours = 0, minutes = 0] = time.split(":").map(Number);
  return hours + minutes / 60;
}

/** An entry for each day type and site named by the open hours. */
export function openingsOf(open: OpenDocument, { sites, dayTypes }: Traffic): Opening[] {
  return open.flatMap((entry) => {
    const days = entry.dayTypes ?? dayTypes.map(({ id }) => id);
    const places = entry.sites ?? sites.map(({ id }) => id);
    const hours = { from: hourOf(entry.from), to: hourOf(entry.to) };
    return places.flatMap((site) => days.map((dayType) => ({ dayType, site, ...hours })));
  });
}

/** An option's coverage and the open hours behind it. */
export interface CoverageRun {
  readonly optionId: string;
  readonly coverage: number;
  readonly rows: readonly MetLaunches[];
}

/** One for each option with open hours. */
export function coverageRuns({ options, boats }: Pick<StudyDocument, "options" | "boats">): CoverageRun[] {
  return options.flatMap(({ id, hours }) => {
    if (!hours) return [];
    const traffic = scaledTo(boats, hours);
    const { openings } = hours;
    return [{ optionId: id, coverage: coverage(traffic, openings), rows: launchesMet(traffic, openings) }];
  });
}

/** @param known that of the boats, which most stations serve, where it is worked out */
export const coverageOf = (hours: ReadHours, boats: ReadBoats, known?: StudyTraffic): number =>
  coverage(known && hours.traffic === boats.traffic ? known.scaled : scaledTo(boats, hours), hours.openings);

const scaledTo = (boats: ReadBoats, { traffic }: Pick<ReadHours, "traffic">): Traffic =>
  scaledTraffic(enteredTraffic(traffic, boats), launchesOf(boats));

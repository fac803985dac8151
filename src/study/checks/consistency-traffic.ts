import { counted } from "../../counted.js";
import type { Traffic } from "../../model/inputs.js";
import { daysInYear, daysOf, hoursPerDay } from "../../model/lake/calendar.js";
import { launchesBySite } from "../../model/program/traffic.js";
import type { BoatsDocument } from "../format/boats-schema.js";
import { monthNames } from "../format/month-names.js";
import type { ReadBoats, ReadTraffic } from "../format/read-records.js";
import type { DayTypeDocument, TrafficDocument } from "../format/traffic-schema.js";
import { siteIdsOf, sitesOf } from "../prepare/sites.js";
import { enteredTraffic, launchesOf, yearOfDays } from "../prepare/traffic.js";
import { type Contradiction, exactlyOne, type Judged, repeatedIds } from "../reading/contradiction.js";
import type { RecordReaders } from "../reading/record-readers.js";
import { shareProblems } from "./share-sums.js";

const place = ["boats", "traffic"];
/** Rounding error of sums of decimal days. */
const rounding = 1e-9;

/** Traffic with its parsed counts, checked against the launch sites and launches. */
export function soundTraffic(boats: BoatsDocument, readers: RecordReaders): Judged<ReadBoats["traffic"]> {
  const { sites, traffic } = boats;
  const path = ["boats", "sites"];
  const problems = sites ? [...repeatedIds(sites, path), ...shareProblems(sites, path, "launches")] : [];
  if (!traffic) return problems.length > 0 ? { problems } : { sound: undefined };
  const read = readTraffic(traffic, boats, readers);
  const own = [
    ...exactlyOne(traffic, "dayTypes", "csv").map((each) => ({ ...each, path: [...place, ...each.path] })),
    ...monthGroupProblems(traffic),
    ...dayTypeProblems(traffic.dayTypes ?? []),
    ...(read.problems ?? []),
  ];
  if (read.problems || own.length > 0) return { problems: [...problems, ...own] };
  problems.push(...emptyProblems(boats, enteredTraffic(read.sound, boats)));
  return problems.length > 0 ? { problems } : read;
}

/** Traffic with its counts parsed; missing fields are reported elsewhere. */
function readTraffic(
  traffic: TrafficDocument,
  boats: BoatsDocument,
  readers: RecordReaders,
): Judged<ReadTraffic> {
  const { dayTypes, ...others } = traffic;
  if (dayTypes) return { sound: { ...traffic, dayTypes } };
  const { csv, monthGroups } = others;
  if (csv === undefined || !monthGroups) return { problems: [] };
  const reading = readers.counts(csv, { monthGroups, siteIds: siteIdsOf(sitesOf(boats)) });
  if (reading.counts) return { sound: { ...others, counts: reading.counts } };
  return { problems: reading.problems.map((each) => ({ ...each, path: [...place, "csv"] })) };
}

function monthGroupProblems({ csv, dayTypes, monthGroups }: TrafficDocument): Contradiction[] {
  const path = [...place, "monthGroups"];
  if (csv !== undefined && !monthGroups) {
    return [{ path, found: "nothing", allowed: "groups of months, of which counts make day types" }];
  }
  if (dayTypes && monthGroups) {
    const remedy = "Take the groups of months out.";
    return [
      { path, found: "groups of months beside dayTypes", allowed: "monthGroups only for counts", remedy },
    ];
  }
  const groups = monthGroups ?? [];
  const twice = monthNames.filter((name) => groups.filter(({ months }) => months.includes(name)).length > 1);
  return [
    ...repeatedIds(groups, path),
    ...twice.map((name) => ({
      path,
      found: `${name} in two groups`,
      allowed: "each month in one group",
      remedy: "Take it out of one of the two.",
    })),
  ];
}

function dayTypeProblems(dayTypes: readonly DayTypeDocument[]): Contradiction[] {
  const path = [...place, "dayTypes"];
  return [
    ...repeatedIds(dayTypes, path),
    ...daysOverAYear(dayTypes, path),
    ...daysOverAMonth(dayTypes, path),
    ...dayTypes.flatMap((dayType, index) => hourProblems(dayType, [...path, index])),
  ];
}

const remedyForDays = "Count each day of the year under one type only.";

function daysOverAYear(dayTypes: readonly DayTypeDocument[], path: readonly string[]): Contradiction[] {
  const days = dayTypes.reduce((sum, each) => sum + yearOfDays(each.days), 0);
  if (days <= daysInYear + rounding) return [];
  const found = `${Number(days.toFixed(2))} days a year in all`;
  return [
    { path, found, allowed: `at most ${daysInYear} days of all types together`, remedy: remedyForDays },
  ];
}

function daysOverAMonth(dayTypes: readonly DayTypeDocument[], path: readonly string[]): Contradiction[] {
  return monthNames.flatMap((month, index) => {
    const days = dayTypes.reduce(
      (sum, each) => sum + (typeof each.days === "number" ? 0 : each.days[month]),
      0,
    );
    const most = daysOf(index);
    if (days <= most + rounding) return [];
    const found = `${Number(days.toFixed(2))} days in ${month} in all`;
    return [{ path, found, allowed: `at most ${most} days of all types together`, remedy: remedyForDays }];
  });
}

function hourProblems({ firstHour, launchesByHour }: DayTypeDocument, path: readonly PropertyKey[]) {
  const count = launchesByHour.length;
  if (firstHour === undefined && count !== hoursPerDay) {
    const allowed = `${hoursPerDay} values from midnight, or firstHour beside fewer`;
    return [
      { path: [...path, "launchesByHour"], found: `${counted(count, "value")} without firstHour`, allowed },
    ];
  }
  if ((firstHour ?? 0) + count <= hoursPerDay) return [];
  return [
    {
      path: [...path, "launchesByHour"],
      found: `${counted(count, "hour")} from hour ${firstHour}`,
      allowed: `hours that end by ${hoursPerDay}:00`,
    },
  ];
}

/** Traffic with hours but no boats. */
function emptyProblems(boats: BoatsDocument, traffic: Traffic): Contradiction[] {
  const bySite = launchesBySite(traffic);
  return [
    ...traffic.sites
      .filter((_, index) => bySite[index] === 0)
      .map(({ name }) => ({
        path: place,
        found: `no launch at “${name}”`,
        allowed: "launches at each site",
      })),
    ...(launchesOf(boats) > 0
      ? []
      : [
          {
            path: ["boats", "launches"],
            found: "no launch in any month",
            allowed: "launches beside traffic",
          },
        ]),
  ];
}

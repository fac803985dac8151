import { at, sumOf } from "../../lists.js";
import type { ProgramOption, Traffic } from "../../model/inputs.js";
import { sampleBoatDays } from "../../model/program/boat-days.js";
import { dayWait } from "../../model/program/day-wait.js";
import { sealedShare, siteDays } from "../../model/program/site-days.js";
import { launchesWithin, type OpenHours, type Opening } from "../../model/program/traffic.js";
import type { Choice, Level } from "../../model/search/choices.js";
import type { StudyDocument } from "../format/schema.js";
import { usualSeed } from "../odds/odds-settings.js";
import { openingsOf } from "../prepare/traffic.js";
import type { SearchRules } from "./rules.js";

/** Hours of a station on days of a type, the inspectors that keep its wait, and the boats that come in them. */
export interface CellLevel extends Level {
  /** Absent where it is closed. */
  readonly open: OpenHours | undefined;
  readonly inspectors: number;
  readonly waitHours: number;
}

/** A site on days of one type. */
export interface Cell extends Choice {
  readonly site: string;
  readonly dayType: string;
  readonly name: string;
  readonly siteName: string;
  readonly daysPerYear: number;
  readonly levels: readonly [CellLevel, ...CellLevel[]];
  /** Place of the level that the option has to start with. */
  readonly own: number;
  /** Windows for which no number of inspectors keeps the wait. */
  readonly unkept: number;
}

const closed: CellLevel = { hours: 0, met: 0, open: undefined, inspectors: 0, waitHours: 0 };

/** Days that are simulated where a queue is not steady, fewer than a report has: each window is one of many. */
const simulatedDays = 40;

/**
 * What may be open: of every number of hours a day the window in which most boats come, and the option's own. Hours are
 * those of the inspectors who keep the wait, rounded up to whole hours a year.
 * @param seals shares of the classes that pass without a check
 */
export function cellsOf(
  document: StudyDocument,
  option: StudyDocument["options"][number],
  traffic: Traffic,
  rules: SearchRules,
  seals: NonNullable<ProgramOption["steps"]>["seals"],
): Cell[] {
  const classes = document.boats.classes.map(({ id, share }) => ({ id, share: share.value }));
  const checked = 1 - sealedShare(classes, seals);
  const openings = openingsOf(option.open ?? [], traffic);
  return traffic.sites.flatMap((site, place) =>
    traffic.dayTypes.flatMap((dayType) => {
      const own = openings.find((each) => each.site === site.id && each.dayType === dayType.id);
      const isFree = rules.sites.has(site.id) && rules.dayTypes.has(dayType.id) && rules.varies("hours");
      if (!isFree && !own) return [];
      const byHour = at(dayType.launchesBySite, place);
      const windows = [
        ...(own ? [{ from: own.from, to: own.to }] : []),
        ...(isFree ? windowsOf(byHour, rules) : []),
      ];
      const levelOf = (open: OpenHours): CellLevel | undefined => {
        const opening: Opening = { ...open, site: site.id, dayType: dayType.id };
        const [day] = siteDays(traffic, [opening], checked);
        const staffed =
          day &&
          inspectorsFor(day, option, {
            ...rules,
            isOwn: isSame(own, open),
            seed: document.study.uncertainty?.seed,
          });
        if (!day || !staffed) return undefined;
        const hours = Math.ceil(dayType.daysPerYear * staffed.hoursPerDay - 1e-9);
        const met = dayType.daysPerYear * launchesWithin(byHour, open);
        return { hours, met, open, inspectors: staffed.inspectors, waitHours: staffed.waitHours };
      };
      const found = windows.map(levelOf);
      const levels = found.flatMap((each) => (each ? [each] : []));
      const all: CellLevel[] = isFree || levels.length === 0 ? [closed, ...levels] : levels;
      return [
        {
          ...{ site: site.id, siteName: site.name, dayType: dayType.id, name: dayType.name },
          daysPerYear: dayType.daysPerYear,
          levels: all as [CellLevel, ...CellLevel[]],
          own: Math.max(0, own ? all.findIndex(({ open }) => isSame(open, own)) : 0),
          unkept: windows.length - levels.length,
        },
      ];
    }),
  );
}

const isSame = (one: OpenHours | undefined, other: OpenHours): boolean =>
  one !== undefined && one.from === other.from && one.to === other.to;

/** Of each number of hours, the first of the windows in which most boats come. */
function windowsOf(byHour: readonly number[], { earliest, latest, mostHours }: SearchRules): OpenHours[] {
  const lengths = Array.from({ length: Math.min(mostHours, latest - earliest) }, (_, index) => index + 1);
  return lengths.map((length) => {
    const starts = Array.from({ length: latest - earliest - length + 1 }, (_, index) => earliest + index);
    const windows = starts.map((from) => ({ from, to: from + length }));
    const met = (window: OpenHours) => launchesWithin(byHour, window);
    return windows.reduce((best, each) => (met(each) > met(best) + 1e-9 ? each : best));
  });
}

type Staffed = { readonly inspectors: number; readonly hoursPerDay: number; readonly waitHours: number };

/**
 * The fewest inspectors who keep the wait; one where the option has no such station, or where no boat comes; and in the
 * option's own hours as many as it may have, where none keep it.
 */
function inspectorsFor(
  day: ReturnType<typeof siteDays>[number],
  { station }: StudyDocument["options"][number],
  {
    longestWait,
    isOwn,
    seed = usualSeed,
  }: Pick<SearchRules, "longestWait"> & { readonly isOwn: boolean; readonly seed: number | undefined },
): Staffed | undefined {
  const openHours = day.arrivalsByHour.length;
  if (!station || sumOf(day.arrivalsByHour) === 0)
    return { inspectors: 1, hoursPerDay: openHours, waitHours: 0 };
  const { quickCheck, fullInspection, setAsideShare, spread } = station.service;
  const service = {
    quickCheckHours: quickCheck.value,
    fullInspectionHours: fullInspection.value,
    setAsideShare: setAsideShare.value,
    spread,
  };
  const stationDay = { id: day.id, arrivalsByHour: day.arrivalsByHour, service };
  let boats: ReturnType<typeof sampleBoatDays> | undefined;
  const drawn = () => {
    boats ??= sampleBoatDays(stationDay, { replications: simulatedDays, seed });
    return boats;
  };
  const target = { share: station.target.share.value, hours: longestWait ?? station.target.wait.value };
  for (let inspectors = 1; inspectors <= station.mostInspectors; inspectors++) {
    const wait = dayWait(stationDay, inspectors, { target, drawn });
    const isLast = inspectors === station.mostInspectors;
    if (!wait.keepsTarget && !(isOwn && isLast)) continue;
    const hoursPerDay = inspectors * openHours + wait.hoursAfterClosing.mean;
    return { inspectors, hoursPerDay, waitHours: wait.meanWaitHours.mean };
  }
  return undefined;
}

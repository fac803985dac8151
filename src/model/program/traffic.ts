import { at, sumOf } from "../../lists.js";
import type { Traffic } from "../inputs.js";
import { hoursPerDay } from "../lake/calendar.js";

/** Hours of the day, 0 to 24, from opening to closing; 7.5 is half past seven. */
export interface OpenHours {
  readonly from: number;
  readonly to: number;
}

/** When a station is open at a site on days of a type; without an entry it is closed there on such days. */
export interface Opening extends OpenHours {
  readonly dayType: string;
  readonly site: string;
}

/**
 * Launches of a day within open hours; those of an hour come evenly within it.
 * @param launchesByHour of 24 hours from midnight
 * @throws RangeError if the hours do not lie one after the other within the day
 */
export function launchesWithin(launchesByHour: readonly number[], { from, to }: OpenHours): number {
  if (!(from >= 0 && from < to && to <= hoursPerDay)) {
    throw new RangeError(
      `open from hour ${from} to ${to}; allowed from before to, within 0 to ${hoursPerDay}`,
    );
  }
  return launchesByHour.reduce(
    (sum, launches, hour) => sum + launches * Math.max(0, Math.min(to, hour + 1) - Math.max(from, hour)),
    0,
  );
}

/** Launches of a year at each site, in the order of the sites. */
export const launchesBySite = ({ sites, dayTypes }: Traffic): number[] =>
  sites.map((_, site) =>
    sumOf(dayTypes.map(({ daysPerYear, launchesBySite }) => daysPerYear * sumOf(at(launchesBySite, site)))),
  );

export const launchesPerYear = (traffic: Traffic): number => sumOf(launchesBySite(traffic));

/**
 * Traffic of the same shape whose year has as many launches as are entered: at each site the launches of all hours
 * are multiplied by one factor, so that the site brings its share of them.
 * @throws RangeError if a site has no launches
 */
export function scaledTraffic(traffic: Traffic, launches: number): Traffic {
  const factors = launchesBySite(traffic).map((bySite, index) => {
    const { id, share } = at(traffic.sites, index);
    if (!(bySite > 0)) throw new RangeError(`${id}: no launches; leave out a site to which no boat comes`);
    return (share * launches) / bySite;
  });
  return {
    ...traffic,
    dayTypes: traffic.dayTypes.map((dayType) => ({
      ...dayType,
      launchesBySite: dayType.launchesBySite.map((byHour, site) =>
        byHour.map((hour) => hour * at(factors, site)),
      ),
    })),
  };
}

/** Launches of a year, at one site on the days of one type, in the hours in which a station is open there. */
export interface MetLaunches {
  readonly dayType: string;
  readonly site: string;
  readonly daysPerYear: number;
  /** Absent where no station is open. */
  readonly open: OpenHours | undefined;
  readonly launches: number;
  readonly met: number;
}

/** All day types, and of each all sites. */
export function launchesMet({ sites, dayTypes }: Traffic, openings: readonly Opening[]): MetLaunches[] {
  return dayTypes.flatMap(({ id, daysPerYear, launchesBySite }) =>
    sites.map((site, index) => {
      const byHour = at(launchesBySite, index);
      const open = openings.find((each) => each.dayType === id && each.site === site.id);
      return {
        dayType: id,
        site: site.id,
        daysPerYear,
        open,
        launches: daysPerYear * sumOf(byHour),
        met: open ? daysPerYear * launchesWithin(byHour, open) : 0,
      };
    }),
  );
}

/**
 * Launches in open hours over all launches, by day types, sites and hours: c = Σ(n q o)/Σ(n q). Of the hour from h to
 * h + 1, o = max(0, min(e, h + 1) − max(b, h)) is open. Every class of boats is taken to come at the same hours.
 * @throws RangeError if there are no launches
 */
export function coverage(traffic: Traffic, openings: readonly Opening[]): number {
  const all = launchesMet(traffic, openings);
  const launches = sumOf(all.map((each) => each.launches));
  if (!(launches > 0)) throw new RangeError("traffic: no launches of which a share could be met");
  return sumOf(all.map(({ met }) => met)) / launches;
}

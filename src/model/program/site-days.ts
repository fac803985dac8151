import { at } from "../../lists.js";
import type { ProgramSteps, Traffic, VesselClass } from "../inputs.js";
import type { StationDayType } from "./staffing.js";
import { launchesWithin, type OpenHours, type Opening } from "./traffic.js";

/** A type of day at one site, with the queue that the site has of its own. */
export interface SiteDay extends StationDayType {
  readonly dayTypeId: string;
  readonly siteId: string;
  readonly siteName: string;
  readonly open: OpenHours;
}

/** Share of all launches that passes with a seal, without a check. */
export function sealedShare(
  classes: ReadonlyArray<Pick<VesselClass, "id" | "share">>,
  seals: ProgramSteps["seals"],
): number {
  return classes.reduce(
    (sum, { id, share }) => sum + share * (seals.find(({ vesselClass }) => vesselClass === id)?.share ?? 0),
    0,
  );
}

/**
 * The boats that stations check in each open hour, site by site. Stations are open for whole hours.
 * @param checkedShare of the launches in open hours, those that carry no seal
 */
export function siteDays(
  { sites, dayTypes }: Traffic,
  openings: readonly Opening[],
  checkedShare: number,
): SiteDay[] {
  return sites.flatMap((site, index) =>
    dayTypes.flatMap(({ id, name, daysPerYear, launchesBySite }) => {
      const open = openings.find((each) => each.dayType === id && each.site === site.id);
      if (!open) return [];
      const byHour = at(launchesBySite, index);
      const arrivalsByHour = Array.from({ length: Math.round(open.to - open.from) }, (_, hour) => {
        const from = open.from + hour;
        return checkedShare * launchesWithin(byHour, { from, to: from + 1 });
      });
      return [
        {
          id: `${site.id}/${id}`,
          name,
          daysPerYear,
          arrivalsByHour,
          dayTypeId: id,
          siteId: site.id,
          siteName: site.name,
          open,
        },
      ];
    }),
  );
}

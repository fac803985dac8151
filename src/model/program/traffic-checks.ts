import { at, sumOf } from "../../lists.js";
import type { Boats, Traffic } from "../inputs.js";
import { months } from "../lake/calendar.js";
import type { Check } from "../structures/component.js";
import { launchesBySite, launchesPerYear } from "./traffic.js";

const whole = new Intl.NumberFormat("en-US", { maximumFractionDigits: 0 });
const percent = (share: number) => `${(share * 100).toFixed(1)} %`;

/** Launches of a profile are split by the shares of the sites themselves, and agree but for rounding. */
const rounding = 1e-9;

/**
 * Traffic against what the study says of its launches beside: their total, their months and their sites. The model
 * takes hours and day types from the traffic, and the rest from the study.
 */
export function trafficChecks({ launches, traffic }: Boats, tolerance: number): Check[] {
  if (!traffic) return [];
  const entered = sumOf(launches);
  const counted = launchesPerYear(traffic);
  const difference = entered > 0 ? Math.abs(counted / entered - 1) : 1;
  const sites = elsewhere(
    launchesBySite(traffic),
    traffic.sites.map(({ share }) => share),
  );
  return [
    {
      what: "Launches of the day types over a year agree with those entered",
      found: `${whole.format(counted)} against ${whole.format(entered)}, differ by ${percent(difference)}`,
      allowed: `at most ${percent(tolerance)}`,
      passed: difference <= tolerance,
    },
    ...shapeCheck("month", monthsElsewhere(traffic, launches), tolerance),
    ...(sites > rounding ? shapeCheck("site", sites, tolerance) : []),
  ];
}

function shapeCheck(by: "month" | "site", share: number | undefined, tolerance: number): Check[] {
  if (share === undefined) return [];
  return [
    {
      what: `Launches of the day types by ${by} agree with those entered`,
      found: `${percent(share)} of the year’s launches fall ${by === "month" ? "in" : "at"} another ${by}`,
      allowed: `at most ${percent(tolerance)}`,
      passed: share <= tolerance,
    },
  ];
}

/** Absent where a day type does not say in which months its days are. */
function monthsElsewhere({ dayTypes }: Traffic, launches: readonly number[]): number | undefined {
  if (dayTypes.some(({ daysByMonth }) => daysByMonth === undefined)) return undefined;
  const counted = months.map((month) =>
    sumOf(
      dayTypes.map(
        ({ daysByMonth = [], launchesBySite: bySite }) => at(daysByMonth, month) * sumOf(bySite.map(sumOf)),
      ),
    ),
  );
  return elsewhere(counted, launches);
}

/** Share of the whole that one distribution has in other places than the other. */
function elsewhere(counted: readonly number[], entered: readonly number[]): number {
  const [countedAll, enteredAll] = [sumOf(counted), sumOf(entered)];
  if (!(countedAll > 0 && enteredAll > 0)) return 1;
  return (
    sumOf(counted.map((each, index) => Math.abs(each / countedAll - at(entered, index) / enteredAll))) / 2
  );
}

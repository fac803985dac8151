import { counted } from "../../counted.js";
import type { Traffic } from "../../model/inputs.js";
import { daysInYear, hoursPerDay } from "../../model/lake/calendar.js";
import type { BoatsDocument } from "../format/boats-schema.js";
import type { WrittenStudy } from "../format/schema.js";
import { daysOfSites } from "../prepare/staffing.js";
import { hourOf } from "../prepare/traffic.js";
import type { Contradiction } from "../reading/contradiction.js";

/** With this and the bound on inspectors, simulating the largest station takes seconds, not minutes. */
const mostBoatsPerHour = 200;

type Path = readonly PropertyKey[];
type OptionDocument = WrittenStudy["options"][number];

interface SoundTraffic {
  readonly classes: BoatsDocument["classes"];
  readonly traffic: Traffic;
}

/**
 * Contradictions in the options' stations and staff.
 * @param sound classes and scaled traffic; absent if they or the open hours have problems of their own
 */
export function stationProblems(
  options: WrittenStudy["options"],
  sound: SoundTraffic | undefined,
): Contradiction[] {
  return options.flatMap((option, index) => {
    const { station, steps, open } = option;
    const path = ["options", index, "station"];
    const staff = staffProblems(option, ["options", index, "staff"]);
    if (!station) return staff;
    if (!steps) return [...staff, stationWithoutSteps(path)];
    if (!open) return [...staff, stationWithoutHours(path)];
    const hours = hourProblems(open, ["options", index, "open"]);
    return [...staff, ...hours, ...(sound && hours.length === 0 ? boatProblems(option, sound, path) : [])];
  });
}

const stationWithoutSteps = (path: Path): Contradiction => ({
  path,
  found: "a station of an option without steps",
  allowed: "a station only where steps say what it does",
  remedy: "Add the steps or take out the station.",
});

const stationWithoutHours = (path: Path): Contradiction => ({
  path,
  found: "a station without open hours",
  allowed: "a station only beside open, from which its boats follow",
  remedy: "Give open in place of steps.coverage, or take out the station.",
});

const hoursPerYear = daysInYear * hoursPerDay;

function staffProblems({ staff }: OptionDocument, path: Path): Contradiction[] {
  return staff.flatMap(({ hoursPerYear: hours, people }, index) => {
    if (people === undefined || hours <= people * hoursPerYear) return [];
    const most = (people * hoursPerYear).toLocaleString("en-US");
    return [
      {
        path: [...path, index, "hoursPerYear"],
        found: `${counted(hours, "hour")} of ${counted(people, "person", "people")}`,
        allowed: `at most ${most} hours, all hours of a year`,
      },
    ];
  });
}

/** Waits are simulated hour by hour from opening. */
function hourProblems(open: NonNullable<OptionDocument["open"]>, path: Path): Contradiction[] {
  return open.flatMap(({ from, to }, index) =>
    from.slice(3) === to.slice(3) || hourOf(to) <= hourOf(from)
      ? []
      : [
          {
            path: [...path, index, "to"],
            found: `"${to}" after opening at ${from}`,
            allowed: "a whole number of open hours beside a station, for which the wait is judged",
          },
        ],
  );
}

function boatProblems(
  option: OptionDocument,
  { classes, traffic }: SoundTraffic,
  path: Path,
): Contradiction[] {
  const empty = daysOfSites(option, classes, traffic).filter(({ arrivalsByHour }) =>
    arrivalsByHour.every((each) => each === 0),
  );
  const peak = Math.max(...hourlyPeaks(traffic));
  return [
    ...empty.map(({ name, siteName }) => ({
      path,
      found: `no boat to check in any open hour of “${name}” at “${siteName}”`,
      allowed: "boats in at least one open hour",
      remedy: "Take such days or sites out of open.",
    })),
    ...(peak <= mostBoatsPerHour
      ? []
      : [
          {
            path,
            found: `${Math.round(peak)} launches in the busiest hour, scaled to boats.launches`,
            allowed: `at most ${mostBoatsPerHour} launches in an hour beside a station`,
          },
        ]),
  ];
}

/** Launches in each hour of each day type, all sites together. */
function hourlyPeaks({ dayTypes }: Traffic): number[] {
  return dayTypes.flatMap(({ launchesBySite: [first = [], ...others] }) =>
    first.map((launches, hour) => others.reduce((sum, byHour) => sum + (byHour[hour] ?? 0), launches)),
  );
}

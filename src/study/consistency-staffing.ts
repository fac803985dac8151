import { daysInYear } from "../model/lake/calendar.js";
import { type Contradiction, repeatedIds } from "./contradiction.js";
import type { StudyDocument } from "./schema.js";
import type { StationDocument } from "./staffing-schema.js";

type Path = readonly PropertyKey[];

/** What cannot be true of the stations of a study's options. */
export function stationProblems(options: StudyDocument["options"]): Contradiction[] {
  return options.flatMap(({ station, steps }, index) => {
    if (!station) return [];
    const path = ["options", index, "station"];
    return [
      ...(steps ? [] : [stationWithoutSteps(path)]),
      ...repeatedIds(station.dayTypes, [...path, "dayTypes"]),
      ...daysOverAYear(station, path),
      ...daysWithoutBoats(station, path),
    ];
  });
}

const stationWithoutSteps = (path: Path): Contradiction => ({
  path,
  found: "a station of an option without steps",
  allowed: "a station only where steps say what it does",
  remedy: "Add the steps or take out the station.",
});

/** What adding up decimal fractions of days may leave over. */
const rounding = 1e-9;

function daysOverAYear({ dayTypes }: StationDocument, path: Path): Contradiction[] {
  const days = dayTypes.reduce((sum, { daysPerYear }) => sum + daysPerYear, 0);
  if (days <= daysInYear + rounding) return [];
  return [
    {
      path: [...path, "dayTypes"],
      found: `${Number(days.toFixed(2))} days a year in all`,
      allowed: `at most ${daysInYear} days of all types together`,
      remedy: "Count each day of the year under one type only.",
    },
  ];
}

function daysWithoutBoats({ dayTypes }: StationDocument, path: Path): Contradiction[] {
  return dayTypes.flatMap(({ launchesByHour }, index) =>
    launchesByHour.some((launches) => launches > 0)
      ? []
      : [
          {
            path: [...path, "dayTypes", index, "launchesByHour"],
            found: "no launch in any open hour",
            allowed: "launches above 0 in at least one hour",
            remedy: "Take out the days on which no boat is expected.",
          },
        ],
  );
}

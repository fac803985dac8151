import { describe, expect, it } from "vitest";
import { hourOf } from "../../../src/study/prepare/traffic.js";
import { type Contradicting, expectContradiction, expectMalformed } from "../contradicting.js";
import { anyDay, counted, csv, study, summer } from "../counted-traffic.js";
import { absent, editedText, problemsIn } from "../example.js";

const days = "boats.traffic.dayTypes";
const open = "options[full-season].open";
const allHours = { from: "00:00", to: "24:00" };

const impossible: readonly Contradicting[] = [
  {
    why: "sites whose shares do not add up",
    edits: [["boats.sites[0].share", "50 %"]],
    at: "boats.sites",
    found: "shares that add up to 97 %",
    allowed: "100 %",
  },
  {
    why: "two sites with one id",
    edits: [["boats.sites[1].id", "north"]],
    found: '"north" a second time',
    allowed: "an id used once",
  },
  {
    why: "more days of all types than a year has",
    edits: [[`${days}[0].days`, 300]],
    at: days,
    found: "505 days a year in all",
    allowed: "at most 365 days",
  },
  {
    why: "more days of all types than a month has",
    edits: [[`${days}[0].days.jun`, 14]],
    at: days,
    found: "31 days in jun in all",
    allowed: "at most 30 days",
  },
  {
    why: "two day types with one id",
    edits: [[`${days}[1].id`, "summer-weekend"]],
    found: '"summer-weekend" a second time',
    allowed: "an id used once",
  },
  {
    why: "hours beyond the day's end",
    edits: [[`${days}[0].firstHour`, 8]],
    at: `${days}[0].launchesByHour`,
    found: "17 hours from hour 8",
    allowed: "hours that end by 24:00",
  },
  {
    why: "fewer than 24 values without their first hour",
    edits: [[`${days}[0].firstHour`, absent]],
    at: `${days}[0].launchesByHour`,
    found: "17 values without firstHour",
    allowed: "24 values from midnight",
  },
  {
    why: "day types in which no boat comes",
    edits: [
      [days, [{ id: "all", name: "All", days: 365, launchesByHour: Array<number>(24).fill(0) }]],
      ...anyDay,
    ],
    at: "boats.traffic",
    found: "no launch at “North ramp”",
    allowed: "launches at each site",
  },
  {
    why: "traffic of a lake without launches",
    edits: [["boats.launches", Object.fromEntries(months().map((month) => [month, 0]))]],
    found: "no launch in any month",
    allowed: "launches beside traffic",
  },
  {
    why: "day types and counts at once",
    edits: [["boats.traffic.csv", csv]],
    at: days,
    found: "both dayTypes and csv",
    allowed: "exactly one of dayTypes and csv",
  },
  {
    why: "neither day types nor counts",
    edits: [["boats.traffic", { origin: "invented" }]],
    at: days,
    found: "neither dayTypes nor csv",
    allowed: "exactly one of dayTypes and csv",
  },
  {
    why: "groups of months beside day types",
    edits: [["boats.traffic.monthGroups", [summer]]],
    found: "groups of months beside dayTypes",
    allowed: "only for counts",
  },
  {
    why: "counts without groups of months",
    edits: [["boats.traffic", { csv, origin: "invented" }]],
    at: "boats.traffic.monthGroups",
    found: "nothing",
    allowed: "groups of months",
  },
  {
    why: "a month in two groups",
    edits: [
      ["boats.traffic", { ...counted, monthGroups: [summer, { ...summer, id: "july", months: ["jul"] }] }],
    ],
    at: "boats.traffic.monthGroups",
    found: "jul in two groups",
    allowed: "each month in one group",
  },
  {
    why: "hours that end before they begin",
    edits: [[`${open}[0].to`, "06:00"]],
    found: '"06:00" after opening at 07:00',
    allowed: "a time after that of opening",
  },
  {
    why: "hours of a day type that is unknown",
    edits: [[`${open}[0].dayTypes`, ["monday"]]],
    at: `${open}[0].dayTypes[0]`,
    found: '"monday"',
    allowed: "summer-weekend, summer-weekday",
  },
  {
    why: "hours at a site that is unknown",
    edits: [[`${open}[0].sites`, ["east"]]],
    at: `${open}[0].sites[0]`,
    found: '"east"',
    allowed: "an id of boats.sites: north, dam, cove",
  },
  {
    why: "hours at a site of a study that names no sites",
    edits: [["boats.sites", absent]],
    at: "options[weekends].open[0].sites[0]",
    found: '"north"',
    allowed: "an id of boats.sites: there is none yet",
  },
  {
    why: "hours of one day type and site told twice",
    edits: [[open, [allHours, { ...allHours, dayTypes: ["early-late"], sites: ["dam"] }]]],
    found: 'hours of "early-late" at "dam" a second time',
    allowed: "hours of each day type and site once",
  },
  {
    why: "open hours without traffic",
    edits: [["boats.traffic", absent]],
    at: open,
    found: "open hours without boats.traffic",
    allowed: "open hours beside traffic",
  },
  {
    why: "open hours of the option without steps",
    edits: [["options[none].open", [allHours]]],
    found: "open hours of an option without steps",
    allowed: "only where steps",
  },
  {
    why: "open hours beside a coverage",
    edits: [["options[full-season].steps.coverage", "94 %"]],
    found: "both steps.coverage and open",
    allowed: "exactly one of steps.coverage and open",
  },
  {
    why: "neither open hours nor a coverage",
    edits: [["options[weekends].open", absent]],
    at: "options[weekends].steps.coverage",
    found: "neither steps.coverage nor open",
    allowed: "exactly one of steps.coverage and open",
  },
  {
    why: "more hours of staff than its people have",
    // 8,760 hours a year are 168 a week, all there are
    edits: [["options[full-season].staff[1].hoursPerYear", 8761]],
    found: "8,761 hours of 1 person",
    allowed: "at most 8,760 hours",
  },
];

function months(): string[] {
  return ["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"];
}

const malformed: ReadonlyArray<readonly [place: string, value: unknown, allowed: string]> = [
  [`${days}[0].launchesByHour`, Array<number>(25).fill(4), "at most 24 hours"],
  [`${days}[0].launchesByHour`, [], "at least one hour"],
  [`${days}[0].launchesByHour[2]`, -1, "at least 0 launches"],
  [`${days}[0].launchesByHour[2]`, 1e9, "at most 10000 launches"],
  [`${days}[0].firstHour`, 24, "an hour up to 23"],
  [`${days}[0].firstHour`, -1, "an hour from 0"],
  [`${days}[0].firstHour`, 7.5, "a whole hour"],
  [`${days}[0].days`, 0, "more than 0 days"],
  [`${days}[0].days`, 366, "at most 365 days"],
  [`${days}[0].days.jun`, 31, "at most 30 days"],
  [`${days}[0].days.jun`, -1, "at least 0 days"],
  ["boats.sites", [], "at least one site"],
  ["boats.sites[0].share", "0 %", "a share above zero"],
  ["boats.traffic.origin", "", "a text that is not empty"],
  [`${open}[0].from`, "24:00", "HH:MM"],
  [`${open}[0].from`, "7 am", "HH:MM"],
  [`${open}[0].to`, "24:30", "HH:MM"],
  [`${open}[0].to`, "25:00", "HH:MM"],
  [open, [], "at least one entry"],
  ["options[full-season].staff[0].people", 0, "at least 1 person"],
  ["options[full-season].staff[0].people", 1.5, "a whole number"],
];

describe("traffic, sites and open hours", () => {
  it.each(impossible)("are refused for $why", expectContradiction);

  it.each(malformed)("are refused for %s of %j, told as %s", expectMalformed);

  it("tell a mistake in the traffic once, not again at each option that is open", () => {
    expect(problemsIn(editedText([[`${days}[0].firstHour`, 8]]))).toHaveLength(1);
  });

  it("read times of day as hours", () => {
    expect(["00:00", "07:30", "24:00"].map(hourOf)).toEqual([0, 7.5, 24]);
  });

  it("let all staff work every hour of the year", () => {
    const edits = [["options[full-season].staff[1].hoursPerYear", 8760]] as const;
    expect(study(edits).options.at(-1)?.staff[1]?.hoursPerYear).toBe(8760);
  });
});

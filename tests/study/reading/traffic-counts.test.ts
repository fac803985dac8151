import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { countedDayTypes } from "../../../src/study/prepare/traffic.js";
import { type CountsSettings, readTrafficCounts } from "../../../src/study/reading/traffic-counts.js";
import { wordsOfTheProgram } from "../example.js";

const sites = [
  { id: "north", name: "North", share: 0.75 },
  { id: "south", name: "South", share: 0.25 },
];
const summer = { id: "summer", name: "Jun–Aug", months: ["jun", "jul", "aug"] as const };
const siteIds = sites.map(({ id }) => id);
const settings: CountsSettings = { monthGroups: [{ ...summer, months: [...summer.months] }], siteIds };
const header = "date,hour,launches";
const csvOf = (...lines: readonly string[]) => `${[header, ...lines].join("\n")}\n`;

/** Counts with their day types by site. */
function countsIn(csv: string, given = settings) {
  const { counts, ...refused } = readTrafficCounts(csv, given);
  if (!counts) throw new Error(JSON.stringify(refused));
  return { ...counts, dayTypes: countedDayTypes(counts, sites) };
}

function problemsOf(csv: string) {
  const reading = readTrafficCounts(csv, settings);
  if (reading.counts) throw new Error("the counts were read without problems");
  return reading.problems;
}

/** 6 July 2024 was a Saturday, as a calendar shows. */
const weekendDates = ["2024-07-06", "2024-07-07", "2024-07-13", "2024-06-15"];
const weekdayDates = ["2024-07-08", "2024-07-09", "2024-07-12", "2024-06-14"];

describe("counts of launches", () => {
  it("give the mean by hour of weekends and of weekdays", () => {
    const { dayTypes, daysCounted } = countsIn(
      csvOf("2024-07-06,8,12", "2024-07-07,8,4", "2024-07-06,9,6", "2024-07-08,10,5"),
    );
    expect(dayTypes.map(({ id, name }) => [id, name])).toEqual([
      ["summer-weekend", "Jun–Aug, weekend"],
      ["summer-weekday", "Jun–Aug, weekday"],
    ]);
    // by hand: two weekend dates, (12 + 4)/2 at 8 and, without a line on the second, (6 + 0)/2 at 9; 75 % at north
    const [north, south] = dayTypes[0]?.launchesBySite ?? [];
    expect([north?.[8], north?.[9], south?.[8], south?.[9]]).toEqual([6, 2.25, 2, 0.75]);
    expect(daysCounted).toEqual([2, 1]);
  });

  it("fill all days of their months, two in seven of them weekends", () => {
    const [weekend, weekday] = countsIn(csvOf("2024-07-06,8,12", "2024-07-08,8,5")).dayTypes;
    expect(weekend?.daysPerYear).toBeCloseTo((92 * 2) / 7, 10);
    expect((weekend?.daysPerYear ?? 0) + (weekday?.daysPerYear ?? 0)).toBeCloseTo(92, 10);
    expect(weekday?.daysByMonth?.[5]).toBeCloseTo((30 * 5) / 7, 10);
    expect(weekday?.daysByMonth?.[8]).toBe(0);
  });

  it("count 29 February as a day of February", () => {
    const february = { id: "february", name: "February", months: ["feb" as const] };
    // 29 February 2024 was a Thursday, 24 February a Saturday
    const { dayTypes } = countsIn(csvOf("2024-02-29,8,12", "2024-02-24,8,4"), {
      monthGroups: [february],
      siteIds,
    });
    expect(dayTypes[1]?.launchesBySite[0]?.[8]).toBe(9);
  });

  it("tell the months of which nothing was counted", () => {
    expect(countsIn(csvOf("2024-07-06,8,12", "2024-07-08,8,5")).monthsWithout).toEqual(["jun", "aug"]);
  });

  it("keep sites apart where they were counted apart", () => {
    const csv =
      "date,hour,launches,site\n2024-07-06,8,12,north\n2024-07-07,8,4,north\n2024-07-06,9,6,south\n2024-07-08,8,5,north\n2024-07-08,8,1,south\n";
    const [weekend] = countsIn(csv).dayTypes;
    // two dates at north, one at south
    expect(weekend?.launchesBySite[0]?.[8]).toBe(8);
    expect(weekend?.launchesBySite[1]?.[9]).toBe(6);
    expect(weekend?.launchesBySite[1]?.[8]).toBe(0);
  });

  it("may come in any order, with thousands in quotation marks and the line ends of Windows", () => {
    const csv = '\uFEFFlaunches,hour,date\r\n"1,200",08,2024-07-06\r\n\r\n5,0,2024-07-08\r\n';
    const [weekend, weekday] = countsIn(csv).dayTypes;
    expect(weekend?.launchesBySite[0]?.[8]).toBe(900);
    expect(weekday?.launchesBySite[1]?.[0]).toBe(1.25);
  });

  it("written out from a profile give that profile back", () => {
    const anyDay = fc.array(fc.nat(40), { minLength: 24, maxLength: 24 });
    fc.assert(
      fc.property(anyDay, anyDay, (weekend, weekday) => {
        const lines = [...weekendDates, ...weekdayDates].flatMap((date) =>
          (weekendDates.includes(date) ? weekend : weekday).map(
            (launches, hour) => `${date},${hour},${launches}`,
          ),
        );
        const { dayTypes, daysCounted } = countsIn(csvOf(...lines));
        for (const [index, profile] of [weekend, weekday].entries()) {
          const [north = [], south = []] = dayTypes[index]?.launchesBySite ?? [];
          for (const [hour, launches] of profile.entries()) {
            expect((north[hour] ?? 0) + (south[hour] ?? 0)).toBeCloseTo(launches, 10);
          }
        }
        expect(daysCounted).toEqual([4, 4]);
      }),
      { seed: 51, numRuns: 40 },
    );
  });

  it("keep their sum: means times dates counted are the launches counted", () => {
    const anyLine = fc.tuple(fc.constantFrom(...weekendDates, ...weekdayDates), fc.nat(23), fc.nat(999));
    fc.assert(
      fc.property(fc.uniqueArray(anyLine, { selector: ([date, hour]) => `${date} ${hour}` }), (lines) => {
        const texts = [...lines, ["2024-08-03", 1, 1], ["2024-08-05", 1, 1]].map((line) => line.join(","));
        const { dayTypes, daysCounted } = countsIn(csvOf(...texts));
        const sum = dayTypes.reduce(
          (total, { launchesBySite }, index) =>
            total + (daysCounted[index] ?? 0) * launchesBySite.flat().reduce((day, each) => day + each, 0),
          0,
        );
        expect(sum).toBeCloseTo(2 + lines.reduce((total, [, , launches]) => total + launches, 0), 8);
      }),
      { seed: 52, numRuns: 60 },
    );
  });
});

const folder = fileURLToPath(new URL("../../bad/traffic", import.meta.url));

/** Each malformed file with the line that its message names, and words of what was found and is allowed. */
const badCounts: ReadonlyArray<
  readonly [file: string, line: number | undefined, found: string, allowed: string]
> = [
  ["empty.csv", undefined, "no count", header],
  ["header-only.csv", undefined, "no count", header],
  ["bars.csv", 1, '"date|hour|launches"', "with commas, semicolons or tabs between"],
  ["no-launches-column.csv", 1, 'no column "launches"', "date, hour, launches"],
  ["other-column.csv", 1, 'a column "weather"', "date, hour, launches"],
  ["two-hour-columns.csv", 1, '"hour" more than once', "each once"],
  ["american-date.csv", 3, 'date "07/08/2024"', "YYYY-MM-DD"],
  ["thirty-first-of-june.csv", 3, 'date "2024-06-31"', "a day that the month has"],
  ["month-alone.csv", 3, 'date "2024-07"', "a day"],
  ["no-date.csv", 3, "date nothing", "YYYY-MM-DD"],
  ["hour-24.csv", 3, 'hour "24"', "a whole number from 0 to 23"],
  ["negative-hour.csv", 3, 'hour "-1"', "a whole number from 0 to 23"],
  ["hour-as-time.csv", 3, 'hour "08:30"', "a whole number from 0 to 23"],
  ["negative-count.csv", 3, 'launches "-5"', "a whole number of launches"],
  ["half-a-boat.csv", 3, 'launches "5.5"', "a whole number of launches"],
  ["missing-count.csv", 3, "launches nothing", "a whole number of launches"],
  ["unquoted-thousands.csv", 3, "4 values", "3 values: date, hour, launches"],
  ["twelve-or-thousands.csv", 3, '"1,404", which may be 1.404 or 1404', "read in only one way"],
  ["hour-twice.csv", 3, "2024-07-06, hour 8 a second time, first in line 2", "each hour of a date once"],
  ["hour-twice-at-a-site.csv", 3, 'hour 8 at "north" a second time', "each hour of a date once"],
  ["unknown-site.csv", 3, 'site "east"', "north, south"],
  ["no-site.csv", 3, "site nothing", "north, south"],
  ["month-in-no-group.csv", 3, "2024-09-09", "jun, jul, aug"],
  ["no-weekend.csv", undefined, "no count for “Jun–Aug, weekend”", "at least one date"],
  ["no-weekday-at-a-site.csv", undefined, 'no count for “Jun–Aug, weekday” at "south"', "at each site"],
  ["open-quote.csv", 3, "a quotation mark out of place", "around a whole value"],
];

describe("counts that cannot be used", () => {
  it.each(badCounts)("%s are told by line, found, allowed and remedy", (file, line, found, allowed) => {
    const problems = problemsOf(readFileSync(`${folder}/${file}`, "utf8"));
    expect(problems).toHaveLength(1);
    expect(problems[0]?.found).toContain(found);
    expect(problems[0]?.line).toBe(line);
    expect(problems[0]?.allowed).toContain(allowed);
    expect(problems[0]?.remedy).toMatch(/^[A-Z].*\.$/);
    for (const text of Object.values(problems[0] ?? {}))
      expect(wordsOfTheProgram(String(text))).toBeUndefined();
  });

  it("are there for each mistake", () => {
    expect(badCounts.map(([file]) => file).sort()).toEqual(readdirSync(folder).sort());
  });

  it("are told of every mistake, in order of the lines", () => {
    const csv = csvOf("2024-07-06,8,x", "2024-07-06,9,1", "2024-07-06,9,1", "x,25,1");
    expect(problemsOf(csv).map(({ line }) => line)).toEqual([2, 4, 5, 5]);
  });

  it("are told of their size before their lines", () => {
    const problems = problemsOf(csvOf(...Array<string>(60_001).fill("x,y,z")));
    expect(problems.map(({ found }) => found)).toEqual(["more than 60000 lines"]);
  });
});

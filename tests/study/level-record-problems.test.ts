import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { wordsOfTheProgram } from "./example.js";
import { csvOf, datesFrom, monthsFrom, problemsOfRecord, recordIn } from "./records.js";

const folder = fileURLToPath(new URL("../bad/level-record", import.meta.url));

type BadRecord = readonly [file: string, line: number | undefined, found: string, allowed: string];

/** Each malformed record with the line that its message names, and words of what was found and is allowed. */
const headers: readonly BadRecord[] = [
  ["empty.csv", undefined, "nothing", "date,elevation (ft)"],
  ["header-only.csv", undefined, "no level", "one complete calendar year"],
  ["bars.csv", 1, '"date|elevation (m)"', "a comma, semicolon or tab between"],
  ["no-date-column.csv", 1, '"day"', "a date and an elevation column"],
  ["no-elevation-column.csv", 1, '"level (m)"', "a date and an elevation column"],
  ["other-column.csv", 1, '"flow (cfs)"', "and no other"],
  ["two-elevation-columns.csv", 1, "2 such columns", "an elevation column"],
  ["no-unit.csv", 1, '"elevation"', "unit of an elevation in brackets"],
  ["unit-of-mass.csv", 1, '"elevation (kg)"', "unit of an elevation in brackets"],
];

const values: readonly BadRecord[] = [
  ["blank-level.csv", 6, "nothing", "a number such as 1240.5"],
  ["missing-level.csv", 6, "nothing", "in m"],
  ["words-for-level.csv", 6, '"ice"', "a number such as 1240.5"],
  ["decimal-comma.csv", 6, '"100,5", with a decimal comma', "a decimal point, as in 100.1 in line 2"],
  ["twelve-or-thousands.csv", 6, '"101,125", which may be 101.125 or 101125', "read in only one way"],
  ["level-with-unit.csv", 6, '"100.5 m"', "a number such as 1240.5"],
  ["unquoted-thousands.csv", 2, "3 values", "2 values: date, elevation (m)"],
  ["open-quote.csv", 6, "a quotation mark out of place", "around a whole value"],
  ["too-high.csv", 6, "160.1 m", "no farther above full pool, 120 m, than full pool is above 80 m"],
  ["too-low.csv", 6, "-9999 m", "from 80 m, the minimum of the lake"],
];

/** Told line by line. */
const decimals: readonly BadRecord[] = [
  ["decimal-commas.csv", 2, '"100,1", with a decimal comma', "in a table with commas between its values"],
  ["comma-or-point.csv", 2, '"100,1", with a decimal comma', "a decimal point, as in 100.5 in line 6"],
];

const dates: readonly BadRecord[] = [
  ["blank-date.csv", 6, "nothing", '"YYYY-MM-DD"'],
  ["american-date.csv", 6, '"5/1/2011"', '"YYYY-MM-DD"'],
  ["month-13.csv", 14, '"2011-13"', "a month from 01 to 12"],
  ["thirtieth-of-february.csv", 3, '"2011-02-30"', "a day that the month has"],
  ["leap-day-of-a-common-year.csv", 3, '"2011-02-29"', "a day that the month has"],
  ["year-of-three-thousand.csv", 14, '"3011-12"', "a year from 1800 to 2200"],
  ["mixed-forms.csv", 6, '"2011-05-01"', '"YYYY-MM", as in line 2'],
  ["backwards.csv", 7, '"2011-05" after "2011-06" in line 6', "the oldest first"],
  ["duplicate.csv", 7, '"2011-05" a second time, first in line 6', "each date once"],
];

const spans: readonly BadRecord[] = [
  ["gap.csv", 3, "from 2011-03-05 to 2011-03-09 (5 days)", "without gaps"],
  ["gap-of-one-day.csv", 3, "of 2011-03-05 (1 day)", "without gaps"],
  // May has 31 days, June 30
  ["gap-of-months.csv", 6, "from 2011-05 to 2011-06 (61 days)", "without gaps"],
  ["part-of-a-year.csv", undefined, "2011 (from 1 Mar)", "one complete calendar year"],
  ["parts-of-two-years.csv", undefined, "2011 (from 1 Mar), 2012 (to 31 Oct)", "one complete calendar year"],
  ["too-many-years.csv", undefined, "101 years, from 1901-01 to 2001-12", "100 years"],
];

const badRecords = [...headers, ...values, ...decimals, ...dates, ...spans];
const badFile = (name: string) => readFileSync(`${folder}/${name}`, "utf8");

describe("a record that cannot be used", () => {
  it.each(badRecords)("%s is told by line, found, allowed and remedy", (file, line, found, allowed) => {
    const problems = problemsOfRecord(badFile(file));
    const told = problems.find((problem) => problem.found.includes(found));
    expect(told, JSON.stringify(problems)).toBeDefined();
    expect(told?.line).toBe(line);
    expect(told?.allowed).toContain(allowed);
    expect(told?.remedy).toMatch(/^[A-Z].*\.$/);
    for (const text of problems.flatMap((problem) => [problem.found, problem.allowed, problem.remedy])) {
      expect(wordsOfTheProgram(text)).toBeUndefined();
      expect(text.length).toBeLessThan(200);
    }
  });

  it("is there for each mistake", () => {
    expect(badRecords.map(([file]) => file).sort()).toEqual(readdirSync(folder).sort());
  });

  it.each([...values, ...dates].map(([file]) => file))("%s is told once, not by what follows", (file) => {
    expect(problemsOfRecord(badFile(file))).toHaveLength(1);
  });
});

describe("a record with several mistakes", () => {
  const days = datesFrom("2011-01-01", "2011-12-31");

  it("is told of all, in order of their lines", () => {
    const dates = days.filter((date) => date !== "2011-01-05");
    const csv = csvOf(dates, (_date, index) => [100, 170, "x"][index] ?? 100);
    expect(problemsOfRecord(csv).map(({ line }) => line)).toEqual([3, 4]);
  });

  it("is told of the first twenty and of how many more there are", () => {
    const problems = problemsOfRecord(csvOf(days, () => 170));
    expect(problems).toHaveLength(21);
    expect(problems[19]).toMatchObject({ line: 21, found: "170 m for 2011-01-20" });
    expect(problems[20]?.found).toBe("345 more problems");
    expect(problems[20]).not.toHaveProperty("line");
  });

  it("is told of twenty without a word of more", () => {
    const problems = problemsOfRecord(csvOf(days, (_date, index) => (index < 20 ? 170 : 100)));
    expect(problems.map(({ found }) => found)).toEqual(days.slice(0, 20).map((day) => `170 m for ${day}`));
  });

  it("is not told of a gap where a line with a broken date stands", () => {
    const csv = csvOf(days, () => 100).replace("2011-06-01", "1 June");
    expect(problemsOfRecord(csv)).toMatchObject([{ line: 153, found: '"1 June"' }]);
  });
});

describe("a gap that is longer than the study allows", () => {
  it("is told with what is allowed and what would be needed", () => {
    expect(problemsOfRecord(badFile("gap.csv"), { fillGapsUpTo: 4 })).toMatchObject([
      {
        allowed: "gaps of at most 4 days (fillGapsUpTo)",
        remedy: expect.stringContaining("set fillGapsUpTo to 5"),
      },
    ]);
  });

  it("is not told as one to be joined if it is longer than a season", () => {
    const [told] = problemsOfRecord(csvOf(["2011-03-04", "2013-10-01"], () => 100));
    expect(told?.found).toContain("; the record holds no day of 2012");
    expect(told?.remedy).not.toContain("fillGapsUpTo");
  });

  it("leaves its year out where others are whole, and that is told", () => {
    const days = datesFrom("2010-01-01", "2014-12-31").filter(
      (date) => !/^2011-03-(0[3-9]|1[0-4])|^2013-07-01/.test(date),
    );
    const record = recordIn(
      csvOf(days, () => 100),
      { fillGapsUpTo: 1 },
    );
    expect(record.years.map(({ label }) => label)).toEqual(["2010", "2012", "2013", "2014"]);
    expect(record.leftOut).toEqual(["2011 (no level from 2011-03-03 to 2011-03-14)"]);
    expect(record.filled).toEqual([{ label: "2013", days: 1 }]);
  });

  it("leaves out every year that it reaches into", () => {
    const days = datesFrom("2010-01-01", "2014-12-31").filter(
      (date) => date < "2011-12-30" || date > "2013-01-02",
    );
    const record = recordIn(csvOf(days, () => 100));
    expect(record.years.map(({ label }) => label)).toEqual(["2010", "2014"]);
    expect(record.withGaps.map((text) => text.slice(0, 4))).toEqual(["2011", "2012", "2013"]);
  });
});

describe("levels above full pool", () => {
  const days = datesFrom("2011-01-01", "2012-12-31");

  it("are kept and told with their days and the highest", () => {
    const csv = csvOf(days, (date) => ({ "2011-05-01": 120.4, "2012-06-09": 121.25 })[date] ?? 100);
    const { above, years } = recordIn(csv);
    expect(above).toEqual({ days: 2, highest: 121.25, label: "2012" });
    expect(Math.max(...(years[1]?.daily ?? []))).toBe(121.25);
  });

  it("are not told where there are none, or no full pool is known", () => {
    expect(recordIn(csvOf(days, () => 120)).above).toBeUndefined();
    expect(
      recordIn(
        csvOf(days, () => 130),
        { maximumElevation: undefined },
      ).above,
    ).toBeUndefined();
  });
});

describe("the size of a record", () => {
  it("is 100 years at most", () => {
    expect(recordIn(csvOf(monthsFrom(1901, 2000), () => 100)).years).toHaveLength(100);
  });

  it("is refused by the number of lines before they are read", () => {
    const lines = `date,elevation (m)\n${"2011-01-01,100\n".repeat(40_000)}`;
    expect(problemsOfRecord(lines)).toEqual([
      expect.objectContaining({ found: "more than 36601 lines", allowed: "at most 100 years of days" }),
    ]);
  });
});

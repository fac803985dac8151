import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { beliefFromMean, learned, summaryOf } from "../../../src/model/program/learning.js";
import type { RecordProblem } from "../../../src/study/reading/contradiction.js";
import { readSeasonLog, type SeasonLog } from "../../../src/study/reading/season-log.js";
import { wordsOfTheProgram } from "../example.js";

const classIds = ["local", "visiting"];
const header = "season,class,screened,setAside,fouled";
const csvOf = (...lines: readonly string[]) => `${[header, ...lines].join("\n")}\n`;

function logIn(csv: string, ids: readonly string[] = classIds): SeasonLog {
  const reading = readSeasonLog(csv, ids);
  if (!reading.log) throw new Error(JSON.stringify(reading.problems));
  return reading.log;
}

function problemsOf(csv: string): readonly RecordProblem[] {
  const reading = readSeasonLog(csv, classIds);
  if (reading.log) throw new Error("the log was read without problems");
  return reading.problems;
}

describe("a log of seasons", () => {
  it("is summed by class over its seasons", () => {
    const log = logIn(csvOf("2024,visiting,100,30,2", "2023,local,1000,1,0", "2023,visiting,80,20,1"));
    expect(log.classes).toEqual([
      { vesselClass: "visiting", screened: 180, setAside: 50, fouled: 3 },
      { vesselClass: "local", screened: 1000, setAside: 1, fouled: 0 },
    ]);
    expect(log.seasons).toEqual([2023, 2024]);
    expect(log.rows[1]).toEqual({
      line: 3,
      season: 2023,
      vesselClass: "local",
      screened: 1000,
      setAside: 1,
      fouled: 0,
    });
  });

  it("may have its columns in another order, thousands in quotation marks, blank lines and the line ends of Windows", () => {
    const csv = '\uFEFFclass,fouled,season,setAside,screened\r\n\r\nlocal,14,2013,"1,404","38,800"\r\n';
    expect(logIn(csv).classes).toEqual([
      { vesselClass: "local", screened: 38_800, setAside: 1404, fouled: 14 },
    ]);
  });

  it("may be all boats fouled, or no boats at all", () => {
    expect(logIn(csvOf("2024,local,3,3,3", "2024,visiting,0,0,0")).classes).toHaveLength(2);
  });

  it("sums to what its lines sum to", () => {
    const line = fc
      .tuple(fc.nat(1e6), fc.nat(1e6), fc.nat(1e6))
      .map(([one, other, rest]) => ({ screened: one + other + rest, setAside: one, fouled: other }));
    fc.assert(
      fc.property(fc.array(line, { minLength: 1, maxLength: 40 }), (lines) => {
        const text = lines.map(
          ({ screened, setAside, fouled }, index) =>
            `${2000 + (index >> 1)},${classIds[index % 2]},${screened},${setAside},${fouled}`,
        );
        const { classes } = logIn(csvOf(...text));
        for (const column of ["screened", "setAside", "fouled"] as const) {
          const sum = (all: ReadonlyArray<Record<typeof column, number>>) =>
            all.reduce((total, each) => total + each[column], 0);
          expect(sum(classes)).toBe(sum(lines));
        }
      }),
      { seed: 95, numRuns: 100 },
    );
  });
});

describe("published seasons as a log", () => {
  it("give the funnel of Wyoming: 3.62 % of high risk, 0.036 % fouled", () => {
    // Wyoming Game and Fish, 2013 season: "over 38,800" inspected, 1,404 of high risk, 14 with mussels.
    const [sum] = logIn(csvOf("2013,local,38800,1404,14")).classes;
    if (!sum) throw new Error("no class");
    expect(Math.abs(sum.setAside / sum.screened - 0.0362)).toBeLessThan(0.0005);
    expect(Math.abs(sum.fouled / sum.screened - 0.00036)).toBeLessThan(0.00001);
  });

  it("give the five seasons of Colorado: 634 fouled boats, 127 a year", () => {
    // Colorado Parks and Wildlife: 86, 100, 181, 148 and 119 fouled boats in 2019 to 2023 (the last from the published
    // total of 634 and mean of 127); 446,663 and 452,225 inspected in 2022 and 2023, the years before it not found and
    // entered as 450,000; decontaminated boats as those set aside, 27,003 and 33,833, before it as 27,000.
    const log = logIn(
      csvOf(
        "2019,local,450000,27000,86",
        "2020,local,450000,27000,100",
        "2021,local,450000,27000,181",
        "2022,local,446663,27003,148",
        "2023,local,452225,33833,119",
      ),
    );
    expect(log.classes[0]?.fouled).toBe(634);
    expect(Math.round((log.classes[0]?.fouled ?? 0) / log.seasons.length)).toBe(127);
  });

  it("move a guess toward what was counted", () => {
    // By hand: a guess of 1 % worth 100 boats and 14 fouled of 38,800: (1 + 14)/(100 + 38,800).
    const [sum] = logIn(csvOf("2013,local,38800,1404,14")).classes;
    if (!sum) throw new Error("no class");
    const after = learned(beliefFromMean(0.01, 100), { screened: sum.screened, found: sum.fouled });
    expect(summaryOf(after).mean).toBeCloseTo(15 / 38_900, 12);
  });
});

const folder = fileURLToPath(new URL("../../bad/season-log", import.meta.url));

/** Each malformed log with the line that its message names, and words of what was found and is allowed. */
const badLogs: ReadonlyArray<
  readonly [file: string, line: number | undefined, found: string, allowed: string]
> = [
  ["empty.csv", undefined, "nothing", header],
  ["header-only.csv", undefined, "no season", header],
  ["bars.csv", 1, '"season|class|screened|setAside|fouled"', "with commas, semicolons or tabs between"],
  ["no-fouled-column.csv", 1, 'no column "fouled"', "season, class, screened, setAside, fouled"],
  ["other-column.csv", 1, 'a column "notes"', "season, class, screened, setAside, fouled"],
  ["two-fouled-columns.csv", 1, '"fouled" more than once', "each once"],
  ["more-fouled-than-screened.csv", 3, "fouled 11 of 10 screened", "no more than were screened"],
  ["more-set-aside-than-screened.csv", 3, "setAside 12 of 10 screened", "no more than were screened"],
  ["unknown-class.csv", 3, 'class "trailer"', "local, visiting"],
  ["no-class.csv", 3, "class nothing", "local, visiting"],
  ["season-in-words.csv", 3, 'season "summer"', "a year such as 2024"],
  ["season-of-five-digits.csv", 3, 'season "20244"', "a year such as 2024"],
  ["half-a-boat.csv", 3, 'screened "10.5"', "a whole number"],
  ["negative.csv", 3, 'screened "-10"', "a whole number"],
  ["missing-count.csv", 3, "fouled nothing", "a whole number"],
  ["unquoted-thousands.csv", 3, "6 values", "5 values: season, class, screened, setAside, fouled"],
  ["twelve-or-thousands.csv", 3, '"1.404", which may be 1.404 or 1404', "read in only one way"],
  ["season-twice.csv", 3, '"local" in 2023 a second time, first in line 2', "once in a season"],
  ["open-quote.csv", 3, "a quotation mark out of place", "around a whole value"],
];

describe("a log that cannot be used", () => {
  it.each(badLogs)("%s is told by line, found, allowed and remedy", (file, line, found, allowed) => {
    const problems = problemsOf(readFileSync(`${folder}/${file}`, "utf8"));
    const told = problems.find((problem) => problem.found.includes(found));
    expect(told, JSON.stringify(problems)).toBeDefined();
    expect(told?.line).toBe(line);
    expect(told?.allowed).toContain(allowed);
    for (const problem of problems) {
      expect(problem.remedy).toMatch(/^[A-Z].*\.$/);
      for (const text of Object.values(problem)) expect(wordsOfTheProgram(String(text))).toBeUndefined();
    }
  });

  it("is there for each mistake", () => {
    expect(badLogs.map(([file]) => file).sort()).toEqual(readdirSync(folder).sort());
  });

  it.each(badLogs.filter(([file, line]) => line === 3 || file === "bars.csv").map(([file]) => file))(
    "%s is told once",
    (file) => {
      expect(problemsOf(readFileSync(`${folder}/${file}`, "utf8"))).toHaveLength(1);
    },
  );

  it("is told of every mistake, in order of the lines", () => {
    const csv = csvOf(
      "2023,local,5,1,9",
      "2023,local,5,1,0",
      "x,local,5,1,0",
      "2023,local,7,1,0",
      "2024,boat,5,y,0",
    );
    expect(problemsOf(csv).map(({ line }) => line)).toEqual([2, 4, 5, 6, 6]);
  });

  it("is told of the first twenty mistakes and of how many more there are", () => {
    const problems = problemsOf(csvOf(...Array<string>(30).fill("2024,local,1,1,2")));
    expect(problems).toHaveLength(21);
    expect(problems[20]?.found).toBe("10 more problems");
  });

  it("is told of its size before its lines", () => {
    const [problem, ...more] = problemsOf(csvOf(...Array<string>(5001).fill("x,y,z,1,2")));
    expect(problem?.found).toBe("more than 5000 lines");
    expect(more).toEqual([]);
  });
});

import { describe, expect, it } from "vitest";
import { seasonCsv } from "../../../src/study/exports/boat-sums.js";
import { readBoatLog } from "../../../src/study/exports/read-boat-log.js";
import { boatLogSchema } from "../../../src/study/format/export-schema.js";
import { readSeasonLog } from "../../../src/study/reading/season-log.js";

const classIds = ["day-use", "long-moored"];
const mapping = {
  ...{ date: "When", class: "Kind", fouled: "Mussels", setAside: "Held" },
  classes: { "Day user": "day-use", Moored: "long-moored" },
};
const read = (text: string, more: object = {}) =>
  readBoatLog(text, boatLogSchema.parse({ ...mapping, ...more }), classIds);

const log = `When,Kind,Plate,Name,Held,Mussels,Minutes,Full
6/30/2024 9:12,Day user,AB 123,J. Doe,no,no,2.5,
6/30/2024 9:15,moored,CD 456,R. Roe,Y,yes,4,31
7/1/2024 9:20,Day user,AB 124,"Doe, M.",n,,3.5,
7/1/2025 9:25,Day user,AB 125,K. Poe,x,no,2,29
`;

describe("a log with a line for each boat", () => {
  const found = read(log, { quickCheck: "Minutes", fullInspection: "Full" });

  it("is summed by season and class, with the mean minutes", () => {
    expect(found.sums).toEqual({
      classes: [
        { season: 2024, vesselClass: "day-use", screened: 2, setAside: 0, fouled: 0 },
        { season: 2024, vesselClass: "long-moored", screened: 1, setAside: 1, fouled: 1 },
        { season: 2025, vesselClass: "day-use", screened: 1, setAside: 1, fouled: 0 },
      ],
      quickCheck: { mean: 3, count: 4 },
      fullInspection: { mean: 30, count: 2 },
    });
    expect(found.refused).toEqual([]);
  });

  it("loses its names and plates, and that is told", () => {
    expect(found.told).toEqual([
      "4 lines summed: 4 boats screened, 2 held, 1 with mussels.",
      "Quick checks took 3.0 min on average of 4 boats.",
      "Full inspections took 30.0 min on average of 2 boats.",
      "Dropped and not kept: Plate, Name.",
    ]);
    expect(JSON.stringify(found)).not.toMatch(/Doe|AB 12/);
  });

  it("gives the log that studies learn from, in place of the same seasons", () => {
    const before = readSeasonLog(
      "season,class,screened,setAside,fouled\n2023,day-use,900,30,1\n2024,day-use,5,5,5\n",
      classIds,
    );
    const csv = seasonCsv(found.sums.classes, before.log);
    expect(csv).toBe(
      "season,class,screened,setAside,fouled\n2023,day-use,900,30,1\n2024,day-use,2,0,0\n2024,long-moored,1,1,1\n2025,day-use,1,1,0\n",
    );
    expect(readSeasonLog(csv, classIds).log?.seasons).toEqual([2023, 2024, 2025]);
  });

  it("asks for classes that nobody has mapped", () => {
    const { asked } = read(log, { classes: { Moored: "long-moored" } });
    expect(asked).toMatchObject([
      { about: "classes", problem: { line: 2, found: "the classes “Day user” in 3 lines" } },
    ]);
    expect(read(log, { classes: { ...mapping.classes, "Day user": "dayuse" } }).asked).toHaveLength(1);
  });

  it("asks for no word of the totals below the boats, and refuses their line", () => {
    const { asked, refused, sums } = read(`${log}Total,4,,,2,1,,\n`);
    expect(asked).toEqual([]);
    expect(refused).toMatchObject([{ line: 6, found: 'date "Total"' }]);
    expect(sums.classes).toHaveLength(3);
  });

  it("asks for a column that is missing, and for the order of dates", () => {
    expect(read(log.replace("Held", "Stopped")).asked[0]?.problem.found).toContain('no column "Held"');
    expect(read(log.replaceAll("6/30", "6/3")).asked[0]?.about).toBe("dates");
  });
});

it("reads the words for yes and no that a log has of its own", () => {
  const text = "When,Kind,Held,Mussels\n6/30/2024,Day user,Held,Clean\n7/1/2024,Day user,Passed,clean\n";
  const { sums, refused } = read(text, { yes: ["held"], no: ["Passed", "Clean"] });
  expect(refused).toEqual([]);
  expect(sums.classes).toMatchObject([{ screened: 2, setAside: 1, fouled: 0 }]);
});

describe("a log of sums", () => {
  it("is summed by season and class, days or whole seasons, whatever separates its values", () => {
    const text =
      "When;Kind;n;Held;Mussels\n2024;Day user;1,404;22;3\n30.6.2025;Day user;10;1;0\n1.7.2025;Day user;20;2;1\n";
    expect(read(text, { screened: "n" }).sums.classes).toEqual([
      { season: 2024, vesselClass: "day-use", screened: 1404, setAside: 22, fouled: 3 },
      { season: 2025, vesselClass: "day-use", screened: 30, setAside: 3, fouled: 1 },
    ]);
  });
});

describe("lines that are refused", () => {
  it.each([
    ["2/30/2024", "no", "no", "3", 'date "2/30/2024"', "a day that the month has"],
    ["6/30/2024", "perhaps", "no", "3", 'boats held "perhaps"', "a word that means yes (yes, y, true, x, 1)"],
    ["6/30/2024", "no", "2", "3", 'boats with mussels "2"', "or no (no, n, false, 0, -; more can be listed)"],
    ["6/30/2024", "no", "no", "-3", 'minutes of the quick check "-3"', "minutes, from 0 to a day"],
    ["", "no", "no", "3", "date nothing", "a date such as"],
  ])(
    "%s %s %s %s: told by line, found, allowed and remedy; the others are summed",
    (date, held, mussels, minutes, what, allowed) => {
      const text = `${log}${date},Day user,,,${held},${mussels},${minutes},\n`;
      const { refused, sums } = read(text, { quickCheck: "Minutes" });
      expect(refused).toEqual([
        {
          line: 6,
          found: what,
          allowed: expect.stringContaining(allowed),
          remedy: expect.stringMatching(/^[A-Z].*\.$/),
        },
      ]);
      expect(sums.classes).toHaveLength(3);
    },
  );

  it("are sums of more boats held than screened", () => {
    const text = "When,Kind,n,Held,Mussels\n2024,Day user,2,3,0\n2024,Day user,1.5,0,0\n";
    expect(read(text, { screened: "n" }).refused.map(({ found }) => found)).toEqual([
      'boats screened "2"',
      'boats screened "1.5"',
    ]);
  });
});

it.each([
  ["1,5", "point"],
  ["1.000", "point"],
  ["1,000", "comma"],
  ["1e3", "point"],
  ["0x10", "point"],
])("refuses the number of boats %s where decimals have a %s", (number, decimals) => {
  const text = `When;Kind;n;Held;Mussels\n2024;Day user;${number};0;0\n`;
  expect(read(text, { screened: "n", decimals })).toMatchObject({
    sums: { classes: [] },
    refused: [{ line: 2, found: `boats screened "${number}"`, allowed: "a whole number of boats" }],
  });
});

it("reads thousands of boats as decimals are written", () => {
  const text = "When;Kind;n;Held;Mussels\n2024;Day user;1.404;22;0\n";
  expect(read(text, { screened: "n", decimals: "comma" }).sums.classes[0]?.screened).toBe(1404);
});

it("takes the decimal sign from either column of minutes", () => {
  const text =
    "When;Kind;Held;Mussels;Quick;Full\n1/7/2024;Day user;no;no;3;\n2/7/2024;Day user;yes;no;4;12,5\n";
  const { sums, asked, refused } = read(text, {
    quickCheck: "Quick",
    fullInspection: "Full",
    dates: "day-first",
  });
  expect([asked, refused, sums.fullInspection]).toEqual([[], [], { mean: 12.5, count: 1 }]);
});

it("refuses a log with names of columns and nothing below them", () => {
  const { sums, refused } = read("When,Kind,Held,Mussels\n");
  expect(sums.classes).toEqual([]);
  expect(refused.map(({ line, found }) => [line, found])).toEqual([[1, "no boat below the column names"]]);
});

it("reads 200,000 lines within 5 s of processor time", () => {
  const lines = Array.from({ length: 200_000 }, (_, index) => {
    const day = (index % 28) + 1;
    return `7/${day}/2024 10:${10 + (index % 50)},Day user,AB ${index},"Doe, J.",${index % 40 ? "no" : "yes"},${index % 400 ? "no" : "yes"},${index % 9}.5,`;
  });
  const text = `${log}${lines.join("\n")}\n`;
  const before = process.cpuUsage();
  const { sums, told } = read(text, { quickCheck: "Minutes" });
  const { user, system } = process.cpuUsage(before);
  expect(told[0]).toBe("200,004 lines summed: 200,004 boats screened, 5,002 held, 501 with mussels.");
  expect(sums.quickCheck?.count).toBe(200_004);
  expect((user + system) / 1e6).toBeLessThan(5);
});

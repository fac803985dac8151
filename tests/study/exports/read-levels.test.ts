import { describe, expect, it } from "vitest";
import { judgedRecord } from "../../../src/study/exports/judged-record.js";
import { readLevelExport } from "../../../src/study/exports/read-levels.js";
import { levelExportSchema } from "../../../src/study/format/export-schema.js";
import { parseQuantity } from "../../../src/units/quantity.js";
import { csvOf, datesFrom, recordIn } from "../records.js";

const read = (text: string, mapping: Partial<Parameters<typeof levelExportSchema.parse>[0] & object> = {}) =>
  readLevelExport(text, levelExportSchema.parse({ date: "date", level: "level", ...mapping }));

/** As national gauge networks write: comments, tabs, a line of widths, codes beside the values. */
const network = `# Some text that a network puts before its data
#   "quotation marks" and a tab	in it
#
agency_cd	site_no	datetime	10_62614_00003	10_62614_00003_cd
5s	15s	20d	14n	10s
GN	0412	2019-12-31	1201.20	A
GN	0412	2020-01-01	1201.25	A
GN	0412	2020-01-02	Ice	P
GN	0412	2020-01-03		A
GN	0412	2020-01-04	1201.40	A
`;
const networkMapping = { date: "datetime", level: "10_62614_00003", unit: "ft", missing: ["ice"] };

describe("an export of a gauge network: comments, tabs, widths below the names", () => {
  it("is read by its mapped columns, with the words for ice told", () => {
    const { csv, told, refused, asked } = read(network, networkMapping);
    expect(csv).toBe("date,elevation (ft)\n2019-12-31,1201.20\n2020-01-01,1201.25\n2020-01-04,1201.40\n");
    expect(told).toEqual([
      "Levels are in ft, as chosen.",
      "3 levels read, of 3 dates from 2019-12-31 to 2020-01-04.",
      "No level in 1 blank line, 1 line with “Ice”.",
    ]);
    expect([...refused, ...asked]).toEqual([]);
  });

  it("asks for the unit and for words that nobody has said to mean missing", () => {
    const { csv, asked } = read(network, { ...networkMapping, unit: undefined, missing: [] });
    expect(csv).toBeUndefined();
    expect(asked.map(({ about }) => about)).toEqual(["unit", "missing"]);
    expect(asked[1]?.words).toEqual(["Ice"]);
    expect(asked[1]?.problem).toMatchObject({ line: 8, found: '"Ice" in 1 line, the first in line 8' });
  });
});

/** As an office abroad writes: titles above the names, semicolons, day first, decimal commas, single readings. */
const office = `Pegel Talsperre;;
Ausgabe vom 3.2.2021;;

Datum;Wasserstand [m];Güte
30.12.2020 06:00;1.201,25;gut
30.12.2020 18:00;1.201,75;gut
31.12.2020 06:00;1.202,5;gut
01.01.2021 06:00;1.202,625;Eis
`;
const officeMapping = { date: "Datum", level: "Wasserstand [m]" };

describe("a file with semicolons, days first and decimal commas", () => {
  it("is read, the mean of a day's readings kept, and how is told", () => {
    const { csv, told } = read(office, officeMapping);
    expect(csv).toBe("date,elevation (m)\n2020-12-30,1201.5\n2020-12-31,1202.5\n2021-01-01,1202.625\n");
    expect(told).toEqual([
      "Levels are in m, as the column’s name says.",
      "Dates have the day first, as 30.12.2020 06:00 in line 5.",
      "Decimals have a comma, as 1.201,25 in line 5.",
      "4 levels read, of 3 dates from 2020-12-30 to 2021-01-01.",
      "On 1 date the mean of several readings is kept.",
    ]);
  });
});

/** As a dam's own database writes: commas, month first, the unit in the head, thousands in quotation marks. */
const dam = `"Date","Pool elevation (feet above datum)","Operator"
12/30/2020,"1,201.25",J. Doe
12/31/2020,"1,201.30",J. Doe
1/1/2021,"1,201.35",J. Doe
`;
const damMapping = { date: "date", level: "pool elevation (FEET above  datum)" };

describe("a file with commas, months first and the unit in the column's name", () => {
  it("is read, whatever the case and blanks of names, and no other column is kept", () => {
    const { csv, told } = read(dam, damMapping);
    expect(csv).toBe("date,elevation (feet)\n2020-12-30,1201.25\n2020-12-31,1201.30\n2021-01-01,1201.35\n");
    expect(told[1]).toBe("Dates have the month first, as 12/30/2020 in line 2.");
    expect(csv).not.toContain("Doe");
  });

  it("asks which comes first where no date shows it, with both readings", () => {
    const open = dam.replace(/^12\/3[01].*\n/gm, "").replace("1/1/2021", "4/1/2021");
    const { csv, asked } = read(open, damMapping);
    expect(csv).toBeUndefined();
    expect(asked).toMatchObject([
      {
        about: "dates",
        problem: {
          line: 2,
          found: '"4/1/2021", which may be 2021-04-01 with the month first or 2021-01-04 with the day first',
        },
      },
    ]);
    expect(read(open, { ...damMapping, dates: "day-first" }).csv).toContain("2021-01-04,");
  });

  it("asks where dates contradict one another, and names both lines", () => {
    const { asked } = read(`${dam}25/1/2021,"1,201.4",J. Doe\n`, damMapping);
    expect(asked[0]?.problem.found).toBe(
      '"12/30/2020" in line 2 and "25/1/2021" in line 5, which have the day in different places',
    );
  });
});

/** As a spreadsheet writes: names of months, gauge heights above the gauge's zero. */
describe("a file of gauge heights with named months", () => {
  it("gets the elevation of the gauge's zero added", () => {
    const { csv, told } = read("Day,Stage_ft\n1 Mar 2021,12.5\n02-Mar-2021,12.75\n", {
      ...{ date: "Day", level: "Stage_ft", gaugeZero: 1190.1 },
    });
    expect(csv).toBe("date,elevation (ft)\n2021-03-01,1202.6\n2021-03-02,1202.85\n");
    expect(told).toContain("1190.1 ft of the gauge’s zero is added to each.");
  });
});

const plain = (lines: string) => `date,level (m)\n${lines}`;
const plainMapping = { level: "level (m)" };

describe("lines that are refused", () => {
  it.each([
    ["2021-02-30,100", 3, '"2021-02-30"', "a day that the month has"],
    ["2021-13-01,100", 3, '"2021-13-01"', "a month from 01 to 12"],
    ["soon,100", 3, '"soon"', "a date such as 2011-03-05"],
    [",100", 3, "nothing", "a date such as"],
    ["2021-01-05,100.5.5", 3, '"100.5.5"', "a number with a decimal point"],
    [
      "2021-01-01,101",
      3,
      "2021-01-01 a second time, with 101; in line 2 with 100",
      "one level for each date",
    ],
    ['2021-01-05,"100', 3, "a quotation mark out of place", "only around a whole value"],
  ])(
    "%s is told by line, found, allowed and remedy, and the others are kept",
    (line, number, found, allowed) => {
      const { csv, refused } = read(
        plain(`2021-01-01,100\n${line}\n2021-01-09,99\n2021-01-10,98\n`),
        plainMapping,
      );
      expect(refused).toEqual([
        {
          line: number,
          found: expect.stringContaining(found),
          allowed: expect.stringContaining(allowed),
          remedy: expect.stringMatching(/^[A-Z].*\.$/),
        },
      ]);
      expect(csv).toBe("date,elevation (m)\n2021-01-01,100\n2021-01-09,99\n2021-01-10,98\n");
    },
  );

  it("are none for a date twice with the same level, which is told", () => {
    const { refused, told } = read(plain("2021-01-01,100\n2021-01-01,100.0\n"), plainMapping);
    expect(refused).toEqual([]);
    expect(told).toContain("Ignored: 1 line that repeats a level of the same date.");
  });

  it("are asked about where most days have several readings", () => {
    const text = plain("2021-01-01,100\n2021-01-01,101\n2021-01-02,100\n2021-01-02,102\n");
    expect(read(text, plainMapping).asked[0]?.about).toBe("several");
    expect(read(text, { ...plainMapping, several: "mean" }).csv).toBe(
      "date,elevation (m)\n2021-01-01,100.5\n2021-01-02,101\n",
    );
  });
});

describe("a file that cannot be read", () => {
  it("lacks a mapped column: the names that it has are told", () => {
    const { asked } = read(network.replace("10_62614_00003\t", "12_62614_00003\t"), networkMapping);
    expect(asked).toMatchObject([
      {
        about: "columns",
        problem: {
          line: 4,
          found: expect.stringContaining(
            'no column "10_62614_00003"; there are agency_cd, site_no, datetime, 12_62614_00003',
          ),
        },
      },
    ]);
  });

  it.each([
    ["", "an empty file"],
    ["# only a comment\n", "no line of column names"],
    ["a,b\n1,2\n", 'no column "date", "level"; there are a, b'],
  ])("%j: %s", (text, found) => {
    expect(read(text).asked[0]?.problem.found).toBe(found);
  });

  it("has names and nothing below them", () => {
    expect(read("date,level (m)\n", plainMapping).refused[0]?.found).toBe("no level below the column names");
  });

  it("has a column twice", () => {
    expect(read("date,date,level\n1,2,3\n").asked[0]?.problem.found).toBe('two columns "date"');
  });

  it("has numbers that can be read in two ways", () => {
    const text = "date;level (m)\n2021-01-01;648.125\n";
    expect(read(text, plainMapping).asked[0]?.problem.found).toBe(
      '"648.125", which may be 648.125 or 648125',
    );
    expect(read(text, { ...plainMapping, decimals: "point" }).csv).toContain("2021-01-01,648.125");
  });
});

describe("what is read", () => {
  it("is a record that studies read, lines out of order and all", () => {
    const days = Array.from({ length: 365 }, (_, day) => new Date(Date.UTC(2021, 0, 1 + day)));
    const lines = days.map((day) => `${day.getUTCMonth() + 1}/${day.getUTCDate()}/2021\t328.1`).reverse();
    const { csv = "", told } = read(`date\tlevel (ft)\n${lines.join("\n")}\n`, { level: "level (ft)" });
    expect(told).toContain("The lines were sorted by date.");
    const [year] = recordIn(csv).years;
    expect(year?.daily[0]).toBeCloseTo(parseQuantity("328.1 ft", "elevation").value, 9);
  });

  it("is the same of 200,000 lines as of their days", () => {
    const quarterHours = Array.from({ length: 200_000 }, (_, index) => {
      const time = new Date(Date.UTC(2015, 0, 1) + index * 15 * 60 * 1000).toISOString();
      return `${time.slice(0, 10)} ${time.slice(11, 16)}\t100.5`;
    });
    const { csv = "", told } = read(`date\tlevel (m)\n${quarterHours.join("\n")}\n`, plainMapping);
    expect(csv.split("\n")).toHaveLength(Math.ceil(200_000 / 96) + 2);
    expect(told[1]).toMatch(/^200,000 levels read, of 2,084 dates/);
  });
});

it("tells an impossible level by its date, as a line of the record is none of the file", () => {
  const document = { lake: { minimumElevation: "80 m", maximumElevation: "120 m" } };
  const csv = csvOf(datesFrom("2021-01-01", "2021-12-31"), (_date, index) => (index === 2 ? 170 : 100));
  const { allowed, remedy } = { allowed: expect.any(String), remedy: expect.any(String) };
  expect(judgedRecord(csv, document, 0)).toEqual({
    problems: [{ found: "170 m for 2021-01-03", allowed, remedy }],
  });
});

it("tells before it is kept that a record of a hundred years with levels of 25 digits is too long", () => {
  const csv = csvOf(datesFrom("1921-01-01", "2020-12-31"), () => `100.${"3".repeat(22)}`);
  const reading = judgedRecord(csv, {}, 0);
  expect(reading).toMatchObject({ problems: [{ found: "a record of 1.3 MB, once read" }] });
});

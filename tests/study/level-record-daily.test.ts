import { describe, expect, it } from "vitest";
import { csvOf, datesFrom, metres, recordIn } from "./records.js";

const wholeYear = datesFrom("2011-01-01", "2011-12-31");
const rising = (_date: string, index: number) => 90 + index / 100;

describe("a daily record", () => {
  it("gives each calendar year its levels in order", () => {
    const { years, form } = recordIn(csvOf(datesFrom("2010-01-01", "2011-12-31"), rising));
    expect(form).toBe("daily");
    expect(years.map(({ label }) => label)).toEqual(["2010", "2011"]);
    expect(years.map(({ daily }) => daily.length)).toEqual([365, 365]);
    expect(years[0]?.daily[0]).toBe(90);
    expect(years[1]?.daily[364]).toBeCloseTo(90 + 729 / 100, 10);
  });

  it("leaves out 29 February", () => {
    const dates = datesFrom("2012-01-01", "2012-12-31");
    expect(dates).toHaveLength(366);
    const { years, filled } = recordIn(csvOf(dates, (date) => (date === "2012-02-29" ? 110 : 100)));
    expect(years[0]?.daily).toEqual(Array(365).fill(100));
    expect(filled).toEqual([]);
  });

  it("may hold no 29 February at all", () => {
    const dates = datesFrom("2012-01-01", "2012-12-31").filter((date) => date !== "2012-02-29");
    expect(recordIn(csvOf(dates, rising)).years[0]?.daily).toHaveLength(365);
  });

  it.each([
    ["m", "(m)", 100, 100],
    // an international foot is 0.3048 m exactly (agreement of 1959)
    ["ft", "(ft)", 328, 328 * 0.3048],
    ["square brackets", "[ft]", 328, 328 * 0.3048],
    ["cm", "(cm)", 10_050, 100.5],
  ])("may be in %s", (_what, unit, typed, level) => {
    const { years } = recordIn(csvOf(wholeYear, () => typed, `date,elevation ${unit}`));
    expect(years[0]?.daily[200]).toBeCloseTo(level, 10);
  });

  it.each([
    ["lines of Windows", (csv: string) => csv.replaceAll("\n", "\r\n")],
    ["lines of an old Macintosh", (csv: string) => csv.replaceAll("\n", "\r")],
    ["a byte order mark", (csv: string) => `\uFEFF${csv}`],
    ["no line end at the end", (csv: string) => csv.trimEnd()],
    ["blank lines and lines of commas", (csv: string) => `${csv.replace("\n", "\n\n")}\n,\n , \n`],
    ["spaces around values", (csv: string) => csv.replaceAll(",", " , ")],
    ["a header in capitals", (csv: string) => csv.replace(metres, "DATE,Elevation(m)")],
    ["quotation marks around everything", (csv: string) => csv.replace(/[^,\n]+/g, '"$&"')],
    ["its columns turned round", (csv: string) => csv.replace(/^(.*),(.*)$/gm, "$2,$1")],
  ])("may have %s", (_what, written) => {
    const csv = csvOf(wholeYear, rising);
    expect(written(csv)).not.toBe(csv);
    expect(recordIn(written(csv))).toEqual(recordIn(csv));
  });

  it("may have thousands separators in quotation marks", () => {
    const csv = csvOf(wholeYear, () => '"10,050.5"', "date,elevation (cm)");
    expect(recordIn(csv).years[0]?.daily[0]).toBeCloseTo(100.505, 10);
  });

  it("may hold a level at each limit of the lake, whatever unit they are typed in", () => {
    // 80 m and 120 m in ft of 0.3048 m, to more digits than the limits have
    const csv = csvOf(
      wholeYear,
      (_date, index) => (index % 2 ? 262.467191601049 : 393.700787401574),
      "date,elevation (ft)",
    );
    expect(recordIn(csv).years).toHaveLength(1);
  });

  it("leaves out the years of which it holds a part, and says which", () => {
    const { years, leftOut } = recordIn(csvOf(datesFrom("2009-10-01", "2011-05-12"), rising));
    expect(years.map(({ label }) => label)).toEqual(["2010"]);
    expect(leftOut).toEqual(["2009 (from 1 Oct)", "2011 (to 12 May)"]);
    // 1 January 2010 is 92 days after 1 October 2009
    expect(years[0]?.daily[0]).toBeCloseTo(90.92, 10);
  });

  it("leaves no year out that lacks not a day", () => {
    expect(recordIn(csvOf(wholeYear, rising)).leftOut).toEqual([]);
    const short = recordIn(csvOf(datesFrom("2010-01-02", "2012-12-30"), rising));
    expect(short.leftOut).toEqual(["2010 (from 2 Jan)", "2012 (to 30 Dec)"]);
  });
});

describe("a gap in a daily record", () => {
  const withoutDays = (first: string, last: string) =>
    datesFrom("2010-01-01", "2012-12-31").filter((date) => date < first || date > last);
  /** 90 m in 2010, 100 m in 2011 and 2012. */
  const step = (date: string) => (date < "2011" ? 90 : 100);

  it("is joined linearly where the study allows it, and its days are counted", () => {
    const csv = csvOf(withoutDays("2010-12-30", "2011-01-02"), step);
    const { years, filled } = recordIn(csv, { fillGapsUpTo: 4 });
    // from 29 December to 3 January are five days, a rise of 2 m each
    expect(years[0]?.daily.slice(362)).toEqual([90, 92, 94].map((level) => expect.closeTo(level, 10)));
    expect(years[1]?.daily.slice(0, 3)).toEqual([96, 98, 100].map((level) => expect.closeTo(level, 10)));
    expect(filled).toEqual([
      { label: "2010", days: 2 },
      { label: "2011", days: 2 },
    ]);
  });

  it("does not count 29 February", () => {
    const csv = csvOf(withoutDays("2012-02-28", "2012-03-01"), step);
    expect(recordIn(csv, { fillGapsUpTo: 2 }).filled).toEqual([{ label: "2012", days: 2 }]);
  });

  it("is not counted in a year that is left out", () => {
    const dates = withoutDays("2010-12-30", "2011-01-02").slice(1);
    expect(recordIn(csvOf(dates, step), { fillGapsUpTo: 4 }).filled).toEqual([{ label: "2011", days: 2 }]);
  });
});

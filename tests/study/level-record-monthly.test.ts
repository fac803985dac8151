import { describe, expect, it } from "vitest";
import { csvOf, monthsFrom, recordIn } from "./records.js";

/** Middle of a month of 31 days, counted from its first: the 16th. */
const middle = 15;
const december = 334;

describe("a record of monthly means", () => {
  it("puts the mean at mid-month and joins the middles linearly", () => {
    const { years, form } = recordIn(csvOf(monthsFrom(2011, 2011), (_date, month) => 90 + 2 * month));
    expect(form).toBe("monthly");
    const daily = years[0]?.daily ?? [];
    expect(daily).toHaveLength(365);
    expect(daily[middle]).toBe(90);
    // July and August have 31 days: their middles are the 16th, 31 days apart, and 2 m
    const july = 181;
    expect(daily[july + middle]).toBeCloseTo(102, 10);
    expect(daily[july + middle + 1]).toBeCloseTo(102 + 2 / 31, 10);
    // June has 30: its middle lies between the 15th and the 16th, 30.5 days before that of July
    expect(daily[july + middle - 1]).toBeCloseTo(102 - 2 / 30.5, 10);
  });

  it("stays level before its first and after its last mid-month", () => {
    const { years } = recordIn(csvOf(monthsFrom(2011, 2011), (_date, month) => 90 + 2 * month));
    const daily = years[0]?.daily ?? [];
    expect(daily.slice(0, middle + 1)).toEqual(Array(16).fill(90));
    expect(daily.slice(december + middle)).toEqual(Array(16).fill(112));
  });

  it("is joined over the turn of the year where the neighbouring month is there", () => {
    const { years } = recordIn(csvOf(monthsFrom(2010, 2011), (date) => (date < "2011" ? 90 : 111)));
    // the middles of December and January are 31 days apart; 31 December lies 15 days after the first of them
    expect(years[0]?.daily[364]).toBeCloseTo(90 + (21 * 15) / 31, 10);
    expect(years[1]?.daily[0]).toBeCloseTo(90 + (21 * 16) / 31, 10);
  });

  it("is joined to months of a year that is left out", () => {
    const months = monthsFrom(2010, 2012).slice(9, 26);
    const { years, leftOut } = recordIn(csvOf(months, (date) => (date.startsWith("2011") ? 100 : 90)));
    expect(leftOut).toEqual(["2010 (from 1 Oct)", "2012 (to 28 Feb)"]);
    expect(years.map(({ label }) => label)).toEqual(["2011"]);
    expect(years[0]?.daily[0]).toBeCloseTo(90 + (10 * 16) / 31, 10);
    expect(years[0]?.daily[364]).toBeCloseTo(100 - (10 * 15) / 31, 10);
  });

  it("counts a missing month by its days", () => {
    const csv = csvOf(
      monthsFrom(2011, 2011).filter((month) => month !== "2011-07"),
      () => 100,
    );
    const { years, filled } = recordIn(csv, { fillGapsUpTo: 31 });
    expect(filled).toEqual([{ label: "2011", days: 31 }]);
    expect(years[0]?.daily).toEqual(Array(365).fill(100));
  });
});

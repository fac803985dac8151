import { describe, expect, it, test } from "vitest";
import { dryDose, dryingParameters } from "../../../src/model/mussels/drying.js";
import { assumed } from "../assumptions.js";
import { productiveLake } from "../lakes.js";
import { stillSurface } from "./growing.js";

const drying = dryingParameters("quagga", assumed);
/** Below 96 m from a day of the year to another, both counted. */
const bare = (from: number, to: number) => [
  { dayOfYear: from - 1, elevation: 100 },
  { dayOfYear: from, elevation: 90 },
  { dayOfYear: to, elevation: 90 },
  { dayOfYear: to + 1, elevation: 100 },
];
const monthsUnder = (drawdown: typeof productiveLake.drawdown) =>
  stillSurface({ at: "elevation", elevation: 96 }, { ...productiveLake, drawdown }).months;
/** Dose of so many days in a month's air, at a humidity of 0.6. */
const doseOf = (days: number, month: number) =>
  dryDose(
    days * 24,
    { temperature: productiveLake.airTemperature[month] ?? Number.NaN, humidity: 0.6 },
    drying,
  ).drying;

describe("a month's several dry runs", () => {
  const [january, july] = [0, 6];

  test.each([
    // By hand, 1 July is day 181: 5 days and 12 days in either order.
    ["the shorter first", [...bare(184, 188), ...bare(195, 206)]],
    ["the longer first", [...bare(184, 195), ...bare(200, 204)]],
  ])("count by the longest, with settlers and growth in the days left: %s", (_name, drawdown) => {
    const month = monthsUnder(drawdown)[july];
    expect(month?.doseAfter.drying).toBeCloseTo(doseOf(12, july), 10);
    expect(month?.doseBefore.drying).toBe(0);
    expect(month?.settlement).toBeCloseTo(14 / 31, 12);
    expect(month?.degreeDays).toBeCloseTo((24 - assumed("shell.growth-base-temperature")) * 14, 9);
  });

  it("count by their days in the month, also where one came in from the month before", () => {
    // Bare from 1 June to 5 July, and from 12 to 23 July.
    const month = monthsUnder([...bare(151, 185), ...bare(192, 203)])[july];
    expect(month?.doseAfter.drying).toBeCloseTo(doseOf(12, july), 10);
    expect(month?.doseBefore.drying).toBe(0);
  });

  it("do so over New Year", () => {
    // Bare from 1 December to 5 January, and from 13 to 24 January.
    const [first, second] = [bare(334, 364), bare(12, 23)];
    const months = monthsUnder([
      { dayOfYear: 4, elevation: 90 },
      { dayOfYear: 5, elevation: 100 },
      ...second,
      ...first.slice(0, 2),
    ]);
    expect(months[january]?.doseAfter.drying).toBeCloseTo(doseOf(12, january), 10);
    expect(months[january]?.doseBefore.drying).toBe(0);
    expect(months[11]?.doseAfter.drying).toBeCloseTo(doseOf(31, 11), 10);
  });
});

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { dateOf, dayOfYear } from "../../src/editor/dates.js";
import { monthNames } from "../../src/study/format/month-names.js";

// The ways of writing a day that are in use in American offices.
describe("a day of the year as it is typed", () => {
  it.each([
    ["October 15", "10-15"],
    ["Oct 15", "10-15"],
    ["oct. 15th", "10-15"],
    ["Sept 1", "09-01"],
    ["15 October", "10-15"],
    ["1. Mai", undefined],
    ["10/15", "10-15"],
    ["15/10", "10-15"],
    ["1/2", "01-02"],
    ["10-15", "10-15"],
    ["Feb 29", "02-29"],
    ["Feb 30", undefined],
    ["13/13", undefined],
    ["Ma 5", undefined],
    ["soon", undefined],
  ])("%s", (typed, written) => {
    expect(dayOfYear(typed, "us")).toBe(written);
  });

  it("is not guessed in a metric study where both numbers may be the month", () => {
    expect(dayOfYear("1/2", "si")).toBeUndefined();
    expect(dayOfYear("15/10", "si")).toBe("10-15");
    expect(dayOfYear("10/15", "si")).toBe("10-15");
    expect(dayOfYear("3/3", "si")).toBe("03-03");
    expect(dayOfYear("01-02", "si")).toBe("01-02");
  });

  it("is a day that there is, or none, whatever is typed", () => {
    const typed = fc.oneof(
      fc.string(),
      fc.tuple(fc.constantFrom(...monthNames), fc.integer({ min: 0, max: 40 })).map((each) => each.join(" ")),
    );
    fc.assert(
      fc.property(typed, (text) => {
        const found = dayOfYear(text, "us");
        if (found === undefined) return;
        const date = new Date(`2024-${found}T00:00:00Z`);
        expect(date.toISOString().slice(5, 10)).toBe(found);
      }),
    );
  });
});

describe("a date as it is typed", () => {
  it.each([
    ["October 15, 2026", "2026-10-15"],
    ["15 Oct 2026", "2026-10-15"],
    ["10/15/2026", "2026-10-15"],
    ["2026", undefined],
    ["2026-10-15", undefined],
  ])("%s", (typed, written) => {
    expect(dateOf(typed)).toBe(written);
  });
});

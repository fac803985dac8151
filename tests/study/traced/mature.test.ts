import { describe, expect, it } from "vitest";
import { Money } from "../../../src/model/money/decimal.js";
import { matureMean } from "../../../src/study/traced/mature.js";

const stream = [0, 10, 20, 30, 45, 55, 100].map((amount) => new Money(amount));

describe("a year of a mature infestation", () => {
  // By hand: (20 + 30 + 45 + 55 + 100)/5 = 50; (55 + 100)/2 = 77.5.
  it.each([
    [2, 50],
    [5, 77.5],
  ])("from year %d on is %d on average, of fewer years where the horizon ends", (year, mean) => {
    expect(matureMean(stream, { year, meanYears: 5 })).toBe(mean);
  });

  it("costs nothing where nothing costs", () => {
    expect(matureMean([], { year: 9, meanYears: 5 })).toBe(0);
  });
});

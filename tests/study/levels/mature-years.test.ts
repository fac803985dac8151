import { describe, expect, it } from "vitest";
import { Money } from "../../../src/model/money/decimal.js";
import { matureMean, wholeCycles } from "../../../src/study/levels/mature-years.js";

const stream = [0, 10, 20, 30, 45, 55, 100].map((amount) => new Money(amount));

describe("a year of a mature infestation", () => {
  // By hand: (20 + 30 + 45 + 55 + 100)/5 = 50; (55 + 100)/2 = 77.5.
  it.each([
    [2, 50],
    [5, 77.5],
  ])("from year %d on is %d on average, of fewer years where the horizon ends", (year, mean) => {
    expect(matureMean(stream, { year, meanYears: 5 })).toBe(mean);
  });

  // By hand: six years hold three cycles of two years; ten none of four, and twelve are too many.
  it.each([
    ["no plan of several years", [], 20, 5],
    ["two years", [{ years: 2, cost: 1 }], 20, 6],
    [
      "two and three years",
      [
        { years: 2, cost: 1 },
        { years: 3, cost: 1 },
      ],
      20,
      6,
    ],
    ["five years", [{ years: 5, cost: 1 }], 20, 5],
    [
      "two years, and four where twelve are too many",
      [
        { years: 4, cost: 1 },
        { years: 3, cost: 9 },
      ],
      11,
      6,
    ],
    ["a horizon of three years", [{ years: 2, cost: 1 }], 3, 3],
  ])("is a mean over whole cycles: %s", (_name, cycles, most, years) => {
    expect(wholeCycles(cycles, most)).toBe(years);
  });

  it("costs nothing where nothing costs", () => {
    expect(matureMean([], { year: 9, meanYears: 5 })).toBe(0);
  });
});

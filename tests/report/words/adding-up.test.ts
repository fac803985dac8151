import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { addingUp, differenceTexts, stepFor } from "../../../src/report/words/adding-up.js";
import { formatter } from "../../../src/report/words/format.js";

const format = formatter("USD", "us");
const printed = (text: string) => Number(text.replace("−", "-").replace(/[^0-9.-]/g, ""));

describe("a difference told with its amounts", () => {
  it("adds up where each to three figures would not", () => {
    // By hand: 1,340 less 1,210 is not 132 (thousands): 1,342 less 1,210 is.
    expect(differenceTexts({ from: 1_342_300, less: 1_210_400 }, format)).toEqual({
      from: "$1,342,000",
      less: "$1,210,000",
      difference: "$132,000",
    });
  });

  it("leaves an amount below its step as it is", () => {
    expect(differenceTexts({ from: 10, less: 661_343 }, format)).toEqual({
      from: "$10",
      less: "$661,000",
      difference: "−$661,000",
    });
  });

  it("adds up to the unit, and tells the difference as it stands alone", () => {
    const amount = fc.integer({ min: -1e10, max: 1e10 }).map((cents) => cents / 100);
    fc.assert(
      fc.property(amount, amount, (from, less) => {
        const told = differenceTexts({ from, less }, format);
        expect(told.difference).toBe(format.money(from - less));
        const step = 10 ** Math.max(0, Math.floor(Math.log10(Math.max(1, Math.abs(from - less)))) - 2);
        fc.pre([from, less].every((each) => Math.abs(each) >= step) && Math.abs(from - less) >= 1);
        expect(Math.abs(printed(told.from) - printed(told.less) - printed(told.difference))).toBeLessThan(
          0.5,
        );
        expect(Math.abs(printed(told.from) - from)).toBeLessThan(1.6 * step);
      }),
    );
  });
});

const amounts = fc.array(fc.double({ min: -1e7, max: 1e7, noNaN: true }), { minLength: 1, maxLength: 30 });

describe("amounts that add up as printed", () => {
  it("give the seats of a worked example of the method of largest remainders", () => {
    // By hand: 100,000 votes for 10 seats are 10,000 a seat. 47,000 16,000 15,800 12,000 6,100 3,100 votes are
    // 4.7, 1.6, 1.58, 1.2, 0.61 and 0.31 seats: 7 whole ones, and one more for each of .7, .61 and .6.
    const votes = [47_000, 16_000, 15_800, 12_000, 6_100, 3_100];
    expect(addingUp(votes, 10_000).parts.map((part) => part / 10_000)).toEqual([5, 2, 1, 1, 1, 0]);
  });

  it("sum to the rounded sum, none moved by a whole step", () => {
    fc.assert(
      fc.property(amounts, (values) => {
        const step = stepFor(values);
        const { parts, sum } = addingUp(values, step);
        expect(parts.reduce((total, part) => total + part, 0)).toBe(sum);
        const exact = values.reduce((total, value) => total + value, 0);
        expect(Math.abs(sum - exact)).toBeLessThanOrEqual(step / 2 + 1e-6);
        parts.forEach((part, index) => {
          expect(Math.abs(part - (values[index] ?? 0))).toBeLessThan(step + 1e-6);
        });
      }),
    );
  });

  it("leave the largest amount three or four figures", () => {
    expect([0.4, 950, 9_990, 12_345, 1_840_000].map((largest) => stepFor([largest]))).toEqual([
      1, 1, 1, 10, 1000,
    ]);
  });
});

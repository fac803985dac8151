import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import {
  continuedBy,
  type PriceIndex,
  PriceYearError,
  priceFactor,
  yearsText,
} from "../../../src/model/money/price-index.js";
import { realSet } from "../../assumptions/real.js";
import { relativeGap } from "../near.js";

const [cpi] = realSet().priceIndices;
if (!cpi) throw new Error("the files hold no price index");

const indexOf = (values: Record<number, number>): PriceIndex => ({
  id: "prices",
  name: "Prices",
  values: new Map(Object.entries(values).map(([year, value]) => [Number(year), value])),
});

describe("amounts in prices of another year", () => {
  it("follow consumer prices from 2004 to 2012", () => {
    // Bureau of Labor Statistics: 188.9 and 229.594; 229.594/188.9 = 1.2154. The mean cost of a facility in
    // Connelly and others 2007, 44,000 USD, if in prices of 2004 (the abstract gives no price year), is 53,479.
    const factor = priceFactor(cpi, 2004, 2012);
    expect(Math.abs(factor - 1.2155)).toBeLessThanOrEqual(0.0005);
    expect(Math.abs(44_000 * factor - 53_483)).toBeLessThanOrEqual(25);
  });

  it("halve and double by hand", () => {
    const doubled = indexOf({ 2001: 50, 2002: 100 });
    expect(priceFactor(doubled, 2001, 2002)).toBe(2);
    expect(priceFactor(doubled, 2002, 2001)).toBe(1 / 2);
  });

  const years = fc.constantFrom(...cpi.values.keys());

  it("stay in their own year, come back, and may go by way of a third year", () => {
    fc.assert(
      fc.property(years, years, years, (from, by, to) => {
        expect(priceFactor(cpi, from, from)).toBe(1);
        expect(priceFactor(cpi, from, to) * priceFactor(cpi, to, from)).toBeCloseTo(1, 14);
        const inTwoSteps = priceFactor(cpi, from, by) * priceFactor(cpi, by, to);
        expect(relativeGap(inTwoSteps, priceFactor(cpi, from, to))).toBeLessThan(1e-14);
      }),
      { seed: 3, numRuns: 200 },
    );
  });
});

describe("a year that the table does not hold", () => {
  const gapped = indexOf({ 2012: 100, 2014: 104, 2011: 98, 2016: 107, 2015: 105 });

  test.each([
    ["before", 2010, 2012],
    ["in a gap", 2012, 2013],
    ["after", 2012, 2017],
  ])("is refused with the years there are: %s", (_where, from, to) => {
    const missing = gapped.values.has(from) ? to : from;
    expect(() => priceFactor(gapped, from, to)).toThrow(PriceYearError);
    expect(() => priceFactor(gapped, from, to)).toThrow(
      `prices holds no value for ${missing}; it holds 2011 to 2012, 2014 to 2016.`,
    );
  });

  it("is told of the consumer prices as one run of years", () => {
    expect(yearsText(cpi)).toBe("1980 to 2025");
    expect(() => priceFactor(cpi, 2024, 2026)).toThrow(
      "cpi-u holds no value for 2026; it holds 1980 to 2025.",
    );
  });
});

describe("the table of consumer prices", () => {
  test.each([
    // Months as the Bureau of Labor Statistics printed them (cpiai.txt of 20 February 2014).
    [
      2010,
      [
        216.687, 216.741, 217.631, 218.009, 218.178, 217.965, 218.011, 218.312, 218.439, 218.711, 218.803,
        219.179,
      ],
    ],
    [
      2012,
      [
        226.665, 227.663, 229.392, 230.085, 229.815, 229.478, 229.104, 230.379, 231.407, 231.317, 230.221,
        229.601,
      ],
    ],
  ])("holds for %d the mean of the twelve months", (year, months) => {
    const mean = months.reduce((sum, month) => sum + month, 0) / 12;
    expect(months).toHaveLength(12);
    expect(Math.abs((cpi.values.get(year) ?? Number.NaN) - mean)).toBeLessThanOrEqual(0.001);
  });

  test.each([
    // statinvestor.com/data/30997, a page that reproduces the Bureau's annual averages, as rounded there.
    [2000, 172.2],
    [2004, 188.9],
    [2009, 214.54],
    [2013, 232.96],
    [2014, 236.74],
    [2015, 237.02],
    [2016, 240.01],
    [2017, 245.12],
    // from memory
    [2018, 251.107],
    [2021, 270.97],
    [2024, 313.689],
  ])("agrees for %d with a second source", (year, value) => {
    expect(Math.abs((cpi.values.get(year) ?? Number.NaN) - value)).toBeLessThanOrEqual(0.005 + 1e-9);
  });

  it("has no year whose prices jump as a slip of a digit would make them", () => {
    // The largest yearly change since 1981 is 10.3 % in 1981 (the Bureau's own table of percent changes).
    for (const year of cpi.values.keys()) {
      if (!cpi.values.has(year - 1)) continue;
      const change = priceFactor(cpi, year - 1, year) - 1;
      expect(change, String(year)).toBeGreaterThan(-0.01);
      expect(change, String(year)).toBeLessThan(0.105);
    }
  });
});

describe("an index continued by another", () => {
  const index = (...values: ReadonlyArray<readonly [number, number]>): PriceIndex => ({
    id: "made-up",
    name: "Made up",
    values: new Map(values),
  });
  const works = index([2002, 50], [2003, 60]);
  const consumer = index([2000, 100], [2002, 110], [2003, 120], [2005, 150]);

  it("keeps its own years, and moves as the other before and after them", () => {
    // By hand: 50 x 100/110 and 60 x 150/120.
    const { values } = continuedBy(works, consumer);
    expect([...values.keys()].sort()).toEqual([2000, 2002, 2003, 2005]);
    expect(values.get(2003)).toBe(60);
    expect(values.get(2000)).toBeCloseTo(45.4545, 4);
    expect(values.get(2005)).toBeCloseTo(75, 12);
  });

  it("is not continued where the other lacks the year to start from", () => {
    expect([...continuedBy(works, index([2005, 150])).values.keys()]).toEqual([2002, 2003]);
  });
});

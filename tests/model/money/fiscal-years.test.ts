import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import {
  type BudgetLine,
  type FiscalSettings,
  FiscalYearError,
  fiscalTable,
  sumOfRows,
} from "../../../src/model/money/fiscal-years.js";
import { splitByWeights } from "../../../src/model/money/split.js";

const settings: FiscalSettings = { startMonth: 7, years: 5, priceYear: 2026, startYear: 2027, inflation: 0 };
const level = (name: string, amount: number, years = 10): BudgetLine => ({
  name,
  byYear: Array<number>(years).fill(amount),
});
const sumOf = (amounts: readonly number[]) => amounts.reduce((sum, each) => sum + each, 0);

describe("the fiscal years of a table", () => {
  test.each([
    // By hand: called by the calendar year in which they end.
    [1, [2027, 2028, 2029, 2030, 2031], [2027, 2028, 2029, 2030, 2031]],
    [7, [2027, 2028, 2029, 2030, 2031], [2028, 2029, 2030, 2031, 2032]],
    [10, [2027, 2028, 2029, 2030, 2031], [2028, 2029, 2030, 2031, 2032]],
  ])("from month %d start in %j and end in %j", (startMonth, starts, ends) => {
    const { years } = fiscalTable([level("staff", 1)], { ...settings, startMonth });
    expect(years.map(({ startYear }) => startYear)).toEqual(starts);
    expect(years.map(({ endYear }) => endYear)).toEqual(ends);
  });

  test.each([
    [1, 3, 3],
    [7, 3, 2],
    [7, 6, 5],
    [1, 5, 5],
  ])("from month %d that %d calendar years fill are %d", (startMonth, given, filled) => {
    expect(fiscalTable([level("staff", 1, given)], { ...settings, startMonth }).years).toHaveLength(filled);
  });
});

describe("a row of the table", () => {
  const steps = { name: "staff", byYear: [1200, 2400, 3600] };

  test.each([
    // By hand, month by month: from October 3 months of one year and 9 of the next.
    [1, [120_000, 240_000, 360_000], 0, 0],
    [7, [180_000, 300_000], 60_000, 180_000],
    [10, [30_000 + 180_000, 60_000 + 270_000], 90_000, 90_000],
  ])("from month %d takes the months that a year holds", (startMonth, cents, before, after) => {
    const [row] = fiscalTable([steps], { ...settings, startMonth }).rows;
    expect(row).toEqual({ name: "staff", cents, total: sumOf(cents), before, after });
  });

  it("is in money of each calendar year", () => {
    // Prices of 2026, inflation 2 %: 1000 x 1.02 in 2027, x 1.0404 in 2028; half of each to the year from July 2027.
    const [row] = fiscalTable([level("staff", 1000)], { ...settings, inflation: 0.02, years: 1 }).rows;
    expect(row?.cents).toEqual([51_000 + 52_020]);
    expect(row?.before).toBe(51_000);
  });

  it("keeps fees as money that comes in", () => {
    const [row] = fiscalTable([level("fees", -0.05, 2)], settings).rows;
    // 5 cents halved: 3 and 2, the odd cent to the first months of the year.
    expect(row).toMatchObject({ cents: [-5], before: -3, after: -2 });
  });

  it("has nothing before years that begin in January, not a minus of nothing", () => {
    const [row] = fiscalTable([level("fees", -0.05, 2)], { ...settings, startMonth: 1 }).rows;
    expect(row?.before).toBe(0);
  });
});

describe("a calendar year that two fiscal years share", () => {
  const anyCents = fc.integer({ min: -1e13, max: 1e13 });

  it("is split by months as largest remainders split it", () => {
    fc.assert(
      fc.property(anyCents, fc.integer({ min: 2, max: 12 }), (cents, startMonth) => {
        const line = { name: "staff", byYear: [cents / 100, 0] };
        const [row] = fiscalTable([line], { ...settings, startMonth, years: 1 }).rows;
        const { before = 0, cents: [first = 0] = [] } = row ?? {};
        expect(before + first).toBe(cents);
        expect([before, first]).toEqual(splitByWeights(cents, [startMonth - 1, 13 - startMonth]));
      }),
      { seed: 54, numRuns: 500 },
    );
  });
});

describe("the table closes to the cent", () => {
  const amounts = fc.array(fc.double({ min: -1e7, max: 1e7, noNaN: true }), { minLength: 7, maxLength: 7 });
  const anySettings = fc.record({
    startMonth: fc.integer({ min: 1, max: 12 }),
    years: fc.integer({ min: 1, max: 6 }),
    priceYear: fc.integer({ min: 2020, max: 2030 }),
    startYear: fc.integer({ min: 2024, max: 2030 }),
    inflation: fc.double({ min: 0, max: 0.1, noNaN: true }),
  });

  it("by row, by year, and with what lies before and after, whatever the month and the inflation", () => {
    fc.assert(
      fc.property(fc.array(amounts, { minLength: 1, maxLength: 6 }), anySettings, (rows, changed) => {
        const lines = rows.map((byYear, index) => ({ name: `line ${index}`, byYear }));
        const table = fiscalTable(lines, changed);
        for (const row of table.rows) expect(sumOf(row.cents)).toBe(row.total);
        table.years.forEach((_, index) => {
          expect(table.totals.cents[index]).toBe(
            sumOf(table.rows.map(({ cents }) => cents[index] ?? Number.NaN)),
          );
        });
        expect(sumOf(table.totals.cents)).toBe(table.totals.total);
        table.rows.forEach((row, index) => {
          const rounded = (rows[index] ?? []).map((amount, year) => {
            const years = changed.startYear + year - changed.priceYear;
            return Math.abs(amount) * (1 + changed.inflation) ** years * 100;
          });
          const exact = sumOf(rounded.map((cents, year) => Math.sign(rows[index]?.[year] ?? 0) * cents));
          expect(Math.abs(row.before + row.total + row.after - exact)).toBeLessThan(0.51 * 7);
        });
      }),
      { seed: 81, numRuns: 200 },
    );
  });

  it("for a budget whose lines are known to close", () => {
    // Utah Division of Wildlife Resources, 2009 season: the state's general fund of fiscal year 2010, 1,400,000 USD, of
    // four lines. Entered as level yearly amounts, every fiscal year holds the sum.
    const lines = [
      level("aquatics", 1_098_524),
      level("other", 2887),
      level("outreach", 79_554),
      level("enforcement", 219_035),
    ];
    const { totals } = fiscalTable(lines, settings);
    expect(totals.cents).toEqual(Array(5).fill(140_000_000));
    expect(totals.total).toBe(700_000_000);
  });
});

describe("a table that cannot be made", () => {
  test.each([
    [{ startMonth: 0 }, "month 0; allowed: 1 to 12"],
    [{ startMonth: 13 }, "month 13"],
    [{ startMonth: 6.5 }, "month 6.5"],
    [{ years: 0 }, "0 fiscal years"],
    [{ years: 2.5 }, "2.5 fiscal years"],
  ])("is refused for %j", (changes, words) => {
    expect(() => fiscalTable([level("staff", 1)], { ...settings, ...changes })).toThrow(FiscalYearError);
    expect(() => fiscalTable([level("staff", 1)], { ...settings, ...changes })).toThrow(words);
  });

  it("is refused where the amounts fill no fiscal year", () => {
    expect(() => fiscalTable([level("staff", 1, 1)], settings)).toThrow(
      "amounts of 1 calendar years; allowed: at least 2",
    );
    expect(() => fiscalTable([], { ...settings, startMonth: 1 })).toThrow("at least 1");
  });

  it("is refused for an amount that is none, by its line", () => {
    expect(() => fiscalTable([level("staff", Number.NaN)], settings)).toThrow(
      "staff: NaN is no amount of money",
    );
  });
});

describe("one row for several", () => {
  it("has the sum of each of their amounts", () => {
    const row = (name: string, cents: readonly number[], before: number, after: number) => ({
      name,
      cents,
      total: sumOf(cents),
      before,
      after,
    });
    expect(sumOfRows("Both", [row("staff", [100, 250], 7, 0), row("boats", [30, 5], 1, 9)])).toEqual(
      row("Both", [130, 255], 8, 9),
    );
  });
});

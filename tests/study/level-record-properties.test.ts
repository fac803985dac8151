import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { csvOf, datesFrom, metres, monthsFrom, recordIn } from "./records.js";

const years = fc.integer({ min: 1800, max: 2190 });
const level = fc.integer({ min: 8000, max: 12_000 }).map((centimetres) => centimetres / 100);
const thousands = (value: number) => `"${(value * 1000).toLocaleString("en-US")}"`;

describe("a record of random levels", () => {
  it("reads back as the levels that were written, day by day", () => {
    const record = fc
      .record({ first: years, count: fc.integer({ min: 1, max: 3 }), asThousands: fc.boolean() })
      .chain(({ first, count, asThousands }) => {
        const dates = datesFrom(`${first}-01-01`, `${first + count - 1}-12-31`);
        const levels = fc.array(level, { minLength: dates.length, maxLength: dates.length });
        return levels.map((values) => ({ dates, values, asThousands }));
      });
    fc.assert(
      fc.property(record, ({ dates, values, asThousands }) => {
        const csv = asThousands
          ? csvOf(dates, (_date, index) => thousands(values[index] ?? 0), "date,elevation (mm)")
          : csvOf(dates, (_date, index) => values[index] ?? 0, metres);
        const written = values.filter((_value, index) => !dates[index]?.endsWith("-02-29"));
        const read = recordIn(csv).years.flatMap(({ daily }) => daily);
        expect(read).toHaveLength(written.length);
        for (const [index, each] of read.entries()) expect(each).toBeCloseTo(written[index] ?? 0, 9);
      }),
      { numRuns: 25 },
    );
  });

  it("never leaves the range of its months, and meets the mean of each month of 31 days on its 16th", () => {
    fc.assert(
      fc.property(years, fc.array(level, { minLength: 12, maxLength: 12 }), (year, means) => {
        const csv = csvOf(monthsFrom(year, year), (_date, month) => means[month] ?? 0);
        const daily = recordIn(csv).years[0]?.daily ?? [];
        expect(Math.min(...daily)).toBeGreaterThanOrEqual(Math.min(...means) - 1e-9);
        expect(Math.max(...daily)).toBeLessThanOrEqual(Math.max(...means) + 1e-9);
        // first days of January, March, May, July, August, October, December
        for (const [month, start] of [
          [0, 0],
          [2, 59],
          [4, 120],
          [6, 181],
          [7, 212],
          [9, 273],
          [11, 334],
        ] as const) {
          expect(daily[start + 15]).toBeCloseTo(means[month] ?? 0, 9);
        }
      }),
    );
  });
});

import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import { areaAt, exposedArea, storageBetween } from "../../../src/model/lake/storage.js";

// Test basin, computed by hand: elevations 0, 5, 10, 15, 20 with areas 0, 10, 40, 100, 180.
const basin = [
  [0, 0],
  [5, 10],
  [10, 40],
  [15, 100],
  [20, 180],
].map(([elevation = 0, area = 0]) => ({ elevation, area, storage: 0 }));

describe("the elevation-area table", () => {
  test.each([
    // Linear between the rows: 40 + 60 x 2/5 and 100 + 80 x 3/5.
    [12, 64],
    [18, 148],
    [0, 0],
    [5, 10],
    [20, 180],
  ])("gives at %d m an area of %d", (elevation, expected) => {
    expect(areaAt(basin, elevation)).toBeCloseTo(expected, 12);
  });

  it("is level beyond its ends", () => {
    expect(areaAt(basin, -4)).toBe(0);
    expect(areaAt(basin, 26)).toBe(180);
  });

  it("lays 84 bare when the water falls from 18 to 12", () => {
    // 148 - 64.
    expect(exposedArea(basin, 12, 18)).toBeCloseTo(84, 12);
  });
});

describe("storage", () => {
  it("of the test basin is 1200 by the trapezoid rule", () => {
    // 5 x (5 + 25 + 70 + 140); the cone formula would give 1162.349386, which is another rule.
    expect(storageBetween(basin, 0, 20)).toBeCloseTo(1200, 10);
  });

  it("of a part that starts and ends between rows is the trapezoids of that part", () => {
    // By hand: (64 + 100)/2 x 3 + (100 + 148)/2 x 3 = 246 + 372.
    expect(storageBetween(basin, 12, 18)).toBeCloseTo(618, 10);
  });

  it("adds up over any cut, and never falls", () => {
    const level = fc.double({ min: 0, max: 20, noNaN: true });
    fc.assert(
      fc.property(level, level, level, (a, b, c) => {
        const [low = 0, middle = 0, high = 0] = [a, b, c].sort((x, y) => x - y);
        const whole = storageBetween(basin, low, high);
        const parts = storageBetween(basin, low, middle) + storageBetween(basin, middle, high);
        expect(parts).toBeCloseTo(whole, 8);
        expect(storageBetween(basin, low, middle)).toBeGreaterThanOrEqual(0);
        expect(whole).toBeLessThanOrEqual(areaAt(basin, high) * (high - low) + 1e-9);
      }),
      { seed: 111, numRuns: 200 },
    );
  });

  it("between equal levels is nothing", () => {
    expect(storageBetween(basin, 7, 7)).toBe(0);
    expect(exposedArea(basin, 7, 7)).toBe(0);
  });
});

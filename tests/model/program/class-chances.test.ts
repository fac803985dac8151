import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { classChance } from "../../../src/model/program/class-chances.js";

/** A prior worth 200 boats; invented. */
const priorSample = 200;
const assumed = () => priorSample;
const unread = (id: string): number => {
  throw new Error(`${id} was read`);
};

describe("the chance of a class entered as a share", () => {
  it("stands as it is without own seasons, and needs no prior sample", () => {
    const chance = classChance({ entered: 0.03 }, unread);
    expect(chance).toEqual({
      prior: 0.03,
      seasons: undefined,
      belief: undefined,
      posterior: undefined,
      fouled: 0.03,
    });
  });

  it("is (a + k)/(a + b + n) after own seasons, by hand", () => {
    // a = 0.03 · 200 = 6, b = 194; 10 fouled of 120: 16/320.
    const { prior, posterior, fouled } = classChance(
      { entered: 0.03, seasons: { screened: 120, found: 10 } },
      assumed,
    );
    expect(prior).toBeCloseTo(0.03, 14);
    expect(posterior?.mean).toBeCloseTo(16 / 320, 14);
    expect(fouled).toBeCloseTo(0.05, 14);
  });

  it.each([
    // Half a fouled boat of 0.005 % is 10,000 boats: ½/(10,000 + 13,000), then 1½/23,000; and the same of the clean.
    [0.00005, 0, 0.5 / 23_000],
    [0.00005, 1, 1.5 / 23_000],
    [0.99995, 13_000, 22_999.5 / 23_000],
  ])("of %d weighs at least half a boat of either kind: %d of 13,000", (entered, found, mean) => {
    const { posterior } = classChance({ entered, seasons: { screened: 13_000, found } }, assumed);
    expect(posterior?.mean).toBeCloseTo(mean, 12);
  });

  it("is left where it was by seasons without boats", () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-3, max: 1 - 1e-3, noNaN: true }), (entered) => {
        const { fouled } = classChance({ entered, seasons: { screened: 0, found: 0 } }, assumed);
        expect(fouled).toBeCloseTo(entered, 14);
      }),
      { seed: 7, numRuns: 50 },
    );
  });

  it.each([0, 1])("learns nothing if it is certain, %d", (entered) => {
    const seasons = { screened: 50, found: entered * 50 };
    expect(classChance({ entered, seasons }, unread)).toMatchObject({
      fouled: entered,
      posterior: undefined,
    });
  });
});

describe("the chance of a class entered as counts", () => {
  const comparable = { screened: 830, found: 25, weight: 1 };

  it("is Jeffreys' mean of them, by hand", () => {
    // (½ + 25)/(1 + 830) = 25.5/831.
    const { posterior, fouled } = classChance({ entered: comparable }, unread);
    expect(posterior?.mean).toBeCloseTo(25.5 / 831, 14);
    expect(fouled).toBeCloseTo(25.5 / 831, 14);
  });

  it("counts them by their weight, and own boats in full, by hand", () => {
    // Weight ½: a = ½ + 12.5 = 13, a + b = 1 + 415 = 416; 13 fouled of 445: 26/861.
    const entered = { ...comparable, weight: 0.5 };
    const { prior, posterior } = classChance({ entered, seasons: { screened: 445, found: 13 } }, unread);
    expect(prior).toBeCloseTo(13 / 416, 14);
    expect(posterior?.mean).toBeCloseTo(26 / 861, 14);
    expect(posterior?.p5).toBeLessThan(26 / 861);
    expect(posterior?.p95).toBeGreaterThan(26 / 861);
  });
});

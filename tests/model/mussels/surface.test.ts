import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import type { Lake } from "../../../src/model/lake/lake.js";
import { dailyElevations, levelsOfYear } from "../../../src/model/lake/levels.js";
import { deadlyByMonth, dryingParameters } from "../../../src/model/mussels/drying.js";
import {
  depthFactor,
  type Place,
  type SurfaceMonth,
  settlementParameters,
  surfaceMonths,
  velocityFactor,
} from "../../../src/model/mussels/surface.js";
import { assumed } from "../assumptions.js";
import { drawnDownLake, productiveLake } from "../lakes.js";
import { everyMonth } from "../near.js";

function monthsAt(place: Place, lake: Lake = productiveLake, velocity = 0): SurfaceMonth[] {
  return surfaceMonths(
    { place, velocity: everyMonth(velocity) },
    lake,
    levelsOfYear(dailyElevations(lake.drawdown)),
    {
      settlement: settlementParameters(lake, assumed),
      deadly: deadlyByMonth(lake, dryingParameters(lake.species, assumed)),
    },
  );
}

const settlements = (list: readonly SurfaceMonth[]) => list.map(({ settlement }) => settlement);
const quagga = settlementParameters(productiveLake, assumed);
const zebra = settlementParameters({ ...productiveLake, species: "zebra" }, assumed);

describe("water velocity", () => {
  test.each([
    // Full up to 1.0 m/s, none at 1.8 m/s, linear between: Claudi and Mackie 1994 (from memory); Peyer and others
    // 2009 tested dislodgement to 1.8 m/s.
    [0, 1],
    [0.5, 1],
    [1.0, 1],
    [1.4, 0.5],
    [1.8, 0],
    [3, 0],
  ])("of %d m/s lets settle a share of %d", (velocity, expected) => {
    expect(velocityFactor(velocity, quagga)).toBeCloseTo(expected, 12);
    expect(velocityFactor(-velocity, quagga)).toBeCloseTo(expected, 12);
  });

  it("above 1.8 m/s keeps a wall free of settlers all year", () => {
    expect(settlements(monthsAt({ at: "elevation", elevation: 95 }, productiveLake, 1.9))).toEqual(
      everyMonth(0),
    );
  });
});

describe("depth", () => {
  it("favours 6-28 m over 32-54 m for quagga mussels", () => {
    // Lake Mead artificial substrates (Mueting and others 2010): settlement at 6-28 m above that at 32-54 m.
    for (const shallow of [6, 15, 28]) {
      for (const deep of [32, 43, 54]) {
        expect(depthFactor(shallow, quagga)).toBeGreaterThan(depthFactor(deep, quagga));
      }
    }
  });

  it("lets quagga mussels live at 91 m and none below 122 m", () => {
    // Present to 91 m in Lake Mead (National Park Service 2009); colonies to 400 ft, 122 m (Power magazine 2019).
    expect(depthFactor(91, quagga)).toBeGreaterThan(0);
    expect(depthFactor(122, quagga)).toBe(0);
    expect(depthFactor(300, quagga)).toBe(0);
  });

  it("confines zebra mussels to the shallower part of a lake", () => {
    // Karatayev and others 2015, abstract: quagga in all regions of a lake, zebra in the shallower part.
    for (let depth = 0; depth <= 130; depth += 1) {
      expect(depthFactor(depth, zebra)).toBeLessThanOrEqual(depthFactor(depth, quagga));
    }
    expect(depthFactor(60, zebra)).toBe(0);
    expect(depthFactor(60, quagga)).toBeGreaterThan(0);
  });
});

describe("a surface at an elevation in a level lake", () => {
  test.each([5, 12, 13, 40, 60])("is that of a floating one %d m under water", (depth) => {
    expect(monthsAt({ at: "elevation", elevation: 100 - depth })).toEqual(
      monthsAt({ at: "floating", depth }),
    );
  });

  it("has the settlers that season, depth and velocity each leave", () => {
    // s = season x depth x velocity: half of them at 1.4 m/s, and by the straight line of depth at 60 m.
    const parameters = settlementParameters(productiveLake, assumed);
    const depth = (parameters.noDepth - 60) / (parameters.noDepth - parameters.fullDepth);
    expect(depth).toBeGreaterThan(0);
    expect(depth).toBeLessThan(1);
    const july = monthsAt({ at: "elevation", elevation: 40 }, productiveLake, 1.4)[6];
    expect(july?.settlement).toBeCloseTo(depth / 2, 12);
  });
});

describe("water that stands for most of a month", () => {
  it("brings the settlers and lets grow for the days that running keeps it fresh", () => {
    // By hand: a fortieth of the month running keeps it fresh for that share times the days that it stays so.
    const running = everyMonth(1 / 40);
    const levels = levelsOfYear(dailyElevations(productiveLake.drawdown));
    const offered = {
      settlement: { ...settlementParameters(productiveLake, assumed), standingDays: 10 },
      deadly: deadlyByMonth(productiveLake, dryingParameters("quagga", assumed)),
    };
    const place = { at: "floating", depth: 1 } as const;
    const standing = surfaceMonths(
      { place, velocity: everyMonth(0.5), running },
      productiveLake,
      levels,
      offered,
    );
    const flowing = monthsAt(place, productiveLake, 0.5);
    standing.forEach(({ settlement, degreeDays }, month) => {
      expect(settlement).toBeCloseTo((flowing[month]?.settlement ?? Number.NaN) / 4, 12);
      expect(degreeDays).toBeCloseTo((flowing[month]?.degreeDays ?? Number.NaN) / 4, 12);
    });
    expect(Math.max(...settlements(standing))).toBe(0.25);
  });
});

describe("the spawning season", () => {
  it("of zebra mussels is the months of at least 12 degrees at the surface", () => {
    // About 12 degrees, the trigger used at Great Lakes plants (AQUA 70(4):537, 2021). In this lake May to October.
    const months = monthsAt({ at: "floating", depth: 1 }, { ...productiveLake, species: "zebra" });
    expect(settlements(months)).toEqual([0, 0, 0, 0, 1, 1, 1, 1, 1, 1, 0, 0]);
  });

  it("of quagga mussels includes that of zebra mussels", () => {
    const quaggaMonths = settlements(monthsAt({ at: "floating", depth: 1 }));
    const zebraMonths = settlements(
      monthsAt({ at: "floating", depth: 1 }, { ...productiveLake, species: "zebra" }),
    );
    zebraMonths.forEach((share, month) => {
      expect(quaggaMonths[month]).toBeGreaterThanOrEqual(share);
    });
    expect(quaggaMonths.reduce((a, b) => a + b)).toBeGreaterThan(zebraMonths.reduce((a, b) => a + b));
  });

  it("begins and ends at the temperatures themselves", () => {
    const [from, to] = [
      assumed("settlement.spawning-temperature.quagga"),
      assumed("settlement.upper-temperature"),
    ];
    const settlesAt = (temperature: number) => {
      const lake = { ...productiveLake, surfaceTemperature: everyMonth(temperature) };
      return monthsAt({ at: "elevation", elevation: 95 }, lake).every(({ settlement }) => settlement > 0);
    };
    expect([from - 0.01, from, to, to + 0.01].map(settlesAt)).toEqual([false, true, true, false]);
  });

  it("stops in water hotter than mussels bear", () => {
    // 30 degrees quoted as the upper limit in Texas (Belton Lake study, abstract).
    const hot = { ...productiveLake, surfaceTemperature: everyMonth(31) };
    expect(settlements(monthsAt({ at: "floating", depth: 1 }, hot))).toEqual(everyMonth(0));
  });

  it("grows shells by the temperature of their own depth", () => {
    // Degree-days above the base: (24 - 6) x 31 in July at the surface, (12 - 6) x 31 below the thermocline.
    const base = assumed("shell.growth-base-temperature");
    expect(monthsAt({ at: "floating", depth: 2 })[6]?.degreeDays).toBeCloseTo((24 - base) * 31, 10);
    expect(monthsAt({ at: "floating", depth: 20 })[6]?.degreeDays).toBeCloseTo((12 - base) * 31, 10);
    expect(monthsAt({ at: "floating", depth: 2 })[0]?.degreeDays).toBe(0);
  });
});

describe("air", () => {
  it("never reaches what floats, whatever the drawdown", () => {
    // Floating docks move with the water and escape the drying (University of California Agriculture and Natural
    // Resources).
    const levels = fc.array(fc.integer({ min: 80, max: 100 }), { minLength: 4, maxLength: 4 });
    fc.assert(
      fc.property(levels, fc.double({ min: 0.2, max: 10, noNaN: true }), (elevations, depth) => {
        const drawdown = elevations.map((elevation, index) => ({ dayOfYear: index * 90, elevation }));
        const months = monthsAt({ at: "floating", depth }, { ...productiveLake, drawdown });
        expect(months.every(({ doseAfter }) => doseAfter.drying === 0 && doseAfter.frost === 0)).toBe(true);
        expect(settlements(months)).toEqual(settlements(monthsAt({ at: "floating", depth })));
      }),
      { seed: 81, numRuns: 50 },
    );
  });

  it("reaches the drawn-down zone only: below the lowest level nothing changes", () => {
    // Drawdown controls the exposed zone and is no eradication (Zumbro and Edinboro lakes, Invasive Mussel
    // Collaborative).
    const dosed = (elevation: number) =>
      monthsAt({ at: "elevation", elevation }, drawnDownLake).some(({ doseAfter }) => doseAfter.drying > 0);
    expect(dosed(95)).toBe(true);
    expect(dosed(90)).toBe(false);
    expect(dosed(85)).toBe(false);
  });

  it("doses a dry run month after month until the water returns", () => {
    const months = monthsAt({ at: "elevation", elevation: 96 }, drawnDownLake);
    const [january, february, march] = months;
    expect(january?.doseAfter.drying).toBeGreaterThan(0);
    expect(february?.doseBefore).toEqual(january?.doseAfter);
    expect(february?.doseAfter.drying).toBeGreaterThan(january?.doseAfter.drying ?? Number.NaN);
    expect(march?.doseAfter.drying).toBe(0);
    // January's mean of -3 degrees is frost for 31 days: 744 hours over 6 hours and the cluster factor.
    expect(january?.doseAfter.frost).toBeCloseTo(744 / (6 * assumed("drying.cluster-factor")), 8);
  });

  it("above the highest level keeps settlers and growth away all year", () => {
    const months = monthsAt({ at: "elevation", elevation: 101 });
    expect(settlements(months)).toEqual(everyMonth(0));
    expect(months.map(({ degreeDays }) => degreeDays)).toEqual(everyMonth(0));
  });
});

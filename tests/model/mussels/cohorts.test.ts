import { describe, expect, it, test } from "vitest";
import { sumOf } from "../../../src/lists.js";
import type { Lake } from "../../../src/model/lake/lake.js";
import { bareColony, cohortsOf, passMonth } from "../../../src/model/mussels/cohorts.js";
import type { Layer } from "../../../src/model/mussels/layer.js";
import { drawnDownLake, productiveLake } from "../lakes.js";
import { everyMonth, relativeGap } from "../near.js";
import { growLayers, growth, stillSurface } from "./growing.js";

const surface = stillSurface({ at: "elevation", elevation: 95 }, productiveLake);
/** Above the winter's lowest level. */
const bared = stillSurface({ at: "elevation", elevation: 95 }, drawnDownLake);
const years = 20;
/** Room for all that settle, so that each month's settlers are those of a bare surface. */
const roomy = { ...growth, coverLimit: 1e12, yearlyMortality: 0.2 };

describe("the mussels of a surface with room for all", () => {
  const density = Array<number>(12 * years).fill(0.5);
  const layers = growLayers({ surface, density }, roomy);

  it("are those of the month before that live on, and the month's settlers, however old they grow", () => {
    // By the stated relation, N = N exp(-m/12) + n D s, for twenty years: an independent sum of all that settled.
    let expected = 0;
    layers.forEach(({ number }, month) => {
      const { settlement = 0 } = surface.months[month % 12] ?? {};
      expected = expected * Math.exp(-0.2 / 12) + growth.settlersPerMonth * 0.5 * settlement;
      if (expected > 0) expect(relativeGap(number, expected)).toBeLessThan(1e-9);
    });
    expect(expected).toBeGreaterThan(growth.settlersPerMonth);
  });

  it("are as many as settle there", () => {
    const months = surface.months.map((each) => ({ ...each, settlement: each.settlement / 4 }));
    const quarter = growLayers({ surface: { ...surface, months }, density }, roomy);
    for (const month of [11, 100]) {
      const of = (those: readonly Layer[]) => those[month]?.number ?? Number.NaN;
      expect(relativeGap(4 * of(quarter), of(layers))).toBeLessThan(1e-9);
    }
  });

  it("weigh and cover what those of each settling month do by themselves", () => {
    const alone = density.map((_, settled) =>
      growLayers({ surface, density: density.map((each, month) => (month === settled ? each : 0)) }, roomy),
    );
    for (const month of [11, 40, 100, 12 * years - 1]) {
      for (const name of ["number", "cover", "mass"] as const) {
        const sum = alone.reduce((total, each) => total + (each[month]?.[name] ?? Number.NaN), 0);
        expect(relativeGap(layers[month]?.[name] ?? Number.NaN, sum)).toBeLessThan(1e-9);
      }
    }
  });
});

describe("broods of years apart", () => {
  it("are all followed, also when two pass the last age told apart in one month", () => {
    // By hand: of the two broods of July, two years apart, each thins out by itself.
    const july = 6;
    const density = Array.from({ length: 12 * years }, (_, month) =>
      month === july || month === july + 24 ? 0.5 : 0,
    );
    const layers = growLayers({ surface, density }, roomy);
    const left = (months: number) => growth.settlersPerMonth * 0.5 * Math.exp((-0.2 * months) / 12);
    for (const month of [102, 114, 126, 138, 150, 180]) {
      const expected = left(month - july) + left(month - july - 24);
      expect(relativeGap(layers[month]?.number ?? Number.NaN, expected)).toBeLessThan(1e-9);
    }
  });
});

describe("a single brood", () => {
  test.each([5, 6])("of month %d thins out by the yearly mortality for as long as it lives", (settled) => {
    const density = Array.from({ length: 12 * years }, (_, month) => (month === settled ? 0.5 : 0));
    const layers = growLayers({ surface, density }, roomy);
    for (const later of [12, 83, 84, 95, 96, 97, 108, 180]) {
      const expected = growth.settlersPerMonth * 0.5 * Math.exp((-0.2 * later) / 12);
      expect(relativeGap(layers[settled + later]?.number ?? Number.NaN, expected)).toBeLessThan(1e-9);
    }
  });

  it("weighs and covers what it did once growth has come to rest, however old it grows", () => {
    // It grows in its first 84 months, as the shell table states: 60 and 80 are within them, 90 and all others after.
    const density = Array.from({ length: 12 * years }, (_, month) => (month === 5 ? 0.5 : 0));
    const layers = growLayers({ surface, density }, roomy);
    const ofOne = (later: number, name: "mass" | "cover") => {
      const { number = Number.NaN, [name]: sum = Number.NaN } = layers[5 + later] ?? {};
      return sum / number;
    };
    for (const name of ["mass", "cover"] as const) {
      expect(ofOne(80, name)).toBeGreaterThan(ofOne(60, name));
      for (const later of [96, 97, 108, 120, 150])
        expect(relativeGap(ofOne(later, name), ofOne(90, name))).toBeLessThan(1e-9);
    }
  });

  it("is followed below one mussel to a square metre, until it moves nothing", () => {
    // By hand: nobody dies in two months.
    const few = (share: number) =>
      growLayers(
        { surface, density: [0, 0, 0, 0, 0, share, 0, 0] },
        { ...roomy, settlersPerMonth: 1, yearlyMortality: 0 },
      )[7]?.number;
    expect(few(0.4)).toBeCloseTo(0.4, 12);
    expect(few(1e-5)).toBeCloseTo(1e-5, 12);
    expect(few(1e-7)).toBe(0);
  });

  it("is left out by itself, at the season's end too, and the others weigh and cover what they did", () => {
    // By hand: a tenth dies each month. Of five broods that are few, each falls below one to a square kilometre by December.
    const rare = { ...roomy, settlersPerMonth: 1, yearlyMortality: -12 * Math.log(0.9) };
    const lastOf = (density: readonly number[]) => growLayers({ surface, density }, rare).at(-1);
    const [june, none] = [
      [0, 0, 0, 0, 0, 0.4],
      [0, 0, 0, 0, 0, 0],
    ];
    const few = [1.6e-6, 1.05e-6, 1.3e-6, 1.2e-6, 1.1e-6];
    const alone = lastOf([...june, 0, 0, 0, 0, 0, 0]);
    for (const beside of [few, [...few.slice(0, 2), 0, 0, 0]].map((each) => lastOf([...june, ...each, 0])))
      for (const name of ["number", "cover", "mass"] as const)
        expect(relativeGap(beside?.[name] ?? Number.NaN, alone?.[name] ?? Number.NaN)).toBeLessThan(1e-9);
    const [many, manyBeside] = [0, 1.2e-6].map((july) => lastOf([...june, july, 0.4, 0, 0, 0, 0])?.number);
    expect(relativeGap(manyBeside ?? Number.NaN, many ?? Number.NaN)).toBeLessThan(1e-9);
    expect(alone?.number).toBeCloseTo(0.4 * 0.9 ** 6, 12);
    // In November, the last month of the season, by themselves.
    expect(lastOf([...none, 0, 0, 0, 0, 1.05e-6, 0])?.number).toBe(0);
    expect(lastOf([...none, 0, 0, 0, 0, 1.2e-6, 0])?.number).toBeCloseTo(1.08e-6, 12);
  });

  it("sheds a finite mass where no mussel lives a month", () => {
    const colony = bareColony(surface, { ...roomy, yearlyMortality: Infinity }, new Float64Array(12));
    for (let month = 0; month < 8; month++) passMonth(colony, month, 1);
    // The settlers of the month alone are there.
    expect([colony.number, colony.shed]).toEqual([growth.settlersPerMonth, 0]);
  });
});

describe("a winter that kills some", () => {
  it("leaves what it did not kill, less those that die of age", () => {
    // Nothing grows or settles from December to February: what December left is what is left, what died and what was killed.
    const mild: Lake = { ...drawnDownLake, airTemperature: everyMonth(2), humidity: everyMonth(0.95) };
    const band = stillSurface({ at: "elevation", elevation: 99.9 }, mild);
    const layers = growLayers({ surface: band, density: Array<number>(14).fill(0.2) }, growth);
    const [december, january, february] = layers.slice(11).map(({ mass, killed }) => ({ mass, killed }));
    if (!december || !january || !february) throw new Error("no winter");
    const ofAge = Math.exp(-growth.yearlyMortality / 12);
    for (const [before, after] of [
      [december, january],
      [january, february],
    ] as const) {
      // More than dies of age: a share that no rounding hides.
      expect(after.killed).toBeGreaterThan((1 - ofAge) * before.mass);
      expect(after.mass).toBeGreaterThan(0);
      expect(relativeGap(after.killed + after.mass / ofAge, before.mass)).toBeLessThan(1e-9);
    }
  });
});

describe("shedding", () => {
  it.each([
    ["under water", surface],
    ["in a band that is exposed each winter", bared],
  ])("takes the same share of each brood, and of all that stands, %s", (_where, place) => {
    // By hand: those of April and May have grown beyond the limit in July, in which nobody settles.
    const [may, june, july] = [4, 5, 6];
    const colony = bareColony(place, { ...growth, coverLimit: 0.4 }, new Float64Array(12));
    for (let month = 0; month <= june; month++) passMonth(colony, month, month <= may ? 1 : 0);
    const before = cohortsOf(colony);
    const { number } = colony;
    passMonth(colony, july, 0);
    const [settlers, ...after] = cohortsOf(colony);
    const kept = colony.number / number;
    expect(kept).toBeLessThan(0.95 * Math.exp(-growth.yearlyMortality / 12));
    expect(before.filter((each) => each > 0)).toHaveLength(2);
    expect(settlers).toBe(0);
    expect(after).toEqual(before.map((each) => expect.closeTo(each * kept, 9)));
    expect(colony.cover).toBeCloseTo(0.4, 9);
    // What a square metre carried and sheds is what it carries and what died of age besides.
    const grown = colony.mass / (kept / Math.exp(-growth.yearlyMortality / 12));
    const ofAge = grown * (Math.exp(growth.yearlyMortality / 12) - 1);
    expect(relativeGap(colony.shed, ofAge + grown - colony.mass)).toBeLessThan(1e-9);
    expect(colony.killed).toBe(0);
    // Also once they have lived on for a month.
    passMonth(colony, july + 1, 0);
    expect(relativeGap(sumOf(cohortsOf(colony)), colony.number)).toBeLessThan(1e-9);
  });
});

import { describe, expect, it } from "vitest";
import type { Colony } from "../../../src/model/mussels/cohorts.js";
import {
  grownMonths,
  growTo,
  isBaredIn,
  isLikeYearBefore,
  layerAt,
  thicknessAt,
} from "../../../src/model/mussels/grown-months.js";
import { areAlike, isBareKept, keepSums, layerKept, sumsKept } from "../../../src/model/mussels/kept-sums.js";
import { bareSurface } from "../../../src/model/mussels/layer.js";
import { drawnDownLake, productiveLake } from "../lakes.js";
import { growth, plain, stillSurface } from "./growing.js";

const years = 4;
const density = Array.from({ length: 12 * years }, (_, month) => Math.min(1, (month + 1) / 20));
const wet = stillSurface({ at: "elevation", elevation: 95 }, productiveLake);
/** Above the winter's lowest level, in hard frost. */
const bared = stillSurface({ at: "elevation", elevation: 95 }, drawnDownLake);
const grownOn = (surface: typeof wet, room = 12 * years) =>
  grownMonths({ surface, density, start: 0 }, growth, room);
const layersOf = (grown: ReturnType<typeof grownOn>) => density.map((_, month) => layerAt(grown, month));

describe("months that are grown when asked for", () => {
  it.each([1, 7, 12, 47])("are the same in whatever order, with room for %d at first", (room) => {
    const asked = grownOn(wet, room);
    const told = [3, 30, 12, 47].map((month) => thicknessAt(asked, month));
    expect(told).toEqual([3, 30, 12, 47].map((month) => layerAt(grownOn(wet), month).thickness));
    expect(Math.min(...told.slice(1))).toBeGreaterThan(0);
    expect(plain(layersOf(asked))).toEqual(plain(layersOf(grownOn(wet))));
  });

  it("are no more than were asked for", () => {
    const grown = grownOn(wet);
    thicknessAt(grown, 9);
    expect(grown.count).toBe(10);
    growTo(grown, 4);
    expect(grown.count).toBe(10);
  });

  it("go on at the last density", () => {
    const short = grownMonths({ surface: wet, density: density.slice(0, 20), start: 0 }, growth, 20);
    // By hand: the density has reached 1 in the twentieth month and stays there.
    expect(plain(layersOf(short))).toEqual(plain(layersOf(grownOn(wet))));
  });

  it("tell a winter that left nobody from one that nobody met, and from one that nobody died in", () => {
    const [inFirst, inSecond] = [0, 12].map((month) => isBaredIn(grownOn(bared), month));
    expect([inFirst, inSecond, isBaredIn(grownOn(wet), 12)]).toEqual([false, true, false]);
  });

  it("tell a year that is like the one before from one in which the density still rose", () => {
    const settled = grownMonths({ surface: bared, density: [1], start: 0 }, growth, 1);
    // Nothing has grown when the first winter comes; from the second on each begins with what a whole year grew.
    expect([1, 2, 3].map((year) => isLikeYearBefore(settled, year))).toEqual([false, true, true]);
    expect(isLikeYearBefore(grownOn(bared), 2)).toBe(false);
    expect(isLikeYearBefore(grownOn(wet), 3)).toBe(false);
  });
});

describe("what is kept of a month", () => {
  const colony = (changes: Partial<Colony>) =>
    ({ number: 100, cover: 0.04, mass: 2, killed: 0.5, shed: 0.25, ...changes }) as Colony;
  const kept = (...colonies: readonly Colony[]) => {
    const sums = new Float64Array(sumsKept * colonies.length);
    colonies.forEach((each, month) => {
      keepSums(sums, month * sumsKept, each);
    });
    return sums;
  };
  const packing = { bulkDensity: 500 };
  const dead = colony({ number: 0, mass: 0, cover: 0 });

  it("is its layer, by hand", () => {
    // 100 shells that cover 0.04 of the ground are 20 mm long; 2 kg at 500 kg/m3 are 4 mm.
    const [one] = plain([layerKept(kept(dead, colony({})), sumsKept, packing)]);
    expect(Object.fromEntries(one ?? [])).toEqual({
      number: 100,
      lengthMm: expect.closeTo(20, 12),
      cover: 0.04,
      mass: 2,
      thickness: 0.004,
      killed: 0.5,
      shed: 0.25,
    });
  });

  it("is bare where nobody lives and nobody was killed, and else has what was killed", () => {
    const none = colony({ number: 0, killed: 0 });
    expect(layerKept(kept(dead, none), sumsKept, packing)).toBe(bareSurface);
    expect(layerKept(kept(none, dead), sumsKept, packing)).toMatchObject({ number: 0, mass: 0, killed: 0.5 });
    expect(layerKept(kept(none, colony({ killed: 0 })), sumsKept, packing).number).toBe(100);
  });

  it("is left by nobody only where some were killed and none live", () => {
    const sums = kept(dead, colony({}), colony({ number: 0, killed: 0 }));
    expect([0, 1, 2].map((month) => isBareKept(sums, month * sumsKept))).toEqual([true, false, false]);
  });

  it("is alike only where no part differs", () => {
    const others = (["number", "cover", "mass", "killed", "shed"] as const).map((part) =>
      colony({ [part]: 9 }),
    );
    const sums = kept(colony({}), colony({}), ...others);
    const isLikeFirst = (month: number) => areAlike(sums, 0, month * sumsKept);
    expect([1, 2, 3, 4, 5, 6].map(isLikeFirst)).toEqual([true, false, false, false, false, false]);
  });
});

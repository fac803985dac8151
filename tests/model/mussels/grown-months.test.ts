import { describe, expect, it } from "vitest";
import {
  grownMonths,
  growTo,
  isBaredIn,
  isLikeYearBefore,
  layerAt,
  thicknessAt,
} from "../../../src/model/mussels/grown-months.js";
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

  it("tell apart a winter that killed all, one before any mussels, and one that killed none", () => {
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

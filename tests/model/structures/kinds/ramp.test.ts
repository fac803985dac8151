import { describe, expect, it } from "vitest";
import { usualRanges } from "../../../../src/model/entries/usual-ranges.js";
import { ramp as rampKind } from "../../../../src/model/structures/kinds/ramp.js";
import { contextOf } from "../../contexts.js";
import { drawnDownLake } from "../../lakes.js";
import { ramp } from "../../study.js";
import { checksOf, rangeOf } from "./own-entries.js";

describe("entries of a ramp", () => {
  it("are its slope, its width and how the water's edge lies on it, by hand", () => {
    // From 88 m to 97 m: 12 m below the full lake, and 7 m over the lowest of 90 m.
    expect(checksOf({ ...ramp, bottomElevation: 88, topElevation: 97 })).toEqual([
      ["slope", "Launch ramp, slope", "share", 0.14, ...rangeOf(usualRanges.rampSlope)],
      ["width", "Launch ramp, width", "length", 15, ...rangeOf(usualRanges.rampWidth)],
      [
        "bottomElevation",
        "Launch ramp, water over its bottom at the highest level",
        "length",
        12,
        0,
        undefined,
      ],
      ["topElevation", "Launch ramp, height of its top over the lowest level", "length", 7, 0, undefined],
    ]);
  });
});

describe("launches lost above the water", () => {
  const closedDays = (bottomElevation: number) =>
    rampKind.cleanService?.({ ...ramp, bottomElevation }, contextOf(drawnDownLake, 3))[0]?.quantity;

  it("are those of the days on which the lake stands below the ramp's end, not at it", () => {
    expect(closedDays(90)?.every((days) => days === 0)).toBe(true);
    // By hand: at 90 m to the 27th of February, day 57 counted from 0; half way to 100 m on the next.
    expect(closedDays(90.5)?.slice(0, 3)).toEqual([31, 27, 0]);
  });
});

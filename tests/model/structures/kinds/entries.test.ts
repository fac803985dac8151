import { describe, expect, it } from "vitest";
import { compare } from "../../../../src/model/compare.js";
import { usualRanges } from "../../../../src/model/entries/usual-ranges.js";
import { ramp as rampKind } from "../../../../src/model/structures/kinds/ramp.js";
import type { Structure } from "../../../../src/model/structures/kinds.js";
import { assumed } from "../../assumptions.js";
import { contextOf } from "../../contexts.js";
import { drawnDownLake } from "../../lakes.js";
import { fixedDock, floatingDock, ramp, studyOf } from "../../study.js";

/** What a structure's own fields are held against; the lake stands at 90 m in January and February, else at 100 m. */
function checksOf(structure: Structure) {
  const checks = compare(studyOf([structure]), assumed).entryChecks;
  const others = ["money", "boats"];
  const own = checks.filter(
    ({ at }) => !others.some((each) => each === at[0]) && at.at(-1) !== "launchesPerDay",
  );
  return own.map(({ at, what, measure, found, low, high }) => [at.at(-1), what, measure, found, low, high]);
}
const rangeOf = ({
  low,
  high,
}: {
  low: Parameters<typeof assumed>[0];
  high: Parameters<typeof assumed>[0];
}) => [assumed(low), assumed(high)];

describe("entries of a dock", () => {
  const area = rangeOf(usualRanges.dockArea);
  const price = rangeOf(usualRanges.dockPrice);

  it("are its size, its price and its depth where it floats, by hand", () => {
    // 150,000 for 400 m².
    expect(checksOf(floatingDock)).toEqual([
      ["wettedArea", "Marina docks, wetted area of one", "area", 400, ...area],
      [
        ...["replacementCost", "Marina docks, replacement cost of one over its wetted area", "moneyPerArea"],
        ...[375, ...price],
      ],
      [
        ...["depth", "Marina docks, depth of its wetted surface", "length", 0.5, undefined],
        assumed(usualRanges.dockDepth.high),
      ],
    ]);
    expect(checksOf({ ...floatingDock, depth: undefined })[2]?.[3]).toBe(0);
  });

  it("are its level where it is fixed, by hand", () => {
    // 88 m under a lake of up to 100 m whose table begins at 60 m.
    expect(checksOf(fixedDock).slice(2)).toEqual([
      ["elevation", "Pier, water over its wetted surface at the highest level", "length", 12, 0, undefined],
      ["elevation", "Pier, height over the lowest row of the storage table", "length", 28, 0, undefined],
    ]);
  });

  it("are no price where it costs nothing to replace, and no level where none is told", () => {
    const fields = (structure: Structure) => checksOf(structure).map(([field]) => field);
    expect(fields({ ...floatingDock, replacementCost: 0 })).toEqual(["wettedArea", "depth"]);
    expect(fields({ ...fixedDock, elevation: undefined })).toEqual(["wettedArea", "replacementCost"]);
  });
});

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

import { describe, expect, it } from "vitest";
import { usualRanges } from "../../../../src/model/entries/usual-ranges.js";
import type { Structure } from "../../../../src/model/structures/kinds.js";
import { assumed } from "../../assumptions.js";
import { fixedDock, floatingDock } from "../../study.js";
import { checksOf, rangeOf } from "./own-entries.js";

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

  it("leave out the price of a free dock, and the level where none is given", () => {
    const fields = (structure: Structure) => checksOf(structure).map(([field]) => field);
    expect(fields({ ...floatingDock, replacementCost: 0 })).toEqual(["wettedArea", "depth"]);
    expect(fields({ ...fixedDock, elevation: undefined })).toEqual(["wettedArea", "replacementCost"]);
  });
});

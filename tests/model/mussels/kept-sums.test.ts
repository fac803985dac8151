import { describe, expect, it } from "vitest";
import type { Colony } from "../../../src/model/mussels/cohorts.js";
import { areAlike, isBareKept, keepSums, layerKept, sumsKept } from "../../../src/model/mussels/kept-sums.js";
import { bareSurface } from "../../../src/model/mussels/layer.js";
import { plain } from "./growing.js";

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

  it("is bare where none live and none were killed, and else has what was killed", () => {
    const none = colony({ number: 0, killed: 0 });
    expect(layerKept(kept(dead, none), sumsKept, packing)).toBe(bareSurface);
    expect(layerKept(kept(none, dead), sumsKept, packing)).toMatchObject({ number: 0, mass: 0, killed: 0.5 });
    expect(layerKept(kept(none, colony({ killed: 0 })), sumsKept, packing).number).toBe(100);
  });

  it("counts as bared only where mussels died and none are left", () => {
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

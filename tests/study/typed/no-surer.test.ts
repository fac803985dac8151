import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { noSurerThanTyped } from "../../../src/study/typed/no-surer.js";
import { typedIdOf } from "../../../src/study/typed/typed-kinds.js";
import { typedRange } from "../../../src/study/typed/typed-range.js";
import type { DimensionName } from "../../../src/units/dimensions.js";
import { assumptions } from "../../report/runs.js";

const logOdds = (share: number) => Math.log(share / (1 - share));

/** Places of each kind, and the scale on which a kind's range is as long wherever the value stands. */
const kinds = [
  [["options", 0, "steps", "efficacy"], "share", 1, logOdds],
  [["options", 0, "steps", "deterrence"], "share", 1, logOdds],
  [["boats", "classes", 0, "fouled"], "share", 1, logOdds],
  [["structures", 0, "efficiency"], "share", 1, logOdds],
  [["boats", "launches", "january"], "count", 1e5, Math.log],
  [["structures", 0, "wettedArea"], "area", 1e5, Math.log],
  [["structures", 0, "demand", "july"], "flow", 1e3, Math.log],
  [["lake", "deepTemperature", "july"], "temperature", 30, (value: number) => value],
] as const satisfies readonly (readonly [
  readonly PropertyKey[],
  DimensionName,
  number,
  (value: number) => number,
])[];

/** Three values in rising order. */
const ends = fc
  .array(fc.double({ min: 1e-4, max: 0.9999, noNaN: true }), {
    minLength: 3,
    maxLength: 3,
  })
  .map((values) => [...values].sort((one, other) => one - other))
  .filter(([low = 0, , high = 0]) => low < high);

describe("the range of a value that nobody entered", () => {
  it.each(kinds)(
    "at %j, %s, is at least as long as that of any number within it that is typed",
    (path, dimension, most, scale) => {
      // From no source: whoever knows less may not be told to be surer.
      fc.assert(
        fc.property(ends, fc.double({ min: 0, max: 1, noNaN: true }), ([a = 0, b = 0, c = 0], place) => {
          const given = { low: a * most, value: b * most, high: c * most };
          const wide = noSurerThanTyped(given, { path, dimension }, assumptions);
          const id = typedIdOf(path, dimension);
          const typed = given.low + place * (given.high - given.low);
          const own = id && typedRange({ id, value: typed, dimension }, assumptions);
          expect(own).toBeDefined();
          const lengthOf = ({ low, high }: { low: number; high: number }) => scale(high) - scale(low);
          expect(lengthOf(wide)).toBeGreaterThanOrEqual(lengthOf(own ?? given) - 1e-9);
          expect([wide.low <= given.low, wide.value, wide.high >= given.high]).toEqual([
            true,
            given.value,
            true,
          ]);
        }),
      );
    },
  );

  it("stays as it is where an author's single number would not be varied either", () => {
    const given = { low: 1, value: 2, high: 3 };
    expect(
      noSurerThanTyped(given, { path: ["lake", "minimumElevation"], dimension: "elevation" }, assumptions),
    ).toBe(given);
  });

  it("stays one number, which is varied as an author's own is", () => {
    const given = { low: 2, value: 2, high: 2 };
    expect(
      noSurerThanTyped(given, { path: ["boats", "launches", "january"], dimension: "count" }, assumptions),
    ).toBe(given);
  });
});

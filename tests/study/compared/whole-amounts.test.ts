import { describe, expect, it } from "vitest";
import { wholeAmounts } from "../../../src/study/compared/whole-parts.js";

describe("amounts in whole units of money", () => {
  it("are rounded at both ends, and their parts add up between", () => {
    // By hand: 100.50 and 204.40 are 101 and 204; of 103, parts of 33.30, 33.30 and 37.30 are 33, 33 and 37.
    const cents = { left: 10_050, right: 20_440, parts: [3330, 3330, 3730] };
    expect(wholeAmounts(cents)).toEqual({ left: 101, right: 204, parts: [33, 33, 37] });
  });

  it("are told of two sides only", () => {
    expect(wholeAmounts({ left: undefined, right: 100, parts: [] })).toBeUndefined();
    expect(wholeAmounts({ left: 100, right: undefined, parts: [] })).toBeUndefined();
  });
});

import { describe, expect, it } from "vitest";
import { ratioWithout } from "../../../src/model/money/account.js";

describe("the ratio without one account", () => {
  it("is what is avoided beside that account over what is added, and none where nothing is added", () => {
    // By hand: (100 - 30) / 50.
    expect(ratioWithout(100, 30, 50)).toBeCloseTo(1.4, 12);
    expect(ratioWithout(100, 30, 0)).toBeUndefined();
    expect(ratioWithout(100, 30, -5)).toBeUndefined();
  });
});

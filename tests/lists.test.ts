import { describe, expect, it } from "vitest";
import { at, meanOf, sumOf } from "../src/lists.js";

/** By hand. */
describe("lists", () => {
  it("give the element at an index, 0 among them, and name an index that there is not", () => {
    expect(at([3, 0], 1)).toBe(0);
    expect(() => at([3, 0], 2)).toThrow("no element 2 in a list of 2");
  });

  it("have a sum, of nothing 0, and a mean", () => {
    expect(sumOf([])).toBe(0);
    expect(sumOf([1, 2, 6])).toBe(9);
    expect(meanOf([1, 2, 6])).toBe(3);
  });
});

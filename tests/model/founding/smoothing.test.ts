import { describe, expect, it } from "vitest";
import { logStep } from "../../../src/model/founding/log-density.js";
import { kernelOf, smooth } from "../../../src/model/founding/smoothing.js";

const kernel = Float64Array.of(0.6, 0.2);

describe("smoothing on a grid, by hand", () => {
  it("goes on beyond both ends as the grid ends", () => {
    // 0.6 × 1 + 0.2 × (1 + 2), 0.6 × 2 + 0.2 × (1 + 4), 0.6 × 4 + 0.2 × (2 + 4).
    expect([...smooth(Float64Array.of(1, 2, 4), kernel)]).toEqual(
      [1.2, 2.2, 3.6].map((each) => expect.closeTo(each, 12)),
    );
    expect([...smooth(Float64Array.of(5), kernel)]).toEqual([expect.closeTo(5, 12)]);
  });

  it("leaves what is even as it is: a region that tells nothing tells nothing at any spread", () => {
    const even = smooth(new Float64Array(40).fill(3), kernelOf(0.7));
    expect([...even]).toEqual([...even].map(() => expect.closeTo(3, 12)));
  });

  it("has the chances of a normal deviation, to four times its spread", () => {
    // Of two steps: e^(−1/8) and e^(−1/2) of the chance of none.
    const chances = kernelOf(2 * logStep);
    const [none = 0, one, two] = chances;
    expect(chances).toHaveLength(9);
    expect([one, two]).toEqual([
      expect.closeTo(none * Math.exp(-1 / 8), 12),
      expect.closeTo(none * Math.exp(-1 / 2), 12),
    ]);
    expect(chances.reduce((sum, chance) => sum + 2 * chance, -none)).toBeCloseTo(1, 12);
  });
});

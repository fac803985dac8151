import { describe, expect, it } from "vitest";
import { pipeWall, upstreamWall } from "../../../src/model/structures/pipe.js";

describe("a wall that lines are tapped from", () => {
  const wall = pipeWall({ diameter: 2, length: 50, minorLoss: 0 }, 80, { flow: [1, 3, 2] });

  it("is as large and carries as much as all pipes alike together, at the largest flow", () => {
    // By hand: π x 2 m x 50 m and 3 m³/s of each.
    expect(upstreamWall(wall, [1, 3, 2])).toEqual({
      surface: wall.surface,
      area: expect.closeTo(100 * Math.PI, 9),
      flow: 3,
    });
    expect(upstreamWall(wall, [1, 3, 2], 4)).toMatchObject({
      area: expect.closeTo(400 * Math.PI, 9),
      flow: 12,
    });
  });
});

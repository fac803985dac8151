import { describe, expect, it } from "vitest";
import { canalComponent } from "../../../../src/model/structures/deliveries/distribution.js";
import { assumedWith } from "../../assumptions.js";
import { contextOf } from "../../contexts.js";
import { productiveLake } from "../../lakes.js";
import { pumpingPlant } from "./served.js";

const canal = { length: 2000, bottomWidth: 0.4, depth: 0.3 };
const context = contextOf(productiveLake, 3, assumedWith({ "irrigation.canal-side-slope": 1.5 }));

describe("a lined canal", () => {
  // By hand: a trapezoid with sides of z to 1 has a wetted perimeter of b + 2 y √(1 + z²), an area of (b + z y) y.
  it.each([
    ["assumed", undefined, 1.5],
    ["its own", 2.5, 2.5],
  ])("is as wide as its sides are flat: %s", (_whose, sideSlope, slope) => {
    const part = canalComponent({ ...canal, sideSlope }, pumpingPlant, context);
    expect(part.wettedArea).toBeCloseTo(2000 * (0.4 + 0.6 * Math.sqrt(1 + slope ** 2)), 9);
    const july = 200_000 / (31 * 86_400);
    expect(part.surface.velocity[6]).toBeCloseTo(july / ((0.4 + slope * 0.3) * 0.3), 9);
  });

  it("is designed for the month of the largest flow", () => {
    expect(canalComponent(canal, pumpingPlant, context).designFlow).toBeCloseTo(200_000 / (31 * 86_400), 12);
  });
});

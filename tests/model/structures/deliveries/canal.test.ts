import { describe, expect, it } from "vitest";
import { bareSurface } from "../../../../src/model/mussels/layer.js";
import type { AssumptionId } from "../../../../src/model/register/register.js";
import {
  type Canal,
  canalComponent,
  seasonal,
} from "../../../../src/model/structures/deliveries/distribution.js";
import { shellLines, workLines } from "../../../../src/model/structures/plan-work.js";
import { protectionOf } from "../../../../src/model/structures/protection.js";
import { assumed, assumedWith, assumptionSet } from "../../assumptions.js";
import { contextOf } from "../../contexts.js";
import { productiveLake } from "../../lakes.js";
import { lossesOf } from "../losses.js";
import { pumpingPlant } from "./served.js";

const canal = { length: 2000, bottomWidth: 0.4, depth: 0.3 };
const context = contextOf(productiveLake, 3, assumedWith({ "irrigation.canal-side-slope": 1.5 }));
const layer = { ...bareSurface, cover: 2, lengthMm: 40, thickness: 0.04, mass: 20, killed: 1 };

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

  it("has capacity to spare over its largest flow where none is given", () => {
    const lost = (capacity: number | undefined) =>
      lossesOf(canalComponent({ ...canal, capacity }, pumpingPlant, context), layer, 6)[0]?.quantity;
    const july = 200_000 / (31 * 86_400);
    expect(lost(undefined)).toBeCloseTo(lost(july * (1 + assumed("irrigation.canal-spare"))) ?? 0, 6);
    expect(lost(undefined)).toBeGreaterThan(0);
  });

  it("stands empty in the months without water where the plant is emptied in them", () => {
    const { place, running } = canalComponent(canal, pumpingPlant, context).surface;
    expect(running).toEqual([0, 0, 0, 0, 1, 1, 1, 1, 1, 0, 0, 0]);
    expect(place).toEqual({ at: "elevation", elevation: 88, drained: [0, 1, 2, 3, 9, 10, 11] });
    const full = canalComponent(canal, { ...pumpingPlant, drainedWhenIdle: false }, context).surface;
    expect(full.place).toEqual({ at: "elevation", elevation: 88 });
  });

  it("stays full where it floats", () => {
    const part = canalComponent(canal, pumpingPlant, context);
    const place = { at: "floating", depth: 1 } as const;
    const floating = { ...part, surface: { ...part.surface, place } };
    expect(seasonal(floating, pumpingPlant).surface.place).toEqual(place);
  });

  const named = (given: Partial<Canal>, id: AssumptionId) => {
    const part = canalComponent({ ...canal, ...given }, pumpingPlant, context);
    const entries = assumptionSet.plans.filter((plan) => plan.id === "foul-release");
    const lines = entries.flatMap((entry) => [
      ...workLines(entry, part, context, 6),
      ...shellLines(layer, part, context),
      ...(protectionOf(entry, part, context)?.monthly[6] ?? []),
      ...lossesOf(part, layer, 6),
    ]);
    expect(lines).toHaveLength(5);
    return lines.filter(({ assumptionIds }) => assumptionIds.includes(id)).map(({ what }) => what);
  };

  it("names the slope of its sides in what its area and its section cost, where the slope is assumed", () => {
    expect(named({}, "irrigation.canal-side-slope")).toEqual([
      "cleaning the canal",
      "disposal of shells and mussels",
      "foul-release coating",
      "water not brought to the land",
    ]);
    expect(canalComponent({ ...canal, sideSlope: 1.5 }, pumpingPlant, context).areaIds).toBeUndefined();
    expect(named({ sideSlope: 1.5 }, "irrigation.canal-side-slope")).toEqual([]);
  });

  it("names the flow to spare in the water that it does not bring, where its capacity is assumed", () => {
    expect(named({}, "irrigation.canal-spare")).toEqual(["water not brought to the land"]);
    expect(named({ capacity: 0.08 }, "irrigation.canal-spare")).toEqual([]);
  });

  it("is designed for the month of the largest flow", () => {
    expect(canalComponent(canal, pumpingPlant, context).designFlow).toBeCloseTo(200_000 / (31 * 86_400), 12);
  });
});

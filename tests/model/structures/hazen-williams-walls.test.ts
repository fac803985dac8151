import { describe, expect, it, test } from "vitest";
import { pipeHeadLoss } from "../../../src/model/hydraulics/friction.js";
import { hazenWilliamsLoss } from "../../../src/model/hydraulics/hazen-williams.js";
import type { Waterway } from "../../../src/model/hydraulics/waterway.js";
import { bareSurface } from "../../../src/model/mussels/layer.js";
import { operatingYear } from "../../../src/model/structures/hydropower.js";
import type { Intake } from "../../../src/model/structures/inputs.js";
import { pumpSummary } from "../../../src/model/structures/pump-summary.js";
import { cleanLine } from "../../../src/model/structures/small-line.js";
import { structureResult } from "../../../src/model/structures/structure.js";
import { fouledConveyance, supplyOf } from "../../../src/model/structures/supply.js";
import { assumedWith } from "../assumptions.js";
import { contextOf } from "../contexts.js";
import { productiveLake } from "../lakes.js";
import { relativeGap } from "../near.js";
import { curvePump, plant, pumpedIntake } from "../study.js";

// Where a clean wall is known by its C, the sand roughness that stands for it under shells is the one that loses the
// same at the largest flow: two routes to that loss, Hazen-Williams and Colebrook-White.
const viscosity = 1e-6;
const context = contextOf(productiveLake, 3, assumedWith({ "hydraulics.viscosity": viscosity }));
const wall = { length: 900, diameter: 1.2, hazenWilliamsC: 110, minorLoss: 0 };
const intake: Intake = { ...pumpedIntake, conduit: wall };
const flows = [3, 4, 6, 8, 9, 9, 8, 7, 6, 5, 4, 3];
const power = { ...plant, flow: flows, penstock: { ...wall, diameter: 2.9 } };
const line = { ...wall, diameter: 0.1, requiredFlow: 0.008, availableHead: 40 };

describe("the roughness that stands for a C is that of the largest flow", () => {
  test.each<[string, Waterway, number]>([
    // The largest of the twelve demands is 1.2 m3/s, of the plant's flows 9 m3/s.
    ["conduit", supplyOf(intake, context).clean, 1.2],
    ["penstock", operatingYear(power, context).penstock, 9],
    ["cooling line", cleanLine(line, context), 0.008],
  ])("of a %s", (_name, waterway, largest) => {
    const byC = hazenWilliamsLoss(waterway, largest, 110);
    const { hazenWilliamsC: _, ...rough } = waterway;
    expect(relativeGap(pipeHeadLoss(rough, largest, viscosity), byC)).toBeLessThan(1e-6);
    expect(relativeGap(pipeHeadLoss(rough, largest / 3, viscosity), byC / 3 ** 1.852)).toBeGreaterThan(1e-3);
  });

  it("in the hydraulic summary, which says the C again", () => {
    const [pipe] = structureResult(intake, [context]).hydraulics.pipes;
    const { clean } = pipe ?? {};
    expect(clean?.roughness).toBe(supplyOf(intake, context).clean.roughness);
    // By hand: Darcy-Weisbach solved for f, with the loss that Hazen-Williams gives.
    const velocity = 1.2 / (Math.PI * 0.36);
    const loss = hazenWilliamsLoss(wall, 1.2, 110);
    const factor = (loss * 1.2 * 2 * 9.81) / (900 * velocity ** 2);
    expect(relativeGap(clean?.frictionFactor ?? Number.NaN, factor)).toBeLessThan(1e-4);
    expect(clean?.headLoss).toBeCloseTo(loss, 9);
    expect(clean?.equivalentC).toBeCloseTo(110, 6);
  });

  it("in the summary of a pump: its runs are those that are costed", () => {
    const layer = { ...bareSurface, cover: 0.2, lengthMm: 2, thickness: 0.002, mass: 0.5 };
    const pumped = { ...intake, supply: curvePump };
    const [summary] = pumpSummary(pumped, layer, context);
    const costed = supplyOf(pumped, context);
    expect(summary?.month).toBe(6);
    expect(summary?.clean.point.head).toBe(costed.cleanYear[6]?.head);
    expect(summary?.fouled.point.head).toBe(fouledConveyance(costed, layer, 6, context).head);
    expect(summary?.fouled.point.head).toBeGreaterThan(summary?.clean.point.head ?? Number.NaN);
  });
});

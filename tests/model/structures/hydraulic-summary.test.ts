import { describe, expect, it } from "vitest";
import { bareSurface, type Layer } from "../../../src/model/mussels/layer.js";
import { hydraulicSummary } from "../../../src/model/structures/hydraulic-summary.js";
import type { Intake } from "../../../src/model/structures/inputs.js";
import { structureResult } from "../../../src/model/structures/structure.js";
import { assumedWith } from "../assumptions.js";
import { contextOf } from "../contexts.js";
import { productiveLake } from "../lakes.js";
import { everyMonth, halfDigit, relativeGap } from "../near.js";
import { fixedDock, gravityIntake, plant } from "../study.js";

// Viscosity of 1e-6 m2/s, as in the computed examples.
const context = contextOf(productiveLake, 5, assumedWith({ "hydraulics.viscosity": 1e-6 }));

function summaryWith(structure: Intake, layer: Layer) {
  const components = structureResult(structure, [context]).components;
  return hydraulicSummary(
    structure,
    components.map((each) => ({ ...each, untouchedLayer: layer })),
    context,
  );
}

describe("the hydraulic summary of an intake", () => {
  const intake: Intake = {
    ...gravityIntake,
    demand: everyMonth(3),
    conduit: { length: 3000, diameter: 1.5, roughness: 0.0003, minorLoss: 0 },
    rack: { ...gravityIntake.rack, velocityLimit: 2 },
  };

  it("shows each step from the layer to the loss, and the capacity left", () => {
    // Computed from Darcy-Weisbach and Colebrook-White: 3 m3/s, 3000 m, 1.5 m, clean wall 0.3 mm; shells of 10 mm in
    // a layer of 10 mm. Equivalent C of the clean wall at 1.7 m/s: 129.6.
    const layer = { ...bareSurface, cover: 2, lengthMm: 10, thickness: 0.01, mass: 5 };
    const [pipe] = summaryWith(intake, layer).pipes;
    expect(pipe?.clean.reynolds).toBeCloseTo((4 * 3) / (Math.PI * 1.5e-6), 3);
    expect(Math.abs((pipe?.clean.frictionFactor ?? Number.NaN) - 0.0141373)).toBeLessThanOrEqual(
      halfDigit(7),
    );
    expect(Math.abs((pipe?.clean.headLoss ?? Number.NaN) - 4.15331)).toBeLessThanOrEqual(halfDigit(5));
    expect(Math.abs((pipe?.clean.equivalentC ?? Number.NaN) - 129.6)).toBeLessThan(0.15);
    expect(pipe?.fouled?.bore).toBeCloseTo(1.48, 12);
    expect(pipe?.fouled?.roughness).toBeCloseTo(0.015, 12);
    expect(Math.abs((pipe?.fouled?.frictionFactor ?? Number.NaN) - 0.0380998)).toBeLessThanOrEqual(
      halfDigit(7),
    );
    expect(Math.abs((pipe?.fouled?.headLoss ?? Number.NaN) - 11.97015)).toBeLessThanOrEqual(halfDigit(5));
    expect(Math.abs((pipe?.capacityLeft ?? Number.NaN) - 0.588917)).toBeLessThanOrEqual(halfDigit(5));
  });

  it("leaves the whole capacity under a bare wall and none where the layer fills the bore", () => {
    const [clean] = summaryWith(intake, bareSurface).pipes;
    expect(clean?.capacityLeft).toBeCloseTo(1, 9);
    const filled = { ...bareSurface, cover: 4, lengthMm: 30, thickness: 0.8, mass: 10 };
    const [closed] = summaryWith(intake, filled).pipes;
    expect([closed?.fouled, closed?.capacityLeft]).toEqual([undefined, 0]);
  });

  it("sets three formulas for the same blockage side by side", () => {
    // A rack of 10 mm bars and 60 mm gaps under 15 mm on each side: 40 mm blocked of 70 mm, by hand.
    const layer = { ...bareSurface, cover: 2, lengthMm: 15, thickness: 0.015, mass: 5 };
    const [rack] = summaryWith(intake, layer).racks;
    expect(rack?.fouled?.blocked).toBeCloseTo(4 / 7, 12);
    const head = ((3 / 9) ** 2 / (2 * 9.81)) * Math.sin((75 * Math.PI) / 180);
    expect(relativeGap(rack?.fouled?.meusburger ?? Number.NaN, 2.42 * (4 / 3) ** 1.5 * head)).toBeLessThan(
      1e-9,
    );
    expect(relativeGap(rack?.fouled?.kirschmer ?? Number.NaN, 2.42 * (4 / 3) ** (4 / 3) * head)).toBeLessThan(
      1e-9,
    );
    const net = 3 / 7;
    const netHead = (3 / 9 / net) ** 2 / (2 * 9.81);
    const reclamation = (1.45 - 0.45 * net - net ** 2) * netHead;
    expect(relativeGap(rack?.fouled?.reclamation ?? Number.NaN, reclamation)).toBeLessThan(1e-9);
  });
});

describe("the hydraulic summary of a rack", () => {
  it.each([
    // By hand: gaps of 60 mm are closed by 30 mm on either side.
    [29.9, true],
    [30, false],
    [45, false],
  ])("under %d mm of shells has losses: %s", (millimetres, isOpen) => {
    const layer = { ...bareSurface, cover: 3, lengthMm: 20, thickness: millimetres / 1000, mass: 9 };
    const [rack] = summaryWith(gravityIntake, layer).racks;
    expect(rack?.fouled !== undefined).toBe(isOpen);
    expect(rack?.clean.blocked).toBeCloseTo(1 / 7, 12);
  });
});

describe("the hydraulic summary of other structures", () => {
  it("has penstock and cooling-water line of a plant, and nothing of a dock", () => {
    const { hydraulics } = structureResult(plant, [context]);
    expect(hydraulics.pipes.map(({ part }) => part)).toEqual(["penstock", "cooling-water line"]);
    expect(hydraulics.racks).toHaveLength(1);
    expect(structureResult(fixedDock, [context]).hydraulics).toEqual({ pipes: [], racks: [], pumps: [] });
  });
});

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { roughnessParameters } from "../../../src/model/hydraulics/fouled-pipe.js";
import { pipeHeadLoss } from "../../../src/model/hydraulics/friction.js";
import { pumpPower } from "../../../src/model/hydraulics/power.js";
import { pumpCurve, pumpHead } from "../../../src/model/hydraulics/pump.js";
import { dailyElevations, monthlyMeans } from "../../../src/model/lake/levels.js";
import { bareSurface, type Layer } from "../../../src/model/mussels/layer.js";
import type { Intake, PumpSupply } from "../../../src/model/structures/inputs.js";
import { intakeComponents } from "../../../src/model/structures/kinds/intake.js";
import { pumpSummary } from "../../../src/model/structures/pump-summary.js";
import { structureResult } from "../../../src/model/structures/structure.js";
import { fouledConveyance, pumpedSupply, supplyOf } from "../../../src/model/structures/supply.js";
import { assumed } from "../assumptions.js";
import { contextOf } from "../contexts.js";
import { drawnDownLake, productiveLake } from "../lakes.js";
import { everyMonth, relativeGap } from "../near.js";
import { curvePump, gravityIntake, pumpedIntake } from "../study.js";
import { lossesOf } from "./losses.js";

const waterOf = (drawdown: typeof productiveLake.drawdown) => ({
  monthlyLevels: monthlyMeans(dailyElevations(drawdown)),
  roughness: roughnessParameters(assumed),
  viscosity: 1e-6,
});
const full = waterOf(productiveLake.drawdown);
const lowered = waterOf(drawnDownLake.drawdown);
const thin: Layer = { ...bareSurface, cover: 0.8, lengthMm: 8, thickness: 0.008, mass: 2, number: 12_500 };

describe("gravity supply from the lake's level", () => {
  const conduit = { length: 1500, diameter: 1.1, roughness: 0.0005, minorLoss: 2 };
  const intake: Intake = {
    ...gravityIntake,
    demand: everyMonth(1.5),
    conduit,
    supply: { by: "gravity", outletElevation: 93 },
  };

  it("has the head of the month's mean level above the outlet, and none below it", () => {
    // The lake stands at 90 m in January and at 100 m from March on.
    const { cleanYear } = supplyOf(intake, lowered);
    expect(cleanYear[0]).toEqual({ head: 0, delivered: 0 });
    const july = supplyOf({ ...intake, supply: { by: "gravity", availableHead: 7 } }, lowered).cleanYear[6];
    expect(cleanYear[6]).toEqual(july);
  });

  it("spends no more than that head, and delivers the demand where it suffices", () => {
    const { clean, cleanYear } = supplyOf(intake, lowered);
    const needed = pipeHeadLoss(clean, 1.5, 1e-6);
    expect(needed).toBeLessThan(7);
    expect(cleanYear[6]).toEqual({ head: needed, delivered: 1.5 });
    const low = supplyOf({ ...intake, supply: { by: "gravity", outletElevation: 99 } }, full).cleanYear[6];
    expect(low?.head).toBeCloseTo(1, 12);
    expect(pipeHeadLoss(clean, low?.delivered ?? Number.NaN, 1e-6)).toBeCloseTo(1, 9);
  });

  it("costs nothing for mussels in a month in which the lake stands below the outlet", () => {
    const context = contextOf(drawnDownLake, 3, assumed);
    const [, part] = intakeComponents(intake, context);
    expect(lossesOf(part, thin, 0).map(({ quantity }) => quantity)).toEqual([0]);
  });
});

const pumpWith = (changes: Partial<PumpSupply>): Intake => ({
  ...pumpedIntake,
  supply: { ...curvePump, ...changes },
});

describe("a pump known by its curve", () => {
  it("is not known by where it delivers to alone, nor is the lake's own head a pump", () => {
    const { curve, deliveryElevation } = curvePump;
    const known = (supply: Intake["supply"]) =>
      pumpedSupply({ supply, demand: pumpedIntake.demand }, full) !== undefined;
    expect(known(curvePump)).toBe(true);
    expect(known({ by: "pump", efficiency: 0.75, energyPrice: 0.08, deliveryElevation })).toBe(false);
    expect(known({ by: "pump", efficiency: 0.75, energyPrice: 0.08, curve })).toBe(false);
    expect(known(gravityIntake.supply)).toBe(false);
  });

  it("lifts from the month's mean level", () => {
    // By hand: 10 m more lift in January, when the lake stands at 90 m, than from the full lake.
    const variable = pumpWith({ control: "variable-speed" });
    const high = supplyOf(variable, full).cleanYear[0]?.head ?? Number.NaN;
    const low = supplyOf(variable, lowered).cleanYear[0]?.head ?? Number.NaN;
    expect(low - high).toBeCloseTo(10, 9);
    const loss = pipeHeadLoss(supplyOf(variable, full).clean, 0.5, 1e-6);
    expect(high).toBeCloseTo(25 + loss, 9);
  });

  it("is charged the extra head at which an on-off pump runs", () => {
    // Energy rho g Q h/eta of the volume delivered, with the heads of both operating points.
    const context = contextOf(productiveLake, 3, assumed);
    const intake = pumpWith({});
    const supply = supplyOf(intake, context);
    const fouled = fouledConveyance(supply, thin, 0, context);
    const clean = supply.cleanYear[0]?.head ?? Number.NaN;
    expect(fouled.delivered).toBe(0.5);
    expect(fouled.head).toBeGreaterThan(clean);
    const energy = lossesOf(intakeComponents(intake, context)[1], thin, 0).find(
      ({ quantityKind }) => quantityKind === "energy",
    );
    const expected = ((9.81 * 0.5 * (fouled.head - clean)) / 0.75) * 31 * 24;
    expect(relativeGap(energy?.quantity ?? Number.NaN, expected)).toBeLessThan(1e-12);
  });

  it("loses the water of the demand that the fouled operating point does not reach", () => {
    const context = contextOf(productiveLake, 3, assumed);
    const choked = { ...thin, cover: 3, lengthMm: 25, thickness: 0.2 };
    const supply = supplyOf(pumpWith({}), context);
    const { delivered, head } = fouledConveyance(supply, choked, 6, context);
    expect(delivered).toBeLessThan(1.2);
    expect(head).toBeCloseTo(pumpHead(pumpCurve([{ flow: 1.3, head: 34 }]), delivered), 9);
    const water = lossesOf(intakeComponents(pumpWith({}), context)[1], choked, 6).find(
      ({ quantityKind }) => quantityKind === "volume",
    );
    expect(water?.quantity).toBeCloseTo((1.2 - delivered) * 31 * 86_400, 3);
  });

  it("uses no more energy at variable speed than on and off, clean or fouled, in any month", () => {
    const layers = fc
      .record({
        cover: fc.double({ min: 0, max: 4, noNaN: true }),
        lengthMm: fc.double({ min: 1, max: 30, noNaN: true }),
        thickness: fc.double({ min: 0, max: 0.3, noNaN: true }),
      })
      .map((part) => ({ ...bareSurface, ...part, mass: 1 }));
    const shares = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(layers, fc.nat(11), shares(1.2, 3), shares(26, 80), (layer, month, flow, head) => {
        const energyBy = (control: "on-off" | "variable-speed") => {
          const supply = supplyOf(pumpWith({ control, curve: [{ flow, head }] }), full);
          const fouled = fouledConveyance(supply, layer, month, full);
          const clean = supply.cleanYear[month];
          if (!clean) throw new Error("no month");
          expect(fouled.delivered).toBeLessThanOrEqual(clean.delivered * (1 + 1e-9));
          expect(fouled.head).toBeGreaterThanOrEqual(clean.head * (1 - 1e-9));
          return [clean, fouled].map((each) => pumpPower(each.delivered, each.head, 0.75));
        };
        const [variable, onOff] = [energyBy("variable-speed"), energyBy("on-off")];
        expect(variable[0]).toBeLessThanOrEqual((onOff[0] ?? Number.NaN) * (1 + 1e-9));
        expect(variable[1]).toBeLessThanOrEqual((onOff[1] ?? Number.NaN) * (1 + 1e-9));
      }),
      { seed: 501, numRuns: 300 },
    );
  });
});

describe("the summary of a pump", () => {
  it("has the duty, the head to spare and both operating points", () => {
    // By hand: demand 1.2 m3/s in July from the full lake, 25 m of lift, one-point curve 34 m at 1.3 m3/s:
    // H = 34 (4 - (Q/1.3)^2)/3.
    const [summary] = pumpSummary(pumpWith({}), thin, full);
    const loss = pipeHeadLoss(supplyOf(pumpWith({}), full).clean, 1.2, 1e-6);
    expect(summary?.month).toBe(6);
    expect(summary?.design.flow).toBe(1.2);
    expect(summary?.design.head).toBeCloseTo(25 + loss, 9);
    expect(summary?.margin).toBeCloseTo((34 * (4 - (1.2 / 1.3) ** 2)) / 3 - 25 - loss, 9);
    expect(summary?.clean.point.flow).toBeGreaterThan(summary?.fouled.point.flow ?? Number.NaN);
    const ratio = (summary?.fouled.point.flow ?? Number.NaN) / (summary?.clean.point.flow ?? Number.NaN);
    expect(summary?.capacityLeft).toBeCloseTo(ratio, 12);
    expect(summary?.capacityLeft).toBeLessThan(1);
  });

  it("takes the lowest lake of the months with the largest demand", () => {
    const even = { ...pumpWith({ control: "variable-speed" }), demand: everyMonth(0.5) };
    const [summary] = pumpSummary(even, bareSurface, lowered);
    expect(summary?.month).toBe(0);
    expect(summary?.capacityLeft).toBeCloseTo(1, 9);
    expect(summary?.clean.speed).toBeLessThan(1);
  });

  it("stands in the hydraulics of a structure, and only where there is a curve", () => {
    const context = contextOf(productiveLake, 3, assumed);
    const { hydraulics } = structureResult(pumpWith({}), [context]);
    expect(hydraulics.pumps).toHaveLength(1);
    expect(hydraulics.pipes[0]?.clean.regime).toBe("turbulent");
    expect(structureResult(pumpedIntake, [context]).hydraulics.pumps).toEqual([]);
  });
});

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fouledPipe, roughnessParameters } from "../../../src/model/hydraulics/fouled-pipe.js";
import { pipeHeadLoss, regimeOf } from "../../../src/model/hydraulics/friction.js";
import { equivalentRoughness, hazenWilliamsLoss } from "../../../src/model/hydraulics/hazen-williams.js";
import { cleanWaterway, waterwayFlow, waterwayLoss } from "../../../src/model/hydraulics/waterway.js";
import { bareSurface } from "../../../src/model/mussels/layer.js";
import { assumed } from "../assumptions.js";
import { relativeGap } from "../near.js";

const viscosity = 1e-6;
const parameters = roughnessParameters(assumed);
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Pipes known by their C, with a largest flow. */
const pipes = fc
  .record({
    length: between(20, 5000),
    diameter: between(0.05, 3),
    minorLoss: between(0, 10),
    hazenWilliamsC: between(40, 160),
    velocity: between(0.3, 3),
  })
  .map(({ velocity, ...pipe }) => ({ pipe, largestFlow: (velocity * Math.PI * pipe.diameter ** 2) / 4 }));

describe("a wall known by its C", () => {
  it("loses by Hazen-Williams and local losses, and passes what its head drives", () => {
    fc.assert(
      fc.property(pipes, between(0.01, 1), ({ pipe, largestFlow }, share) => {
        const clean = cleanWaterway(pipe, { largestFlow, viscosity });
        const flow = share * largestFlow;
        const velocity = flow / ((Math.PI * pipe.diameter ** 2) / 4);
        const expected =
          hazenWilliamsLoss(pipe, flow, pipe.hazenWilliamsC) + (pipe.minorLoss * velocity ** 2) / (2 * 9.81);
        const loss = waterwayLoss(clean, flow, viscosity);
        expect(relativeGap(loss, expected)).toBeLessThan(1e-12);
        expect(relativeGap(waterwayFlow(clean, loss, viscosity), flow)).toBeLessThan(1e-9);
      }),
      { seed: 401, numRuns: 300 },
    );
  });

  it("has a sand roughness that loses the same at the largest flow, or that of a smooth wall", () => {
    fc.assert(
      fc.property(pipes, ({ pipe, largestFlow }) => {
        const roughness = equivalentRoughness(pipe, pipe.hazenWilliamsC, { flow: largestFlow, viscosity });
        const byDarcy = pipeHeadLoss({ ...pipe, roughness, minorLoss: 0 }, largestFlow, viscosity);
        const byC = hazenWilliamsLoss(pipe, largestFlow, pipe.hazenWilliamsC);
        fc.pre(roughness < pipe.diameter / 2); // beyond it the model caps e/D
        if (roughness > 0) expect(relativeGap(byDarcy, byC)).toBeLessThan(1e-9);
        else expect(byC).toBeLessThanOrEqual(byDarcy * (1 + 1e-9));
      }),
      { seed: 402, numRuns: 300 },
    );
  });

  it("of C 129.6 at 1.5 m and 1.7 m/s is as rough as 0.3 mm, of C 76.1 as 15 mm", () => {
    // Equivalents computed from Colebrook-White and a variant of Hazen-Williams that moves C by 0.1: 0.3 % in C is
    // some 4 % in e at 0.3 mm.
    const flow = (1.7 * Math.PI * 1.5 ** 2) / 4;
    const of = (c: number) => equivalentRoughness({ length: 1000, diameter: 1.5 }, c, { flow, viscosity });
    expect(relativeGap(of(129.6), 0.0003)).toBeLessThan(0.04);
    expect(relativeGap(of(76.1), 0.015)).toBeLessThan(0.04);
  });

  it("never loses less under shells, nor passes more, in any month's flow", () => {
    const layers = fc.record({
      cover: between(0, 4),
      lengthMm: between(0, 30),
      thickness: between(0, 0.02),
    });
    fc.assert(
      fc.property(pipes, layers, between(0.01, 1), ({ pipe, largestFlow }, layer, share) => {
        const clean = cleanWaterway(pipe, { largestFlow, viscosity });
        const fouled = fouledPipe(clean, { ...bareSurface, ...layer }, parameters);
        const flow = share * largestFlow;
        const loss = waterwayLoss(clean, flow, viscosity);
        expect(waterwayLoss(fouled, flow, viscosity)).toBeGreaterThanOrEqual(loss);
        expect(waterwayFlow(fouled, loss, viscosity)).toBeLessThanOrEqual(flow * (1 + 1e-9));
      }),
      { seed: 403, numRuns: 300 },
    );
  });

  it("is as rough as the shells where they are rougher", () => {
    const clean = cleanWaterway(
      { length: 500, diameter: 1, minorLoss: 1, hazenWilliamsC: 130 },
      { largestFlow: 1, viscosity },
    );
    const layer = { ...bareSurface, cover: 2, lengthMm: 10, thickness: 0.01 };
    expect(fouledPipe(clean, layer, parameters)).toMatchObject({ roughness: 0.015, diameter: 0.98 });
    expect(clean.roughness).toBeLessThan(0.015);
  });
});

describe("the regime of a flow", () => {
  it("is laminar up to Re 2000, turbulent from 4000, transitional between", () => {
    // The limits at which the friction factor changes its law; EPANET blends over the same range (from memory).
    expect([100, 2000, 2001, 3999, 4000, 1e6].map(regimeOf)).toEqual([
      "laminar",
      "laminar",
      "transitional",
      "transitional",
      "turbulent",
      "turbulent",
    ]);
  });
});

import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import {
  fouledPipe,
  roughnessParameters,
  roughnessRatio,
} from "../../../src/model/hydraulics/fouled-pipe.js";
import {
  flowAtHead,
  frictionFactor,
  pipeArea,
  pipeHeadLoss,
} from "../../../src/model/hydraulics/friction.js";
import { bareSurface, type Layer } from "../../../src/model/mussels/layer.js";
import { assumed } from "../assumptions.js";
import { halfDigit } from "../near.js";

const parameters = roughnessParameters(assumed);
const covers = fc.double({ min: 0, max: 6, noNaN: true });

// Water Resources Research, doi 10.1029/2023WR036503, abstract: sand roughness over shell length is about 1.5 for
// a continuous layer with N L^2 above 1.2, up to 2.4 between 0.5 and 1.2, and below 1.5 under 0.5.
describe("the roughness of shells", () => {
  test.each([1.2001, 1.5, 4])("is 1.5 shell lengths where the cover is %d, above 1.2", (cover) => {
    expect(roughnessRatio(cover, parameters)).toBe(1.5);
  });

  it("is 15 mm under closed shells of 10 mm", () => {
    const layer: Layer = { ...bareSurface, cover: 1.3, lengthMm: 10, thickness: 0.01 };
    const pipe = { length: 100, diameter: 1, roughness: 1e-4, minorLoss: 0 };
    expect(fouledPipe(pipe, layer, parameters).roughness).toBeCloseTo(0.015, 12);
  });

  it("lies between 1.5 and 2.4 shell lengths where the cover is 0.5 to 1.2, and reaches 2.4", () => {
    const grid = Array.from({ length: 71 }, (_, step) => 0.5 + step / 100);
    const ratios = grid.map((cover) => roughnessRatio(cover, parameters));
    expect(Math.min(...ratios)).toBeGreaterThanOrEqual(1.5 - 1e-12);
    expect(Math.max(...ratios)).toBeLessThanOrEqual(2.4 + 1e-12);
    expect(Math.max(...ratios)).toBeCloseTo(2.4, 10);
  });

  test.each([
    // By the stated straight lines 1.5 at a cover of 0.5, 2.4 at 0.85, 1.5 at 1.2 (by hand).
    [0.5875, 1.725],
    [0.675, 1.95],
    [1.025, 1.95],
    [1.1125, 1.725],
    // And from nothing to 1.5 at 0.5.
    [0.1, 0.3],
    [0.25, 0.75],
  ])("is on the straight lines between these ranges at a cover of %d", (cover, expected) => {
    expect(roughnessRatio(cover, parameters)).toBeCloseTo(expected, 12);
  });

  it("stays below 1.5 shell lengths where shells stand apart, and vanishes with them", () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 0.4999, noNaN: true }), (cover) => {
        expect(roughnessRatio(cover, parameters)).toBeLessThan(1.5);
      }),
      { seed: 1, numRuns: 100 },
    );
    expect(roughnessRatio(0, parameters)).toBe(0);
  });

  it("has no step: a little more cover never changes it by more than a little", () => {
    // The steepest line drawn is 0.9 over half of 0.7, below 3 per unit of cover; 3.0 itself below 0.5.
    fc.assert(
      fc.property(covers, (cover) => {
        const step = roughnessRatio(cover + 1e-6, parameters) - roughnessRatio(cover, parameters);
        expect(Math.abs(step)).toBeLessThan(4e-6);
      }),
      { seed: 2, numRuns: 300 },
    );
  });
});

const clean = { length: 3000, diameter: 1.5, roughness: 0.0003, minorLoss: 0 };
const closed = (lengthMm: number, thicknessMm: number): Layer => ({
  ...bareSurface,
  cover: 2,
  lengthMm,
  thickness: thicknessMm / 1000,
});

// Computed from the stated equations: 3 m3/s through 3000 m of 1.5 m bore, clean wall 0.3 mm, nu 1e-6, sand
// roughness 1.5 shell lengths, bore less twice the layer; Darcy-Weisbach with Colebrook-White.
const worked = [
  { shells: 10, layer: 0, ks: 0.015, bore: 1.5, f: 0.0379277, loss: 11.14257, ratio: 2.68282, left: 0.6104 },
  {
    shells: 10,
    layer: 10,
    ks: 0.015,
    bore: 1.48,
    f: 0.0380998,
    loss: 11.97015,
    ratio: 2.88208,
    left: 0.588917,
  },
  {
    shells: 20,
    layer: 20,
    ks: 0.03,
    bore: 1.46,
    f: 0.0491598,
    loss: 16.53221,
    ratio: 3.98049,
    left: 0.50115,
  },
  { shells: 20, layer: 50, ks: 0.03, bore: 1.4, f: 0.0499628, loss: 20.72486, ratio: 4.98996, left: 0.44759 },
] as const;

describe("a fouled pipe", () => {
  it("starts from the computed clean state", () => {
    const reynolds = (4 * 3) / (Math.PI * 1.5 * 1e-6);
    expect(Math.abs(frictionFactor(reynolds, 0.0003 / 1.5) - 0.0141373)).toBeLessThanOrEqual(halfDigit(7));
    expect(Math.abs(pipeHeadLoss(clean, 3, 1e-6) - 4.15331)).toBeLessThanOrEqual(halfDigit(5));
  });

  it.each(worked)("loses $ratio times the head with $shells mm shells in a $layer mm layer", (row) => {
    const fouled = fouledPipe(clean, closed(row.shells, row.layer), parameters);
    expect(fouled.roughness).toBeCloseTo(row.ks, 12);
    expect(fouled.diameter).toBeCloseTo(row.bore, 12);
    const reynolds = ((3 / pipeArea(row.bore)) * row.bore) / 1e-6;
    expect(Math.abs(frictionFactor(reynolds, row.ks / row.bore) - row.f)).toBeLessThanOrEqual(halfDigit(7));
    const loss = pipeHeadLoss(fouled, 3, 1e-6);
    expect(Math.abs(loss - row.loss)).toBeLessThanOrEqual(halfDigit(5));
    expect(Math.abs(loss / pipeHeadLoss(clean, 3, 1e-6) - row.ratio)).toBeLessThanOrEqual(halfDigit(5));
  });

  it.each(worked)(
    "passes $left of the flow at the same head with $shells mm shells, $layer mm layer",
    (row) => {
      const fouled = fouledPipe(clean, closed(row.shells, row.layer), parameters);
      const head = pipeHeadLoss(clean, 3, 1e-6);
      expect(Math.abs(flowAtHead(fouled, head, 1e-6) / 3 - row.left)).toBeLessThanOrEqual(halfDigit(5));
    },
  );

  it("is never smoother nor wider than the clean pipe, and keeps its length and local losses", () => {
    fc.assert(
      fc.property(
        covers,
        fc.double({ min: 0, max: 40, noNaN: true }),
        fc.double({ min: 0, max: 0.1, noNaN: true }),
        fc.double({ min: 1e-6, max: 0.01, noNaN: true }),
        (cover, lengthMm, thickness, roughness) => {
          const pipe = { length: 200, diameter: 0.6, roughness, minorLoss: 1.5 };
          const fouled = fouledPipe(pipe, { ...bareSurface, cover, lengthMm, thickness }, parameters);
          expect(fouled.roughness).toBeGreaterThanOrEqual(roughness);
          expect(fouled.diameter).toBeLessThanOrEqual(0.6);
          expect(fouled.diameter).toBeGreaterThanOrEqual(0);
          expect([fouled.length, fouled.minorLoss]).toEqual([200, 1.5]);
          expect(pipeHeadLoss(fouled, 0.3, 1e-6)).toBeGreaterThanOrEqual(pipeHeadLoss(pipe, 0.3, 1e-6));
        },
      ),
      { seed: 4, numRuns: 200 },
    );
  });

  it("is the clean pipe under a bare wall, and closed where the layer fills the bore", () => {
    expect(fouledPipe(clean, bareSurface, parameters)).toEqual(clean);
    expect(fouledPipe({ ...clean, diameter: 0.04 }, closed(20, 25), parameters).diameter).toBe(0);
  });
});

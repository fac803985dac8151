import { describe, expect, it } from "vitest";
import { canalArea, canalCapacityLeft, canalPerimeter } from "../../../src/model/hydraulics/canal.js";
import { bareSurface, type Layer } from "../../../src/model/mussels/layer.js";
import { assumed } from "../assumptions.js";

const canal = { bottomWidth: 1.2, depth: 0.9, sideSlope: 1.5, roughness: 0.001 };
const shells = { closedCover: 1.2, openCover: 0.5, closedRatio: 1.5, largestRatio: 2.4 };
const layerOf = (thickness: number, lengthMm: number, cover: number): Layer => ({
  ...bareSurface,
  thickness,
  lengthMm,
  cover,
});

describe("a lined canal", () => {
  it("has the section and the perimeter of a trapezoid", () => {
    // By hand: (1.2 + 1.5 × 0.9) × 0.9 = 2.295; 1.2 + 2 × 0.9 × √3.25 = 4.44500.
    expect(canalArea(canal)).toBeCloseTo(2.295, 9);
    expect(canalPerimeter(canal)).toBeCloseTo(4.445, 4);
  });

  it("carries all of its flow clean, and what the layer leaves of section and smoothness", () => {
    expect(canalCapacityLeft(canal, bareSurface, shells)).toBe(1);
    // By hand: 10 mm on 4.445 m leaves 2.25055 of 2.295 m²; closed shells of 10 mm are 15 mm rough:
    // (2.25055/2.295)^(5/3) × (1/15)^(1/6) = 0.967929 × 0.636773 = 0.61635.
    expect(canalCapacityLeft(canal, layerOf(0.01, 10, 2), shells)).toBeCloseTo(0.61635, 4);
  });

  it("has by Strickler a Manning's n of 0.015 for a millimetre of roughness", () => {
    // n = k^(1/6)/21.1, from memory; 0.015 is the textbook value of a concrete lining.
    expect(assumed("irrigation.canal-roughness") ** (1 / 6) / 21.1).toBeCloseTo(0.015, 4);
  });

  it("is never smoother fouled, and carries nothing where the layer fills it", () => {
    // Open shells of 0.2 mm are smoother than the lining: the section alone counts, 0.02 mm of 4.445 m.
    expect(canalCapacityLeft(canal, layerOf(0.00002, 0.2, 0.1), shells)).toBeCloseTo(
      (1 - (0.00002 * canalPerimeter(canal)) / 2.295) ** (5 / 3),
      9,
    );
    expect(canalCapacityLeft(canal, layerOf(0.6, 20, 2), shells)).toBe(0);
  });
});

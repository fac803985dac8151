import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { bareSurface, type Layer } from "../../../../src/model/mussels/layer.js";
import { shellParameters, wetMassG } from "../../../../src/model/mussels/shell.js";
import {
  blindings,
  coolerCleanings,
  flowShare,
  leftOf,
} from "../../../../src/model/structures/raw-water/loading.js";
import {
  caughtMass,
  heldLength,
  lodgingPieces,
  longerShare,
  shedPieces,
} from "../../../../src/model/structures/raw-water/pieces.js";
import { assumed } from "../../assumptions.js";

const parameters = { spread: 2, width: 0.5, carriedShare: 0.5 };
const shell = shellParameters(assumed);
const pieces = { mass: 2, size: 0.02 };
const layer: Layer = {
  ...bareSurface,
  number: 5000,
  lengthMm: 16,
  cover: 1.6,
  mass: 6,
  thickness: 0.012,
  shed: 0.4,
};

describe("pieces that a wall sheds", () => {
  it("are half of what dies on it, and as long as a shell or as the layer is thick, by hand", () => {
    expect(shedPieces(layer, 10, parameters)).toEqual({ mass: 2, size: 0.016 });
    expect(shedPieces({ ...layer, thickness: 0.03 }, 10, parameters).size).toBe(0.03);
    expect(shedPieces(bareSurface, 10, parameters)).toEqual({ mass: 0, size: 0 });
  });

  it("are longer than their size by 1/e of the mass, and than half of it by exp(−1/4), by hand", () => {
    expect(longerShare(pieces, 0.02, parameters)).toBeCloseTo(Math.exp(-1), 12);
    expect(longerShare(pieces, 0.01, parameters)).toBeCloseTo(Math.exp(-0.25), 12);
    expect(longerShare({ mass: 0, size: 0 }, 0.01, parameters)).toBe(0);
  });

  it("pass a mesh end on: 10 mm hold what is longer than 20 mm, by hand", () => {
    expect(heldLength(0.01, parameters)).toBe(0.02);
    expect(caughtMass(pieces, 0.01, parameters)).toBeCloseTo(2 * Math.exp(-1), 12);
  });

  it("lodge across a bore of 15 mm if they are longer and the mesh lets them by, by hand", () => {
    const found = lodgingPieces(pieces, { bore: 0.015, mesh: 0.01 }, parameters, shell);
    const between = Math.exp(-(0.75 ** 2)) - Math.exp(-1);
    expect(found).toBeCloseTo((2000 * between) / wetMassG(20, shell), 9);
  });

  it("lodge nowhere behind a mesh that holds all that is longer than the bore", () => {
    // 7.5 mm hold what is longer than 15 mm.
    expect(lodgingPieces(pieces, { bore: 0.015, mesh: 0.0075 }, parameters, shell)).toBe(0);
    expect(lodgingPieces(pieces, { bore: 0.015, mesh: undefined }, parameters, shell)).toBeGreaterThan(0);
  });

  it("are never more behind a finer mesh", () => {
    const mesh = fc.double({ min: 0.001, max: 0.03, noNaN: true });
    fc.assert(
      fc.property(mesh, mesh, (a, b) => {
        const lodging = (each: number) => {
          const held = heldLength(each, parameters);
          const found = lodgingPieces(pieces, { bore: 0.012, mesh: each }, parameters, shell);
          // By mass, since coarser meshes let heavier pieces by.
          return (found * wetMassG(Math.min(20, held * 1000), shell)) / 1000;
        };
        expect(lodging(Math.min(a, b))).toBeLessThanOrEqual(lodging(Math.max(a, b)) + 1e-9);
      }),
      { seed: 2202, numRuns: 200 },
    );
  });
});

describe("what pieces do", () => {
  it("blind a screen as they lie side by side, by hand", () => {
    // 2 kg × exp(−1) at 500 kg/m³ and 20 mm cover 0.0736 m² of half of 0.3 m².
    const line = { strainer: { mesh: 0.01, screenArea: 0.3, type: "duplex" } } as const;
    const loading = { pieces: parameters, blindedShare: 0.5 };
    const found = blindings(line, [pieces], loading, { bulkDensity: 500 });
    expect(found).toBeCloseTo((2 * Math.exp(-1)) / (500 * 0.02) / 0.15, 12);
  });

  it("call for a cleaning each time that the spare tubes are used up, at most as often as can be, by hand", () => {
    const limits = { spareTubes: 0.1, mostCleanings: 4 };
    expect(coolerCleanings(0, limits)).toEqual({ cleanings: 0, peak: 0 });
    expect(coolerCleanings(0.05, limits)).toEqual({ cleanings: 0.5, peak: 0.05 });
    expect(coolerCleanings(0.2, limits)).toEqual({ cleanings: 2, peak: 0.1 });
    expect(coolerCleanings(2, limits)).toEqual({ cleanings: 4, peak: 0.5 });
    expect(coolerCleanings(9, limits)).toEqual({ cleanings: 4, peak: 1 });
  });

  it("leave water by the first passes and tubes by all of them, by hand", () => {
    const one = { name: "air", count: 2, tubes: 100, bore: 0.02, passes: 2 };
    const other = { name: "oil", count: 1, tubes: 100, bore: 0.01, passes: 1 };
    // First passes: 100 tubes of 20 mm and 100 of 10 mm, areas as 4 to 1.
    expect(flowShare(one, [one, other])).toBeCloseTo(0.8, 12);
    const left = leftOf([
      { cooler: one, peak: 0.5 },
      { cooler: other, peak: 0 },
    ]);
    expect(left.water).toBeCloseTo(0.8 * 0.5 + 0.2, 12);
    expect(left.tubes).toBeCloseTo((200 * 0.75 + 100) / 300, 12);
    expect(leftOf([])).toEqual({ water: 1, tubes: 1 });
  });
});

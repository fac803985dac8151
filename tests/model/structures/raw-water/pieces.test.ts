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
  heldBy,
  lodgingPieces,
  longerShare,
  openingOf,
  piecesOf,
  shedPieces,
} from "../../../../src/model/structures/raw-water/pieces.js";
import { assumed } from "../../assumptions.js";

const parameters = { spread: 2, width: 0.5, carriedShare: 0.5 };
const shell = shellParameters(assumed);
const pieces = piecesOf(2, 0.02, parameters);
const opening = (length: number) => openingOf(length, parameters);
const mesh = (width: number | undefined) => heldBy(width, parameters);
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
    expect(shedPieces(layer, 10, parameters)).toMatchObject({ mass: 2, size: 0.016 });
    expect(shedPieces({ ...layer, thickness: 0.03 }, 10, parameters).size).toBe(0.03);
    expect(shedPieces(bareSurface, 10, parameters)).toMatchObject({ mass: 0, size: 0 });
  });

  it("are longer than their size by 1/e of the mass, and than half of it by exp(−1/4), by hand", () => {
    expect(longerShare(pieces, opening(0.02))).toBeCloseTo(Math.exp(-1), 12);
    expect(longerShare(pieces, opening(0.01))).toBeCloseTo(Math.exp(-0.25), 12);
    expect(longerShare(piecesOf(0, 0, parameters), opening(0.01))).toBe(0);
  });

  it("pass a mesh end on: 10 mm hold what is longer than 20 mm, by hand", () => {
    expect(mesh(0.01).length).toBe(0.02);
    expect(caughtMass(pieces, mesh(0.01))).toBeCloseTo(2 * Math.exp(-1), 12);
  });

  it("lodge across a bore of 15 mm if they are longer and the mesh lets them by, by hand", () => {
    const found = lodgingPieces(pieces, { bore: opening(0.015), held: mesh(0.01) }, shell);
    const between = Math.exp(-(0.75 ** 2)) - Math.exp(-1);
    expect(found).toBeCloseTo((2000 * between) / wetMassG(20, shell), 9);
  });

  it("lodge nowhere behind a mesh that holds all that is longer than the bore", () => {
    // 7.5 mm hold what is longer than 15 mm, and 5 mm what is longer than 10 mm.
    expect(lodgingPieces(pieces, { bore: opening(0.015), held: mesh(0.0075) }, shell)).toBe(0);
    expect(lodgingPieces(pieces, { bore: opening(0.015), held: mesh(0.005) }, shell)).toBe(0);
    expect(lodgingPieces(piecesOf(0, 0, parameters), { bore: opening(0.015), held: mesh(0.01) }, shell)).toBe(
      0,
    );
    expect(lodgingPieces(pieces, { bore: opening(0.015), held: mesh(undefined) }, shell)).toBeGreaterThan(0);
  });

  it("are never more behind a finer mesh", () => {
    const meshes = fc.double({ min: 0.001, max: 0.03, noNaN: true });
    fc.assert(
      fc.property(meshes, meshes, (a, b) => {
        const lodging = (each: number) => {
          const held = mesh(each);
          const found = lodgingPieces(pieces, { bore: opening(0.012), held }, shell);
          // By mass, since coarser meshes let heavier pieces by.
          return (found * wetMassG(Math.min(20, held.length * 1000), shell)) / 1000;
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
    const screen = { held: mesh(0.01), area: 0.3 };
    const found = blindings(screen, pieces, { blindedShare: 0.5, bulkDensity: 500 });
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
    const left = leftOf([one, other])([0.5, 0]);
    expect(left.water).toBeCloseTo(0.8 * 0.5 + 0.2, 12);
    expect(left.tubes).toBeCloseTo((200 * 0.75 + 100) / 300, 12);
    expect(leftOf([])([])).toEqual({ water: 1, tubes: 1 });
  });
});

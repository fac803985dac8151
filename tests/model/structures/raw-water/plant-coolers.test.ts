import { describe, expect, it } from "vitest";
import { bareSurface, type Layer } from "../../../../src/model/mussels/layer.js";
import { operatingYear } from "../../../../src/model/structures/hydropower.js";
import type { Hydropower } from "../../../../src/model/structures/inputs.js";
import {
  arrivalsOf,
  loadingOf,
  loadingParameters,
} from "../../../../src/model/structures/raw-water/loading.js";
import { shedPieces } from "../../../../src/model/structures/raw-water/pieces.js";
import { missingShare } from "../../../../src/model/structures/raw-water/raw-water.js";
import { serviceShare } from "../../../../src/model/structures/small-line.js";
import { componentsOf } from "../../../../src/model/structures/structure.js";
import { assumed } from "../../assumptions.js";
import { contextOf } from "../../contexts.js";
import { productiveLake } from "../../lakes.js";
import { plant } from "../../study.js";
import { lossesOf } from "../losses.js";

const context = contextOf(productiveLake, 3);
const parameters = loadingParameters(context);
const layer: Layer = {
  ...bareSurface,
  number: 5000,
  lengthMm: 18,
  cover: 1.6,
  mass: 6,
  thickness: 0.012,
  shed: 0.4,
};
/** A line of so wide a bore that it lacks no water under that layer, with nothing upstream. */
const coolingWater: Hydropower["coolingWater"] = {
  ...plant.coolingWater,
  diameter: 0.3,
  strainer: { mesh: 0.012, screenArea: 0.3, type: "simplex" },
  coolers: [{ name: "air coolers", count: 4, tubes: 100, bore: 0.012, passes: 2 }],
  upstreamWalls: [],
};
const partOf = (water: Hydropower["coolingWater"]) =>
  componentsOf({ ...plant, coolingWater: water }, context).find(({ kind }) => kind === "service-line");
const energyOf = (water: Hydropower["coolingWater"], under: Layer) =>
  lossesOf(partOf(water), under, 6).filter(({ quantityKind }) => quantityKind === "energy");

describe("energy of a plant of two units with plugged coolers", () => {
  const area = Math.PI * 0.3 * 60;
  const pieces = shedPieces(layer, area, parameters.pieces);
  const load = loadingOf(
    coolingWater,
    parameters,
  )(arrivalsOf(coolingWater, parameters, context.growth)(pieces));
  const july = operatingYear(plant, context).energy[6] ?? Number.NaN;

  it("is lost while the strainer and the coolers are open, and as far as the coolers miss water", () => {
    const limit = assumed("hydropower.derating-limit");
    const share = serviceShare(coolingWater, context);
    const missing = missingShare(coolingWater, share, parameters, limit)(layer, load.left);
    const perDay = (july / 31) * assumed("hydropower.outage-lost-share") * 2;
    // An hour for each cleaning of the strainer, eight for each of a cooler (assumptions/raw-water.yaml).
    expect(energyOf(coolingWater, layer)).toMatchObject([
      { what: "energy lost in outages", quantity: expect.closeTo((load.swaps / 24) * perDay, 6) },
      { what: "energy lost in outages", quantity: expect.closeTo((load.cleaningsOfOne / 3) * perDay, 6) },
      { what: "energy lost to plugged coolers", quantity: expect.closeTo(missing * july * 2, 6) },
    ]);
    expect(Math.min(load.swaps, load.cleaningsOfOne, missing)).toBeGreaterThan(0);
  });

  it("is not told of where nothing is lost", () => {
    expect(lossesOf(partOf(coolingWater), bareSurface, 6)).toEqual([]);
  });
});

describe("a part of a structure", () => {
  it("tells whether pieces from upstream reach it", () => {
    expect(partOf(coolingWater)?.isFed).toBe(true);
    expect(partOf(plant.coolingWater)?.isFed).toBe(false);
  });
});

import { describe, expect, it } from "vitest";
import { bareSurface, type Layer } from "../../../src/model/mussels/layer.js";
import { operatingYear } from "../../../src/model/structures/hydropower.js";
import type { Hydropower } from "../../../src/model/structures/inputs.js";
import { loadingParameters } from "../../../src/model/structures/raw-water/loading.js";
import { missingShare } from "../../../src/model/structures/raw-water/raw-water.js";
import { serviceShare } from "../../../src/model/structures/small-line.js";
import { componentsOf } from "../../../src/model/structures/structure.js";
import { assumed } from "../assumptions.js";
import { contextOf } from "../contexts.js";
import { productiveLake } from "../lakes.js";
import { plant } from "../study.js";
import { lossesOf } from "./losses.js";
import { airCoolers, fouled, loadOf, strainerOf } from "./raw-water/fouled.js";

const context = contextOf(productiveLake, 3);
/** A line of so wide a bore that it lacks no water under that layer, with nothing upstream. */
const coolingWater: Hydropower["coolingWater"] = {
  ...plant.coolingWater,
  diameter: 0.3,
  strainer: strainerOf("simplex"),
  coolers: [airCoolers],
  upstreamWalls: [],
};
const partOf = (water: Hydropower["coolingWater"]) =>
  componentsOf({ ...plant, coolingWater: water }, context).find(({ kind }) => kind === "service-line");
const energyOf = (water: Hydropower["coolingWater"], under: Layer) =>
  lossesOf(partOf(water), under, 6).filter(({ quantityKind }) => quantityKind === "energy");

describe("energy of a plant of two units with plugged coolers", () => {
  const area = Math.PI * 0.3 * 60;
  const load = loadOf(coolingWater, area, context);
  const july = operatingYear(plant, context).energy[6] ?? Number.NaN;

  it("is lost while the strainer and the coolers are open, and as far as the coolers miss water", () => {
    const limit = assumed("hydropower.derating-limit");
    const share = serviceShare(coolingWater, context);
    const missingOf = missingShare(coolingWater, share, loadingParameters(context), limit);
    const missing = missingOf(fouled, load.left);
    const perDay = (july / 31) * assumed("hydropower.outage-lost-share") * 2;
    const shut = (load.swaps * assumed("raw-water.strainer-outage")) / 24;
    const open = (load.cleaningsOfOne * assumed("raw-water.cooler-outage")) / 24;
    expect(energyOf(coolingWater, fouled)).toMatchObject([
      { what: "energy lost in outages", quantity: expect.closeTo(shut * perDay, 6) },
      { what: "energy lost in outages", quantity: expect.closeTo(open * perDay, 6) },
      { what: "energy lost to plugged coolers", quantity: expect.closeTo(missing * july * 2, 6) },
    ]);
    expect(Math.min(load.swaps, load.cleaningsOfOne, missing)).toBeGreaterThan(0);
  });

  it("is not told of where nothing is lost", () => {
    expect(lossesOf(partOf(coolingWater), bareSurface, 6)).toEqual([]);
  });
});

describe("the cooling-water line of a plant", () => {
  it("is fed from upstream where it has fittings, and not without", () => {
    expect(partOf(coolingWater)?.isFed).toBe(true);
    expect(partOf(plant.coolingWater)?.isFed).toBe(false);
  });
});

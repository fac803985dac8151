import { describe, expect, it } from "vitest";
import { flowAtHead } from "../../../../src/model/hydraulics/friction.js";
import { bareSurface, type Layer } from "../../../../src/model/mussels/layer.js";
import {
  filterHours,
  type Hatchery,
  hatcheryComponents,
} from "../../../../src/model/structures/deliveries/hatchery.js";
import { hatchery as hatcheryKind } from "../../../../src/model/structures/kinds/hatchery.js";
import { structureResult } from "../../../../src/model/structures/structure.js";
import { assumed, assumedWith } from "../../assumptions.js";
import { contextOf, contextsOf } from "../../contexts.js";
import { drawnDownLake, productiveLake } from "../../lakes.js";
import { plant } from "../../study.js";
import { brokenLimit } from "../limits-met.js";
import { lossesOf } from "../losses.js";
import { hatchery } from "./served.js";

const context = contextOf(productiveLake, 15);
const layer: Layer = { ...bareSurface, cover: 2, lengthMm: 20, thickness: 0.05, mass: 20 };
const hatcheryLosses = (each: Hatchery, month = 6, under = layer) => {
  const part = hatcheryComponents(each, context).at(-1);
  if (!part) throw new Error("no line");
  return lossesOf(part, under, month);
};
/** By hand: bore 250 mm less twice 50, shells 1.5 × 20 mm rough, 4 m less 1.5 m of aeration, of 40 L/s. */
const missing =
  1 -
  flowAtHead({ length: 300, diameter: 0.15, roughness: 0.03, minorLoss: 3 }, 2.5, context.viscosity) / 0.04;

describe("a hatchery", () => {
  it("loses fish by the share of the water that is missing, after the aeration has its head", () => {
    expect(missing).toBeGreaterThan(0.1);
    const [fish] = hatcheryLosses(hatchery);
    expect(fish).toMatchObject({ type: "loss", quantityKind: "days", unitRate: 900 });
    expect(fish?.quantity).toBeCloseTo(missing * 31, 6);
    expect(hatcheryLosses(hatchery, 6, bareSurface).map(({ what }) => what)).toEqual([
      "more cleaning of the filters",
    ]);
  });

  it("has its line for the largest flow that it needs", () => {
    expect(hatcheryComponents(hatchery, context).map(({ designFlow }) => designFlow)).toEqual([0.04]);
  });

  it("has a rack at its mouth where one is given, which costs nothing but its upkeep", () => {
    const parts = hatcheryComponents({ ...hatchery, rack: plant.rack }, context);
    expect(parts.map(({ kind }) => kind)).toEqual(["rack", "service-line"]);
    expect(lossesOf(parts[0], layer, 6)).toEqual([]);
  });

  it("is held to a shortage and to a thickness", () => {
    const line = (diameter: number) => {
      const part = hatcheryComponents({ ...hatchery, line: { ...hatchery.line, diameter } }, context).at(-1);
      if (!part) throw new Error("no line");
      return part;
    };
    expect(brokenLimit(line(0.25), bareSurface, 6)).toBeUndefined();
    expect(brokenLimit(line(0.25), layer, 6)).toMatch(/shortage/);
    // A bore of 600 mm still has flow to spare under the thickest layer allowed.
    const thickest = assumed("conduit.largest-layer");
    expect(brokenLimit(line(0.6), { ...layer, thickness: 0.99 * thickest }, 6)).toBeUndefined();
    expect(brokenLimit(line(0.6), { ...layer, thickness: 1.01 * thickest }, 6)).toMatch(/thicker/);
  });

  it("or brings that water by truck", () => {
    const [trucked] = hatcheryLosses({ ...hatchery, shortfall: { by: "trucking", price: 6 } });
    expect(trucked).toMatchObject({ type: "loss", quantityKind: "volume", unitRate: 6 });
    expect(trucked?.quantity).toBeCloseTo(missing * 31 * 86_400 * 0.04, 3);
  });

  it("misses less in a month that needs less", () => {
    expect(hatcheryLosses(hatchery, 0)[0]?.quantity).toBeLessThan(missing * 31);
    const closed = {
      ...hatchery,
      requiredFlow: hatchery.requiredFlow.map((flow, month) => (month < 3 ? 0 : flow)),
    };
    expect(hatcheryLosses(closed, 0)).toEqual([]);
  });

  it("cleans its filters more by the cover of the line", () => {
    const work = { filters: 3, cleanings: 4, hours: 2, closedCover: 1.2 };
    // By hand: 3 filters, 4 cleanings of two hours; a half under half of the cover.
    expect(filterHours(layer, work)).toBe(24);
    expect(filterHours({ ...layer, cover: 0.6 }, work)).toBeCloseTo(12, 12);
    expect(hatcheryLosses(hatchery)[1]).toMatchObject({
      quantity: 12,
      unitRate: assumed("labour.maintenance-rate"),
    });
    expect(hatcheryLosses({ ...hatchery, filters: 0 })).toHaveLength(1);
  });

  it("may not be dosed: an oxidant would kill the fish", () => {
    const { components } = structureResult(hatchery, contextsOf(productiveLake, 15));
    const plans = components.flatMap(({ impossible }) => impossible);
    expect(plans.filter(({ id }) => id.startsWith("oxidant")).length).toBeGreaterThan(0);
    expect(
      components.flatMap(({ everyPlan }) => everyPlan()).filter(({ plan }) => plan.id.startsWith("oxidant")),
    ).toEqual([]);
  });

  it("pays its duties from their year on, and tells its water", () => {
    const { years } = structureResult(hatchery, contextsOf(productiveLake, 15));
    const paid = years.map((lines) => lines.some(({ what }) => what === "Checks of stocking trucks"));
    expect(paid.slice(0, 3)).toEqual([false, true, true]);
    expect(years[1]?.find(({ what }) => what === "Checks of stocking trucks")?.type).toBe("duty");
    // By hand: 0.04 m³/s on 153 days, 0.03 on 212.
    expect(hatcheryKind.outputs?.(hatchery)[0]?.quantity).toBeCloseTo(86_400 * (0.04 * 153 + 0.03 * 212), 3);
  });

  it("loses fish, mussels or not, on days on which its mouth stands dry", () => {
    const service = (elevation: number) =>
      hatcheryKind.cleanService?.({ ...hatchery, elevation }, contextOf(drawnDownLake, 15))[0];
    // By hand: the lake stands at 90 m to the 27th of February, and rises past 95 m on the 28th: 58 days.
    expect(service(95)?.quantity.reduce((sum, days) => sum + days, 0)).toBeCloseTo(58, 9);
    expect(service(95)?.unitRate[0]).toBe(900);
    expect(service(88)?.quantity.every((days) => days === 0)).toBe(true);
    const closed = { ...hatchery, elevation: 95, requiredFlow: hatchery.requiredFlow.with(0, 0) };
    expect(hatcheryKind.cleanService?.(closed, contextOf(drawnDownLake, 15))[0]?.quantity[0]).toBe(0);
  });

  it("has nothing but its duties without mussels", () => {
    const bare = { ...productiveLake, chemistry: { calcium: 1, ph: 5 } };
    const contexts = contextsOf(
      bare,
      15,
      assumedWith({ "suitability.weight.none": 0, "suitability.weight.very-low": 0 }),
    );
    expect(structureResult({ ...hatchery, duties: [] }, contexts).years.flat()).toEqual([]);
  });
});

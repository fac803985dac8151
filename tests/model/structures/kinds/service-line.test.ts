import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { compare } from "../../../../src/model/compare.js";
import { exchangerDuty } from "../../../../src/model/hydraulics/exchanger.js";
import { flowAtHead } from "../../../../src/model/hydraulics/friction.js";
import { bareSurface, type Layer } from "../../../../src/model/mussels/layer.js";
import {
  type ServiceLine,
  serviceLineComponents,
} from "../../../../src/model/structures/kinds/service-line.js";
import { seasonDose } from "../../../../src/model/structures/oxidant.js";
import { loadingParameters } from "../../../../src/model/structures/raw-water/loading.js";
import { missingShare } from "../../../../src/model/structures/raw-water/raw-water.js";
import { serviceShare } from "../../../../src/model/structures/small-line.js";
import { assumed } from "../../assumptions.js";
import { contextOf } from "../../contexts.js";
import { productiveLake } from "../../lakes.js";
import { relativeGap } from "../../near.js";
import { sealWater, studyOf } from "../../study.js";
import { brokenLimit } from "../limits-met.js";
import { lossesOf } from "../losses.js";
import { airCoolers, fouled, loadOf, strainerOf } from "../raw-water/fouled.js";

const line: ServiceLine = { ...sealWater, oxidantAllowed: false };
const context = contextOf(productiveLake, 8, assumed);
const layerOf = (thickness: number): Layer => ({
  ...bareSurface,
  cover: 2,
  lengthMm: thickness * 1000,
  thickness,
  mass: 1,
});
const partOf = (each: ServiceLine) => {
  const [part] = serviceLineComponents(each, context);
  if (!part) throw new Error("no part");
  return part;
};

describe("a service line", () => {
  it("costs the missing share of its flow, by days and lines", () => {
    // By hand: bore 100 mm less twice 15 mm, sand roughness 1.5 x 15 mm; 31 days, three lines, 400 a day each.
    const fouled = { length: 60, diameter: 0.07, roughness: 0.0225, minorLoss: 8 };
    const missing = 1 - flowAtHead(fouled, 4, context.viscosity) / 0.008;
    expect(missing).toBeGreaterThan(0);
    const [loss] = lossesOf(partOf(line), layerOf(0.015), 0);
    expect(loss).toMatchObject({ type: "loss", quantityKind: "days", unitRate: 400 });
    expect(relativeGap(loss?.quantity ?? Number.NaN, missing * 31 * 3)).toBeLessThan(1e-9);
  });

  it("is held to a shortage and to a thickness", () => {
    const part = partOf(line);
    expect(brokenLimit(part, layerOf(0.001), 0)).toBeUndefined();
    expect(brokenLimit(part, layerOf(0.02), 0)).toMatch(/shortage/);
    // A bore of 300 mm still has flow to spare under the thickest layer allowed.
    const wide = partOf({ ...line, diameter: 0.3 });
    const thickest = assumed("conduit.largest-layer");
    expect(brokenLimit(wide, layerOf(0.99 * thickest), 0)).toBeUndefined();
    expect(brokenLimit(wide, layerOf(1.01 * thickest), 0)).toMatch(/thicker/);
  });

  it("counts every line in area, cleaning and loss", () => {
    const [three, one] = [partOf(line), partOf({ ...line, count: 1 })];
    expect(three.wettedArea).toBeCloseTo(3 * one.wettedArea, 9);
    expect(one.wettedArea).toBeCloseTo(Math.PI * 0.1 * 60, 9);
    const work = (part: typeof one) => part.cleaning.work().map(({ quantity }) => quantity);
    expect(work(three)).toEqual(work(one).map((each) => 3 * each));
  });

  it("costs nothing under a bare wall, and its outages the days of all lines", () => {
    expect(lossesOf(partOf(line), bareSurface, 0)).toEqual([]);
    const { outage } = partOf(line);
    // By hand: two days of three lines, as far as nothing bridges them.
    expect(outage?.quantity(2, 0)).toBeCloseTo(6 * assumed("supply.outage-lost-share"), 12);
    expect(outage?.charge(0)).toMatchObject({ what: "service missing in outages", unitRate: 400 });
  });

  it("take treatments for the flow of all of them", () => {
    // By hand: three of 8 L/s.
    const [part] = serviceLineComponents(sealWater, context);
    expect(part?.designFlow).toBeCloseTo(0.024, 12);
    expect(part?.oxidant?.flow[0]).toBeCloseTo(0.024, 12);
  });

  it("may be dosed only where that is allowed", () => {
    expect(partOf(line).oxidant).toBeUndefined();
    const dosed = partOf({ ...line, oxidantAllowed: true });
    expect(dosed.oxidant?.flow[0]).toBeCloseTo(3 * 0.008, 12);
    expect(seasonDose(dosed, context)(6)[0]?.quantity).toBeCloseTo(3 * 0.008 * 31 * 86_400, 6);
  });

  it("runs through a whole comparison with figures that add up", () => {
    const { structures } = compare(studyOf([line]), assumed);
    const years = structures[0]?.years ?? [];
    expect(years.length).toBeGreaterThan(0);
    const mature = years.at(-1) ?? [];
    expect(mature.length).toBeGreaterThan(0);
    for (const each of years.flat()) {
      expect(Number.isFinite(each.quantity * each.unitRate)).toBe(true);
      if (each.quantityKind === "days") expect(each.quantity).toBeLessThanOrEqual(365 * 3);
    }
    expect(structures[0]?.hydraulics.pipes.map(({ part }) => part)).toEqual(["service line"]);
  });
});

describe("a line that cools an exchanger", () => {
  const exchanger = { area: 20, cleanCoefficient: 1200, hotCapacityRate: 40 };
  const cooled: ServiceLine = { ...line, exchanger };

  it("loses less heat than water, for want of water alone, and more by a fouled wall", () => {
    const layers = fc.double({ min: 1e-4, max: 0.045, noNaN: true });
    const water = serviceShare(line, context);
    const heat = serviceShare(cooled, context);
    const wall = { ...context, assumed: (id: string) => (id.startsWith("exchanger.") ? 0 : assumed(id)) };
    const cleanWall = serviceShare(cooled, wall);
    fc.assert(
      fc.property(layers, (thickness) => {
        const layer = layerOf(thickness);
        expect(cleanWall(layer)).toBeGreaterThanOrEqual(water(layer) - 1e-12);
        expect(heat(layer)).toBeLessThanOrEqual(cleanWall(layer));
        expect(heat(layer)).toBeLessThanOrEqual(1);
        expect(heat(layer)).toBeGreaterThanOrEqual(0);
      }),
      { seed: 511, numRuns: 100 },
    );
    expect(heat(bareSurface)).toBe(1);
    expect(heat(layerOf(0.003))).toBeLessThan(cleanWall(layerOf(0.003)) - 0.01);
  });

  it("is fouled in proportion to the cover of its wall up to a closed layer", () => {
    // By hand: at a cover of 0.6, half of the closed one of 1.2, half the resistance: 1/U = 1/1200 + 0.000175. The
    // layer is too thin to narrow a line of half a metre, and the water stays whole.
    const wide: ServiceLine = { ...cooled, diameter: 0.5 };
    const share = (cover: number) => serviceShare(wide, context)({ ...layerOf(0.001), cover });
    const duty = (resistance: number) => exchangerDuty(exchanger, 0.008, 1 / (1 / 1200 + resistance));
    expect(share(0.6)).toBeCloseTo(duty(0.000175) / duty(0), 12);
    expect(share(1.2)).toBeCloseTo(duty(0.00035) / duty(0), 12);
    expect(share(2.4)).toBeCloseTo(share(1.2), 12);
  });

  it("loses the area of plugged tubes beside the water that they let by", () => {
    const share = serviceShare({ ...cooled, diameter: 0.5 }, context);
    const duty = (area: number, flow: number) => exchangerDuty({ ...exchanger, area }, flow, 1200);
    const left = share(bareSurface, { water: 0.75, tubes: 0.6 });
    expect(left).toBeCloseTo(duty(12, 0.006) / duty(20, 0.008), 12);
  });

  it("loses 11.3 % of its duty in the computed example of a fouled wall", () => {
    // C 0.5, NTU 2, then 1.481481 after 0.00035 m2K/W on 1000 W/m2K: duty ratio 0.886920 (computed). Water of the
    // whole need, 0.008 m3/s of 4186 J/kgK, is 33.488 kW/K, the smaller side; area NTU C_min/U.
    const smaller = 0.008 * 4186;
    const example: ServiceLine = {
      ...line,
      diameter: 0.5,
      exchanger: { area: 2 * smaller, cleanCoefficient: 1000, hotCapacityRate: 2 * smaller },
    };
    expect(assumed("exchanger.fouling-resistance")).toBe(0.00035);
    expect(serviceShare(example, context)(layerOf(0.005))).toBeCloseTo(0.88692, 6);
  });
});

describe("a service line with fittings", () => {
  const wide: ServiceLine = {
    ...line,
    diameter: 0.3,
    shortageCostPerDay: 500,
    strainer: strainerOf("simplex"),
    coolers: [airCoolers],
    orifices: [{ name: "seals", count: 3, bore: 0.02 }],
  };

  it("loses days of each of its lines while they stand and while coolers are plugged", () => {
    const part = partOf(wide);
    const load = loadOf(wide, part.wettedArea / 3, context);
    const limit = assumed("service-line.shortage-limit");
    const missingOf = missingShare(wide, serviceShare(wide, context), loadingParameters(context), limit);
    const missing = missingOf(fouled, load.left);
    const days = lossesOf(part, fouled, 6).filter(({ type }) => type === "loss");
    // Three lines and the 31 days of July; the wide bore lacks no water.
    const shutDays = assumed("raw-water.strainer-outage") / 24;
    const openDays = assumed("raw-water.cooler-outage") / 24;
    expect(days).toMatchObject([
      { quantity: expect.closeTo((load.swaps + load.clearingsOfOne) * shutDays * 3, 9), unitRate: 500 },
      { quantity: expect.closeTo(load.cleaningsOfOne * openDays * 3, 9), unitRate: 500 },
      { quantity: expect.closeTo(missing * 31 * 3, 9), unitRate: 500 },
    ]);
    expect(Math.min(load.swaps, load.clearingsOfOne, load.cleaningsOfOne, missing)).toBeGreaterThan(0);
  });

  it("is fed from upstream, and one without is not", () => {
    expect(partOf(wide).isFed).toBe(true);
    expect(partOf(line).isFed).toBe(false);
  });
});

import { describe, expect, it } from "vitest";
import { monthDays } from "../../../../src/model/lake/calendar.js";
import { bareSurface, type Layer } from "../../../../src/model/mussels/layer.js";
import { hydropowerComponents } from "../../../../src/model/structures/hydropower.js";
import type { Hydropower } from "../../../../src/model/structures/inputs.js";
import { type ServiceLine, serviceLine } from "../../../../src/model/structures/kinds/service-line.js";
import { leftOf, loadingParameters } from "../../../../src/model/structures/raw-water/loading.js";
import { missingShare } from "../../../../src/model/structures/raw-water/raw-water.js";
import { serviceShare } from "../../../../src/model/structures/small-line.js";
import { assumed } from "../../assumptions.js";
import { contextOf } from "../../contexts.js";
import { productiveLake } from "../../lakes.js";
import { everyMonth } from "../../near.js";
import { plant } from "../../study.js";
import { costOf } from "../followed-plainly.js";
import { keptPart } from "../kept.js";
import { brokenLimit } from "../limits-met.js";
import { lossesOf } from "../losses.js";
import { airCoolers, fouled, strainerOf } from "./fouled.js";

const context = contextOf(productiveLake, 20, assumed);
const coolers = [airCoolers];
const strainer = strainerOf("duplex");

const plantWith = (fittings: Partial<Hydropower["coolingWater"]>): Hydropower => ({
  ...plant,
  units: 1,
  energyPrice: everyMonth(0),
  coolingWater: { ...plant.coolingWater, ...fittings },
});
const coolingOf = (each: Hydropower) => {
  const part = hydropowerComponents(each, context).find(({ name }) => name === "cooling-water line");
  if (!part) throw new Error("a plant has cooling water");
  return part;
};
const lineWith = (fittings: Partial<ServiceLine>): ServiceLine => ({
  ...plant.coolingWater,
  kind: "service-line",
  id: "line",
  name: "Line",
  bearer: plant.bearer,
  fixtures: [],
  pinned: [],
  elevation: plant.elevation,
  count: 1,
  shortageCostPerDay: 0,
  oxidantAllowed: false,
  ...fittings,
});
const partOf = (line: ServiceLine) => {
  const [part] = serviceLine.components(line, context);
  if (!part) throw new Error("a line has one part");
  return part;
};
const yearly = (make: () => ReturnType<typeof coolingOf>) =>
  keptPart(() => [{ component: make(), context }]).chosen.yearlyCost;
const workOf = (part: ReturnType<typeof coolingOf>, layer: Layer, upstream?: number) =>
  costOf(lossesOf(part, layer, 6, upstream).filter(({ type }) => type === "work"));

describe("a line without strainers, coolers or orifices", () => {
  it("costs as it did, whatever is upstream", () => {
    const part = coolingOf(plantWith({}));
    expect(part.isFed).toBe(false);
    expect(lossesOf(part, fouled, 6)).toHaveLength(1);
  });
});

describe("a raw-water system", () => {
  it("costs nothing where no piece comes down", () => {
    const part = coolingOf(plantWith({ coolers, strainer, upstreamWalls: [] }));
    expect(costOf(lossesOf(part, bareSurface, 6))).toBe(0);
    expect(workOf(part, fouled)).toBeGreaterThan(0);
  });

  it("costs no work behind a self-cleaning strainer that is fine enough", () => {
    const fine = { mesh: 0.003, screenArea: 0.3, type: "self-cleaning" } as const;
    const made = () => coolingOf(plantWith({ coolers, strainer: fine, upstreamWalls: [] }));
    expect(workOf(made(), fouled)).toBe(0);
    expect(yearly(made)).toBeCloseTo(
      yearly(() => coolingOf(plantWith({}))),
      6,
    );
  });

  it("costs the same on a cooling line as on a service line", () => {
    const orifices = [{ name: "seal", count: 1, bore: 0.02 }];
    for (const fittings of [{}, { coolers, strainer }, { orifices, strainer }]) {
      const cooling = yearly(() => coolingOf(plantWith({ ...fittings, upstreamWalls: [] })));
      expect(yearly(() => partOf(lineWith(fittings)))).toBeCloseTo(cooling, 6);
    }
  });

  it("counts for each of several lines alike, by hand", () => {
    const one = lossesOf(partOf(lineWith({ coolers, strainer, shortageCostPerDay: 500 })), fouled, 6);
    const three = lossesOf(
      partOf(lineWith({ coolers, strainer, shortageCostPerDay: 500, count: 3 })),
      fouled,
      6,
    );
    expect(three.map(({ quantity }) => quantity)).toEqual(one.map(({ quantity }) => quantity * 3));
  });

  it("stands while a simplex strainer is cleaned, and not while a duplex one is", () => {
    const lost = (type: "simplex" | "duplex") =>
      costOf(
        lossesOf(
          partOf(lineWith({ strainer: { ...strainer, mesh: 0.003, type }, shortageCostPerDay: 500 })),
          fouled,
          6,
        ),
      );
    expect(lost("simplex")).toBeGreaterThan(lost("duplex"));
  });

  it("draws pieces from the penstock it is tapped from, and none behind a fine strainer with light", () => {
    // A slow penstock; the line takes 5 of 60 l/s.
    const slow: Hydropower = {
      ...plantWith({ strainer: { ...strainer, mesh: 0.003 }, coolers }),
      flow: everyMonth(0.06),
    };
    const part = coolingOf(slow);
    expect(part.isFed).toBe(true);
    expect(workOf(part, bareSurface)).toBeGreaterThan(0);
    expect(workOf(part, bareSurface, 0.5)).toBeCloseTo(workOf(part, bareSurface) / 2, 6);
    expect(workOf(part, bareSurface, 0)).toBe(0);
    // Each unit's line from its own penstock.
    expect(workOf(coolingOf({ ...slow, units: 2 }), bareSurface)).toBeCloseTo(
      2 * workOf(part, bareSurface),
      6,
    );
  });

  it("draws none from a penstock that runs too fast to settle in", () => {
    // 14 m³/s in a bore of 3 m run at 1.98 m/s, and between the bars of a narrow rack faster still.
    const fast: Hydropower = {
      ...plantWith({ strainer: { ...strainer, mesh: 0.003 }, coolers }),
      flow: everyMonth(14),
      rack: { ...plant.rack, width: 2, height: 2 },
    };
    expect(workOf(coolingOf(fast), bareSurface)).toBe(0);
  });

  it("has no plan that keeps an orifice open which is blocked faster than it can be cleared", () => {
    const part = coolingOf(
      plantWith({ orifices: [{ name: "seal", count: 1, bore: 0.004 }], upstreamWalls: [] }),
    );
    const thin = { ...fouled, lengthMm: 4, thickness: 0.004 };
    expect(brokenLimit(part, thin, 6)).toMatch(/blocked faster/);
    expect(brokenLimit(part, bareSurface, 6)).toBeUndefined();
  });
});

describe("service that plugged coolers miss", () => {
  const line = plantWith({ coolers, strainer: undefined }).coolingWater;
  const missing = missingShare(line, serviceShare(line, context), loadingParameters(context), 0.1);
  const at = (peak: number, layer: Layer = bareSurface) =>
    missing(layer, leftOf(coolers)(coolers.map(() => peak)));

  it("is none within the spare tubes, half of what is short at the worst, and all while the unit is tripped", () => {
    expect(at(0)).toBe(0);
    expect(at(0.1)).toBe(0);
    // By hand: 0.855 of 0.9 of the water is 5 % short at the worst, half of it in the mean.
    expect(at(0.145)).toBeCloseTo(0.025, 12);
    // Short by all: tripped for 90 % of the time, 5 % in the rest.
    expect(at(1)).toBeCloseTo(0.9 + 0.1 * 0.05, 12);
  });

  it("is none on a line that lets nothing by: it is missing for want of water", () => {
    // A bore of 100 mm under layers of 60 mm.
    expect(at(0.5, { ...fouled, thickness: 0.06, lengthMm: 25 })).toBe(0);
    expect(at(0.5)).toBeGreaterThan(0);
  });

  it("rises without a step where the unit begins to trip", () => {
    // Short by the limit of 10 % at 0.19 plugged.
    expect(at(0.19 + 1e-9) - at(0.19 - 1e-9)).toBeLessThan(1e-7);
    expect(
      monthDays
        .map((_, index) => at(0.1 + index / 20))
        .every((each, index, all) => each >= (all[index - 1] ?? 0)),
    ).toBe(true);
  });
});

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { compare } from "../../../src/model/compare.js";
import { roughnessParameters } from "../../../src/model/hydraulics/fouled-pipe.js";
import { flowAtHead, pipeHeadLoss } from "../../../src/model/hydraulics/friction.js";
import { cleanWaterway } from "../../../src/model/hydraulics/waterway.js";
import { dailyElevations, monthlyMeans } from "../../../src/model/lake/levels.js";
import type { CostLine } from "../../../src/model/money/line.js";
import { bareSurface, type Layer } from "../../../src/model/mussels/layer.js";
import { hydropowerComponents, operatingYear } from "../../../src/model/structures/hydropower.js";
import type { Hydropower } from "../../../src/model/structures/inputs.js";
import { cleanLine, serviceShare } from "../../../src/model/structures/small-line.js";
import { assumed } from "../assumptions.js";
import { contextOf } from "../contexts.js";
import { productiveLake } from "../lakes.js";
import { everyMonth, relativeGap } from "../near.js";
import { plant, studyOf } from "../study.js";
import { brokenLimit } from "./limits-met.js";
import { lossesOf } from "./losses.js";

const water = {
  monthlyLevels: monthlyMeans(dailyElevations(productiveLake.drawdown)),
  roughness: roughnessParameters(assumed),
  viscosity: 1e-6,
  assumed,
};
/** The plant's penstock with its 0.2 mm of roughness. */
const penstock = cleanWaterway(plant.penstock, { largestFlow: 12, viscosity: 1e-6 });
const coolingShare = (each: Hydropower, layer: Layer) => serviceShare(each.coolingWater, water)(layer);
const hoursOfJanuary = 31 * 24;

describe("a clean year of a power plant", () => {
  it("makes eta rho g Q H less the penstock's loss, month by month", () => {
    // By hand: lake at 100 m, tailwater at 60 m, 12 m3/s, efficiency 0.87.
    const loss = pipeHeadLoss(penstock, 12, 1e-6);
    const power = 0.87 * 9.81 * 12 * (40 - loss);
    const { energy, netHead } = operatingYear(plant, water);
    expect(netHead[0]).toBeCloseTo(40 - loss, 10);
    expect(relativeGap(energy[0] ?? Number.NaN, power * hoursOfJanuary)).toBeLessThan(1e-12);
    expect(relativeGap(energy[1] ?? Number.NaN, power * 28 * 24)).toBeLessThan(1e-12);
  });

  it("makes nothing where the tailwater stands as high as the lake", () => {
    expect(operatingYear({ ...plant, tailwaterElevation: 101 }, water).energy).toEqual(everyMonth(0));
  });

  it("loses 1546.8408 MWh a year to one metre of tailwater at 50 m3/s, efficiency 0.9, 40 % of the time", () => {
    // Computed from eta rho g Q dh t: 441.45 kW over 8,760 h times 0.4. Here the flow runs in every hour, and 40 % of
    // the difference is taken.
    const large = { ...plant, flow: everyMonth(50), efficiency: 0.9 };
    const yearOf = (tailwaterElevation: number) =>
      operatingYear({ ...large, tailwaterElevation }, water).energy.reduce((sum, month) => sum + month, 0);
    expect(((yearOf(20) - yearOf(21)) * 0.4) / 1000).toBeCloseTo(1546.8408, 4);
  });
});

const layerOf = (thickness: number): Layer => ({
  ...bareSurface,
  cover: 2,
  lengthMm: thickness * 1000,
  thickness,
  mass: 1,
});

describe("a cooling-water line", () => {
  it("is held to the thickness of every line, also with water to spare", () => {
    const wide = { ...plant, coolingWater: { ...plant.coolingWater, diameter: 0.4 } };
    const parts = hydropowerComponents(wide, contextOf(productiveLake, 8, assumed));
    const cooling = parts.find(({ name }) => name === "cooling-water line");
    if (!cooling) throw new Error("no cooling-water line");
    // 16 mm is above the 15 mm at which clumps break off, and passes the flow in a bore of 400 mm.
    expect(coolingShare(wide, layerOf(0.016))).toBe(1);
    expect(brokenLimit(cooling, layerOf(0.014), 0)).toBeUndefined();
    expect(brokenLimit(cooling, layerOf(0.016), 0)).toMatch(/thicker/);
  });
});

describe("cooling water", () => {
  it("is whole under a bare wall, nothing in a closed line, and what the head drives between", () => {
    expect(coolingShare(plant, bareSurface)).toBe(1);
    expect(coolingShare(plant, layerOf(0.05))).toBe(0);
    // The same two steps by hand: bore 100 mm less twice 15 mm, sand roughness 1.5 x 15 mm.
    const fouled = { ...plant.coolingWater, diameter: 0.07, roughness: 0.0225 };
    const expected =
      flowAtHead(fouled, plant.coolingWater.availableHead, 1e-6) / plant.coolingWater.requiredFlow;
    expect(expected).toBeLessThan(1);
    expect(coolingShare(plant, layerOf(0.015))).toBeCloseTo(expected, 12);
  });

  it("never rises with a thicker layer", () => {
    const thickness = fc.double({ min: 0, max: 0.02, noNaN: true });
    fc.assert(
      fc.property(thickness, thickness, (a, b) => {
        const thin = coolingShare(plant, layerOf(Math.min(a, b)));
        expect(coolingShare(plant, layerOf(Math.max(a, b)))).toBeLessThanOrEqual(thin + 1e-12);
      }),
      { seed: 171, numRuns: 100 },
    );
  });
});

describe("the parts of a plant", () => {
  const context = contextOf(productiveLake, 5, assumed);

  it("count once for each unit", () => {
    const one = hydropowerComponents({ ...plant, units: 1 }, context);
    const three = hydropowerComponents({ ...plant, units: 3 }, context);
    one.forEach((part, index) => {
      const same = three[index];
      expect(same?.name).toBe(part.name);
      expect(same?.wettedArea).toBeCloseTo(3 * part.wettedArea, 8);
      const quantity = (lines: readonly { quantity: number }[]) => lines.map((line) => line.quantity);
      const tripled = quantity(lossesOf(part, layerOf(0.01), 6)).map((each) => each * 3);
      expect(quantity(lossesOf(same, layerOf(0.01), 6))).toEqual(tripled);
      const work = quantity(part.cleaning.work()).map((each) => each * 3);
      expect(quantity(same?.cleaning.work() ?? [])).toEqual(work);
    });
  });

  it("rest their outages on days, on the share of water lost and on what a clean year makes", () => {
    const ids = ["hydropower.outage-days", "hydropower.outage-lost-share", "hydraulics.viscosity"];
    for (const { outage } of hydropowerComponents(plant, context))
      expect(outage?.charge(0).assumptionIds).toEqual(ids);
  });

  it("lose the energy of the extra head of a fouled penstock, by hand", () => {
    const part = hydropowerComponents({ ...plant, units: 1 }, context).find(
      ({ name }) => name === "penstock",
    );
    const [line] = lossesOf(part, layerOf(0.01), 0);
    const fouled = { ...penstock, diameter: 2.88, roughness: 0.015 };
    const extra = pipeHeadLoss(fouled, 12, 1e-6) - pipeHeadLoss(penstock, 12, 1e-6);
    const expected = 0.87 * 9.81 * 12 * extra * hoursOfJanuary;
    expect(relativeGap(line?.quantity ?? Number.NaN, expected)).toBeLessThan(1e-10);
  });
});

/** Plants whose clean penstock takes at most a tenth of the head and whose clean cooling line delivers enough. */
const plants: fc.Arbitrary<Hydropower> = fc
  .record({
    tailwater: fc.double({ min: 20, max: 92, noNaN: true }),
    diameter: fc.double({ min: 0.6, max: 5, noNaN: true }),
    length: fc.double({ min: 20, max: 1500, noNaN: true }),
    velocity: fc.double({ min: 0.3, max: 2.5, noNaN: true }),
    bore: fc.double({ min: 0.06, max: 0.3, noNaN: true }),
    cooling: fc.double({ min: 0.2, max: 0.95, noNaN: true }),
  })
  .map(({ tailwater, diameter, length, velocity, bore, cooling }) => {
    const line = { ...plant.coolingWater, diameter: bore };
    const flow = (velocity * Math.PI * diameter ** 2) / 4;
    return {
      ...plant,
      tailwaterElevation: tailwater,
      flow: everyMonth(flow),
      penstock: { ...plant.penstock, diameter, length },
      coolingWater: {
        ...line,
        requiredFlow: cooling * flowAtHead(cleanLine(line, water), line.availableHead, 1e-6),
      },
    };
  })
  .filter((each) => {
    const lost = pipeHeadLoss(operatingYear(each, water).penstock, each.flow[0] ?? Number.NaN, 1e-6);
    return lost <= 0.1 * (90 - each.tailwaterElevation);
  });

describe("energy lost", () => {
  const energyOf = (lines: readonly CostLine[]) =>
    lines.filter(({ quantityKind }) => quantityKind === "energy");

  it("is never more than the energy made, in any line or year", () => {
    fc.assert(
      fc.property(plants, (each) => {
        const [result] = compare(studyOf([each]), assumed).structures;
        const made = result?.cleanEnergy.reduce((sum, month) => sum + month, 0) ?? Number.NaN;
        for (const lines of result?.years ?? []) {
          const lost = energyOf(lines).reduce((sum, line) => sum + line.quantity, 0);
          expect(lost).toBeLessThanOrEqual(made);
          expect(lost).toBeGreaterThanOrEqual(0);
        }
      }),
      { seed: 172, numRuns: 40 },
    );
  });

  it("is held against the energy made in a check row, which fails exactly where more is claimed than made", () => {
    // A penstock that eats nearly all of a small head when it is clean: each part is judged beside the others.
    const strained: Hydropower = {
      ...plant,
      tailwaterElevation: 86.7757,
      flow: everyMonth(0.7835),
      penstock: { length: 2262, diameter: 0.7716, roughness: 0.0005, minorLoss: 1 },
    };
    const { structures, checks } = compare(studyOf([strained]), assumed);
    const made = structures[0]?.cleanEnergy.reduce((sum, month) => sum + month, 0) ?? Number.NaN;
    const worst = Math.max(
      ...(structures[0]?.years ?? []).map((lines) =>
        energyOf(lines).reduce((sum, line) => sum + line.quantity, 0),
      ),
    );
    const check = checks.find(({ what }) => what.includes("energy lost of the energy made"));
    expect(check?.passed).toBe(worst <= assumed("checks.energy-lost-high") * made);
    const toHead = (structures[0]?.years ?? []).flat().filter(({ what }) => what.includes("lost to head"));
    expect(Math.max(...toHead.map(({ quantity }) => quantity))).toBeLessThanOrEqual(made * (1 + 1e-12));
  });
});

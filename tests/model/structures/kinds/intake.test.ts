import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import { roughnessParameters } from "../../../../src/model/hydraulics/fouled-pipe.js";
import { pipeHeadLoss } from "../../../../src/model/hydraulics/friction.js";
import { dailyElevations, monthlyMeans } from "../../../../src/model/lake/levels.js";
import { bareSurface, type Layer } from "../../../../src/model/mussels/layer.js";
import type { Intake } from "../../../../src/model/structures/inputs.js";
import { intakeComponents } from "../../../../src/model/structures/kinds/intake.js";
import { costAtSize } from "../../../../src/model/structures/oxidant.js";
import { fouledConveyance, type SupplyContext, supplyOf } from "../../../../src/model/structures/supply.js";
import { assumed } from "../../assumptions.js";
import { contextOf } from "../../contexts.js";
import { productiveLake } from "../../lakes.js";
import { everyMonth, relativeGap } from "../../near.js";
import { gravityIntake, pumpedIntake } from "../../study.js";
import { lossesOf } from "../losses.js";

const ends = {
  small: { cost: assumed("oxidant.small-plant-cost"), flow: assumed("oxidant.small-plant-flow") },
  large: { cost: assumed("oxidant.large-plant-cost"), flow: assumed("oxidant.large-plant-flow") },
};
const gallon = 3.785411784e-3; // m3, by definition
const mgd = (1e6 * gallon) / 86_400;

describe("the cost of treating water at an intake", () => {
  // Chakraborti, Madon and Kaur 2016, Journal AWWA 108, abstract: operation and maintenance 34.32 USD/Mgal at 1 mgd;
  // 1.00 to 13.00 USD/Mgal above 10 mgd.
  it("is 12,527 USD a year at 1 mgd", () => {
    // 34.32 x 365 = 12,526.80.
    const yearly = costAtSize(mgd, ends) * mgd * 86_400 * 365;
    expect(Math.abs(yearly - 12_527)).toBeLessThanOrEqual(1);
  });

  it("is 9.0664 USD per megalitre at 1 mgd", () => {
    // 34.32 USD over 3.785411784 ML.
    expect(Math.abs(costAtSize(mgd, ends) * 1000 - 9.0664)).toBeLessThanOrEqual(0.001);
  });

  it("lies within 1.00 and 13.00 USD per million gallons for plants above 10 mgd", () => {
    for (const size of [10.1, 50, 300, 2640]) {
      const perMillionGallons = costAtSize(size * mgd, ends) * 1e6 * gallon;
      expect(perMillionGallons).toBeGreaterThanOrEqual(1);
      expect(perMillionGallons).toBeLessThanOrEqual(13);
    }
  });

  it("falls with the size of the plant, and never costs more in total for less water", () => {
    // Economy of scale: unit cost 2.7 times higher at 1 mgd than at 2,640 mgd (same abstract).
    const sizes = fc.double({ min: 0.2, max: 3000, noNaN: true });
    fc.assert(
      fc.property(sizes, sizes, (a, b) => {
        const [less, more] = [Math.min(a, b) * mgd, Math.max(a, b) * mgd];
        expect(costAtSize(more, ends)).toBeLessThanOrEqual(costAtSize(less, ends) * (1 + 1e-12));
        expect(costAtSize(more, ends) * more).toBeGreaterThanOrEqual(
          costAtSize(less, ends) * less * (1 - 1e-12),
        );
      }),
      { seed: 151, numRuns: 200 },
    );
  });

  it("is level beyond the two sizes and the geometric mean half way on the logarithm", () => {
    expect(costAtSize(0.1 * mgd, ends)).toBeCloseTo(ends.small.cost, 12);
    expect(costAtSize(5000 * mgd, ends)).toBeCloseTo(ends.large.cost, 12);
    const middle = costAtSize(Math.sqrt(ends.small.flow * ends.large.flow), ends);
    expect(relativeGap(middle, Math.sqrt(ends.small.cost * ends.large.cost))).toBeLessThan(1e-10);
  });
});

const water = {
  monthlyLevels: monthlyMeans(dailyElevations(productiveLake.drawdown)),
  roughness: roughnessParameters(assumed),
  viscosity: 1e-6,
};

/** Head and water of the conduit clean and under a layer, in a month. */
function conduitState(intake: Intake, layer: Layer, month: number, context: SupplyContext) {
  const supply = supplyOf(intake, context);
  const clean = supply.cleanYear[month];
  if (!clean) throw new Error(`no month ${month}`);
  const fouled = fouledConveyance(supply, layer, month, context);
  return { cleanLoss: clean.head, fouledLoss: fouled.head, delivered: fouled.delivered };
}
const layers: fc.Arbitrary<Layer> = fc
  .record({
    cover: fc.double({ min: 0, max: 4, noNaN: true }),
    lengthMm: fc.double({ min: 1, max: 30, noNaN: true }),
    thickness: fc.double({ min: 0, max: 0.12, noNaN: true }),
  })
  .map((part) => ({ ...bareSurface, ...part, mass: 1 }));

/** An intake whose clean conduit carries its largest demand. */
const intakes: fc.Arbitrary<Intake> = fc
  .record({
    diameter: fc.double({ min: 0.3, max: 2.5, noNaN: true }),
    length: fc.double({ min: 50, max: 4000, noNaN: true }),
    velocity: fc.double({ min: 0.2, max: 1.7, noNaN: true }),
    spareHead: fc.double({ min: 0.1, max: 5, noNaN: true }),
    pumped: fc.boolean(),
  })
  .map(({ diameter, length, velocity, spareHead, pumped }) => {
    const base = pumped ? pumpedIntake : gravityIntake;
    const conduit = { length, diameter, roughness: 3e-4, minorLoss: 1.5 };
    const largest = (velocity * Math.PI * diameter ** 2) / 4;
    const head = pipeHeadLoss(conduit, largest, 1e-6) + spareHead;
    const supply = pumped
      ? { by: "pump" as const, efficiency: 0.7, marginHead: spareHead, energyPrice: 0.1 }
      : { by: "gravity" as const, availableHead: head };
    return { ...base, conduit, supply, demand: base.demand.map((each) => (each / 1.2) * largest) };
  });

describe("a fouled conduit", () => {
  it("delivers the demand as long as the head suffices, and then what the head drives", () => {
    fc.assert(
      fc.property(intakes, layers, fc.nat(11), (intake, layer, month) => {
        const demand = intake.demand[month] ?? Number.NaN;
        const { fouledLoss, delivered } = conduitState(intake, layer, month, water);
        // A pump has its margin above the clean loss at the largest demand, in every month.
        const clean = supplyOf(intake, water).clean;
        const cleanAtLargest = pipeHeadLoss(clean, Math.max(...intake.demand), 1e-6);
        const available =
          intake.supply.by === "gravity"
            ? (intake.supply.availableHead ?? Number.NaN)
            : cleanAtLargest + (intake.supply.marginHead ?? Number.NaN);
        expect(delivered).toBeGreaterThanOrEqual(0);
        expect(delivered).toBeLessThanOrEqual(demand * (1 + 1e-12));
        expect(fouledLoss).toBeLessThanOrEqual(available * (1 + 1e-9));
        if (delivered < demand) expect(relativeGap(fouledLoss, available)).toBeLessThan(1e-9);
      }),
      { seed: 152, numRuns: 300 },
    );
  });

  it("loses no head and no water under a bare wall", () => {
    fc.assert(
      fc.property(intakes, (intake) => {
        for (const [month, demand] of intake.demand.entries()) {
          const { cleanLoss, fouledLoss, delivered } = conduitState(intake, bareSurface, month, water);
          expect(fouledLoss).toBeCloseTo(cleanLoss, 12);
          expect(delivered).toBe(demand);
        }
      }),
      { seed: 153, numRuns: 60 },
    );
  });

  it("delivers nothing once the layer has filled the bore", () => {
    const narrow = { ...gravityIntake, conduit: { ...gravityIntake.conduit, diameter: 0.05 } };
    const filled = { ...bareSurface, cover: 3, lengthMm: 25, thickness: 0.025, mass: 10 };
    expect(conduitState(narrow, filled, 0, water).delivered).toBe(0);
  });

  it("passes 0.588917 of its flow in the worked example at unchanged head", () => {
    // Computed from Darcy-Weisbach and Colebrook-White: 3 m3/s, 3000 m, 1.5 m bore, clean wall 0.3 mm, 10 mm shells in
    // a 10 mm layer; clean loss 4.15331 m.
    const conduit = { length: 3000, diameter: 1.5, roughness: 0.0003, minorLoss: 0 };
    const intake: Intake = {
      ...gravityIntake,
      demand: everyMonth(3),
      conduit,
      supply: { by: "gravity", availableHead: 4.15331 },
    };
    const layer = { ...bareSurface, cover: 2, lengthMm: 10, thickness: 0.01, mass: 5 };
    expect(conduitState(intake, layer, 0, water).delivered / 3).toBeCloseTo(0.588917, 5);
  });
});

describe("the losses of a fouled conduit", () => {
  const context = contextOf(productiveLake, 5, assumed);
  const conduitOf = (intake: Intake) => {
    const conduit = intakeComponents(intake, context).find(({ name }) => name === "conduit");
    if (!conduit) throw new Error("no conduit");
    return conduit;
  };
  const thin: Layer = { ...bareSurface, cover: 0.8, lengthMm: 8, thickness: 0.008, mass: 2, number: 12_500 };

  it("are the pumping of the extra head, by hand", () => {
    // Energy rho g Q h/eta over the hours of January, at the price.
    const january = 0;
    const demand = pumpedIntake.demand[january] ?? Number.NaN;
    const { cleanLoss, fouledLoss, delivered } = conduitState(pumpedIntake, thin, january, context);
    expect(delivered).toBe(demand);
    const energy = lossesOf(conduitOf(pumpedIntake), thin, january).find(
      ({ quantityKind }) => quantityKind === "energy",
    );
    const expected = ((9.81 * demand * (fouledLoss - cleanLoss)) / 0.75) * 31 * 24;
    expect(relativeGap(energy?.quantity ?? Number.NaN, expected)).toBeLessThan(1e-12);
    expect(energy?.unitRate).toBe(0.08);
  });

  test.each([0, 4, 7])("of a gravity conduit are water from elsewhere only, month %d", (month) => {
    const lines = lossesOf(
      conduitOf(gravityIntake),
      { ...thin, thickness: 0.05, lengthMm: 20, cover: 3 },
      month,
    );
    expect(lines.map(({ quantityKind }) => quantityKind)).toEqual(["volume"]);
    const demand = gravityIntake.demand[month] ?? Number.NaN;
    const { delivered } = conduitState(
      gravityIntake,
      { ...thin, thickness: 0.05, lengthMm: 20, cover: 3 },
      month,
      context,
    );
    const days = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31][month] ?? Number.NaN;
    expect(lines[0]?.quantity).toBeCloseTo((demand - delivered) * days * 86_400, 4);
  });

  it("are nothing in a month without demand", () => {
    const idle = { ...pumpedIntake, demand: [0, ...pumpedIntake.demand.slice(1)] };
    expect(lossesOf(conduitOf(idle), thin, 0)).toEqual([]);
  });
});

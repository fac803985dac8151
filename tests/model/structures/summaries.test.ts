import { describe, expect, it } from "vitest";
import { bareSurface } from "../../../src/model/mussels/layer.js";
import { hydraulicSummary } from "../../../src/model/structures/hydraulic-summary.js";
import type { Hydropower, Intake } from "../../../src/model/structures/inputs.js";
import { pumpSummary } from "../../../src/model/structures/pump-summary.js";
import { structureResult } from "../../../src/model/structures/structure.js";
import { contextOf } from "../contexts.js";
import { drawnDownLake, productiveLake } from "../lakes.js";
import { everyMonth } from "../near.js";
import { curvePump, gravityIntake, plant, pumpedIntake, ramp } from "../study.js";
import { pumpingPlant } from "./deliveries/served.js";

const context = contextOf(productiveLake, 5);
const pumped: Intake = { ...pumpedIntake, supply: curvePump };

describe("the hydraulics of a structure", () => {
  it("take the layer of each part by its name", () => {
    const { components } = structureResult(plant, [context]);
    const layered = components.map((component, index) => ({
      ...component,
      untouchedLayer: { ...bareSurface, cover: 2, lengthMm: 10, thickness: 0.01 * (index + 1), mass: 5 },
    }));
    const { racks, pipes } = hydraulicSummary(plant, layered, context);
    // By hand: 10 mm on the rack's bars and 60 mm gaps, 20 mm in the penstock of 2.9 m, 30 mm in the line of 100 mm.
    expect(racks[0]?.fouled?.blocked).toBeCloseTo((10 + 20) / 70, 12);
    expect(pipes.map(({ fouled }) => fouled?.bore)).toEqual([
      expect.closeTo(2.86, 12),
      expect.closeTo(0.04, 12),
    ]);
  });

  it("are none of parts that are not there", () => {
    expect(hydraulicSummary(plant, [], context)).toEqual({ pipes: [], racks: [], pumps: [] });
  });

  it("are at the largest flow of the year", () => {
    const flow = [3, 4, 6, 8, 9, 9, 8, 7, 6, 5, 4, 3];
    const { hydraulics } = structureResult({ ...plant, flow }, [context]);
    expect(hydraulics.pipes[0]?.flow).toBe(9);
    expect(hydraulics.racks[0]?.flow).toBe(9);
    expect(structureResult(gravityIntake, [context]).hydraulics.racks[0]?.flow).toBe(1.2);
  });

  it("are empty where no water flows all year, and where nothing is a waterway", () => {
    const still = everyMonth(0);
    const stopped: readonly (Intake | Hydropower)[] = [
      { ...pumped, demand: still },
      { ...gravityIntake, demand: still },
      { ...plant, flow: still },
    ];
    for (const structure of [...stopped, ramp]) {
      expect(structureResult(structure, [context]).hydraulics).toEqual({ pipes: [], racks: [], pumps: [] });
    }
  });
});

describe("the summary of a pump", () => {
  it("stands once, whatever else the water runs through", () => {
    const { curve, deliveryElevation, control } = curvePump;
    const pump = { curve, deliveryElevation, control, energyPrice: 0.08 };
    const { hydraulics } = structureResult({ ...pumpingPlant, pump }, [context]);
    expect(hydraulics.pipes.map(({ part }) => part)).toEqual(["discharge main", "laterals"]);
    expect(hydraulics.pumps).toHaveLength(1);
  });

  it("has no capacity left of none: a pump too weak for the lift", () => {
    // By hand: the curve of 10 m at 1.3 m3/s shuts off at 13.3 m (four thirds), and the lift is 25 m.
    const weak: Intake = {
      ...pumped,
      supply: { ...curvePump, curve: [{ flow: 1.3, head: 10 }] },
    };
    const [summary] = pumpSummary(weak, bareSurface, context);
    expect(summary?.clean.point.flow).toBe(0);
    expect(summary?.capacityLeft).toBe(0);
    expect(summary?.margin).toBeLessThan(0);
  });

  it("is of the month with the lowest lake, wherever in the year it is", () => {
    const low = contextOf(
      {
        ...drawnDownLake,
        drawdown: [
          { dayOfYear: 0, elevation: 100 },
          { dayOfYear: 150, elevation: 100 },
          { dayOfYear: 220, elevation: 92 },
          { dayOfYear: 240, elevation: 92 },
          { dayOfYear: 300, elevation: 100 },
        ],
      },
      5,
    );
    // Days 220 to 240 lie in August.
    expect(pumpSummary({ ...pumped, demand: everyMonth(0.5) }, bareSurface, low)[0]?.month).toBe(7);
  });
});

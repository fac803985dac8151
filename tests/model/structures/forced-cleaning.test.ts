import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import { cleaningOutage } from "../../../src/model/structures/cleaning.js";
import type { Component, LimitLoad } from "../../../src/model/structures/component.js";
import { hydropowerComponents } from "../../../src/model/structures/hydropower.js";
import type { Structure } from "../../../src/model/structures/kinds.js";
import { forcedCleaning, loadOf } from "../../../src/model/structures/limits.js";
import { structureResult } from "../../../src/model/structures/structure.js";
import { assumed, assumedWith } from "../assumptions.js";
import { contextOf } from "../contexts.js";
import { drawnDownLake, productiveLake } from "../lakes.js";
import { gravityIntake, plant, pumpedIntake, sealWater } from "../study.js";
import { costOf } from "./followed-plainly.js";
import { toldLines } from "./losses.js";

const limit = { broken: "too much", assumptionIds: ["conduit.largest-layer"] } as const;

describe("the load of a limit", () => {
  test.each([
    [10, 20, 0, 0.5],
    [20, 20, 0, 1],
    [15, 20, 10, 0.5],
    [9, 20, 10, 0],
    [12, 10, 11, Infinity],
    [0, 0, 0, 0],
  ])("%d where %d is allowed and the clean part has %d: %d", (value, allowed, clean, load) => {
    expect(loadOf(value, allowed, clean)).toBe(load);
  });
});

describe("a cleaning that a limit forces", () => {
  const source = assumedWith({
    "limit.first-share": 0.6,
    "limit.certain-share": 2.6,
    "limit.forced-factor": 3,
  });
  const context = contextOf(productiveLake, 3, source);
  const [rack] = hydropowerComponents(plant, context);
  if (!rack) throw new Error("no rack");
  const tellForced = forcedCleaning(rack, context);
  const forcedIn = (nearest: LimitLoad) => toldLines((tell) => tellForced(tell, nearest, 6));
  const work = costOf(rack.cleaning.work());
  const outage = costOf(cleaningOutage(rack, assumed, 6));

  test.each([
    // By hand, u = (x − 0.6)/2 and P = u²(3 − 2u).
    [0.6, 0],
    [1.1, 0.15625],
    [1.6, 0.5],
    [2.1, 0.84375],
    [2.6, 1],
    [Infinity, 1],
  ])("at a load of %d is to be expected %d times in the month", (load, chance) => {
    expect(costOf(forcedIn({ limit, load }))).toBeCloseTo(chance * (3 * work + outage), 6);
    expect(outage).toBeGreaterThan(0);
  });

  it("has lines that are losses, with the assumptions that set it", () => {
    const lines = forcedIn({ limit, load: 1.1 });
    expect(lines.length).toBeGreaterThan(1);
    for (const { type, what, assumptionIds } of lines) {
      expect(type).toBe("loss");
      expect(what).toMatch(/, forced$/);
      expect(assumptionIds).toEqual(
        expect.arrayContaining(["conduit.largest-layer", "limit.first-share", "limit.certain-share"]),
      );
    }
    expect(forcedIn({ limit, load: 0.5 })).toEqual([]);
  });
});

describe("a little less of a limit", () => {
  const chosenOf = (structure: Structure, part: Component["name"], source = assumed) => {
    const { components } = structureResult(structure, [contextOf(drawnDownLake, 12, source)]);
    const found = components.find(({ name }) => name === part);
    if (!found) throw new Error(`no ${part}`);
    return found.chosen.yearlyCost;
  };
  const cases = [
    ["conduit.largest-layer", "conduit", pumpedIntake],
    ["conduit.largest-layer", "conduit", gravityIntake],
    ["rack.gap-closed-limit", "trash rack", gravityIntake],
    ["rack.gap-closed-limit", "trash rack", plant],
    ["service-line.shortage-limit", "service line", sealWater],
    ["hydropower.derating-limit", "cooling-water line", plant],
  ] as const;

  it("costs a little more, never a multiple", () => {
    const ratios: number[] = [];
    fc.assert(
      fc.property(
        fc.constantFrom(...cases),
        fc.double({ min: 0.5, max: 2.5, noNaN: true }),
        ([id, part, structure], share) => {
          const at = (factor: number) =>
            chosenOf(structure, part, assumedWith({ [id]: assumed(id) * share * factor }));
          ratios.push(at(0.98) / at(1));
        },
      ),
      { seed: 2201, numRuns: 60 },
    );
    // A load that is 2 % higher makes a forced cleaning likelier by 0.04 a month at the most; with plans to choose from
    // the yearly cost moves by less than a third.
    expect(Math.max(...ratios)).toBeGreaterThan(1);
    expect(Math.max(...ratios)).toBeLessThan(4 / 3);
    // Cleaned when near a limit, a part may be cleaned at a better time under a lower one.
    expect(Math.min(...ratios)).toBeGreaterThan(0.95);
  });

  it("is no cliff for an intake whose layer is near the limit", () => {
    const of = (thickness: number) =>
      chosenOf(gravityIntake, "conduit", assumedWith({ "conduit.largest-layer": thickness }));
    const costs = Array.from({ length: 16 }, (_, step) => of(0.01 + step / 1000));
    const steps = costs.slice(1).map((cost, index) => (costs[index] ?? Number.NaN) / cost);
    for (const step of steps) expect(step).toBeLessThan(2.5);
  });
});

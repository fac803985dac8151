import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { dailyElevations } from "../../../../src/model/lake/levels.js";
import type { ComponentResult, TriedPlan } from "../../../../src/model/structures/component.js";
import { structureResult } from "../../../../src/model/structures/structure.js";
import { contextsOf } from "../../contexts.js";
import { drawnDownLake, productiveLake } from "../../lakes.js";
import { gravityIntake } from "../../study.js";

const years = 12;
const dry = dailyElevations(drawnDownLake.drawdown);
const wet = dailyElevations(productiveLake.drawdown);

/** The intake stands at 95 m: bare for 58 days of a winter with a drawdown, under water all through one without. */
function partOver(levels: readonly (readonly number[])[], name: string): ComponentResult {
  const record = levels.map((daily, index) => ({ label: String(2001 + index), daily }));
  const structure = { ...gravityIntake, elevation: 95 };
  const { components } = structureResult(structure, contextsOf({ ...productiveLake, record }, years));
  const found = components.find((each) => each.name === name);
  if (!found) throw new Error(`no ${name}`);
  return found;
}

const dryYears = (count: number) => Array<readonly number[]>(count).fill(dry);
const wetYears = (count: number) => Array<readonly number[]>(count).fill(wet);

const planOf = ({ everyPlan }: ComponentResult, id: string): TriedPlan => {
  const found = everyPlan().find(({ plan }) => plan.id === id);
  if (!found) throw new Error(`no plan ${id}`);
  return found;
};

/** The cheapest of a year's plans that install nothing and are done within it. */
const wayOutOf = ({ everyPlan }: ComponentResult): TriedPlan => {
  const [first, ...rest] = everyPlan().filter(
    ({ plan: { entry, routine } }) =>
      !("capital" in entry.numbers) && !(routine.by === "interval" && routine.months > 12),
  );
  if (!first) throw new Error("no way out");
  return rest.reduce((best, each) => (each.yearlyCost < best.yearlyCost ? each : best), first);
};

describe("a plan that a wet year does not allow", () => {
  const part = "trash rack";

  it("is kept in the dry years, and costs in the wet ones what their way out costs", () => {
    const mixed = planOf(partOver([...dryYears(17), ...wetYears(2)], part), "dry");
    const wayOut = wayOutOf(partOver(wetYears(1), part));
    const inDry = planOf(partOver(dryYears(1), part), "dry").yearlyCost;
    // By hand: 17 of 19 years by the one, 2 by the other.
    expect(mixed.yearlyCost).toBeCloseTo((17 * inDry + 2 * wayOut.yearlyCost) / 19, 6);
    expect(mixed.wayOut).toEqual({ years: 2, ofYears: 19, labels: [wayOut.plan.label] });
    expect(planOf(partOver(dryYears(2), part), "dry").wayOut).toBeUndefined();
  });

  it("adds, for one wet year more, no more than that year's own cost to the sum of all", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 6 }),
        fc.integer({ min: 0, max: 2 }),
        fc.constantFrom("trash rack", "conduit"),
        (dryCount, wetCount, name) => {
          const before = [...dryYears(dryCount), ...wetYears(wetCount)];
          const own = wayOutOf(partOver(wetYears(1), name)).yearlyCost;
          const sumBefore = partOver(before, name).chosen.yearlyCost * before.length;
          const sumAfter = partOver([...before, wet], name).chosen.yearlyCost * (before.length + 1);
          expect(sumAfter).toBeLessThanOrEqual((sumBefore + own) * (1 + 1e-9));
        },
      ),
      { seed: 2203, numRuns: 12 },
    );
  });
});

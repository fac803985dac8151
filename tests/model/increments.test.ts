import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { compare } from "../../src/model/compare.js";
import { difference, increment, inspectorHours, staffHours } from "../../src/model/increments.js";
import type { ProgramOption } from "../../src/model/inputs.js";
import type { OptionResult } from "../../src/model/option.js";
import { assumed } from "./assumptions.js";
import { anySteps } from "./steps.js";
import { duties, floatingDock, noProgram, program, studyOf } from "./study.js";

const lakeOf = (options: readonly ProgramOption[]) => studyOf([floatingDock, duties], { options });
const known = compare(lakeOf([noProgram]), assumed);

const resultsOf = (...options: readonly ProgramOption[]): OptionResult[] =>
  compare(lakeOf([noProgram, ...options]), assumed, known).options.map(({ result }) => result);

const staffed = (id: string, hoursPerYear: number): ProgramOption => ({
  ...program,
  id,
  staff: [{ name: "Inspectors", hoursPerYear, wage: 23, loading: 0.25 }],
});

describe("an increment to the program in force", () => {
  it("has the hours and the cost that come on top", () => {
    const [weekends, everyDay] = resultsOf(staffed("weekends", 1000), staffed("every-day", 2040));
    if (!weekends || !everyDay) throw new Error("no options");
    const added = increment(everyDay, weekends);
    // By hand: 2,040 − 1,000 h, and 1,040 x 23 x 1.25 = 29,900 a year.
    expect(added.addedHoursPerYear).toBe(1040);
    expect(added.addedCostPerYear.toFixed(2)).toBe("29900.00");
    expect(staffHours(everyDay.option)).toBe(2040);
    // The same steps avoid the same loss: only the cost is left.
    expect(added.avoidedLoss.equals(0)).toBe(true);
    expect(added.netBenefit.equals(added.addedProgramCost.negated())).toBe(true);
    expect(added.benefitCostRatio).toBe(0);
  });

  it("counts overtime, and as hours of inspectors those of the list's plain wages alone", () => {
    const each = { name: "Staff", wage: 30, loading: 0 };
    const staff = [
      { ...each, hoursPerYear: 1000, overtime: { hours: 50, pay: 1.5 } },
      { ...each, group: "wages" as const, hoursPerYear: 400 },
      { ...each, group: "supervision" as const, hoursPerYear: 300, overtime: { hours: 20, pay: 2 } },
    ];
    // By hand: 1,000 + 50 + 400 + 300 + 20 h; of the list's plain wages 1,000 + 50 + 400.
    expect([staffHours({ staff }), inspectorHours({ staff })]).toEqual([1770, 1450]);
  });

  it("against no program is the balance of the comparison", () => {
    const { baseline, options } = compare(lakeOf([noProgram, program]), assumed, known);
    for (const { result, addedProgramCost, avoidedLoss, netBenefit, benefitCostRatio } of options) {
      expect(difference(result, baseline)).toEqual({
        addedProgramCost,
        avoidedLoss,
        netBenefit,
        benefitCostRatio,
      });
    }
  });

  const anyProgram = fc
    .record({ steps: anySteps, hours: fc.integer({ min: 0, max: 9000 }) })
    .map(({ steps, hours }) => ({ ...staffed("any", hours), steps }));

  it("of an option to itself is nothing, and without a ratio", () => {
    fc.assert(
      fc.property(anyProgram, (option) => {
        const [result] = resultsOf(option);
        if (!result) throw new Error("no option");
        const none = increment(result, result);
        for (const amount of [
          none.addedCostPerYear,
          none.addedProgramCost,
          none.avoidedLoss,
          none.netBenefit,
        ]) {
          expect(amount.equals(0)).toBe(true);
        }
        expect(none.addedHoursPerYear).toBe(0);
        expect(none.benefitCostRatio).toBeUndefined();
      }),
      { seed: 231, numRuns: 25 },
    );
  });

  it("adds up: from A to B and from B to C is from A to C", () => {
    fc.assert(
      fc.property(anyProgram, anyProgram, anyProgram, (one, two, three) => {
        const [a, b, c] = resultsOf({ ...one, id: "a" }, { ...two, id: "b" }, { ...three, id: "c" });
        if (!a || !b || !c) throw new Error("no options");
        const [ab, bc, ac] = [increment(b, a), increment(c, b), increment(c, a)];
        const amounts = ["addedCostPerYear", "addedProgramCost", "avoidedLoss", "netBenefit"] as const;
        for (const amount of amounts) {
          expect(ab[amount].plus(bc[amount]).minus(ac[amount]).abs().lessThan(1e-12)).toBe(true);
        }
        expect(ab.addedHoursPerYear + bc.addedHoursPerYear).toBeCloseTo(ac.addedHoursPerYear, 9);
      }),
      { seed: 232, numRuns: 25 },
    );
  });
});

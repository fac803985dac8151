import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Comparison, compare } from "../../src/model/compare.js";
import type { ProgramOption, StudyInput } from "../../src/model/inputs.js";
import { noMoney } from "../../src/model/money/decimal.js";
import { amountOf, type CostLine, sumOf, totalOf } from "../../src/model/money/line.js";
import { presentValueOf } from "../../src/model/present-value.js";
import { assumed, assumedWith } from "./assumptions.js";
import { relativeGap } from "./near.js";
import { anySteps, thoroughSteps } from "./steps.js";
import { boats, duties, floatingDock, noProgram, program, studyOf, wholeStudy } from "./study.js";

const whole = compare(wholeStudy, assumed);

function programOf(comparison: Comparison) {
  const [balance] = comparison.options;
  if (!balance) throw new Error("no program");
  return balance;
}

const isCounted = ({ type }: CostLine) => type !== "apart";

describe("the cost of an infestation", () => {
  it("is the sum of the structures' lines in each year, and of nothing else", () => {
    whole.infestation.byYear.forEach((total, year) => {
      const lines = whole.structures.flatMap(({ years }) => years[year] ?? []).filter(isCounted);
      expect(totalOf(lines).equals(total)).toBe(true);
    });
    expect(whole.infestation.byYear).toHaveLength(20);
  });

  it("is the sum over structures, and over bearers", () => {
    whole.infestation.byYear.forEach((total, year) => {
      const structures = whole.structures.map(
        ({ structure }) => whole.infestation.ofStructure(structure.id).byYear,
      );
      for (const streams of [structures, whole.infestation.byBearer.map(({ byYear }) => byYear)]) {
        expect(sumOf(streams.map((byYear) => byYear[year] ?? noMoney)).equals(total)).toBe(true);
      }
    });
  });

  it("has lines whose amount is quantity times unit rate to the cent, each with a bearer of the study", () => {
    const known = wholeStudy.money.bearers.map(({ id }) => id);
    const lines = whole.structures.flatMap(({ years }) => years.flat());
    expect(lines.length).toBeGreaterThan(100);
    for (const line of lines) {
      expect(Math.abs(amountOf(line).toNumber() - line.quantity * line.unitRate)).toBeLessThan(0.0051);
      expect(known).toContain(line.bearer);
      expect(line.quantity).toBeGreaterThan(0);
    }
  });

  it("keeps losses that are not infrastructure apart", () => {
    // By hand: 150,000 a year from the third year since establishment on.
    const apart = whole.infestation.byAccount.get("other")?.byYear.map((amount) => amount.toNumber()) ?? [];
    expect(apart.slice(0, 3)).toEqual([0, 0, 150_000]);
    const without = compare(
      studyOf([{ ...duties, items: duties.items.filter(({ apart: isApart }) => !isApart) }]),
      assumed,
    );
    const withApart = compare(studyOf([duties]), assumed);
    expect(withApart.infestation.byYear.map(String)).toEqual(without.infestation.byYear.map(String));
    expect(withApart.baseline.presentValueByAccount.get("other")?.greaterThan(0)).toBe(true);
  });
});

describe("an option's present value", () => {
  it("is the same by year of the study, by structure and by bearer", () => {
    for (const result of [whole.baseline, programOf(whole).result]) {
      const expected = result.presentValue.infestation.toNumber();
      const byStructure = sumOf(
        whole.structures.map(({ structure }) =>
          presentValueOf(whole.infestation.ofStructure(structure.id), result.weights),
        ),
      );
      const byBearer = sumOf(result.infestationByBearer.map(({ presentValue }) => presentValue));
      expect(relativeGap(byStructure.toNumber(), expected)).toBeLessThan(1e-12);
      expect(relativeGap(byBearer.toNumber(), expected)).toBeLessThan(1e-12);
      const byYear = result.expectedByYear.reduce(
        (sum, { total }, year) => sum + total.toNumber() * (whole.discountFactors[year] ?? Number.NaN),
        0,
      );
      expect(relativeGap(result.presentValue.total.toNumber(), byYear)).toBeLessThan(1e-12);
    }
  });

  it("is worth its equivalent yearly amount under the study's timing", () => {
    const sum = whole.discountFactors.reduce((total, factor) => total + factor, 0);
    for (const { presentValue, equivalentYearly } of [whole.baseline, programOf(whole).result]) {
      expect(
        relativeGap(equivalentYearly.total.toNumber() * sum, presentValue.total.toNumber()),
      ).toBeLessThan(1e-12);
    }
  });

  it("differs from the baseline's by equal yearly amounts of the same present value", () => {
    const { options, discountFactors } = whole;
    const years = discountFactors.reduce((sum, factor) => sum + factor, 0);
    for (const { addedProgramCost, avoidedLoss, perYear } of options) {
      expect(perYear().addedProgramCost * years).toBeCloseTo(addedProgramCost.toNumber(), 4);
      expect(perYear().avoidedLoss * years).toBeCloseTo(avoidedLoss.toNumber(), 4);
    }
  });

  it("equals the undiscounted total at a rate of zero", () => {
    const money = { ...wholeStudy.money, discountRate: 0 };
    const { baseline } = compare(studyOf([floatingDock], { money }), assumed);
    expect(baseline.presentValue.total.equals(baseline.undiscounted.total)).toBe(true);
  });
});

describe("a hazard of zero", () => {
  it("leaves no expected loss and nothing to avoid", () => {
    const source = assumedWith({ "arrival.founding-unknown": 0 });
    const comparison = compare({ ...wholeStudy, boats: { ...boats, otherWays: [] } }, source);
    for (const result of [comparison.baseline, programOf(comparison).result]) {
      expect(result.hazard).toBe(0);
      expect(result.presentValue.infestation.equals(0)).toBe(true);
      expect(result.infestedByYear.every((chance) => chance === 0)).toBe(true);
    }
    expect(programOf(comparison).avoidedLoss.equals(0)).toBe(true);
  });
});

describe("a program whose steps stop nothing", () => {
  const idle: ProgramOption = {
    ...program,
    steps: thoroughSteps,
    afterInfestation: { share: 1 },
  };
  const settled = { ...noProgram, afterInfestation: { share: 1 } };
  const balance = programOf(compare({ ...wholeStudy, options: [settled, idle] }, assumed));

  it("avoids nothing, so that its net benefit is the cost that it adds", () => {
    expect(Math.abs(balance.avoidedLoss.toNumber())).toBeLessThan(1e-6);
    expect(relativeGap(balance.netBenefit.toNumber(), -balance.addedProgramCost.toNumber())).toBeLessThan(
      1e-9,
    );
  });

  it("costs exactly its own yearly cost, discounted", () => {
    // By hand: 3,000 x 23 x 1.25 + 20,000 - 20,000 and the wash unit at capital recovery: 3 % over 8 years.
    const recovery = 0.03 / (1 - 1.03 ** -8);
    const perYear = 86_250 + Math.round(17_000 * recovery * 100) / 100;
    expect(balance.result.programPerYear.toNumber()).toBeCloseTo(perYear, 2);
    const sum = Array.from({ length: 20 }, (_, year) => 1.03 ** -(year + 0.5)).reduce((a, b) => a + b, 0);
    expect(relativeGap(balance.addedProgramCost.toNumber(), (perYear - 9000) * sum)).toBeLessThan(1e-10);
  });
});

describe("a program", () => {
  it("may cost more than it avoids: a benefit-cost ratio below one is reached", () => {
    // Thomas 2010, abstract: the cost of inspection may exceed the avoided infrastructure cost.
    const quiet: StudyInput = studyOf([floatingDock], { boats: { ...boats, otherWays: [] } });
    const balance = programOf(compare(quiet, assumed));
    expect(balance.benefitCostRatio).toBeGreaterThan(0);
    expect(balance.benefitCostRatio).toBeLessThan(1);
    expect(balance.netBenefit.lessThan(0)).toBe(true);
  });

  it("may pay: a ratio above one is reached where more boats come from infested waters", () => {
    const busy: StudyInput = {
      ...wholeStudy,
      boats: { ...boats, launches: boats.launches.map((each) => 8 * each) },
    };
    expect(programOf(compare(busy, assumed)).benefitCostRatio).toBeGreaterThan(1);
  });

  it("never raises the chance of infestation, and its ratio and net benefit agree in sign", () => {
    fc.assert(
      fc.property(anySteps, fc.integer({ min: 0, max: 200_000 }), (each, cost) => {
        const option = { ...program, steps: each, yearly: [{ name: "All", cost: cost + 30_000 }] };
        const comparison = compare(studyOf([duties], { options: [noProgram, option] }), assumed);
        const balance = programOf(comparison);
        balance.result.infestedByYear.forEach((chance, year) => {
          expect(chance).toBeLessThanOrEqual(
            (comparison.baseline.infestedByYear[year] ?? Number.NaN) + 1e-12,
          );
        });
        const difference = balance.avoidedLoss.minus(balance.addedProgramCost);
        expect(balance.netBenefit.equals(difference)).toBe(true);
        if (balance.benefitCostRatio !== undefined && Math.abs(balance.netBenefit.toNumber()) > 0.01) {
          expect(balance.benefitCostRatio > 1).toBe(balance.netBenefit.greaterThan(0));
        }
      }),
      { seed: 201, numRuns: 40 },
    );
  });

  it("runs in full while the lake is clean and at its own share afterwards", () => {
    const { result } = programOf(whole);
    result.expectedByYear.forEach((expected, year) => {
      const infested = year === 0 ? 0 : (result.infestedByYear[year - 1] ?? Number.NaN);
      const cost = result.programPerYear.toNumber() * (1 - infested + infested * 0.2);
      expect(relativeGap(expected.program.toNumber(), cost)).toBeLessThan(1e-10);
    });
  });
});

describe("a study without a baseline", () => {
  it("is refused", () => {
    expect(() => compare({ ...wholeStudy, options: [program] }, assumed)).toThrow(
      /neither steps nor schedule/,
    );
  });
});

describe("an option against the baseline", () => {
  it("has the budget of its program", () => {
    // By hand: 3,000 h x 23 x 1.25 = 86,250 in each of the five years shown.
    const row = programOf(whole).budget?.rows.find(({ name }) => name === "Inspectors");
    expect(row?.cents).toEqual(Array<number>(5).fill(8_625_000));
  });
});

describe("an option that counts on deterrence", () => {
  const balanceOf = (deterrence: number) => {
    const steps = { ...thoroughSteps, deterrence };
    return programOf(
      compare(studyOf([floatingDock], { options: [noProgram, { ...program, steps }] }), assumed),
    );
  };

  it("is also weighed as if it deterred nobody; one that does not is weighed once", () => {
    const told = balanceOf(0.3).withoutDeterrence();
    const plain = balanceOf(0);
    expect(told?.avoidedLoss.toNumber()).toBe(plain.avoidedLoss.toNumber());
    expect(told?.netBenefit.toNumber()).toBe(plain.netBenefit.toNumber());
    expect(plain.withoutDeterrence()).toBeUndefined();
    expect(balanceOf(0.3).avoidedLoss.greaterThan(plain.avoidedLoss)).toBe(true);
  });
});

import fc from "fast-check";
import { npv, PaymentDueTime, pmt, pv } from "financial";
import { describe, expect, it } from "vitest";
import { cashBasis } from "../../../src/model/money/cash-basis.js";
import { equipmentBases } from "../../../src/model/program/equipment-bases.js";
import { relativeGap } from "../near.js";
import { noProgram, program, wholeStudy } from "../study.js";

const level = () => 1;

describe("equipment counted when it is bought", () => {
  it("is by hand what it costs less a third of it after 20 of 30 years", () => {
    // 30,000 at the start of year 1; 10 of 30 years left, 10,000, at 3 % over 20 years: x 0.553676 (P/F, costs table).
    const { purchases, residual } = cashBasis({ price: 30_000, life: 30, firstYear: 1 }, 20, 0.03, level);
    expect(purchases).toBe(30_000);
    expect(Math.abs(residual - 10_000 * 0.553676)).toBeLessThan(0.01);
  });

  it("is what an independent library makes of the same payments", () => {
    // financial 0.2.4: npv from the start of year 1; bought in years 1, 9 and 17 of 20, 4 of 8 years left.
    const flows = Array<number>(21).fill(0);
    for (const start of [0, 8, 16]) flows[start] = 17_000;
    flows[20] = -8500;
    const { purchases, residual } = cashBasis({ price: 17_000, life: 8, firstYear: 1 }, 20, 0.03, level);
    expect(relativeGap(purchases - residual, npv(0.03, flows))).toBeLessThan(1e-12);
  });

  it("costs over whole lives what capital recovery at the years' ends costs", () => {
    // Both repay the price with interest; the library's pmt over the life and pv of it over the horizon.
    const rate = fc.double({ min: 0.002, max: 0.12, noNaN: true });
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 20 }),
        fc.integer({ min: 1, max: 4 }),
        rate,
        (life, lives, interest) => {
          const horizon = life * lives;
          const { purchases, residual } = cashBasis(
            { price: 100, life, firstYear: 1 },
            horizon,
            interest,
            level,
          );
          const yearly = pmt(interest, life, -100, 0, PaymentDueTime.End);
          expect(residual).toBe(0);
          expect(relativeGap(purchases, pv(interest, horizon, -yearly, 0, PaymentDueTime.End))).toBeLessThan(
            1e-9,
          );
        },
      ),
      { seed: 84, numRuns: 200 },
    );
  });

  it("rises with its price until it is bought, and is worth at the end what that purchase cost", () => {
    // By hand: bought at 0 and 10 for 100 x 1.1^0 and 100 x 1.1^10, a half of the second left after 15 years.
    const { purchases, residual } = cashBasis(
      { price: 100, life: 10, firstYear: 1 },
      15,
      0,
      (time) => 1.1 ** time,
    );
    expect(purchases).toBeCloseTo(100 + 259.37424601, 6);
    expect(residual).toBeCloseTo(259.37424601 / 2, 6);
    // Bought at 0, 5 and 10 where it lasts 5 years: three fifths of the third are left after 12 years.
    const third = cashBasis({ price: 100, life: 5, firstYear: 1 }, 12, 0, (time) => 1.1 ** time);
    expect(third.residual).toBeCloseTo(259.37424601 * 0.6, 6);
  });
});

describe("the equipment of an option, in two ways", () => {
  it("differs by half a year's interest over whole lives, mid-year against the years' ends", () => {
    // Recovery is reckoned at the years' ends and paid in mid-year: worth sqrt(1.03) times as much.
    const money = { ...wholeStudy.money, horizon: 16 };
    const bases = equipmentBases(program, money);
    if (!bases) throw new Error("no equipment");
    expect(bases.residual).toBe(0);
    expect(relativeGap(bases.recovery, bases.cash * Math.sqrt(1.03))).toBeLessThan(1e-12);
    const atEnd = equipmentBases(program, { ...money, timing: "end-of-year" });
    expect(relativeGap(atEnd?.recovery ?? Number.NaN, bases.cash)).toBeLessThan(1e-12);
  });

  it("is in the recovery the equipment's part of the comparison's program", () => {
    const bases = equipmentBases(program, wholeStudy.money);
    // A/P at 3 % over 8 years, 0.142456 (formula of the textbooks), x 17,000 x sum of mid-year factors over 20 years,
    // P/A 14.877475 x sqrt(1.03).
    expect(Math.abs((bases?.recovery ?? 0) - 17_000 * 0.14245639 * 14.877475 * Math.sqrt(1.03))).toBeLessThan(
      0.1,
    );
  });

  it("is in cash what was bought less what it is worth at the end, at prices that rise", () => {
    // Prices stand in the middle of 2027. Bought at its start for 17,000/√1.04; of 8 years 3 are left after 5,
    // by straight line on what was paid.
    const escalation = [{ group: "equipment" as const, rate: 0.04 }];
    const money = { ...wholeStudy.money, horizon: 5, escalation, priceYear: 2027, startYear: 2027 };
    const bases = equipmentBases(program, money);
    if (!bases) throw new Error("no equipment");
    expect(bases.purchases).toBeCloseTo(17_000 / Math.sqrt(1.04), 6);
    expect(relativeGap(bases.residual, ((17_000 * 3) / 8) * 1.04 ** -0.5 * 1.03 ** -5)).toBeLessThan(1e-9);
    expect(bases.cash).toBeCloseTo(bases.purchases - bases.residual, 9);
    // Each mid-year's recovery at that year's price.
    const recovery = [0, 1, 2, 3, 4].reduce((sum, year) => sum + 1.04 ** year * 1.03 ** -(year + 1 / 2), 0);
    expect(relativeGap(bases.recovery, 17_000 * 0.14245639 * recovery)).toBeLessThan(1e-7);
  });

  it("does not rise with the prices of other groups", () => {
    const escalation = [{ group: "wages" as const, rate: 0.04 }];
    expect(equipmentBases(program, { ...wholeStudy.money, escalation })).toEqual(
      equipmentBases(program, wholeStudy.money),
    );
  });

  it("is absent without equipment", () => {
    expect(equipmentBases(noProgram, wholeStudy.money)).toBeUndefined();
  });
});

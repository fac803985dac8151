import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { FeeLine, ProgramOption } from "../../../src/model/inputs.js";
import { moneyOf, totalOf } from "../../../src/model/money/line.js";
import { programLines } from "../../../src/model/program/cost.js";
import { feeToCarry, fullCostFee } from "../../../src/model/program/fees.js";
import { anyOption, emptyOption, money } from "./any-option.js";

const feeOf = (option: ProgramOption) => fullCostFee(option, programLines(option, money));
const netCost = (option: ProgramOption) => totalOf(programLines(option, money)).toNumber();
const option = (changes: Partial<ProgramOption>): ProgramOption => ({ ...emptyOption, ...changes });
const yearly = [{ name: "Everything", cost: 60_000 }];
const fees: FeeLine[] = [
  { name: "Season sticker", countPerYear: 1000, fee: 20 },
  { name: "Day sticker", vesselClass: "visitors", countPerYear: 2000, payers: 500, fee: 5 },
];

describe("the full-cost fee", () => {
  it("is the cost over the boats that pay, or a factor on all fees", () => {
    // By hand: 60,000 / (1,000 + 500) = 40; fees bring 1,000 x 20 + 2,000 x 5 = 30,000, so twice each.
    const found = feeOf(option({ yearly, fees }));
    expect(found.perBoat).toBe(40);
    expect(found.factor).toBe(2);
    expect(
      found.fees.map(({ vesselClass, payers, fee, atFullCost }) => [vesselClass, payers, fee, atFullCost]),
    ).toEqual([
      [undefined, 1000, 20, 40],
      ["visitors", 500, 5, 10],
    ]);
    expect(found.feeRevenue.toFixed(2)).toBe("30000.00");
  });

  it("is higher for those left where a fee keeps some away", () => {
    // By hand: a fee of 100 keeps half away, so 50 keeps a quarter: 1,125 of 1,500 boats pay 50, 56,250 in all. As many
    // as 20 and 5 keep a tenth and a fortieth away: 1,000 x 0.9 + 500 x 0.975 = 1,387.5 pay, 18,000 + 9,750 in all.
    const cost = [{ name: "Everything", cost: 56_250 }];
    const found = feeOf(option({ yearly: cost, fees, demandLoss: { fee: 100, loss: 1 / 2 } }));
    expect(found.perBoat).toBeCloseTo(50, 10);
    expect(found.payersAtFullCost).toBeCloseTo(1125, 10);
    expect(found.payers).toBeCloseTo(1387.5, 10);
    expect(found.feeRevenue.toFixed(2)).toBe("27750.00");
    // With k = 2, 40 and 10 keep a fifth and a twentieth away: 1,000 x 40 x 0.8 + 2,000 x 10 x 0.95 = 51,000.
    const twice = feeOf(
      option({ yearly: [{ name: "Everything", cost: 51_000 }], fees, demandLoss: { fee: 100, loss: 1 / 2 } }),
    );
    expect(twice.factor).toBeCloseTo(2, 10);
  });

  it("takes nothing like the loss at a high fee off a low one", () => {
    // By hand: 20 % at 40 is 5 % at 10.
    const sticker = [{ name: "Sticker", countPerYear: 1000, fee: 10 }];
    const found = feeOf(option({ yearly, fees: sticker, demandLoss: { fee: 40, loss: 0.2 } }));
    expect(found.feeRevenue.toFixed(2)).toBe("9500.00");
  });

  it("has less to carry where there is other revenue, and nothing where that is enough", () => {
    // By hand: (60,000 - 15,000) / 1,500 = 30.
    const granted = (amount: number) =>
      feeOf(option({ yearly, fees, otherRevenue: [{ name: "Grant", amount }] }));
    expect(granted(15_000).perBoat).toBe(30);
    expect(granted(60_000)).toMatchObject({ perBoat: 0, factor: 0 });
    expect(granted(70_000)).toMatchObject({ perBoat: 0, factor: 0 });
    expect(granted(70_000).cost.toFixed(2)).toBe("-10000.00");
  });

  it("does not exist where nobody pays", () => {
    const nobody = [
      option({ yearly }),
      option({ yearly, fees: [{ name: "Sticker", countPerYear: 0, fee: 20 }] }),
    ];
    for (const each of nobody)
      expect(feeOf(each)).toMatchObject({ payers: 0, perBoat: undefined, factor: undefined });
    // By hand: where 60 keeps all away, the most that 1,500 boats bring in is 1,500 x 30 x 0.5 = 22,500.
    const scared = option({ yearly, fees, demandLoss: { fee: 60, loss: 1 } });
    expect(feeOf(scared)).toMatchObject({ perBoat: undefined, factor: undefined, payersAtFullCost: 0 });
  });

  it("counts no boat twice where another fee has counted it", () => {
    const wash: FeeLine = { name: "Wash", countPerYear: 100, payers: 0, fee: 25 };
    const found = feeOf(option({ yearly, fees: [...fees, wash] }));
    expect(found.payers).toBe(1500);
    // By hand: 30,000 + 100 x 25 = 32,500.
    expect(found.feeRevenue.toFixed(2)).toBe("32500.00");
  });

  it("is told as beyond the stated demand where it is above the fee for which the loss is stated, not at it", () => {
    // By hand, without loss: equal 40; in proportion 40 and 10.
    const stated = (fee: number) =>
      feeOf(option({ yearly, fees, demandLoss: { fee, loss: 0 } })).isBeyondStated;
    expect(stated(40)).toEqual({ equal: false, inProportion: false });
    expect(stated(39.99)).toEqual({ equal: true, inProportion: true });
    expect(feeOf(option({ yearly, fees })).isBeyondStated).toEqual({ equal: false, inProportion: false });
    const oneFee = [{ name: "Day sticker", countPerYear: 3000, payers: 1500, fee: 5 }];
    // By hand: 60,000 / 1,500 = 40 a boat, but 20 a payment.
    const found = feeOf(option({ yearly, fees: oneFee, demandLoss: { fee: 30, loss: 0 } }));
    expect(found.isBeyondStated).toEqual({ equal: true, inProportion: false });
  });

  it("makes the net cost nothing, to the cent of each fee, when it is put back in", () => {
    fc.assert(
      fc.property(anyOption, (each) => {
        const { perBoat, factor, cost } = feeOf(each);
        fc.pre(cost.greaterThan(0));
        if (perBoat !== undefined) {
          const equal = each.fees.map((fee) => ({ ...fee, fee: perBoat }));
          expect(Math.abs(netCost({ ...each, fees: equal }))).toBeLessThanOrEqual(
            0.005 * each.fees.length + 1e-9,
          );
        }
        if (factor !== undefined) {
          const raised = each.fees.map((fee) => ({ ...fee, fee: fee.fee * factor }));
          expect(Math.abs(netCost({ ...each, fees: raised }))).toBeLessThanOrEqual(
            0.005 * each.fees.length + 1e-9,
          );
        }
      }),
      { seed: 221, numRuns: 300 },
    );
  });

  it("does not depend on the present fees where it is equal for all", () => {
    const dearer = fees.map((each) => ({ ...each, fee: each.fee * 3 }));
    expect(feeOf(option({ yearly, fees: dearer })).perBoat).toBe(feeOf(option({ yearly, fees })).perBoat);
  });
});

describe("the fee that carries a cost", () => {
  const carried = (cost: number, payments: number, changes: Partial<ProgramOption> = {}) =>
    feeToCarry(moneyOf(cost * 100), payments, option(changes));
  const scared = { demandLoss: { fee: 100, loss: 1 / 2 } };

  it("is the cost over the payments, and more where it keeps some of them away", () => {
    expect(carried(60_000, 1500)).toBe(40);
    // By hand: 50 keeps a quarter away, and 0.75 x 50 = 37.50 of each of 1,000.
    expect(carried(37_500, 1000, scared)).toBeCloseTo(50, 10);
  });

  it("is nothing where there is nothing to carry, and absent where no fee brings that much", () => {
    expect(carried(-1, 1500)).toBe(0);
    expect(carried(60_000, 0)).toBeUndefined();
    // By hand: the most is 100 x 0.5 = 50 of each.
    expect(carried(50_000, 1000, scared)).toBeCloseTo(100, 4);
    expect(carried(50_001, 1000, scared)).toBeUndefined();
  });
});

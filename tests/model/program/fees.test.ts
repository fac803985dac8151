import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { FeeLine, ProgramOption } from "../../../src/model/inputs.js";
import { totalOf } from "../../../src/model/money/line.js";
import { programLines } from "../../../src/model/program/cost.js";
import { fullCostFee } from "../../../src/model/program/fees.js";
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
    // By hand: a fifth stays away. 60,000 / 1,200 = 50; fees bring 24,000, so 2.5 times each.
    const found = feeOf(option({ yearly, fees, demandLoss: { fee: 60, loss: 1 / 5 } }));
    expect(found.perBoat).toBeCloseTo(50, 10);
    expect(found.factor).toBeCloseTo(2.5, 10);
    expect(found.payers).toBeCloseTo(1200, 10);
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
      option({ yearly, fees, demandLoss: { fee: 60, loss: 1 } }),
    ];
    for (const each of nobody)
      expect(feeOf(each)).toMatchObject({ payers: 0, perBoat: undefined, factor: undefined });
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

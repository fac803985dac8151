import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { MoneySettings, ProgramOption } from "../../../src/model/inputs.js";
import { totalOf } from "../../../src/model/money/line.js";
import { programLines } from "../../../src/model/program/cost.js";

const money: MoneySettings = {
  currency: "USD",
  priceYear: 2025,
  startYear: 2027,
  horizon: 30,
  discountRate: 0.07,
  timing: "end-of-year",
  fiscalYearStart: 1,
  inflation: 0,
  programBearer: "authority",
  bearers: [{ id: "authority", name: "Authority" }],
};

const empty: ProgramOption = {
  id: "program",
  name: "Program",
  rampUp: [],
  staff: [],
  equipment: [],
  yearly: [],
  fees: [],
  afterInfestation: { share: 0 },
};

const costOf = (option: Partial<ProgramOption>) => totalOf(programLines({ ...empty, ...option }, money));

describe("a year of a program", () => {
  it("pays hours at the wage with its loading", () => {
    // By hand: 2,700 h x 23 x 1.24 = 77,004.
    const staff = [{ name: "Inspectors", hoursPerYear: 2700, wage: 23, loading: 0.24 }];
    expect(costOf({ staff }).toFixed(2)).toBe("77004.00");
  });

  it("pays equipment by its capital recovery over its life", () => {
    // A/P at 7 % over 10 years is 0.1423775 (computed from the formula): 2 x 17,000 x 0.1423775 = 4,840.835.
    const equipment = [{ name: "Hot-wash unit", count: 2, price: 17_000, life: 10 }];
    expect(costOf({ equipment }).toNumber()).toBeCloseTo(4840.84, 2);
  });

  it("pays equipment to run, piece by piece, beside its capital", () => {
    // By hand: two units at 1,500 a year; at no interest 2 x 17,000 over 10 years is 3,400.
    const equipment = [{ name: "Hot-wash unit", count: 2, price: 17_000, life: 10, yearlyCost: 1500 }];
    const lines = programLines({ ...empty, equipment }, { ...money, discountRate: 0 });
    expect(lines.map(({ what, quantity, unitRate, cents }) => [what, quantity, unitRate, cents])).toEqual([
      ["Hot-wash unit, yearly over 10 years", 2, 1700, 340_000],
      ["Hot-wash unit, running cost", 2, 1500, 300_000],
    ]);
  });

  it("pays what is counted at its unit price", () => {
    // By hand: 24 tows x 180 = 4,320; 12 plates x 65 = 780.
    const yearly = [
      { name: "Plankton tows", count: 24, unitCost: 180, unit: "tow" },
      { name: "Settlement plates", count: 12, unitCost: 65 },
    ];
    const lines = programLines({ ...empty, yearly }, money);
    expect(lines.map(({ quantity, unitRate, unit, cents }) => [quantity, unitRate, unit, cents])).toEqual([
      [24, 180, "tow", 432_000],
      [12, 65, undefined, 78_000],
    ]);
  });

  it("has a group for each line: what is entered, or what it mostly is", () => {
    const entered: Partial<ProgramOption> = {
      staff: [
        { name: "Inspectors", hoursPerYear: 1, wage: 1, loading: 0 },
        { name: "Supervisor", group: "supervision", hoursPerYear: 1, wage: 1, loading: 0 },
      ],
      equipment: [{ name: "Shelter", group: "site-works", count: 1, price: 1, life: 1, yearlyCost: 1 }],
      yearly: [{ name: "Sundries", cost: 1 }],
      otherRevenue: [{ name: "Grant", amount: 1 }],
      fees: [{ name: "Stickers", countPerYear: 1, fee: 1 }],
    };
    const groups = programLines({ ...empty, ...entered }, money).map(({ group }) => group);
    expect(groups.sort()).toEqual(
      ["wages", "supervision", "site-works", "site-works", "other", "other-revenue", "fees"].sort(),
    );
  });

  it("takes grants, and fees less those whom they keep away, as revenue", () => {
    // By hand: -5,000 of grant; 1,000 payments less a fifth at 10 are -8,000.
    const otherRevenue = [{ name: "Grant", amount: 5000 }];
    const fees = [{ name: "Stickers", countPerYear: 1000, fee: 10 }];
    const option = { ...empty, otherRevenue, fees, demandLoss: { fee: 10, loss: 1 / 5 } };
    const lines = programLines(option, money);
    expect(lines.map(({ type, quantity, cents }) => [type, quantity, cents])).toEqual([
      ["revenue", 1, -500_000],
      ["revenue", 800, -800_000],
    ]);
  });

  it("counts fees as revenue", () => {
    // By hand: 9,500 + 6,000 - 2,600 x 10 = -10,500.
    const yearly = [
      { name: "Training", cost: 9500 },
      { name: "Outreach", cost: 6000 },
    ];
    const fees = [{ name: "Stickers", countPerYear: 2600, fee: 10 }];
    expect(costOf({ yearly, fees }).toFixed(2)).toBe("-10500.00");
    const lines = programLines({ ...empty, fees }, money);
    expect(lines.map(({ type, bearer }) => [type, bearer])).toEqual([["revenue", "authority"]]);
  });

  it("closes as a published state budget does", () => {
    // Utah Division of Wildlife Resources, 2009 season: 1,098,524 + 2,887 + 79,554 + 219,035 = 1,400,000.
    const amounts = [1_098_524, 2887, 79_554, 219_035];
    const yearly = amounts.map((cost, index) => ({ name: `Line ${index}`, cost }));
    expect(costOf({ yearly }).toFixed(2)).toBe("1400000.00");
  });

  it("costs nothing without lines, and twice as much with each line twice", () => {
    expect(costOf({}).equals(0)).toBe(true);
    const cents = fc.integer({ min: 0, max: 5_000_000 });
    fc.assert(
      fc.property(fc.array(cents, { maxLength: 12 }), (costs) => {
        const yearly = costs.map((cost, index) => ({ name: `Line ${index}`, cost: cost / 100 }));
        expect(costOf({ yearly: [...yearly, ...yearly] }).equals(costOf({ yearly }).times(2))).toBe(true);
      }),
      { seed: 141, numRuns: 100 },
    );
  });
});

import { describe, expect, it } from "vitest";
import type { ProgramOption } from "../../../src/model/inputs.js";
import {
  deterredShare,
  hasWages,
  metShare,
  variantOf,
  withHours,
} from "../../../src/model/search/variant.js";
import { program } from "../study.js";

const steps = { ...program.steps, coverage: 0.8, deterrence: 0.2 } as NonNullable<ProgramOption["steps"]>;
const option: ProgramOption = {
  ...program,
  steps: {
    ...steps,
    seals: [{ vesselClass: "local", share: 0.5 }],
    byClass: [
      { vesselClass: "local", hotWash: 0.7, inspection: 0.5 },
      { vesselClass: "infested", inspection: 0.6 },
    ],
  },
  rampUp: [{ reach: 0.5, cost: 0.7 }],
  staff: [
    { name: "Inspectors", hoursPerYear: 3000, wage: 23, loading: 0.25 },
    { name: "Office", group: "other", hoursPerYear: 400, wage: 30, loading: 0 },
  ],
  equipment: [
    { name: "Hot-wash unit", group: "equipment", count: 1, price: 17_000, life: 8 },
    { name: "Signs", count: 9, price: 100, life: 5 },
  ],
  yearly: [
    { name: "Supplies", cost: 20_000 },
    { name: "Overtime", group: "wages", cost: 5000 },
    { name: "Seals", count: 1000, unitCost: 2 },
  ],
  fees: [
    { name: "Stickers", countPerYear: 2000, fee: 10 },
    { name: "Washes", countPerYear: 300, fee: 40, payers: 100 },
  ],
};
const same = { hours: 1, coverage: { times: 1 }, measures: [], lumpShare: 0.4 } as const;

describe("what is met and deterred, by hand", () => {
  it("is of all launches, or of those that the option meets, and never above all", () => {
    expect([metShare({ of: 0.3 }, 0.8), metShare({ times: 0.5 }, 0.8), metShare({ times: 2 }, 0.8)]).toEqual([
      0.3, 0.4, 1,
    ]);
    expect(metShare({ of: 1.2 }, 0.8)).toBe(1);
  });

  it("is deterred in proportion, never more, and in full by an option that meets nobody", () => {
    expect([deterredShare(0.2, 0.8), deterredShare(0.9, 0.8), deterredShare(0, 0)]).toEqual([0.25, 1, 1]);
  });
});

describe("a line with half of the hours, by hand", () => {
  const half = { hours: 0.5, lumpShare: 0.4 };

  it("has half of the wages, where they are told apart, and all else as it was", () => {
    expect(hasWages(option)).toBe(true);
    expect(option.staff.map((line) => withHours(line, half, true).hoursPerYear)).toEqual([1500, 400]);
    expect(option.yearly.map((line) => withHours(line, half, true))).toEqual([
      { name: "Supplies", cost: 20_000 },
      { name: "Overtime", group: "wages", cost: 2500 },
      { name: "Seals", count: 1000, unitCost: 2 },
    ]);
  });

  it("has, of lumps without wages, the share that goes with hours halved", () => {
    const lumps: ProgramOption = { ...option, staff: [], yearly: [{ name: "Stations", cost: 10_000 }] };
    expect(hasWages(lumps)).toBe(false);
    // By hand: 60 % stays, 40 % is halved.
    expect(lumps.yearly.map((line) => withHours(line, half, false))).toEqual([
      { name: "Stations", cost: 8000 },
    ]);
    const counted = { name: "Seals", count: 10, unitCost: 2 };
    expect(withHours(counted, half, false)).toEqual(counted);
    expect(hasWages({ staff: [], yearly: [{ name: "Crew", group: "wages", cost: 1 }] })).toBe(true);
    const office = { name: "Office", group: "other", hoursPerYear: 1, wage: 1, loading: 0 } as const;
    expect(hasWages({ staff: [office], yearly: [] })).toBe(false);
  });
});

describe("an option as a search varies it, by hand", () => {
  it("is itself where nothing is varied", () => {
    expect(variantOf(option, same)).toEqual(option);
  });

  it("meets half, deters and charges half, and pays half of the wages in half of the hours", () => {
    const found = variantOf(option, { ...same, hours: 0.5, coverage: { times: 0.5 }, rampUp: [] });
    expect(found.rampUp).toEqual([]);
    expect(found.steps).toMatchObject({ coverage: 0.4, deterrence: 0.1, inspection: steps.inspection });
    expect(found.staff.map(({ hoursPerYear }) => hoursPerYear)).toEqual([1500, 400]);
    expect(found.fees).toEqual([
      { name: "Stickers", countPerYear: 1000, fee: 10 },
      { name: "Washes", countPerYear: 150, fee: 40, payers: 50 },
    ]);
  });

  it("loses the groups that a measure leaves out, and pays what one costs", () => {
    const found = variantOf(option, {
      ...same,
      measures: [
        { id: "bare", name: "Bare", leaves: ["equipment", "wages"] },
        { id: "radio", name: "Radio", leaves: [], cost: 9000 },
      ],
    });
    expect(found.equipment.map(({ name }) => name)).toEqual(["Signs"]);
    expect(found.yearly).toEqual([option.yearly[0], option.yearly[2], { name: "Radio", cost: 9000 }]);
  });

  it("charges what the measures make of its fees, one upon the other", () => {
    const measures = [1.5, undefined, 0.5].map((fees) => ({ id: "fee", name: "Fee", leaves: [], fees }));
    expect(variantOf(option, { ...same, measures }).fees.map(({ fee }) => fee)).toEqual([7.5, 30]);
  });

  it("goes without seals or the wash, for every class, and takes the steps of a measure", () => {
    const withMeasure = (measure: object) =>
      variantOf(option, { ...same, measures: [{ id: "one", name: "One", leaves: [], ...measure }] }).steps;
    expect(withMeasure({ withoutSeals: true })).toEqual({ ...option.steps, seals: [] });
    expect(withMeasure({ withoutWash: true })).toEqual({
      ...option.steps,
      hotWash: 0,
      byClass: [
        { vesselClass: "local", hotWash: 0, inspection: 0.5 },
        { vesselClass: "infested", inspection: 0.6 },
      ],
    });
    expect(withMeasure({ steps: { declaration: 0.9, deterrence: 0.3 } })).toEqual({
      ...option.steps,
      declaration: 0.9,
      deterrence: 0.3,
    });
  });

  it("has to have steps", () => {
    const bare = { ...option, steps: undefined };
    expect(() => variantOf(bare, same)).toThrow("stations: a search starts from an option with steps");
  });
});

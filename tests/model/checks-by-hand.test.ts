import { describe, expect, it, test } from "vitest";
import { plausibilityChecks } from "../../src/model/checks.js";
import { compare } from "../../src/model/compare.js";
import type { Lake } from "../../src/model/lake/lake.js";
import type { Structure } from "../../src/model/structures/kinds.js";
import { assumed, assumedWith } from "./assumptions.js";
import { drawnDownLake, productiveLake } from "./lakes.js";
import { everyMonth } from "./near.js";
import { fixedDock, gravityIntake, plant, pumpedIntake, ramp, studyOf, wholeStudy } from "./study.js";

const rowsOf = (structures: readonly Structure[], source = assumed, lake: Lake = productiveLake) =>
  compare(studyOf(structures, { lake }), source).checks;

describe("the check of storage", () => {
  const storageCheck = (entered: readonly [number, number, number], source = assumed) => {
    // Of 1, 2 and 3 km2 at 60, 80 and 100 m; by hand 30 and 50 million m3 between.
    const storageTable = [60, 80, 100].map((elevation, row) => ({
      elevation,
      area: (row + 1) * 1e6,
      storage: (entered[row] ?? Number.NaN) * 1e6,
    }));
    const lake = { ...drawnDownLake, storageTable };
    return rowsOf([ramp], source, lake).find(({ what }) => what.includes("Entered storage"));
  };

  it("is of all that lies between the first row and the last, whatever lies below the first", () => {
    expect(storageCheck([500, 530, 580])).toMatchObject({ found: "differs by 0.0 %", passed: true });
    expect(storageCheck([500, 530, 600])).toMatchObject({ found: "differs by 20.0 %", passed: false });
  });

  it("says how much may be missing", () => {
    const source = assumedWith({ "checks.storage-tolerance": 0.21 });
    expect(storageCheck([0, 30, 100], source)).toMatchObject({ allowed: "at most 21 %", passed: true });
  });
});

describe("the check of a layer's weight", () => {
  it("is of layers as heavy as those that were published, and of no thin film", () => {
    const weighed = (source = assumed) =>
      rowsOf([fixedDock], source).some(({ what }) => what.includes("mature layer"));
    expect(weighed()).toBe(true);
    expect(weighed(assumedWith({ "growth.settlers-per-month": 10 }))).toBe(false);
  });
});

describe("the check of energy", () => {
  const energyRows = (structure: Structure) =>
    rowsOf([structure]).filter(({ what }) => what.includes("energy lost is at most"));

  it("is of power plants alone", () => {
    expect(energyRows(plant)).toHaveLength(1);
    for (const structure of [pumpedIntake, fixedDock, ramp]) expect(energyRows(structure)).toEqual([]);
  });

  it("finds nothing lost of nothing made", () => {
    const [row] = energyRows({ ...plant, flow: everyMonth(0) });
    expect(row).toMatchObject({ found: "0.00 % in the worst year", passed: true });
  });

  it("fails where more is lost than made", () => {
    // A year of lines ten times over stands for a fault elsewhere.
    const input = studyOf([plant]);
    const { structures, infestation } = compare(input, assumed);
    const rowOf = (times: number) => {
      const tenfold = structures.map((each) => ({
        ...each,
        years: each.years.map((lines) => Array.from({ length: times }, () => lines).flat()),
      }));
      return plausibilityChecks(input, tenfold, infestation, assumed).find(({ what }) =>
        what.includes("energy lost is at most"),
      );
    };
    const share = Number.parseFloat(rowOf(1)?.found ?? "");
    expect(rowOf(1)?.passed).toBe(true);
    expect(share).toBeGreaterThan(0);
    expect(rowOf(Math.ceil(100 / share) + 1)?.passed).toBe(false);
  });
});

describe("the check of a plant's yearly cost", () => {
  const costRow = (structure: Structure, low: number, high: number) =>
    rowsOf([structure], assumedWith({ "checks.plant-cost-low": low, "checks.plant-cost-high": high })).find(
      ({ what }) => what.includes("yearly cost in a mature infestation"),
    );
  const mature = () => {
    const [result] = compare(studyOf([plant], { lake: productiveLake }), assumed).structures;
    return (result?.years.at(-1) ?? []).reduce((sum, { cents }) => sum + cents, 0) / 100;
  };

  it("passes from the lowest to the highest published one, and fails on either side", () => {
    const cost = mature();
    expect(cost).toBeGreaterThan(0);
    expect(costRow(plant, cost, cost)?.passed).toBe(true);
    expect(costRow(plant, cost - 1, cost + 1)?.passed).toBe(true);
    expect(costRow(plant, cost + 1, cost + 2)?.passed).toBe(false);
    expect(costRow(plant, cost - 2, cost - 1)?.passed).toBe(false);
    expect(costRow(plant, 1, 1e7)?.found).toBe(`${Math.round(cost).toLocaleString("en-US")} a year`);
  });

  const pinned = (plan: string) =>
    ["trash rack", "conduit"].map((part) => ({ part, plan, reason: "as found" }));
  test.each<[string, Structure]>([
    ["is left as it is, whatever it loses", { ...gravityIntake, pinned: pinned("leave") }],
    [
      "lies above the water, and costs nothing",
      { ...gravityIntake, pinned: pinned("divers-12"), elevation: 101 },
    ],
    ["is a dock", { ...fixedDock, pinned: [{ part: "wetted hull", plan: "divers-12", reason: "as found" }] }],
  ])("is not of a structure that %s", (_name, structure) => {
    expect(rowsOf([structure]).some(({ what }) => what.includes("yearly cost in a mature"))).toBe(false);
  });

  it("is not of a structure without any cost in its mature year", () => {
    const { structures, infestation } = compare(wholeStudy, assumed);
    const free = { ...infestation, ofStructure: () => ({ ...infestation, byYear: [] }) };
    const rows = plausibilityChecks(wholeStudy, structures, free, assumed);
    expect(rows.some(({ what }) => what.includes("yearly cost in a mature"))).toBe(false);
  });
});

import { describe, expect, it } from "vitest";
import type { Lake } from "../../../src/model/lake/lake.js";
import { dailyElevations } from "../../../src/model/lake/levels.js";
import type { CostLine } from "../../../src/model/money/line.js";
import type { Priced } from "../../../src/model/structures/component.js";
import type { Hydropower } from "../../../src/model/structures/inputs.js";
import type { Structure } from "../../../src/model/structures/kinds.js";
import { linesByYear, tableOf } from "../../../src/model/structures/plans/year-table.js";
import { structureResult } from "../../../src/model/structures/structure.js";
import { costLinesByYear, toldYears } from "../../../src/model/structures/structure-years.js";
import { assumedWith } from "../assumptions.js";
import { contextOf, contextsOf } from "../contexts.js";
import { drawnDownLake, productiveLake } from "../lakes.js";
import { everyMonth, relativeGap } from "../near.js";
import { duties, fixedDock, gravityIntake, plant, pumpedIntake } from "../study.js";

const context = contextOf(productiveLake, 15);
const fixtures = [{ name: "gates", count: 4, hoursEach: 12 }];
const hasGates = (lines: readonly CostLine[]) => lines.some(({ what }) => what === "work on gates");

describe("fixtures", () => {
  it("foul as soon as one of the parts does", () => {
    // Above 1.8 m/s in every month no mussel settles: 1.2 m3/s through 0.9 m are 1.89 m/s. The rack is slow.
    const conduit = { ...pumpedIntake.conduit, diameter: 0.9 };
    const fast = { ...pumpedIntake, demand: everyMonth(1.2), conduit, fixtures };
    const { components, years } = structureResult(fast, [context]);
    expect(components.map(({ untouchedLayer }) => untouchedLayer.mass > 0)).toEqual([true, false]);
    expect(hasGates(years.at(-1) ?? [])).toBe(true);
  });

  it("foul as long as one of the parts does, also where another fouled for some years alone", () => {
    // Mussels decline after their peak: the rack keeps a layer of more than 12 mm, the faster conduit does not.
    const declining = { "population.later-over-peak": 0.15, "population.decline-years": 1 };
    const source = assumedWith({ ...declining, "cleaning.smallest-layer": 0.012 });
    const gatesOf = (diameter: number) => {
      const conduit = { ...pumpedIntake.conduit, diameter };
      const intake = { ...pumpedIntake, demand: everyMonth(1.2), conduit, fixtures };
      const { components, years } = structureResult(intake, [contextOf(productiveLake, 15, source)]);
      return { gates: years.map(hasGates), thickest: components[1]?.untouchedLayer.thickness };
    };
    const [alone, both] = [gatesOf(0.9), gatesOf(1)];
    expect(alone.thickest).toBe(0);
    expect(both.thickest).toBeGreaterThan(0.012);
    expect(both.gates).toEqual(alone.gates);
    expect(both.gates.at(-1)).toBe(true);
  });

  it("cost their hours from the first year on where any layer is worth work", () => {
    const thin = contextOf(productiveLake, 15, assumedWith({ "cleaning.smallest-layer": 1e-9 }));
    const { years, litter } = structureResult({ ...fixedDock, fixtures }, [thin]);
    expect(litter).toEqual([]);
    expect(years.map(hasGates)).toEqual(years.map(() => true));
  });

  it("rest on the price of an hour alone, and a duty on no assumption", () => {
    const { years } = structureResult({ ...fixedDock, fixtures }, [context]);
    const gates = years.flat().filter(({ what }) => what === "work on gates");
    expect(new Set(gates.flatMap(({ assumptionIds }) => assumptionIds))).toEqual(
      new Set(["labour.maintenance-rate"]),
    );
    const items = structureResult(duties, [context]).years.flat();
    expect(items.flatMap(({ assumptionIds }) => assumptionIds)).toEqual([]);
  });
});

describe("the lines of a year", () => {
  it.each<[string, Structure]>([
    ["plant", plant],
    ["pumped intake", pumpedIntake],
    ["gravity intake", gravityIntake],
  ])("have a name each that tells the part: %s", (_name, structure) => {
    const { years, components } = structureResult(structure, [context]);
    for (const lines of years) {
      const names = lines.map(({ what }) => what);
      expect(new Set(names).size).toBe(names.length);
    }
    const mature = years.at(-1)?.map(({ what }) => what) ?? [];
    for (const { name, told } of components) {
      const priced =
        linesByYear(told)
          .at(-1)
          ?.map(({ what }) => `${name}: ${what}`) ?? [];
      expect(mature).toEqual(expect.arrayContaining(priced));
    }
  });
});

describe("a plant that would lose more energy than it makes", () => {
  // A small head behind a narrow penstock and a poor rack, and no part ever cleaned.
  const strained: Hydropower = {
    ...plant,
    tailwaterElevation: 98.5,
    flow: everyMonth(6),
    penstock: { length: 300, diameter: 2.4, roughness: 0.0005, minorLoss: 1 },
    pinned: ["trash rack", "penstock", "cooling-water line"].map((part) => ({
      part,
      plan: "divers-60",
      reason: "as found",
    })),
  };
  const { years, components, cleanEnergy } = structureResult(strained, [context]);
  const made = cleanEnergy.reduce((sum, month) => sum + month, 0);
  const uncut = (year: number): Priced[] =>
    components.flatMap(({ name, told }) =>
      (linesByYear(told)[year] ?? []).map((line) => ({ ...line, what: `${name}: ${line.what}` })),
    );
  const energyOf = (lines: readonly Pick<Priced, "quantity" | "quantityKind">[]) =>
    lines.reduce((sum, { quantity, quantityKind }) => sum + (quantityKind === "energy" ? quantity : 0), 0);

  it("loses all of it, each part in proportion, and pays its work in full", () => {
    const cut = years.map((_, year) => energyOf(uncut(year)) > made);
    expect(cut).toContain(true);
    expect(cut).toContain(false);
    years.forEach((lines, year) => {
      const share = Math.min(1, made / energyOf(uncut(year)));
      for (const line of uncut(year)) {
        const found = lines.find(({ what }) => what === line.what);
        const expected = line.quantityKind === "energy" ? line.quantity * share : line.quantity;
        expect(relativeGap(found?.quantity ?? Number.NaN, expected)).toBeLessThan(1e-9);
      }
      if (cut[year]) expect(relativeGap(energyOf(lines), made)).toBeLessThan(1e-9);
    });
    expect(years.flat().some(({ quantityKind }) => quantityKind === "area")).toBe(true);
  });

  it("is cut once for years that are alike, whose lists stay the same", () => {
    const energyLine = (quantity: number): Priced => ({
      what: "energy lost to head",
      type: "loss",
      quantity,
      quantityKind: "energy",
      unitRate: 1,
      assumptionIds: [],
    });
    const [little, much] = [[energyLine(5)], [energyLine(20)]] as const;
    const worked = { growing: [], litter: [], cleanEnergy: [10] };
    const parts = [
      { name: "trash rack", told: tableOf([little, much, little, much, much]) },
      { name: "penstock", told: tableOf([little, little, little, little, much]) },
    ];
    const told = toldYears(plant, { ...worked, components: parts }, contextOf(productiveLake, 5));
    const lists = [0, 1, 0, 1, 2];
    expect(told.origins.map(({ table }) => table.lists)).toEqual([lists, lists]);
    const byYear = costLinesByYear(plant, told);
    expect(byYear.map((lines) => byYear.indexOf(lines))).toEqual([0, 1, 0, 1, 4]);
    expect(byYear.map(energyOf)).toEqual([10, 10, 10, 10, 10].map((energy) => expect.closeTo(energy, 9)));
  });
});

describe("a plant that would lose more in every year", () => {
  it("loses what it makes in each", () => {
    const lost: Priced = {
      what: "energy lost to head",
      type: "loss",
      quantity: 40,
      quantityKind: "energy",
      unitRate: 1,
      assumptionIds: [],
    };
    const components = [{ name: "penstock", told: tableOf([[lost], [lost]]) }];
    const told = toldYears(
      { ...plant, fixtures: [] },
      { growing: [], litter: [], cleanEnergy: [6, 4], components },
      contextOf(productiveLake, 2),
    );
    const quantities = costLinesByYear(plant, told).map((lines) => lines.map(({ quantity }) => quantity));
    expect(quantities).toEqual([[10], [10]]);
  });
});

describe("a plant over a record of two years", () => {
  it("makes the mean of what it makes in each, in all of its units", () => {
    const record = [drawnDownLake, productiveLake].map(({ drawdown }, index) => ({
      label: `${2001 + index}`,
      daily: dailyElevations(drawdown),
    }));
    const energyOf = (lake: Lake, structure = plant) =>
      structureResult(structure, contextsOf(lake, 3)).cleanEnergy;
    const both = energyOf({ ...productiveLake, record });
    const alone = record.map((year) => energyOf({ ...productiveLake, record: [year] }));
    const unit = energyOf({ ...productiveLake, record }, { ...plant, units: 1 });
    both.forEach((energy, month) => {
      const mean = ((alone[0]?.[month] ?? Number.NaN) + (alone[1]?.[month] ?? Number.NaN)) / 2;
      expect(relativeGap(energy, mean)).toBeLessThan(1e-12);
      expect(relativeGap(energy, 2 * (unit[month] ?? Number.NaN))).toBeLessThan(1e-12);
    });
    // The lake stands lower in January of the first year alone.
    expect(alone[0]?.[0]).toBeLessThan(alone[1]?.[0] ?? Number.NaN);
  });
});

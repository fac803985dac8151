import { describe, expect, test } from "vitest";
import { type Assumed, recorder } from "../../../src/model/assumed.js";
import type { Lake } from "../../../src/model/lake/lake.js";
import { bareSurface, type Layer } from "../../../src/model/mussels/layer.js";
import type { AssumptionId } from "../../../src/model/register/register.js";
import { outageLine } from "../../../src/model/structures/cleaning.js";
import type { Component, Priced } from "../../../src/model/structures/component.js";
import type { LakeContext } from "../../../src/model/structures/context.js";
import type { Structure } from "../../../src/model/structures/kinds.js";
import { candidatePlans } from "../../../src/model/structures/plan.js";
import { removalLines, shellLines, workLines } from "../../../src/model/structures/plan-work.js";
import { componentsOf } from "../../../src/model/structures/structure.js";
import { assumed, assumedWith } from "../assumptions.js";
import { contextOf } from "../contexts.js";
import { drawnDownLake } from "../lakes.js";
import { fixedDock, floatingDock, gravityIntake, plant, pumpedIntake, sealWater } from "../study.js";
import { hatchery, pumpingPlant } from "./deliveries/served.js";
import { lossesOf } from "./losses.js";

/** A layer that costs something everywhere, below every limit that would cut its cost. */
const layer: Layer = {
  ...bareSurface,
  cover: 0.4,
  lengthMm: 4,
  thickness: 0.004,
  mass: 1.5,
  shed: 0.5,
  killed: 1,
};

/** Every line that a part can have, by where it comes from. */
function linesOf(component: Component, context: LakeContext): Map<string, Priced> {
  const lines = new Map<string, Priced>();
  const add = (from: string, more: readonly Priced[]) => {
    for (const [index, line] of more.entries()) lines.set(`${from}: ${index} ${line.what}`, line);
  };
  const { plans } = candidatePlans(component, context);
  add("shells", shellLines(layer, component, context));
  for (const plan of plans) add(`removal of ${plan.id}`, removalLines(plan, layer, component, context));
  for (let month = 0; month < 12; month++) {
    add(`${month}`, lossesOf(component, layer, month));
    add(`outage of ${month}`, component.outage ? [outageLine(component.outage, 3, month)] : []);
    for (const plan of plans) {
      add(`${plan.id} in ${month}`, plan.protection?.monthly[month] ?? []);
      add(`work of ${plan.id} in ${month}`, workLines(plan.entry, component, context, month));
    }
  }
  return lines;
}

const linesUnder = (structure: Structure, source: Assumed, species: Lake["species"]) => {
  const context = contextOf({ ...drawnDownLake, species }, 3, source);
  return componentsOf(structure, context).map((component) => linesOf(component, context));
};

/** Assumptions that move a line's quantity or price when they are two per cent higher, and those that it names. */
function originsOf(structure: Structure, species: Lake["species"]) {
  const read = recorder(assumed);
  const named = linesUnder(structure, read.assumed, species);
  const moved = named.map((lines) => new Map([...lines.keys()].map((key) => [key, new Set<AssumptionId>()])));
  for (const id of read.ids()) {
    linesUnder(structure, assumedWith({ [id]: assumed(id) * 1.02 }), species).forEach((lines, part) => {
      for (const [key, line] of lines) {
        const before = named[part]?.get(key);
        const isMoved = before?.quantity !== line.quantity || before.unitRate !== line.unitRate;
        if (before && isMoved) moved[part]?.get(key)?.add(id);
      }
    });
  }
  return { named, moved };
}

const exchanger = { area: 20, cleanCoefficient: 1200, hotCapacityRate: 40 };
const fittings = {
  strainer: { mesh: 0.006, screenArea: 0.3, type: "simplex" },
  coolers: [{ name: "air coolers", count: 2, tubes: 20, bore: 0.008, passes: 2 }],
  orifices: [{ name: "seals", count: 3, bore: 0.006 }],
} as const;
const { efficiency: _, ...turbinePlant } = plant;
const structures: [string, Structure][] = [
  ["pumped intake", pumpedIntake],
  ["rack by Clark's formula", { ...pumpedIntake, rack: { ...pumpedIntake.rack, formula: "clark" } }],
  ["rack by Reclamation's", { ...pumpedIntake, rack: { ...pumpedIntake.rack, formula: "reclamation" } }],
  ["gravity intake", gravityIntake],
  ["plant", plant],
  [
    "plant with a turbine and an exchanger",
    {
      ...turbinePlant,
      turbine: { type: "francis", ratedFlow: 15, generatorEfficiency: 0.96 },
      coolingWater: {
        ...plant.coolingWater,
        oxidantAllowed: true,
        exchanger,
      },
    },
  ],
  ["floating dock", floatingDock],
  ["pier", { ...fixedDock, elevation: 95 }],
];
/** Structures of which no line rests on the species. */
const served: [string, Structure][] = [
  ["line with a strainer, coolers and orifices", { ...sealWater, ...fittings, exchanger }],
  [
    "plant with a strainer, coolers and orifices",
    { ...plant, coolingWater: { ...plant.coolingWater, ...fittings, upstreamWalls: [] } },
  ],
  ["pumping plant with a canal", { ...pumpingPlant, canal: { length: 2000, bottomWidth: 0.4, depth: 0.3 } }],
  [
    "line of which one cooler plugs",
    { ...sealWater, coolers: [{ name: "oil cooler", count: 1, tubes: 5, bore: 0.012, passes: 2 }] },
  ],
  ["hatchery", hatchery],
];
/** Factors of a formula, bar or species, of which a line has its own alone. */
const ofOneCase = /bar-shape|clark-bar-factor|quagga/;

describe("a cost line, given its layer, names each assumption that moves it and no factor of another case", () => {
  const casesOf = (species: Lake["species"], of: typeof structures) =>
    of.map(([name, structure]) => [name, species, structure] as const);
  const cases = [...casesOf("quagga", [...structures, ...served]), ...casesOf("zebra", structures)];
  test.each(cases)("%s under %s", (_name, species, structure) => {
    const { named, moved } = originsOf(structure, species);
    const gaps = new Set<string>();
    const strangers = new Set<string>();
    named.forEach((lines, part) => {
      for (const [key, { what, assumptionIds }] of lines) {
        const moving = moved[part]?.get(key) ?? new Set<AssumptionId>();
        for (const id of moving) if (!assumptionIds.includes(id)) gaps.add(`${what}: ${id}`);
        for (const id of assumptionIds)
          if (ofOneCase.test(id) && !moving.has(id)) strangers.add(`${what}: ${id}`);
      }
    });
    expect([...gaps]).toEqual([]);
    expect([...strangers]).toEqual([]);
  });
});

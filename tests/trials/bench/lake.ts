import type { Assumed } from "#product/model/assumed.js";
import { compare } from "#product/model/compare.js";
import type { StudyInput } from "#product/model/inputs.js";
import { kindOf, type Structure } from "#product/model/structures/kinds.js";
import type { PreparedStudy } from "#product/study/prepare/prepared.js";
import { median } from "../median.js";

const horizon = 40;
const sizes = [30, 100, 300, 1000];
const warmUps = 15;
const repeats = 9;
/** Structures of a size whose time has a target. */
export const targetSize = 300;

export interface LakeTime {
  readonly structures: number;
  /** Median of warm comparisons, ms. */
  readonly milliseconds: number;
  /** Time per structure over that of the smallest lake in the same run. */
  readonly perStructureRatio: number;
}

/** A comparison with the break-even values of each option, which are made when asked for. */
export function compareWhole(lake: StudyInput, assumed: Assumed): void {
  for (const option of compare(lake, assumed).options) void option.breakEven;
}

/** Times of comparing lakes of many structures of all the study's kinds over 40 years. */
export function timeLargeLakes({ input, assumed }: PreparedStudy): LakeTime[] {
  const lakes = sizes.map((structures) => ({ structures, lake: largeLake(input, structures) }));
  const run = (lake: StudyInput) => {
    const start = performance.now();
    compareWhole(lake, assumed);
    return performance.now() - start;
  };
  for (let warmUp = 0; warmUp < warmUps; warmUp++) for (const { lake } of lakes) run(lake);
  const times = lakes.map(({ structures, lake }) => ({
    structures,
    milliseconds: median(Array.from({ length: repeats }, () => run(lake))),
  }));
  const [smallest] = times;
  return times.map((each) => ({
    ...each,
    perStructureRatio: smallest ? perStructure(each) / perStructure(smallest) : 1,
  }));
}

const perStructure = ({ milliseconds, structures }: { milliseconds: number; structures: number }) =>
  milliseconds / structures;

/**
 * The study's structures, and its plants' cooling lines as service lines, over and over: each copy lies somewhat
 * lower and has somewhat less flow than the last. The lake is compared under its own levels.
 */
export function largeLake(input: StudyInput, size: number): StudyInput {
  const originals = [...input.structures, ...input.structures.flatMap(coolingLines)];
  const copies = Math.ceil(size / originals.length);
  const structures = Array.from({ length: copies }, (_, copy) =>
    originals.map((original) => copyOf(original, copy, copies)),
  )
    .flat()
    .slice(0, size);
  const lake = { ...input.lake, otherSchedules: [] };
  const options = input.options.filter(({ schedule }) => schedule === undefined);
  return { ...input, lake, structures, options, money: { ...input.money, horizon } };
}

function coolingLines(plant: Structure): Structure[] {
  if (!("coolingWater" in plant)) return [];
  const { id, name, bearer, elevation, coolingWater, units } = plant;
  const line = {
    kind: "service-line",
    oxidantAllowed: true,
    shortageCostPerDay,
    fixtures: [],
    pinned: [],
  } as const;
  return [
    { ...coolingWater, ...line, id: `${id}-line`, name: `${name} line`, bearer, elevation, count: units },
  ];
}

const shortageCostPerDay = 2000;

/** Fall of the last copy, m, and share of its flow that it lacks. */
const deepest = 4;
const leastFlowCut = 0.3;

function copyOf(structure: Structure, copy: number, copies: number): Structure {
  const fall = (deepest * copy) / copies;
  const flowShare = 1 - (leastFlowCut * copy) / copies;
  const name = { id: `${structure.id}-${copy}`, name: `${structure.name} ${copy}` };
  return { ...kindOf(structure).lowered(structure, { fall, flowShare }), ...name };
}

import { at, meanOf, sumOf } from "../lists.js";
import type { Assumed } from "./assumed.js";
import { type InfestationCost, infestationCost } from "./infestation-cost.js";
import type { StudyInput } from "./inputs.js";
import type { Lake } from "./lake/lake.js";
import { exposedBand } from "./lake/levels.js";
import { exposedArea, storageBetween } from "./lake/storage.js";
import type { CostLine } from "./money/line.js";
import { operatingLines, storageLost } from "./schedule-cost.js";
import { type Contexts, type LakeWater, lakeWater } from "./structures/context.js";
import { kindOf, type Structure } from "./structures/kinds.js";
import { planWeights } from "./structures/plans/weights.js";
import { type StructureResult, structureResult } from "./structures/structure.js";

/** The lake and its structures under one schedule of levels. */
export interface ScheduleResult {
  /** Absent for the lake's own levels. */
  readonly id: string | undefined;
  readonly name: string;
  readonly contexts: Contexts;
  readonly levels: LevelsResult;
  readonly structures: readonly StructureResult[];
  readonly infestation: InfestationCost;
  /** Yearly cost of following it in place of the lake's own levels; negative where it saves. Empty for the own. */
  readonly operating: readonly CostLine[];
  /** Storage given up against the lake's own levels at the worst day, m³. */
  readonly storageGivenUp: number;
  /** Energy of all plants in a clean year, kWh. */
  readonly cleanEnergy: number;
  /** Live mussels that a year of a mature infestation kills on hard surface in the exposed band, kg/m²; made when asked. */
  readonly killed: () => number;
  /** Dead shell on ramps in the last year of the horizon, kg. */
  readonly litter: number;
}

export interface LevelsResult {
  /** Mean of the possible operating years, day by day. */
  readonly daily: readonly number[];
  readonly years: ReadonlyArray<{ readonly label: string; readonly daily: readonly number[] }>;
  /** Lowest and highest level of all possible operating years. */
  readonly band: { readonly lowest: number; readonly highest: number };
  readonly exposedArea: number;
  readonly storageInBand: number;
}

export interface ScheduleSettings {
  readonly input: StudyInput;
  readonly yearsInfested: number;
  readonly source: Assumed;
}

const ownName = "as operated";

/** The lake under its own levels, first, and under each other schedule. @param reader reads what suitability, growth and drying need */
export function underSchedules(
  settings: ScheduleSettings,
  reader: Assumed,
): [ScheduleResult, ...ScheduleResult[]] {
  const { lake } = settings.input;
  const water = waterOf(settings, reader);
  const own = underLevels({ id: undefined, name: ownName, contexts: water.under(lake) }, settings);
  const others = lake.otherSchedules.map(({ id, name, ...levels }) =>
    underLevels({ id, name, contexts: water.under(levels) }, settings, own),
  );
  water.forgetGrown();
  return [own, ...others];
}

function waterOf({ input, yearsInfested, source }: ScheduleSettings, reader: Assumed): LakeWater {
  const { lake, money, plans } = input;
  return lakeWater(lake, money.horizon + yearsInfested, reader, {
    plans,
    discountRate: money.discountRate,
    assumed: source,
    planWeights: planWeights(money, { isInfested: lake.infestedSince !== undefined, yearsInfested }),
  });
}

/** What floats lives through the same under all levels, and what stands nowhere too. */
const standsInLevels = (structure: Structure) => kindOf(structure).reach(structure)?.floats === false;

/** @param own levels, for others: what is the same under all is taken from them, and following the others has its cost */
function underLevels(
  { id, name, contexts }: Pick<ScheduleResult, "id" | "name" | "contexts">,
  { input, yearsInfested }: ScheduleSettings,
  own?: ScheduleResult,
): ScheduleResult {
  const [first] = contexts;
  const structures = input.structures.map((each, index) => {
    if (standsInLevels(each)) return structureResult(each, contexts);
    return own?.structures[index] ?? structureResult(each, [first]);
  });
  const levels = levelsOf(contexts, input.lake);
  const storageGivenUp = own ? storageLost(own.levels.daily, levels.daily, input.lake) : 0;
  return {
    id,
    name,
    contexts,
    levels,
    structures,
    infestation: infestationCost(structures, yearsInfested, risingGroups(input)),
    operating: own ? operatingLines(own.contexts, contexts, storageGivenUp, input) : [],
    storageGivenUp,
    cleanEnergy: sumOf(structures.flatMap(({ cleanEnergy }) => cleanEnergy)),
    killed: () => killedInBand(levels.band, contexts),
    litter: sumOf(structures.map(({ litter }) => litter.at(-1)?.mass ?? 0)),
  };
}

const risingGroups = ({ money }: StudyInput) => new Set(money.escalation?.map(({ group }) => group));

function levelsOf(contexts: Contexts, { storageTable }: Lake): LevelsResult {
  const bands = contexts.map(({ daily }) => exposedBand(daily));
  const band = {
    lowest: Math.min(...bands.map(({ lowest }) => lowest)),
    highest: Math.max(...bands.map(({ highest }) => highest)),
  };
  return {
    daily: meanDaily(contexts),
    years: contexts.map(({ levelLabel, daily }) => ({ label: levelLabel, daily })),
    band,
    exposedArea: exposedArea(storageTable, band.lowest, band.highest),
    storageInBand: storageBetween(storageTable, band.lowest, band.highest),
  };
}

function meanDaily([first, ...others]: Contexts): readonly number[] {
  if (others.length === 0) return first.daily;
  return first.daily.map((level, day) => meanOf([level, ...others.map(({ daily }) => at(daily, day))]));
}

/** Years until the layer of the exposed band repeats. */
const settledYears = 10;

/** Mean over the band of all possible operating years. */
function killedInBand({ lowest, highest }: LevelsResult["band"], contexts: Contexts): number {
  if (lowest === highest) return 0;
  const band = { from: lowest, to: highest };
  return (
    meanOf(
      contexts.map((context) => at(context.killedWhenMature(settledYears)(band).killed, settledYears - 1)),
    ) /
    (highest - lowest)
  );
}

import type { AssumptionSet } from "../../assumptions/entry.js";
import { at, sumOf } from "../../lists.js";
import { recorder } from "../../model/assumed.js";
import { type DrawPlan, futuresPerLake } from "../../model/futures/draw-plan.js";
import { drawnHazards, futureOf, lakeDraw, type PartPlan } from "../../model/futures/lake-draw.js";
import { yearlyCostsOf } from "../../model/futures/yearly-costs.js";
import { costToGo } from "../../model/option-numbers.js";
import type { DrawnLake } from "../../model/search/lake-terms.js";
import type { StudyDocument } from "../format/schema.js";
import type { PreparedStudy } from "../prepare/prepared.js";
import { prepareStudy } from "../prepare/prepared.js";
import { typicalTogether } from "../short/drawn-together.js";
import { type BlockValues, valuesByBlock } from "./block-values.js";
import { type Drawing, drawing } from "./drawing.js";
import { type FoundDrawing, type FoundFutures, type FuturePlace, foundDrawing } from "./found-draws.js";
import type { DrawSettings } from "./odds-settings.js";
import { type NamedInput, uncertainInputs } from "./uncertain-inputs.js";

type Figures = readonly number[];

/** The futures of one draw of the lake; lists run over the options, each over the futures. */
export interface LakeFutures {
  readonly expected: readonly Figures[];
  readonly cost: readonly Figures[];
  readonly establishment: readonly Figures[];
  /** Present cost of the program, luck left out. */
  readonly program: readonly Figures[];
  /** Chance that mussels establish at all within the horizon, and that they are there when it ends. */
  readonly everInfested: readonly Figures[];
  readonly infestedAtEnd: readonly Figures[];
  /** Chance to have established by the end of each year of the horizon, on average over the futures. */
  readonly establishedBy: readonly Figures[];
  /** Present cost of what staff entered, luck left out, by account; of the other losses also as it comes out. */
  readonly duty: readonly Figures[];
  readonly policy: readonly Figures[];
  readonly other: readonly Figures[];
  readonly otherCost: readonly Figures[];
  /** Undiscounted cost of each year of the horizon, future after future; empty beyond the first blocks. */
  readonly byYear: readonly Float64Array[];
  /** Present value of 1 in each year of the horizon. */
  readonly annuity: number;
  /** Present cost of each option's program while the lake stays clean. */
  readonly cleanProgram: readonly number[];
  /** The plan of each part, by its id in the catalogue: in the order of `DrawnStudy.plans`. */
  readonly plans: readonly string[];
  /** What is done once mussels are found; absent where the study says nothing of it. */
  readonly found?: FoundFutures | undefined;
}

/** A plan of draws with what the report calls its inputs and groups. */
export interface StudyPlan extends DrawPlan {
  readonly inputs: readonly NamedInput[];
  readonly groups: ReadonlyArray<DrawPlan["groups"][number] & { readonly id: string; readonly name: string }>;
}

/** A study made ready to be drawn. */
export interface DrawnStudy {
  readonly inputs: readonly NamedInput[];
  readonly plan: StudyPlan;
  /** Of each part, at the study's own values. */
  readonly plans: readonly PartPlan[];
  readonly catalogue: ReadonlyArray<PartPlan["plan"]>;
  /** Equal yearly amount of each option's program while the lake stays clean, at the study's own values. */
  readonly cleanProgram: readonly number[];
  /** Works out one draw of the lake in a block, with its futures. */
  readonly futures: (block: number, lake: number) => LakeFutures;
  /** The same draw before anything is worked out of it. */
  readonly drawn: (block: number, lake: number) => DrawnLake;
  /** Expected cost at values of one's choice, for each set of chances the options in their order. */
  readonly expected: (point: LakePoint) => number[][];
}

/** Values by the ids of inputs; what is not named is as the study has it. One lake with several sets of chances. */
export interface LakePoint {
  readonly lake: ReadonlyMap<string, number>;
  readonly chances: ReadonlyArray<ReadonlyMap<string, number>>;
}

export function drawnStudy(
  document: StudyDocument,
  all: AssumptionSet,
  { seed, sampling }: DrawSettings,
): DrawnStudy {
  const prepared = prepareStudy(document, all);
  const { assumptions } = prepared;
  const own = usedIn(prepared);
  const inputs = uncertainInputs(document, assumptions, prepared, own);
  const groups = [...assumptions.groups, ...typicalTogether(document, assumptions)];
  const plan = { seed, sampling, inputs, groups };
  const values = drawing(document, prepared);
  const valuesOf = valuesByBlock(plan);
  const found = foundDrawing(document, prepared, { seed, sampling });
  return {
    inputs,
    plan,
    plans: own.plans,
    cleanProgram: own.cleanProgram,
    catalogue: prepared.input.plans,
    futures: (block, lake) =>
      lakeFutures(valuesOf(block), { block, lake }, { values, found, withYears: block < blocksWithYears }),
    drawn: (block, lake) => drawnLake(valuesOf(block), lake, values),
    expected: (point) => expectedCosts(point, values),
  };
}

/** Ids of the assumptions that decide what the lake costs, of those that decide chances, and the plans of the parts. */
function usedIn({ input, assumed }: PreparedStudy) {
  const lakeReader = recorder(assumed);
  const lake = lakeDraw(input, lakeReader.assumed);
  const chanceReader = recorder(assumed);
  drawnHazards(input, chanceReader.assumed, lake);
  const annuity = sumOf(lake.factors);
  return {
    lake: new Set(lakeReader.ids()),
    chances: new Set(chanceReader.ids()),
    plans: lake.plans,
    cleanProgram: lake.options.map(({ costs }) => sumOf(costs.clean) / annuity),
  };
}

/** As many as have some five hundred futures: enough for a picture. */
const blocksWithYears = 4;

interface Loop {
  readonly values: Drawing;
  readonly found: FoundDrawing | undefined;
  /** Whether costs by year are kept. */
  readonly withYears: boolean;
}

/** Of each option by each set of chances; luck is left out. */
function expectedCosts(point: LakePoint, drawing: Drawing): number[][] {
  const drawn = drawing.lake(point.lake);
  const lake = lakeDraw(drawn.input, drawn.source);
  return point.chances.map((values) => {
    const { input, source } = drawing.chances(drawn, values);
    return drawnHazards(input, source, lake).map((hazards, option) =>
      at(costToGo(at(lake.options, option).costs, hazards), 0),
    );
  });
}

function drawnLake(drawn: BlockValues, index: number, values: Drawing): DrawnLake {
  const lake = values.lake(drawn.of("lake", index));
  const futures = Array.from({ length: futuresPerLake }, (_, future) => {
    const { input, source } = values.chances(lake, drawn.of("chances", index * futuresPerLake + future));
    return { input, source };
  });
  return { input: lake.input, source: lake.source, futures };
}

function lakeFutures(
  block: BlockValues,
  place: FuturePlace,
  { values, found, withYears }: Loop,
): LakeFutures {
  const drawn = values.lake(block.of("lake", place.lake));
  const lake = lakeDraw(drawn.input, drawn.source);
  const whenFound = found?.(place, drawn, lake);
  const years = withYears ? lake.factors.length : 0;
  const options = lake.options.map(({ numbers, states }) => ({
    costsByYear: withYears ? yearlyCostsOf(numbers, states) : undefined,
    ...emptyLists(years),
    establishedBy: noFigures(lake.factors.length),
  }));
  for (let future = 0; future < futuresPerLake; future++) {
    const draw = place.lake * futuresPerLake + future;
    const { input, source } = values.chances(drawn, block.of("chances", draw));
    const hazards = drawnHazards(input, source, lake);
    const luck = at(block.shares.luck, draw);
    whenFound?.add(future, hazards, luck);
    futureOf(lake, hazards, luck).forEach((result, option) => {
      const lists = at(options, option);
      lists.expected[future] = result.expected;
      lists.cost[future] = result.cost;
      lists.establishment[future] = result.establishment;
      lists.program[future] = result.program;
      lists.everInfested[future] = result.everInfested;
      addEstablished(lists.establishedBy, at(hazards, option));
      lists.infestedAtEnd[future] = result.infestedAtEnd;
      lists.duty[future] = result.duty;
      lists.policy[future] = result.policy;
      lists.other[future] = result.other;
      lists.otherCost[future] = result.otherCost;
      if (lists.costsByYear) {
        lists.byYear.set(lists.costsByYear(at(hazards, option), result.establishment), future * years);
      }
    });
  }
  return {
    expected: options.map(({ expected }) => expected),
    cost: options.map(({ cost }) => cost),
    establishment: options.map(({ establishment }) => establishment),
    program: options.map(({ program }) => program),
    everInfested: options.map(({ everInfested }) => everInfested),
    infestedAtEnd: options.map(({ infestedAtEnd }) => infestedAtEnd),
    establishedBy: options.map(({ establishedBy }) => establishedBy),
    duty: options.map(({ duty }) => duty),
    policy: options.map(({ policy }) => policy),
    other: options.map(({ other }) => other),
    otherCost: options.map(({ otherCost }) => otherCost),
    byYear: withYears ? options.map(({ byYear }) => byYear) : [],
    annuity: sumOf(lake.factors),
    cleanProgram: lake.options.map(({ costs }) => sumOf(costs.clean)),
    plans: lake.plans.map(({ plan }) => plan.id),
    found: whenFound?.futures,
  };
}

/** Adds a future's part of the mean. */
function addEstablished(mean: number[], hazards: readonly number[]): void {
  let clean = 1;
  for (let year = 0; year < hazards.length; year++) {
    clean *= 1 - at(hazards, year);
    mean[year] = at(mean, year) + (1 - clean) / futuresPerLake;
  }
}

const noFigures = (count: number) => Array<number>(count).fill(0);

const emptyLists = (years: number) => ({
  expected: noFigures(futuresPerLake),
  cost: noFigures(futuresPerLake),
  establishment: noFigures(futuresPerLake),
  program: noFigures(futuresPerLake),
  everInfested: noFigures(futuresPerLake),
  infestedAtEnd: noFigures(futuresPerLake),
  duty: noFigures(futuresPerLake),
  policy: noFigures(futuresPerLake),
  other: noFigures(futuresPerLake),
  otherCost: noFigures(futuresPerLake),
  byYear: new Float64Array(futuresPerLake * years),
});

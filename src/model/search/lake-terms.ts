import { at } from "../../lists.js";
import type { Assumed } from "../assumed.js";
import { isBaseline, ratesOf } from "../compare.js";
import { drawnHazards, lakeDraw } from "../futures/lake-draw.js";
import type { ProgramOption, StudyInput } from "../inputs.js";
import type { Schedule } from "../lake/lake.js";
import { costToGo, type OptionNumbers } from "../option-numbers.js";
import { throughBoats } from "../program/arrivals.js";
import { foundingChances, type Through } from "../program/founding-chances.js";
import type { FoundingRates } from "../risk/hazard.js";
import { type Variant, variantOf } from "./variant.js";

/** What a future of a lake has to say of any program: chances by what reaches the water. */
interface FutureTerms {
  readonly rates: FoundingRates;
  readonly referenceLaunches: number;
  /** By measures: what gets through where nothing and where all is met, if nobody were deterred. */
  readonly through: ReadonlyArray<{
    readonly closed: Through;
    readonly open: Through;
    /** Share that the option with these measures deters. */
    readonly deterrence: number;
  }>;
}

/** The same of a lake: costs by the year of establishment do not depend on the program. */
export interface LakeTerms {
  /**
   * For each set of measures the numbers of the program with no hours and no fees; what it costs a year with the hours of
   * the option it starts from, and with the fees of those who then pay.
   */
  readonly programs: ReadonlyArray<{
    readonly idle: OptionNumbers;
    readonly hours: readonly number[];
    readonly fees: readonly number[];
    /** Share of all launches that the option it starts from meets. */
    readonly coverage: number;
  }>;
  readonly futures: readonly FutureTerms[];
  /** Of each option of the study, means over the futures; the last is that of the searched schedule, where there is one. */
  readonly typed: readonly OptionMeans[];
}

export interface OptionMeans {
  /** Present cost of program and infestation. */
  readonly cost: number;
  readonly program: number;
  /** Chance that mussels establish within the horizon. */
  readonly chance: number;
}

/** What is searched in a lake. */
export interface SearchedProgram {
  /** The option that programs start from, by its place. */
  readonly base: number;
  /** Sets of measures. */
  readonly sets: readonly Variant["measures"][];
  readonly lumpShare: number;
  /** Levels that the option without a program follows beside those of the study. */
  readonly schedule?: Schedule | undefined;
}

/** A lake as drawn, with its futures. */
export interface DrawnLake {
  readonly input: StudyInput;
  readonly source: Assumed;
  readonly futures: ReadonlyArray<{
    readonly input: StudyInput;
    readonly source: Assumed;
  }>;
}

/** Works out one lake for all programs of a search. */
export function lakeTerms(lakeAsDrawn: DrawnLake, searched: SearchedProgram): LakeTerms {
  const drawn = withSchedule(lakeAsDrawn, searched);
  const own = drawn.input.options;
  const inputOf = (input: StudyInput): StudyInput => ({
    ...input,
    options: [...input.options, ...references(input, searched)],
  });
  const lake = lakeDraw(inputOf(drawn.input), drawn.source);
  const typed = own.map(() => ({ cost: 0, program: 0, chance: 0 }));
  const count = drawn.futures.length;
  const futures = drawn.futures.flatMap(({ input, source }) => {
    drawnHazards(input, source, lake).forEach((hazards, option) => {
      const { costs, program } = at(lake.options, option);
      const means = at(typed, option);
      means.cost += at(costToGo(costs, hazards), 0) / count;
      means.program += at(costToGo(program, hazards), 0) / count;
      means.chance += (1 - hazards.reduce((clean, hazard) => clean * (1 - hazard), 1)) / count;
    });
    return searched.sets.length === 0
      ? []
      : futureTerms(inputOf(input), source, {
          suitability: lake.suitability,
          options: own.length,
          searched,
        });
  });
  const numbers = (set: number, kind: number) =>
    at(lake.options, own.length + kinds.length * set + kind).numbers;
  const programs = searched.sets.map((_, set) => ({
    idle: numbers(set, 0),
    hours: numbers(set, 1).programInYear,
    fees: numbers(set, 2).programInYear,
    coverage: at(own, searched.base).steps?.coverage ?? 0,
  }));
  return { programs, futures, typed };
}

/** With the option that does nothing but to follow the searched levels, last. */
function withSchedule({ input, source, futures }: DrawnLake, { schedule }: SearchedProgram): DrawnLake {
  if (!schedule) return { input, source, futures };
  const followed = (each: StudyInput): StudyInput => ({
    ...each,
    lake: { ...each.lake, otherSchedules: [...each.lake.otherSchedules, schedule] },
    options: [
      ...each.options,
      ...each.options
        .filter(isBaseline)
        .map((baseline) => ({ ...baseline, id: "search-levels", schedule: schedule.id })),
    ],
  });
  return {
    ...{ input: followed(input), source },
    futures: futures.map((future) => ({ ...future, input: followed(future.input) })),
  };
}

/** Programs from which all others of a set of measures follow: with no hours and nobody met, with hours, with all met. */
const kinds = [
  { hours: 0, met: 0 },
  { hours: 1, met: 0 },
  { hours: 0, met: 1 },
];

function references({ options }: StudyInput, { base, sets, lumpShare }: SearchedProgram): ProgramOption[] {
  return sets.flatMap((measures, set) =>
    kinds.map(({ hours, met }, kind) => ({
      ...variantOf(at(options, base), {
        ...{ hours, coverage: { of: met }, measures, lumpShare },
        rampUp: [],
      }),
      id: `search-${set}-${kind}`,
    })),
  );
}

function futureTerms(
  input: StudyInput,
  source: Assumed,
  { suitability, options, searched }: { suitability: number; options: number; searched: SearchedProgram },
): FutureTerms {
  const { boats, lake } = input;
  const chances = foundingChances(boats, source);
  const throughAll = (option: ProgramOption) =>
    throughBoats(boats, undeterred(option), lake, source, chances);
  return {
    rates: ratesOf(input, suitability, source, chances),
    referenceLaunches: source("arrival.reference-launches"),
    through: searched.sets.map((_, set) => {
      const first = options + kinds.length * set;
      const [closed, open] = [at(input.options, first), at(input.options, first + 2)];
      return {
        closed: throughAll(closed),
        open: throughAll(open),
        deterrence: open.steps?.deterrence ?? 0,
      };
    }),
  };
}

const undeterred = (option: ProgramOption): ProgramOption =>
  option.steps ? { ...option, steps: { ...option.steps, deterrence: 0 } } : option;

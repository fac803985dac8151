import type { Measure } from "../../model/search/variant.js";
import type { LevelSearch } from "../levels/level-result.js";

export interface SearchResult {
  /** Absent where the lake is infested, or no option has steps to start from. */
  readonly programs: ProgramSearch | undefined;
  /** Absent where levels are not to vary. */
  readonly levels: LevelSearch | undefined;
}

/** Hours in which a station is open on days of a type. */
export interface OpenCell {
  readonly site: string;
  readonly siteName: string;
  readonly dayType: string;
  readonly name: string;
  readonly from: number;
  readonly to: number;
  readonly inspectors: number;
}

/** A program of the search. Money is present value unless it is said to be of a year. */
export interface SearchPoint {
  readonly id: string;
  readonly measures: readonly Measure[];
  /** Absent where the option states no hours. */
  readonly open: readonly OpenCell[] | undefined;
  /** Months from 0; absent where the option states hours. */
  readonly months: readonly number[] | undefined;
  /** Hours of its inspectors over those of the option that it starts from, and their number where they are told. */
  readonly hoursShare: number;
  readonly staffHours: number | undefined;
  /** Launches met over all launches, and over those that the option meets. */
  readonly coverage: number;
  readonly coverageShare: number;
  /** A year in full at the prices entered, less fees and grants. */
  readonly costPerYear: number;
  /** Means over the drawn lakes. */
  readonly chance: number;
  readonly loss: number;
  readonly program: number;
  readonly cost: number;
}

/** An option of the study, in the same lakes. */
export interface TypedPoint
  extends Pick<SearchPoint, "costPerYear" | "chance" | "cost" | "program" | "loss"> {
  readonly id: string;
  readonly name: string;
  readonly mark: "in-force" | "requested" | "nothing" | undefined;
  /** The efficient program with no more cost a year and less chance; absent where there is none. */
  readonly dominatedBy: string | undefined;
  readonly standing: Standing;
}

/** How a program stands in the lakes beside the others shown. */
export interface Standing {
  readonly bestIn: number;
  /** Against the best of those shown in each lake, on average and at most. */
  readonly regret: number;
  readonly mostRegret: number;
}

export type Binding = "budget" | "staff-hours" | "chance" | "all-open" | "all-closed" | "nothing";

export interface SearchAnswer {
  readonly question: "best" | "under-chance" | "within-budget";
  readonly limit: number | undefined;
  /** Whether the study states the limit; else it is the requested option's. */
  readonly isStated: boolean;
  readonly point: SearchPoint | undefined;
  readonly nextBest: SearchPoint | undefined;
  readonly binds: Binding;
  /** What one step beyond what binds changes: expected present cost, chance and cost a year. */
  readonly relaxed: StepChange | undefined;
  /** Expected present cost below which no program of the search lies; absent where cost is not what is sought. */
  readonly bound: number | undefined;
  /** Where no program keeps the limit: what comes nearest. */
  readonly nearest: number | undefined;
}

export interface StepChange {
  readonly costPerYear: number;
  readonly chance: number;
  readonly cost: number;
}

export interface NextStep {
  readonly what: string;
  readonly isMore: boolean;
  readonly costPerYear: number;
  readonly chance: number;
  /** Expected present values: what infestation costs less, and what is left of it after the program. */
  readonly avoidedLoss: number;
  readonly netBenefit: number;
}

/** The program for some years only. */
export interface Timing {
  readonly what: "from" | "until";
  readonly years: number;
  readonly chance: number;
  readonly program: number;
  readonly loss: number;
  readonly cost: number;
}

/** What the search says of programs. */
export interface ProgramSearch {
  readonly baseId: string;
  readonly baseName: string;
  /** Share that goes with the hours of a lump in which wages are not told apart. */
  readonly lumpShare: number;
  readonly lakes: number;
  readonly futures: number;
  /** Different openings and measures that were searched, without being tried one by one. */
  readonly programs: number;
  readonly evaluated: number;
  readonly hours: { readonly earliest: number; readonly latest: number } | undefined;
  /** Windows left out since no number of inspectors keeps the wait in them. */
  readonly unkept: number;
  readonly annuity: number;
  readonly frontier: ReadonlyArray<SearchPoint & { readonly standing: Standing }>;
  readonly typed: readonly TypedPoint[];
  readonly answers: readonly SearchAnswer[];
  readonly steps: readonly NextStep[];
  readonly timings: readonly Timing[];
  /** What running the program in a year of the horizon alone is worth: present value, by year from the first. */
  readonly worthByYear: readonly number[];
}

import type { Drawdown } from "../../model/search/drawdown.js";
import type { LevelCosts } from "./level-costs.js";
import type { LeftOut } from "./level-grid.js";
import type { LevelRules } from "./level-rules.js";

/** A schedule of levels beside the present one. Money is present value unless it is said to be of a year. */
export interface SearchedSchedule extends LevelCosts {
  /** Absent for one of the grid. */
  readonly name: string | undefined;
  /** Absent for one that the study has. */
  readonly drawdown: Drawdown | undefined;
  /** What it costs less than the present levels, weighed by the chance of infestation. */
  readonly saved: number;
}

/** What the search says of the lake's levels once it is infested. */
export interface LevelSearch {
  readonly present: SearchedSchedule;
  /** The study's other schedules. */
  readonly typed: readonly SearchedSchedule[];
  /** Of the grid for each lowest level the one that costs least, by falling level. */
  readonly byDepth: readonly SearchedSchedule[];
  /** Of all the one that costs least; absent where none costs less than the present levels. */
  readonly best: SearchedSchedule | undefined;
  /** Drawdowns that were worked out, and those that were not by what ruled them out. */
  readonly tried: number;
  readonly leftOut: Readonly<Record<LeftOut, number>>;
  readonly rules: LevelRules;
  /** Whether the study says what a year without stored water costs. */
  readonly storageIsPriced: boolean;
  /** The best in lakes drawn from the ranges of what is uncertain: mean of what it saves, and share of lakes in which it saves. */
  readonly simulated: { readonly saved: number; readonly savesIn: number } | undefined;
  /** Mean daily levels, present and best. */
  readonly daily: { readonly present: readonly number[]; readonly best: readonly number[] | undefined };
  /** Schedules of the grid as entries of a study, without id and name. */
  readonly written: ReadonlyArray<{
    readonly id: string;
    readonly levels: Readonly<Record<string, unknown>>;
  }>;
}

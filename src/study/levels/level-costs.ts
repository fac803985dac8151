import { isBaseline, optionResults } from "../../model/compare.js";
import type { Schedule } from "../../model/lake/lake.js";
import type { PreparedStudy } from "../prepare/prepared.js";
import { matureYears } from "./mature-years.js";
import { type TracedSchedule, tracedSchedules } from "./traced-schedule.js";

/** What it costs to follow a schedule of levels once the lake is infested, at central values. */
export interface LevelCosts {
  /** Id of the schedule; absent for the present levels. */
  readonly id: string | undefined;
  /** Present value of all costs of doing nothing but to follow it. */
  readonly cost: number;
  /** A year of following it against the present levels, and of this what each item comes to. */
  readonly following: number;
  readonly followingByItem: ReadonlyArray<{ readonly what: string; readonly amount: number }>;
  /** Upkeep and losses of a mature year that it saves; negative where it adds to them. */
  readonly upkeepSaved: number;
  readonly lowest: number;
  readonly exposedArea: number;
  readonly storageGivenUp: number;
  /** Live mussels that a mature year kills in the exposed band, kg/m². */
  readonly killed: number;
  readonly exposedInlets: readonly string[];
}

/** The present levels and each of some schedules by the ordinary comparison: the option without a program follows it. */
export function levelCosts(
  { input, assumed }: Pick<PreparedStudy, "input" | "assumed">,
  schedules: readonly Schedule[],
): LevelCosts[] {
  const baseline = input.options.find(isBaseline);
  if (!baseline) throw new Error("options: one must have neither steps nor schedule");
  const others = schedules.map(({ id }) => ({ ...baseline, id, schedule: id }));
  const lake = { ...input.lake, otherSchedules: schedules };
  const compared = { ...input, lake, options: [baseline, ...others] };
  const { lake: result, results, settings } = optionResults(compared, assumed);
  const mature = matureYears({
    ...{ input: compared, lake: result },
    structures: settings.schedules[0].structures,
  });
  const traced = tracedSchedules({ input: compared, schedules: settings.schedules }, mature);
  return traced.map((each, index) => costsOf(each, results[index]?.presentValue.total.toNumber() ?? 0));
}

function costsOf(
  { schedule, operatingPerYear, operatingByItem, matureSaving, exposedInlets }: TracedSchedule,
  cost: number,
): LevelCosts {
  const { id, levels, storageGivenUp, killed } = schedule;
  return {
    ...{ id, cost, storageGivenUp, exposedInlets },
    following: operatingPerYear.toNumber(),
    followingByItem: [...operatingByItem].map(([what, amount]) => ({ what, amount: amount.toNumber() })),
    upkeepSaved: matureSaving,
    lowest: levels.band.lowest,
    exposedArea: levels.exposedArea,
    killed: killed(),
  };
}

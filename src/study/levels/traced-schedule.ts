import type { Comparison } from "../../model/compare.js";
import { monthlyMeans } from "../../model/lake/levels.js";
import type { Money } from "../../model/money/decimal.js";
import { type CostLine, moneyOf, totalOf } from "../../model/money/line.js";
import type { ScheduleResult } from "../../model/schedules.js";
import { kindOf } from "../../model/structures/kinds.js";
import { type MatureYears, matureMean } from "./mature-years.js";

/** What is told of a schedule of levels beside its result. */
export interface TracedSchedule {
  readonly schedule: ScheduleResult;
  /** Mean level of each month. */
  readonly monthlyMeans: readonly number[];
  /** A year of following it in place of the lake's own levels. */
  readonly operatingPerYear: Money;
  /** The same by what is paid for, all structures together. */
  readonly operatingByItem: ReadonlyMap<string, Money>;
  /** Upkeep and losses of a mature year. */
  readonly matureMean: number;
  /** The same of the lake's own levels less these: negative where these add to them. */
  readonly matureSaving: number;
  /** Names of the structures whose inlet stands above its lowest level. */
  readonly exposedInlets: readonly string[];
}

export function tracedSchedules(
  { input, schedules }: Pick<Comparison, "input" | "schedules">,
  mature: MatureYears,
): [TracedSchedule, ...TracedSchedule[]] {
  const [own, ...others] = schedules;
  const ownMean = matureMean(own.infestation.byYear, mature);
  const traced = (schedule: ScheduleResult): TracedSchedule => {
    const mean = matureMean(schedule.infestation.byYear, mature);
    return {
      schedule,
      monthlyMeans: monthlyMeans(schedule.levels.daily),
      operatingPerYear: totalOf(schedule.operating),
      operatingByItem: operatingByItem(schedule, input.structures),
      matureMean: mean,
      matureSaving: ownMean - mean,
      exposedInlets: exposedInlets(schedule, input.structures),
    };
  };
  return [traced(own), ...others.map(traced)];
}

type Structures = Comparison["input"]["structures"];

function operatingByItem({ operating }: ScheduleResult, structures: Structures): Map<string, Money> {
  const cents = new Map<string, number>();
  for (const line of operating) {
    const item = itemOf(line, structures);
    cents.set(item, (cents.get(item) ?? 0) + line.cents);
  }
  return new Map([...cents].map(([item, sum]) => [item, moneyOf(sum)]));
}

/** A line without the name of its structure. */
function itemOf({ structure, what }: CostLine, structures: Structures): string {
  const name = structures.find(({ id }) => id === structure)?.name;
  const start = `${name}: `;
  return what.startsWith(start) ? what.slice(start.length) : what;
}

const exposedInlets = ({ levels }: ScheduleResult, structures: Structures): string[] =>
  structures.flatMap((structure) => {
    const inlet = kindOf(structure).inlet?.(structure);
    return inlet && inlet.elevation > levels.band.lowest ? [structure.name] : [];
  });

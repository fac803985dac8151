import type { Assumed } from "./assumed.js";
import type { InfestationCost } from "./infestation-cost.js";
import type { ProgramOption, StudyInput } from "./inputs.js";
import { inEachYear, type Rises } from "./money/price-rises.js";
import { type ProgramLine, programLines } from "./program/cost.js";
import { detectionOf } from "./program/option-detection.js";
import type { Detection } from "./risk/state-probabilities.js";
import type { ScheduleResult } from "./schedules.js";

/** What an option costs whatever the chances are. */
export interface OptionCosts {
  readonly option: ProgramOption;
  /** A year of the program in full while the lake is clean, with its lines. */
  readonly programLines: readonly ProgramLine[];
  /** The same in each year of the horizon, with the rises of its prices; plain money. */
  readonly programInYear: readonly number[];
  /** What the lake costs under these levels once it is known to be infested. */
  readonly schedule: ScheduleResult;
  /** What it costs while nobody knows: under the lake's own levels. */
  readonly unnoticed: InfestationCost;
  /** A year of following the option's schedule, in each year of the horizon, with the rises of its prices; plain money. */
  readonly scheduleInYear: readonly number[];
  readonly detection: Detection;
}

export interface CostSettings {
  readonly schedules: readonly [ScheduleResult, ...ScheduleResult[]];
  readonly factors: readonly number[];
  readonly rises: Rises;
}

export function optionCosts(
  option: ProgramOption,
  input: StudyInput,
  source: Assumed,
  { schedules, factors, rises }: CostSettings,
): OptionCosts {
  const lines = programLines(option, input.money);
  const schedule = scheduleOf(option, schedules);
  const [own] = schedules;
  return {
    option,
    programLines: lines,
    programInYear: inEachYear(lines, factors.length, rises),
    schedule,
    unnoticed: own.infestation,
    scheduleInYear: inEachYear(schedule.operating, factors.length, rises),
    detection: detectionOf(option, input, own, source),
  };
}

function scheduleOf({ schedule }: ProgramOption, schedules: CostSettings["schedules"]): ScheduleResult {
  const found = schedules.find(({ id }) => id === schedule);
  if (!found) throw new Error(`options: no schedule has the id ${schedule}`);
  return found;
}

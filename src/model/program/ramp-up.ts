import type { Assumed } from "../assumed.js";
import type { ProgramOption, StudyInput } from "../inputs.js";
import type { Reaching } from "../risk/hazard.js";
import { throughBoats } from "./arrivals.js";
import { togetherOf } from "./founding-chances.js";

/** g: share of its full yearly cost that a program takes in a year of the horizon; 0 is the first. */
export const costShare = ({ rampUp }: ProgramOption, year: number): number => rampUp[year]?.cost ?? 1;

/** k: share of the boats that it will meet, and keep away, that a program reaches in a year of the horizon. */
export const reach = ({ rampUp }: ProgramOption, year: number): number => rampUp[year]?.reach ?? 1;

/**
 * What reaches the water in each year of the horizon while a program grows: coverage c and deterrence in year t are
 * k(t) times those of the program in full. Years in which it has grown are one object.
 * @param chances α of each class, in their order
 */
export function reachingInYears(
  option: ProgramOption,
  { boats, lake, money }: Pick<StudyInput, "boats" | "lake" | "money">,
  source: Assumed,
  chances: readonly number[],
): Reaching[] {
  const reaching = (each: ProgramOption): Reaching => {
    const through = throughBoats(boats, each, lake, source, chances);
    return { launches: through.launches, foundings: togetherOf(through, source) };
  };
  const years = Array<Reaching>(money.horizon).fill(reaching(option));
  for (let year = 0; year < Math.min(money.horizon, option.rampUp.length); year++) {
    const share = reach(option, year);
    if (share !== 1) years[year] = reaching(partly(option, share));
  }
  return years;
}

function partly(option: ProgramOption, share: number): ProgramOption {
  const { steps } = option;
  if (!steps) return option;
  return {
    ...option,
    steps: { ...steps, coverage: steps.coverage * share, deterrence: steps.deterrence * share },
  };
}

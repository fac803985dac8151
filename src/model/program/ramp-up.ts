import type { Assumed } from "../assumed.js";
import type { ProgramOption, StudyInput } from "../inputs.js";
import { slipThrough } from "./arrivals.js";

/** g: share of its full yearly cost that a program takes in a year of the horizon; 0 is the first. */
export const costShare = ({ rampUp }: ProgramOption, year: number): number => rampUp[year]?.cost ?? 1;

/** k: share of the boats that it will meet, and keep away, that a program reaches in a year of the horizon. */
export const reach = ({ rampUp }: ProgramOption, year: number): number => rampUp[year]?.reach ?? 1;

/**
 * Fouled launches that slip through in each year of the horizon while a program grows: coverage c and deterrence in
 * year t are k(t) times those of the program in full.
 * @param full those of the program in full
 */
export function slipThroughByYear(
  option: ProgramOption,
  full: number,
  { boats, lake, money }: StudyInput,
  source: Assumed,
): number[] {
  const byYear = Array<number>(money.horizon).fill(full);
  for (let year = 0; year < Math.min(money.horizon, option.rampUp.length); year++) {
    const share = reach(option, year);
    if (share !== 1) byYear[year] = slipThrough(boats, partly(option, share), lake, source);
  }
  return byYear;
}

function partly(option: ProgramOption, share: number): ProgramOption {
  const { steps } = option;
  if (!steps) return option;
  return {
    ...option,
    steps: { ...steps, coverage: steps.coverage * share, deterrence: steps.deterrence * share },
  };
}

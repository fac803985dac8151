import type { Assumed } from "../assumed.js";
import type { ProgramOption, StudyInput } from "../inputs.js";
import { type Arrivals, arrivals } from "./arrivals.js";

/** g: share of its full yearly cost that a program takes in a year of the horizon; 0 is the first. */
export const costShare = ({ rampUp }: ProgramOption, year: number): number => rampUp[year]?.cost ?? 1;

/** k: share of the boats that it will meet, and keep away, that a program reaches in a year of the horizon. */
export const reach = ({ rampUp }: ProgramOption, year: number): number => rampUp[year]?.reach ?? 1;

/**
 * Fouled launches that slip through in each year of the horizon while a program grows: coverage c and deterrence in
 * year t are k(t) times those of the program in full.
 * @param full the same of the program in full
 */
export function slipThroughByYear(
  option: ProgramOption,
  full: Arrivals,
  { boats, lake, money }: StudyInput,
  source: Assumed,
): number[] {
  return Array.from({ length: money.horizon }, (_, year) =>
    reach(option, year) === 1
      ? full.slipThrough
      : arrivals(boats, partly(option, reach(option, year)), lake, source).slipThrough,
  );
}

function partly(option: ProgramOption, share: number): ProgramOption {
  const { steps } = option;
  if (!steps) return option;
  return {
    ...option,
    steps: { ...steps, coverage: steps.coverage * share, deterrence: steps.deterrence * share },
  };
}

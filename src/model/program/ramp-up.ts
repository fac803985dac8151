import type { Assumed } from "../assumed.js";
import type { ProgramOption, StudyInput } from "../inputs.js";
import { throughBoats } from "./arrivals.js";
import type { Through } from "./founding-chances.js";

/** g: share of its full yearly cost that a program takes in a year of the horizon; 0 is the first. */
export const costShare = ({ rampUp }: ProgramOption, year: number): number => rampUp[year]?.cost ?? 1;

/** k: share of the boats that it will meet, and keep away, that a program reaches in a year of the horizon. */
export const reach = ({ rampUp }: ProgramOption, year: number): number => rampUp[year]?.reach ?? 1;

/**
 * What reaches the water in each year of the horizon while a program grows: coverage c and deterrence in year t are
 * k(t) times those of the program in full.
 * @param full those of the program in full
 * @param chances α of each class, in their order
 */
export function throughByYear(
  option: ProgramOption,
  full: Through,
  { boats, lake, money }: StudyInput,
  source: Assumed,
  chances: readonly number[],
): Through[] {
  const inYear = throughInYear(option, full, { boats, lake }, source, chances);
  return Array.from({ length: money.horizon }, (_, year) => inYear(year));
}

/** The same in one year of the horizon; the very object of the program in full where it has grown. */
export function throughInYear(
  option: ProgramOption,
  full: Through,
  { boats, lake }: Pick<StudyInput, "boats" | "lake">,
  source: Assumed,
  chances: readonly number[],
): (year: number) => Through {
  return (year) => {
    const share = reach(option, year);
    return share === 1 ? full : throughBoats(boats, partly(option, share), lake, source, chances);
  };
}

function partly(option: ProgramOption, share: number): ProgramOption {
  const { steps } = option;
  if (!steps) return option;
  return {
    ...option,
    steps: { ...steps, coverage: steps.coverage * share, deterrence: steps.deterrence * share },
  };
}

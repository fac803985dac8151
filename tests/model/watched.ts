import { type Comparison, compare } from "../../src/model/compare.js";
import type { Monitoring, Response, StudyInput } from "../../src/model/inputs.js";
import type { OptionResult } from "../../src/model/option.js";
import type { OptionBalance } from "../../src/model/option-balance.js";
import { assumed, assumedWith } from "./assumptions.js";
import { duties, fixedDock, floatingDock, noProgram, program, ramp, studyOf } from "./study.js";

export const perArrival = "arrival.founding-unknown";
/** No structure ever costs that much, so that only samples and chances tell. */
export const noHarm = { "detection.first-harm": 1e12 };

export const heavyDuties = {
  ...duties,
  items: [{ name: "Permits, staff and monitoring", cost: 300_000, apart: false, fromYear: 2 }],
};
export const study = studyOf([floatingDock, fixedDock, ramp, heavyDuties]);
export const known = compare(study, assumed);

export const treatment: Response = { name: "Treatment of a bay", cost: 400_000, chance: 0.25, latestYear: 2 };
export const slowly: Monitoring = { noticedWithin: [0.1, 0.4, 0.8] };

export interface Watch {
  readonly monitoring?: Monitoring;
  readonly response?: Response;
}

export const watched = (baseline: Watch, other: Watch, input: StudyInput = study): StudyInput => ({
  ...input,
  options: [
    { ...noProgram, ...baseline },
    { ...program, ...other },
  ],
});

export function programOf(comparison: Comparison): OptionBalance {
  const [balance] = comparison.options;
  if (!balance) throw new Error("no program");
  return balance;
}

/** The program of a study whose lake is worked out already. */
export const resultOf = (watch: Watch, replaced: Readonly<Record<string, number>> = noHarm): OptionResult =>
  programOf(compare(watched(watch, watch), assumedWith(replaced), known)).result;

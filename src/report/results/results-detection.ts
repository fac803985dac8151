import type { TracedOption } from "../../study/traced/traced-option.js";
import { lineJson, text } from "./results-line.js";

/** How soon mussels are noticed, and what is tried then. */
export function detectionJson({ result, meanYearsUnnoticed }: TracedOption): object {
  const { option, detection, statesByYear, containment } = result;
  return {
    monitoring: option.monitoring ?? null,
    chanceByYearOfInfestation: detection.chanceByAge,
    firstHarmInYear: detection.firstHarmAge === undefined ? null : detection.firstHarmAge + 1,
    meanYearsUnnoticed,
    knownByYear: statesByYear.map(({ known }) => known),
    containment: containment
      ? {
          latestYear: option.response?.latestYear,
          chance: option.response?.chance,
          attempt: lineJson(containment.line),
          attemptsByYear: statesByYear.map(({ attempts }) => attempts),
          attempts: containment.attempts,
          successes: containment.successes,
          presentValue: text(containment.presentValue),
        }
      : null,
  };
}

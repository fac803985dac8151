import type { TracedOption } from "../../study/traced/traced-option.js";
import { lineJson, text } from "./results-line.js";

/** How soon mussels are noticed, and what is tried then. */
export function detectionJson({ result, meanYearsUnnoticed }: TracedOption): object {
  const { option, noticing, course, containment } = result;
  return {
    monitoring: option.monitoring ?? null,
    chanceByYearOfInfestation: noticing.chanceByAge,
    firstHarmInYear: noticing.firstHarmAge === undefined ? null : noticing.firstHarmAge + 1,
    meanYearsUnnoticed,
    knownByYear: course.map(({ known }) => known),
    containment: containment
      ? {
          latestYear: option.response?.latestYear,
          chance: option.response?.chance,
          attempt: lineJson(containment.line),
          attemptsByYear: course.map(({ attempts }) => attempts),
          attempts: containment.attempts,
          successes: containment.successes,
          presentValue: text(containment.presentValue),
        }
      : null,
  };
}

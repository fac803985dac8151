import type { Assumed } from "../assumed.js";
import type { Monitoring, ProgramOption, StudyInput } from "../inputs.js";
import { months } from "../lake/calendar.js";
import { chanceByAgeOf, chanceBySamples } from "../risk/detection.js";
import { type Detection, detectedAtOnce } from "../risk/state-probabilities.js";
import type { ScheduleResult } from "../schedules.js";

/** The lake under its own levels: what an infestation does before anybody knows of it. */
type OwnLevels = Pick<ScheduleResult, "contexts" | "infestation">;

/**
 * When an option notices mussels, and what it tries then: at once where it does not say how it watches for them, else
 * by its samples or chances, and for certain from the year on in which mussels first cost one structure more than
 * `detection.first-harm` in losses; cleaning and protection, which nobody would order yet, do not count, nor do lake-wide
 * duties. The losses are those with the upkeep of a lake known to be infested: without it they would be no less. A lake declared infested is known to be.
 */
export function detectionOf(
  { monitoring, response }: ProgramOption,
  { lake }: StudyInput,
  own: OwnLevels,
  source: Assumed,
): Detection {
  if (lake.infestedSince !== undefined) return detectedAtOnce;
  const containment = response && { success: response.chance, latestAge: response.latestYear };
  if (monitoring === undefined) return { ...detectedAtOnce, containment };
  const harmAge = own.infestation.firstAgeAbove(source("detection.first-harm"));
  const chanceByAge = chancesOf(monitoring, own, source).slice(0, harmAge);
  return { chanceByAge, firstHarmAge: harmAge, containment };
}

function chancesOf(monitoring: Monitoring, { contexts }: OwnLevels, source: Assumed): number[] {
  const { noticedWithin } = monitoring;
  return noticedWithin === undefined
    ? chanceBySamples(monitoring, contexts[0].density.length / months.length, source)
    : chanceByAgeOf(noticedWithin);
}

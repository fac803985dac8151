import type { Assumed } from "../assumed.js";
import type { Monitoring, ProgramOption, StudyInput } from "../inputs.js";
import { type Noticing, noticedAtOnce } from "../risk/course.js";
import { chanceByAgeOf, chanceBySamples, yearlyMeans } from "../risk/detection.js";
import type { ScheduleResult } from "../schedules.js";

/** The lake under its own levels: what an infestation does before anybody knows of it. */
type OwnLevels = Pick<ScheduleResult, "contexts" | "structures" | "infestation">;

/**
 * When an option notices mussels, and what it tries then: at once where it does not say how it watches for them, else
 * by its samples or chances, and for certain from the year of the first harm on. A lake declared infested is known to be.
 */
export function noticingOf(
  { monitoring, response }: ProgramOption,
  { lake }: StudyInput,
  own: OwnLevels,
  source: Assumed,
): Noticing {
  if (lake.infestedSince !== undefined) return noticedAtOnce;
  const containment = response && { success: response.chance, latestAge: response.latestYear };
  if (monitoring === undefined) return { ...noticedAtOnce, containment };
  const harmAge = firstHarmAge(own, source("detection.first-harm"));
  const chanceByAge = chancesOf(monitoring, own, source).slice(0, harmAge);
  return { chanceByAge, firstHarmAge: harmAge, containment };
}

function chancesOf(monitoring: Monitoring, { contexts }: OwnLevels, source: Assumed): number[] {
  const { noticedWithin } = monitoring;
  return noticedWithin === undefined
    ? chanceBySamples(monitoring, yearlyMeans(contexts[0].density), source)
    : chanceByAgeOf(noticedWithin);
}

/**
 * Year of an infestation, counted from 0, in which mussels first cost one structure more than a limit; lake-wide
 * duties do not show them. Cost with the upkeep that a lake known to be infested has: without it, harm would be no less.
 */
export function firstHarmAge(
  { structures, infestation }: Pick<OwnLevels, "structures" | "infestation">,
  limit: number,
): number | undefined {
  const ages = structures
    .filter(({ structure }) => structure.kind !== "lake-wide")
    .map(({ structure }) =>
      infestation.ofStructure(structure.id).byYear.findIndex((cost) => cost.greaterThan(limit)),
    )
    .filter((age) => age >= 0);
  return ages.length === 0 ? undefined : Math.min(...ages);
}

import { at } from "../../lists.js";
import { bareColony, cohortsOf, passMonth } from "../../model/mussels/cohorts.js";
import { agesMet } from "../../model/mussels/shell-table.js";
import type { PlannedLayer } from "./plan-layer.js";

/** Mussels that settled in one month, through the month that is worked. */
export interface MovedCohort {
  readonly ageMonths: number;
  /** 1/m², at the month's start and at its end. */
  readonly before: number;
  readonly number: number;
  /** Shell length, mm. */
  readonly lengthBefore: number;
  readonly length: number;
  /** Of one at the end, kg. */
  readonly mass: number;
  /** Share that outlives the month's dry days. */
  readonly outlives: number;
}

export interface MonthOfCohorts {
  readonly moved: readonly MovedCohort[];
  /** The one that covers most; the first where there is none. */
  readonly largest: MovedCohort;
  readonly settlers: { readonly number: number; readonly mass: number };
  /** Whether there is no room for settlers, and some of the living are shed. */
  readonly crowded: boolean;
}

const mmPerM = 1e3;

/** The cohorts of a surface through one month, grown from bare by the model. */
export function cohortsOfMonth(planned: PlannedLayer): MonthOfCohorts {
  const { part, month, density } = planned;
  const { surface, context } = part;
  const { settlersPerMonth, coverLimit, yearlyMortality } = context.growth;
  const survival = Math.exp(-yearlyMortality / 12);
  const living = cohortsMet(planned).map((cohort) => movedCohort(cohort, planned, survival));
  const crowding = living.reduce((sum, each) => sum + coverOf(each), 0) / coverLimit;
  const { settlement } = at(surface.months, month % 12);
  const none: MovedCohort = {
    ...{ ageMonths: 0, before: 0, number: 0, lengthBefore: 0, length: 0, mass: 0, outlives: 1 },
  };
  return {
    moved: living,
    largest: living.reduce((most, each) => (coverOf(each) > coverOf(most) ? each : most), none),
    settlers: {
      number: settlersPerMonth * at(density, month) * settlement * Math.max(0, 1 - crowding),
      mass:
        Math.exp(
          context.growth.shell.massIntercept +
            context.growth.shell.massExponent * Math.log(context.growth.shell.settlementMm),
        ) / 1000,
    },
    crowded: crowding > 1,
  };
}

const coverOf = ({ number, length }: MovedCohort) => number * (length / mmPerM) ** 2;

interface Met {
  readonly number: number;
  /** Age in months, and place in the shell table, when the month has passed. */
  readonly age: number;
  readonly place: number;
}

/** What stood there at the end of the month before, those that settled first at the front. */
function cohortsMet({ part, start, month, density }: PlannedLayer): Met[] {
  const { months, table } = part.surface;
  const colony = bareColony(part.surface, part.context.growth, new Float64Array(month - start));
  for (let past = start; past < month; past++) passMonth(colony, past % 12, at(density, past));
  const ages = agesMet(months, month % 12);
  return cohortsOf(colony)
    .map((number, index) => ({ number, age: at(ages, index), place: (month % 12) * table.cohorts + index }))
    .filter(({ number }) => number > 0)
    .reverse();
}

function movedCohort(
  { number, age, place }: Met,
  { part: { surface }, month }: PlannedLayer,
  survival: number,
): MovedCohort {
  const { months, table } = surface;
  const outlives = table.isEverDry ? at(table.outlives, place) : 1;
  const lastMonth = (month + 11) % 12;
  const before = lastMonth * table.cohorts + agesMet(months, lastMonth).indexOf(age - 1);
  const coverBefore = age === 1 ? table.settler.cover : at(table.cover, before);
  return {
    ageMonths: age,
    before: number,
    number: number * outlives * survival,
    lengthBefore: Math.sqrt(coverBefore) * mmPerM,
    length: Math.sqrt(at(table.cover, place)) * mmPerM,
    mass: at(table.mass, place),
    outlives,
  };
}

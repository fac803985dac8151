import { at } from "../../lists.js";
import type { Cohorts } from "../../model/mussels/cohorts.js";
import { growColonies } from "../../model/mussels/growth.js";
import { nextPlaces, settlersPlace } from "../../model/mussels/shell-table.js";
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

const agesInTable = settlersPlace(1);
const mmPerM = 1e3;

/** The cohorts of a surface through one month, grown from bare by the model. */
export function cohortsOfMonth(planned: PlannedLayer): MonthOfCohorts {
  const { part, month, density } = planned;
  const { surface, context } = part;
  const { settlersPerMonth, coverLimit, yearlyMortality } = context.growth;
  const survival = Math.exp(-yearlyMortality / 12);
  const living = cohortsBefore(planned).map((cohort) => movedCohort(cohort, planned, survival));
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

interface Placed {
  readonly number: number;
  readonly place: number;
}

/** What stood there at the end of the month before. */
function cohortsBefore({ part, start, month, density }: PlannedLayer): Placed[] {
  if (month === start) return [];
  const placed: Placed[] = [];
  const input = { surface: part.surface, density: density.slice(start, month), firstMonth: start % 12 };
  growColonies(input, part.context.growth, (_colony, index, cohorts) => {
    if (index === month - start - 1) placed.push(...placedIn(cohorts));
    return false;
  });
  return placed;
}

const placedIn = ({ count, number, place }: Readonly<Cohorts>): Placed[] =>
  Array.from({ length: count }, (_, index) => ({ number: number[index] ?? 0, place: place[index] ?? 0 }));

function movedCohort({ number, place }: Placed, { part }: PlannedLayer, survival: number): MovedCohort {
  const { table } = part.surface;
  const next = nextPlaces[place] ?? 0;
  const outlives = table.isEverDry ? (table.outlives[next] ?? 1) : 1;
  return {
    ageMonths: (place % agesInTable) + 1,
    before: number,
    number: number * outlives * survival,
    lengthBefore: Math.sqrt(table.cover[place] ?? 0) * mmPerM,
    length: Math.sqrt(table.cover[next] ?? 0) * mmPerM,
    mass: table.mass[next] ?? 0,
    outlives,
  };
}

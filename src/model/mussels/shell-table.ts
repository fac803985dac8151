import { at, noElement } from "../../lists.js";
import { months } from "../lake/calendar.js";
import { type DryingParameters, lengthFactor, noDose, survivalBy } from "./drying.js";
import type { NumberRoom } from "./number-room.js";
import { grownLengthMm, roomLeft, type ShellParameters, wetMassG } from "./shell.js";
import { isEverDry, type SurfaceMonth } from "./surface.js";

/** Months over which a mussel grows: few live longer, and growth has all but come to rest. */
const growingAges = 84;
/** Of so few of a cohort none is followed: ages beyond are left out of the table. */
const extinctShare = 1e-9;
/** Years of age that are told apart; beyond them only the season counts. */
export const yearsOfAge = growingAges / 12 + 1;
const oldestAge = yearsOfAge * 12;

const kgPerG = 1e-3;
const squareMetresPerSquareMm = 1e-6;

/**
 * What a mussel is at each age on one surface. All mussels of a surface live through the same year, so the cohorts that
 * a month of the year meets, one for each month of the settling season, always have the same ages: for each month of
 * the year the table has a row of them, youngest first.
 */
export interface ShellTable {
  /** Cohorts of a row: those of the season, in as many years as are told apart. */
  readonly cohorts: number;
  /** Ground that one shell covers at the month's end, length², m². */
  readonly cover: Float64Array;
  /** Live wet mass of one at the month's end, kg. */
  readonly mass: Float64Array;
  /** Share that outlives this month's part of a dry run; empty if it is never dry. */
  readonly outlives: Float64Array;
  /** Live wet mass of one when the month's part of a dry run meets it, kg; empty if it is never dry. */
  readonly massMet: Float64Array;
  readonly isEverDry: boolean;
  /** Of one that has just settled: ground that it covers, m², and live wet mass, kg. */
  readonly settler: { readonly cover: number; readonly mass: number };
}

/** What mussels are in a lake, and room for what is known of them. */
export interface MusselParameters {
  readonly shell: ShellParameters;
  readonly drying: DryingParameters;
  readonly room: NumberRoom;
}

/** Ages in months of the cohorts that a month of the year meets, youngest first. */
export function agesMet(surface: readonly SurfaceMonth[], month: number): number[] {
  const ages = Array.from({ length: oldestAge }, (_, index) => index + 1);
  return ages.filter((age) => at(surface, (month + oldestAge - age) % 12).settlement > 0);
}

/** What a mussel is at each age: shells grow in the months a < 84 since they settled. */
export function shellTable(
  surface: readonly SurfaceMonth[],
  { shell, drying, room }: MusselParameters,
): ShellTable {
  const season = months.filter((month) => at(surface, month).settlement > 0);
  const cohorts = season.length * yearsOfAge;
  const size = months.length * cohorts;
  const dries = isEverDry(surface);
  const table = {
    cohorts,
    cover: room(size),
    mass: room(size),
    outlives: room(dries ? size : 0).fill(1),
    massMet: room(dries ? size : 0),
    isEverDry: dries,
    settler: {
      cover: shell.settlementMm ** 2 * squareMetresPerSquareMm,
      mass: wetMassG(shell.settlementMm, shell) * kgPerG,
    },
  };
  const left = surface.map(({ degreeDays }) => roomLeft(degreeDays, shell));
  for (const settled of season) fillAges(settled, table, { surface, left }, { shell, drying });
  return table;
}

/**
 * A dry run that begins within a month meets mussels that have grown in the month's days under water; one that goes on
 * meets them as the month before left them, and they grow in the days that are left.
 */
function fillAges(
  settled: number,
  table: ShellTable,
  { surface, left }: { surface: readonly SurfaceMonth[]; left: readonly number[] },
  { shell, drying }: { shell: ShellParameters; drying: DryingParameters },
): void {
  let lengthMm = shell.settlementMm;
  let { mass } = table.settler;
  let share = 1;
  let younger = 0;
  for (let age = 1; age <= oldestAge && share > extinctShare; age++) {
    const month = (settled + age) % 12;
    const { settlement, doseBefore, doseAfter, degreeDays } = surface[month] ?? noElement(surface, month);
    const place = month * table.cohorts + younger;
    const beforeMm = lengthMm;
    const before = mass;
    if (age < growingAges && degreeDays > 0) {
      lengthMm = grownLengthMm(lengthMm, left[month] ?? noElement(left, month), shell);
      mass = wetMassG(lengthMm, shell) * kgPerG;
    }
    if (doseAfter.drying > 0) {
      const begins = doseBefore === noDose;
      const factor = lengthFactor(begins ? lengthMm : beforeMm, drying);
      const outlives = survivalBy(doseAfter, factor, drying) / survivalBy(doseBefore, factor, drying);
      table.outlives[place] = outlives;
      table.massMet[place] = begins ? mass : before;
      share *= outlives;
    }
    table.cover[place] = lengthMm ** 2 * squareMetresPerSquareMm;
    table.mass[place] = mass;
    if (settlement > 0) younger += 1;
  }
}

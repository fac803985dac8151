import { at } from "../../lists.js";
import { months } from "../lake/calendar.js";
import { type DryingParameters, noDose, survival } from "./drying.js";
import { grownLengthMm, type ShellParameters, wetMassG } from "./shell.js";
import { isEverDry, type SurfaceMonth } from "./surface.js";

/** Months over which a mussel grows: few live longer, and growth has all but come to rest. */
const growingAges = 84;
/** Of so few of a cohort none is followed: ages beyond are left out of the table. */
const extinctShare = 1e-9;
/** Ages, in months, that are told apart; beyond them only the season counts. */
const tableAges = growingAges + 12;

const kgPerG = 1e-3;
const squareMetresPerSquareMm = 1e-6;

/**
 * What a mussel is at each age on one surface, by the month of the year in which it settled. All mussels of a
 * surface live through the same year, so a cohort needs only its number and its place in this table.
 */
export interface ShellTable {
  /** Ground that one shell covers, length², m². */
  readonly cover: Float64Array;
  /** Live wet mass of one, kg. */
  readonly mass: Float64Array;
  /** Share that outlives this month's part of a dry run; empty if it is never dry. */
  readonly outlives: Float64Array;
  /** Live wet mass of one when the month's part of a dry run meets it, kg; empty if it is never dry. */
  readonly massMet: Float64Array;
  readonly isEverDry: boolean;
}

/** Place in the table of mussels that have just settled in a month of the year. */
export const settlersPlace = (monthOfYear: number): number => monthOfYear * tableAges;

/** Place a month later, by place; past the last age told apart, the place a year before it. */
export const nextPlaces = Int32Array.from({ length: months.length * tableAges }, (_, place) =>
  (place + 1) % tableAges === 0 ? place + 1 - 12 : place + 1,
);

/** What a mussel is at each age: shells grow in the months a < 84 since they settled. */
export function shellTable(
  surface: readonly SurfaceMonth[],
  shell: ShellParameters,
  drying: DryingParameters,
): ShellTable {
  const size = months.length * tableAges;
  const dries = isEverDry(surface);
  const table = {
    cover: new Float64Array(size),
    mass: new Float64Array(size),
    outlives: new Float64Array(dries ? size : 0).fill(1),
    massMet: new Float64Array(dries ? size : 0),
    isEverDry: dries,
  };
  for (const settled of months) {
    if (at(surface, settled).settlement > 0) fillAges(settled, table, surface, { shell, drying });
  }
  return table;
}

/**
 * A dry run that begins within a month meets mussels that have grown in the month's days under water; one that goes on
 * meets them as the month before left them, and they grow in the days that are left.
 */
function fillAges(
  settled: number,
  table: ShellTable,
  surface: readonly SurfaceMonth[],
  { shell, drying }: { shell: ShellParameters; drying: DryingParameters },
): void {
  let lengthMm = shell.settlementMm;
  let mass = wetMassG(lengthMm, shell) * kgPerG;
  let share = 1;
  for (let age = 0; age < tableAges && share > extinctShare; age++) {
    const { doseBefore, doseAfter, degreeDays } = at(surface, (settled + age) % 12);
    const place = settled * tableAges + age;
    const beforeMm = lengthMm;
    const before = mass;
    if (age > 0 && age < growingAges && degreeDays > 0) {
      lengthMm = grownLengthMm(lengthMm, degreeDays, shell);
      mass = wetMassG(lengthMm, shell) * kgPerG;
    }
    if (age > 0 && doseAfter.drying > 0) {
      const begins = doseBefore === noDose;
      const metMm = begins ? lengthMm : beforeMm;
      const outlives = survival(doseAfter, metMm, drying) / survival(doseBefore, metMm, drying);
      table.outlives[place] = outlives;
      table.massMet[place] = begins ? mass : before;
      share *= outlives;
    }
    table.cover[place] = lengthMm ** 2 * squareMetresPerSquareMm;
    table.mass[place] = mass;
  }
}

import { at, months } from "../lake/calendar.js";
import { type DryingParameters, survival } from "./drying.js";
import { grownLengthMm, type ShellParameters, wetMassG } from "./shell.js";
import type { SurfaceMonth } from "./surface.js";

/** Months over which a mussel grows: few live longer, and growth has all but come to rest. */
const growingAges = 84;
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
  /** Share that outlives this month's part of a dry run, met at the size of the month before. */
  readonly outlives: Float64Array;
  readonly isEverDry: boolean;
}

/** Place in the table of mussels that have just settled in a month of the year. */
export const settlersPlace = (monthOfYear: number): number => monthOfYear * tableAges;

/** Place a month later; past the last age told apart, the place a year before it. */
export function nextPlace(place: number): number {
  return (place + 1) % tableAges === 0 ? place + 1 - 12 : place + 1;
}

/**
 * Maker of tables that keeps each, since surfaces that live through the same warmth and dry runs share one: below the
 * drawn-down band most do.
 */
export function shellTables(
  shell: ShellParameters,
  drying: DryingParameters,
): (surface: readonly SurfaceMonth[]) => ShellTable {
  const known = new Map<string, ShellTable>();
  return (surface) => {
    const key = JSON.stringify(
      surface.map(({ settlement, degreeDays, doseBefore, doseAfter }) => [
        settlement > 0,
        degreeDays,
        doseBefore,
        doseAfter,
      ]),
    );
    const table = known.get(key) ?? shellTable(surface, shell, drying);
    known.set(key, table);
    return table;
  };
}

export function shellTable(
  surface: readonly SurfaceMonth[],
  shell: ShellParameters,
  drying: DryingParameters,
): ShellTable {
  const size = months.length * tableAges;
  const table = {
    cover: new Float64Array(size),
    mass: new Float64Array(size),
    outlives: new Float64Array(size).fill(1),
    isEverDry: surface.some(({ doseAfter }) => doseAfter.drying > 0),
  };
  for (const settled of months) {
    if (at(surface, settled).settlement > 0) fillAges(settled, table, surface, { shell, drying });
  }
  return table;
}

function fillAges(
  settled: number,
  table: ShellTable,
  surface: readonly SurfaceMonth[],
  { shell, drying }: { shell: ShellParameters; drying: DryingParameters },
): void {
  let lengthMm = shell.settlementMm;
  for (let age = 0; age < tableAges; age++) {
    const month = at(surface, (settled + age) % 12);
    const place = settled * tableAges + age;
    if (age > 0) {
      if (month.doseAfter.drying > 0) {
        table.outlives[place] =
          survival(month.doseAfter, lengthMm, drying) / survival(month.doseBefore, lengthMm, drying);
      }
      if (age < growingAges) lengthMm = grownLengthMm(lengthMm, month.degreeDays, shell);
    }
    table.cover[place] = lengthMm ** 2 * squareMetresPerSquareMm;
    table.mass[place] = wetMassG(lengthMm, shell) * kgPerG;
  }
}

import { months } from "../lake/calendar.js";
import { exposedBand } from "../lake/levels.js";
import { type GrowthParameters, killedByYear } from "./growth.js";
import { shellTable } from "./shell-table.js";
import type { Surface, SurfaceMonth } from "./surface.js";

/** A stretch of elevations, m. */
export interface Heights {
  readonly from: number;
  readonly to: number;
}

/** What drying and frost kill over a stretch of elevations, by year. */
export interface KilledOver {
  /** Live mass for each metre of width of upright ground, kg/m² × m. */
  readonly killed: readonly number[];
  /** Height on which anything was killed, m. */
  readonly height: readonly number[];
}

interface OperatingYear {
  readonly daily: readonly number[];
  /** How many possible operating years are averaged: the more, the coarser each may be. */
  readonly averaged: number;
}

interface ExposedBand extends OperatingYear {
  readonly years: number;
  /** Live mass killed at an elevation in each year, kg/m². */
  readonly killedAt: (elevation: number) => readonly number[];
}

/** Cells into which the band that a year lays bare is cut, shared out among the years of a record. */
const cellsInAll = 20;
const fewestCells = 8;

/**
 * What is killed between two elevations: each cell of the year's exposed band, grown in its middle, stands for its height
 * as far as that lies between them. Cells are low at the bottom of the band, where a day more of drying changes most:
 * the ends of n cells lie at the squares of their places, (i/n)². All stretches of a lake share the cells, each grown once.
 */
function killedBetween(band: ExposedBand): (heights: Heights) => KilledOver {
  const { lowest, highest } = exposedBand(band.daily);
  const cells = Math.max(fewestCells, Math.ceil(cellsInAll / band.averaged));
  const endOf = (cell: number) => lowest + (highest - lowest) * (cell / cells) ** 2;
  const known = new Map<number, readonly number[]>();
  const killedIn = (cell: number): readonly number[] => {
    const killed = known.get(cell) ?? band.killedAt((endOf(cell) + endOf(cell + 1)) / 2);
    known.set(cell, killed);
    return killed;
  };
  return ({ from, to }) => {
    const parts: BandPart[] = [];
    for (let cell = 0; cell < cells; cell++) {
      const within = Math.min(to, endOf(cell + 1)) - Math.max(from, endOf(cell));
      if (within > 0) parts.push({ within, killed: killedIn(cell) });
    }
    return killedOver(parts, band.years);
  };
}

/** A cell as far as it lies in a stretch: height, m, and live mass killed on it by year, kg/m². */
interface BandPart {
  readonly within: number;
  readonly killed: readonly number[];
}

function killedOver(parts: readonly BandPart[], years: number): KilledOver {
  const killed: number[] = [];
  const height: number[] = [];
  for (let year = 0; year < years; year++) {
    let mass = 0;
    let high = 0;
    for (const part of parts) {
      const inCell = part.killed[year] ?? 0;
      mass += inCell * part.within;
      if (inCell > 0) high += part.within;
    }
    killed.push(mass);
    height.push(high);
  }
  return { killed, height };
}

type Kills = (density: readonly number[], settled: number) => (heights: Heights) => KilledOver;

/**
 * What drying and frost kill on still ground in one operating year, for a density of the lake by month:
 * K = Σ k(zi)·Δzi over cells of the exposed band, whose ends lie at zl + (zh − zl)·(i/n)².
 * @param year.monthsOf the twelve months of a surface in that year
 */
export function groundKills({
  monthsOf,
  growth,
  ...year
}: OperatingYear & {
  readonly monthsOf: (surface: Surface) => readonly SurfaceMonth[];
  readonly growth: GrowthParameters;
}): Kills {
  const velocity = months.map(() => 0);
  return (density, settled) =>
    killedBetween({
      years: density.length / 12,
      ...year,
      killedAt: (elevation) => {
        const conditions = monthsOf({ place: { at: "elevation", elevation }, velocity });
        const surface = { months: conditions, table: shellTable(conditions, growth) };
        return killedByYear({ surface, density, settled }, growth);
      },
    });
}

import { at } from "../../lists.js";
import { once, remembered, withLater } from "../computed-once.js";
import type { ColonySurface } from "./cohorts.js";
import type { DryDose } from "./drying.js";
import type { GrownMonths } from "./grown-months.js";
import { type MusselParameters, type ShellTable, shellTable } from "./shell-table.js";
import type { SurfaceMonth } from "./surface.js";

/** A surface made once and used by every plan: alike parts share it with all that was grown on it. */
export interface GrowingSurface extends ColonySurface {
  /** What grows on it from bare on, by when it starts, under a share of the settlers or at the density of maturity. */
  readonly grownFromBare: (settlers: number | "mature") => Map<number, GrownMonths>;
}

/** Surfaces whose mussels live through the same warmth and dry runs. */
interface Life {
  readonly months: readonly SurfaceMonth[];
  readonly table: () => ShellTable;
  readonly surfaces: GrowingSurface[];
}

/** Surfaces kept at once: enough for most lakes, and few enough that a lake of hundreds fits in little memory. */
const mostKept = 128;

/**
 * Maker of growing surfaces that keeps the latest: parts whose twelve months are alike share one surface with all that was
 * grown on it, and those that live through the same warmth and dry runs share a shell table. Below the drawn-down
 * band most do.
 */
export function growingSurfaces(parameters: MusselParameters): {
  readonly surfaceOf: (months: readonly SurfaceMonth[]) => GrowingSurface;
  /** Lets go of all that is kept: layers take much memory, and can be grown again. */
  readonly forget: () => void;
} {
  const lives = new Map<number, Life[]>();
  let kept = 0;
  const forget = () => {
    lives.clear();
    kept = 0;
  };
  const lifeOf = (months: readonly SurfaceMonth[]): Life => {
    const warmth = months.reduce((sum, { degreeDays }) => sum + degreeDays, 0);
    const asWarm = lives.get(warmth) ?? [];
    const known = asWarm.find((life) => isSameLife(life.months, months));
    if (known) return known;
    const life: Life = { months, table: once(() => shellTable(months, parameters)), surfaces: [] };
    lives.set(warmth, [...asWarm, life]);
    return life;
  };
  const surfaceOf = (months: readonly SurfaceMonth[]): GrowingSurface => {
    const { surfaces, table } = lifeOf(months);
    const same = surfaces.find((surface) => isSameSettlement(surface.months, months));
    if (same) return same;
    if (kept === mostKept) {
      forget();
      return surfaceOf(months);
    }
    const surface = withLater({ months, grownFromBare: remembered(() => new Map()) }, { table });
    kept += 1;
    surfaces.push(surface);
    return surface;
  };
  return { surfaceOf, forget };
}

function isSameLife(one: readonly SurfaceMonth[], other: readonly SurfaceMonth[]): boolean {
  return one.every((month, index) => {
    const { settlement, degreeDays, doseBefore, doseAfter } = at(other, index);
    return (
      month.settlement > 0 === settlement > 0 &&
      month.degreeDays === degreeDays &&
      isSameDose(month.doseBefore, doseBefore) &&
      isSameDose(month.doseAfter, doseAfter)
    );
  });
}

const isSameDose = (one: DryDose, other: DryDose) => one.drying === other.drying && one.frost === other.frost;

const isSameSettlement = (one: readonly SurfaceMonth[], other: readonly SurfaceMonth[]) =>
  one.every(({ settlement }, index) => settlement === at(other, index).settlement);

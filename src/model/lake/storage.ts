import { at } from "../../lists.js";
import type { StoragePoint } from "./lake.js";

/** Lake area at an elevation, linear between the rows of the table and level beyond its ends, m². */
export function areaAt(table: readonly StoragePoint[], elevation: number): number {
  let above = 0;
  while ((table[above]?.elevation ?? Infinity) < elevation) above++;
  if (above === 0) return at(table, 0).area;
  const lower = at(table, above - 1);
  const upper = table[above];
  if (upper === undefined) return lower.area;
  const share = (elevation - lower.elevation) / (upper.elevation - lower.elevation);
  return lower.area + (upper.area - lower.area) * share;
}

/** Storage between two elevations by the trapezoid rule on area, m³: S = Σ (A1 + A2)/2 · (z2 − z1). */
export function storageBetween(table: readonly StoragePoint[], low: number, high: number): number {
  let sum = 0;
  let lower = low;
  let lowerArea = areaAt(table, low);
  const upTo = (upper: number) => {
    const upperArea = areaAt(table, upper);
    sum += ((lowerArea + upperArea) / 2) * (upper - lower);
    lower = upper;
    lowerArea = upperArea;
  };
  for (const { elevation } of table) if (elevation > low && elevation < high) upTo(elevation);
  upTo(high);
  return sum;
}

/** Ground exposed when the water falls from `high` to `low`, m²: B = A(high) − A(low). */
export function exposedArea(table: readonly StoragePoint[], low: number, high: number): number {
  return areaAt(table, high) - areaAt(table, low);
}

import { at } from "../../lists.js";
import type { Assumed } from "../assumed.js";
import { monthOfDay, months } from "../lake/calendar.js";
import type { Contexts } from "../structures/context.js";
import type { StructureBase } from "../structures/inputs.js";
import type { Entry } from "./entry-check.js";

/** A structure that is checked, with its place and the water around it. */
export interface Checked<Kind extends StructureBase> {
  readonly structure: Kind;
  readonly at: readonly PropertyKey[];
  readonly contexts: Contexts;
  readonly water: WaterLevels;
  readonly assumed: Assumed;
}

/** Lowest level of each month and highest of all, over every possible operating year, m. */
interface WaterLevels {
  readonly lowestByMonth: readonly number[];
  readonly highest: number;
}

export function waterLevels(years: readonly { readonly daily: readonly number[] }[]): WaterLevels {
  const lowestByMonth = months.map(() => Number.POSITIVE_INFINITY);
  let highest = Number.NEGATIVE_INFINITY;
  for (const { daily } of years) {
    daily.forEach((level, day) => {
      const month = monthOfDay(day);
      lowestByMonth[month] = Math.min(at(lowestByMonth, month), level);
      highest = Math.max(highest, level);
    });
  }
  return { lowestByMonth, highest };
}

/** An entry of a structure, named after it. @param fields place below the structure */
export function entryOf(
  { structure, at }: Pick<Checked<StructureBase>, "structure" | "at">,
  fields: readonly PropertyKey[],
  { what, ...rest }: Omit<Entry, "at">,
): Entry {
  return { at: [...at, ...fields], what: `${structure.name}, ${what}`, ...rest };
}

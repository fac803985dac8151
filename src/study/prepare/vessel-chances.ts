import type { Assumed } from "../../model/assumed.js";
import { type ClassChance, classChance } from "../../model/program/class-chances.js";
import type { Counts } from "../../model/program/learning.js";
import type { ReadBoats } from "../format/read-records.js";
import type { SeasonLog } from "../reading/season-log.js";

/** Fouled shares of a study's vessel classes, in their order, after the seasons of its log. */
export function vesselChances({ classes, seasons }: ReadBoats, assumed: Assumed): ClassChance[] {
  const counts = countsByClass(seasons?.log.classes ?? []);
  return classes.map(({ id, fouled }) => {
    const entered =
      "found" in fouled
        ? {
            found: fouled.found,
            screened: fouled.of,
            weight: fouled.weight.value,
          }
        : fouled.value;
    return classChance({ entered, seasons: counts.get(id) }, assumed);
  });
}

const countsByClass = (classes: SeasonLog["classes"]): Map<string, Counts> =>
  new Map(classes.map(({ vesselClass, screened, fouled }) => [vesselClass, { screened, found: fouled }]));

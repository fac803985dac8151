import type { Assumed } from "../../model/assumed.js";
import { type ClassChance, classChance } from "../../model/program/class-chances.js";
import type { Counts } from "../../model/program/learning.js";
import type { BoatsDocument } from "../format/boats-schema.js";
import { readSeasonLog } from "../reading/season-log.js";

/** Fouled shares of a checked study's vessel classes, in their order, after the seasons of its log. */
export function vesselChances({ classes, seasons }: BoatsDocument, assumed: Assumed): ClassChance[] {
  const counts = seasons ? countsByClass(seasons.csv, classes) : new Map<string, Counts>();
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

function countsByClass(csv: string, classes: BoatsDocument["classes"]): Map<string, Counts> {
  const reading = readSeasonLog(
    csv,
    classes.map(({ id }) => id),
  );
  if (!reading.log) throw new Error(`a log of seasons that was not checked: ${reading.problems[0]?.found}`);
  return new Map(
    reading.log.classes.map(({ vesselClass, screened, fouled }) => [
      vesselClass,
      { screened, found: fouled },
    ]),
  );
}

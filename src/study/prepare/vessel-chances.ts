import type { Assumed } from "../../model/assumed.js";
import { type ClassChance, classChance } from "../../model/program/class-chances.js";
import type { Counts } from "../../model/program/learning.js";
import type { ReadBoats } from "../format/read-records.js";
import type { SeasonLog } from "../reading/season-log.js";
import { type PlainBoats, plainBoats } from "./to-model.js";

/** Fouled shares of a study's vessel classes, in their order, after the seasons of its log. */
export const vesselChances = (boats: ReadBoats, assumed: Assumed): ClassChance[] =>
  classChances(plainBoats(boats), boats.seasons, assumed);

export function classChances(
  { classes }: Pick<PlainBoats, "classes">,
  seasons: ReadBoats["seasons"],
  assumed: Assumed,
): ClassChance[] {
  const counts = countsByClass(seasons?.log.classes ?? []);
  return classes.map(({ id, fouled }) => {
    const entered =
      typeof fouled === "number"
        ? fouled
        : { found: fouled.found, screened: fouled.of, weight: fouled.weight };
    return classChance({ entered, seasons: counts.get(id) }, assumed);
  });
}

const countsByClass = (classes: SeasonLog["classes"]): Map<string, Counts> =>
  new Map(classes.map(({ vesselClass, screened, fouled }) => [vesselClass, { screened, found: fouled }]));

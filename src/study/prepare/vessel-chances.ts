import type { Assumed } from "../../model/assumed.js";
import { type ClassChance, classChance } from "../../model/program/class-chances.js";
import type { Counts } from "../../model/program/learning.js";
import type { ReadBoats } from "../format/read-records.js";
import type { SeasonLog } from "../reading/season-log.js";

/** Chances of a study's vessel classes, in order, updated by its log of seasons. */
export function vesselChances({ classes, seasons }: ReadBoats, assumed: Assumed): ClassChance[] {
  const counts = countsByClass(seasons?.log.classes ?? []);
  return classes.map(({ id, carriesLive }) => {
    const entered =
      "found" in carriesLive
        ? {
            found: carriesLive.found,
            screened: carriesLive.of,
            weight: carriesLive.weight.value,
            live: carriesLive.live.value,
          }
        : carriesLive.value;
    return classChance({ entered, seasons: counts.get(id) }, assumed);
  });
}

const countsByClass = (classes: SeasonLog["classes"]): Map<string, Counts> =>
  new Map(classes.map(({ vesselClass, screened, fouled }) => [vesselClass, { screened, found: fouled }]));

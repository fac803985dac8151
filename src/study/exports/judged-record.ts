import { quantity } from "../format/fields.js";
import { type LevelReading, readLevelRecord } from "../reading/level-record.js";
import { valueAt } from "../reading/problems.js";

const elevation = quantity("elevation");

/** A record as a study would read it, as far as the study gives the limits of its lake. */
export function judgedRecord(csv: string, document: unknown, fillGapsUpTo: number): LevelReading {
  const limit = (key: string) => elevation.safeParse(valueAt(document, ["lake", key])).data;
  return readLevelRecord(csv, {
    fillGapsUpTo,
    minimumElevation: limit("minimumElevation"),
    maximumElevation: limit("maximumElevation"),
  });
}

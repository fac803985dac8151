import { quantity } from "../format/fields.js";
import { largestRecordBytes } from "../format/schedule-schema.js";
import type { RecordProblem } from "../reading/contradiction.js";
import { type LevelReading, readLevelRecord } from "../reading/levels/level-record.js";
import { valueAt } from "../reading/problems.js";

const elevation = quantity("elevation");

/** A record as a study would read it, as far as the study gives the limits of its lake. */
export function judgedRecord(csv: string, document: unknown, fillGapsUpTo: number): LevelReading {
  if (csv.length > largestRecordBytes) return { problems: [tooLong(csv.length)] };
  const limit = (key: string) => elevation.safeParse(valueAt(document, ["lake", key])).data;
  const reading = readLevelRecord(csv, {
    fillGapsUpTo,
    minimumElevation: limit("minimumElevation"),
    maximumElevation: limit("maximumElevation"),
  });
  return reading.record ? reading : { problems: reading.problems.map(withoutLine) };
}

/** A line of the record is none of the file that it was read from: its date is told. */
const withoutLine = ({ found, allowed, remedy }: RecordProblem): RecordProblem => ({
  ...{ found, allowed, remedy },
});

const tooLong = (length: number): RecordProblem => ({
  found: `a record of ${(length / 1024 / 1024).toFixed(1)} MB, once read`,
  allowed: `at most ${largestRecordBytes / 1024 / 1024} MB: 100 years of days whose levels have two decimals`,
  remedy: "Export levels with fewer decimals, or leave out the earliest years.",
});

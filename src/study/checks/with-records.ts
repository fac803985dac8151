import type { StudyDocument, WrittenStudy } from "../format/schema.js";
import { enteredTraffic } from "../prepare/traffic.js";
import { allSound, type Judged } from "../reading/contradiction.js";
import type { RecordReaders } from "../reading/record-readers.js";
import { soundSeasons } from "./consistency-boats.js";
import { soundSteps } from "./consistency-open.js";
import { soundYearly } from "./consistency-program.js";
import { readLake } from "./consistency-schedules.js";
import { soundTraffic } from "./consistency-traffic.js";

/** A consistent study with its records parsed. */
export function withRecords(written: WrittenStudy, readers: RecordReaders): Judged<StudyDocument> {
  const lake = readLake(written.lake, readers);
  if (lake.problems) return lake;
  const boats = readBoats(written.boats, readers);
  if (boats.problems) return boats;
  const options = soundOptions(written.options, boats.sound);
  if (options.problems) return options;
  return { sound: { ...written, lake: lake.sound, boats: boats.sound, options: options.sound } };
}

function readBoats(boats: WrittenStudy["boats"], readers: RecordReaders): Judged<StudyDocument["boats"]> {
  const seasons = soundSeasons(boats, readers);
  if (seasons.problems) return seasons;
  const traffic = soundTraffic(boats, readers);
  if (traffic.problems) return traffic;
  return { sound: { ...boats, seasons: seasons.sound, traffic: traffic.sound } };
}

function soundOptions(
  options: WrittenStudy["options"],
  boats: StudyDocument["boats"],
): Judged<StudyDocument["options"]> {
  const read = boats.traffic;
  const traffic = read && { read, entered: enteredTraffic(read, boats) };
  return allSound(
    options.map((option, index): Judged<StudyDocument["options"][number]> => {
      const steps = soundSteps(option, traffic, ["options", index]);
      if (steps.problems) return steps;
      const yearly = soundYearly(option, ["options", index, "yearly"]);
      if (yearly.problems) return yearly;
      return { sound: { ...option, ...steps.sound, yearly: yearly.sound } };
    }),
  );
}

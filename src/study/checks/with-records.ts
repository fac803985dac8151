import type { StudyDocument, WrittenStudy } from "../format/schema.js";
import type { Judged } from "../reading/contradiction.js";
import type { RecordReaders } from "../reading/record-readers.js";
import { soundSeasons } from "./consistency-boats.js";
import { readLake } from "./consistency-schedules.js";
import { soundTraffic } from "./consistency-traffic.js";

/** A study without contradictions, with what its records say. */
export function withRecords(written: WrittenStudy, readers: RecordReaders): Judged<StudyDocument> {
  const lake = readLake(written.lake, readers);
  const boats = readBoats(written.boats, readers);
  if (lake.problems) return lake;
  return boats.problems ? boats : { sound: { ...written, lake: lake.sound, boats: boats.sound } };
}

function readBoats(boats: WrittenStudy["boats"], readers: RecordReaders): Judged<StudyDocument["boats"]> {
  const seasons = soundSeasons(boats, readers);
  if (seasons.problems) return seasons;
  const traffic = soundTraffic(boats, readers);
  if (traffic.problems) return traffic;
  return { sound: { ...boats, seasons: seasons.sound, traffic: traffic.sound } };
}

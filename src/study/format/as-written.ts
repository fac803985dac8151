import type { ReadRecord } from "./read-records.js";
import type { StudyDocument, WrittenStudy } from "./schema.js";

/**
 * A study without its parsed records: the fields that an author can change and compare. A record that is kept beside the
 * study has its text in it here, so that its digest is not compared a second time.
 */
export function asWritten(study: StudyDocument): WrittenStudy {
  const { lake, boats, options } = study;
  return {
    ...study,
    lake: { ...withoutLevels(lake), otherSchedules: lake.otherSchedules.map(withoutLevels) },
    boats: {
      ...boats,
      seasons: boats.seasons && without(boats.seasons, "log"),
      traffic: boats.traffic && without(boats.traffic, "counts"),
    },
    options: options.map((option) => without(option, "hours")),
  };
}

const withoutLevels = <Schedule extends { readonly record?: ReadRecord | undefined }>(
  schedule: Schedule,
) => ({
  ...schedule,
  record: schedule.record && without(without(schedule.record, "levels"), "kept"),
});

function without<Group extends object, Key extends keyof Group>(group: Group, key: Key): Omit<Group, Key> {
  const { [key]: _, ...others } = group;
  return others;
}

import type { ReadRecord } from "./read-records.js";
import type { StudyDocument, WrittenStudy } from "./schema.js";

/** A study without its parsed records: the fields that an author can change and compare. */
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
  record: schedule.record && without(schedule.record, "levels"),
});

function without<Group extends object, Key extends keyof Group>(group: Group, key: Key): Omit<Group, Key> {
  const { [key]: _, ...others } = group;
  return others;
}

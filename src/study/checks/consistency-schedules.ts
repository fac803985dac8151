import { monthDays } from "../../model/lake/calendar.js";
import type { ReadRecord, WithLevels } from "../format/read-records.js";
import type { RecordDocument, ScheduleDocument } from "../format/schedule-schema.js";
import type { StudyDocument, WrittenStudy } from "../format/schema.js";
import { dayNumber } from "../prepare/to-model.js";
import { allSound, type Contradiction, type Judged, repeatedIds } from "../reading/contradiction.js";
import type { RecordReaders } from "../reading/record-readers.js";

type LakeDocument = WrittenStudy["lake"];
type Path = readonly PropertyKey[];

interface Within {
  readonly path: Path;
  readonly lake: LakeDocument;
  readonly readers: RecordReaders;
}

/** Contradictions between the lake's schedules, its own included, and its limits. */
export function scheduleProblems(lake: LakeDocument, readers: RecordReaders): Contradiction[] {
  const { otherSchedules } = lake;
  return [
    ...(soundLevels(lake, { path: ["lake"], lake, readers }).problems ?? []),
    ...(otherLevels(lake, readers).problems ?? []),
    ...repeatedIds(otherSchedules, ["lake", "otherSchedules"]),
    ...storageValueProblems(lake),
  ];
}

/** The lake with its records parsed. */
export function readLake(lake: LakeDocument, readers: RecordReaders): Judged<StudyDocument["lake"]> {
  const own = soundLevels(lake, { path: ["lake"], lake, readers });
  if (own.problems) return own;
  const others = otherLevels(lake, readers);
  return others.problems ? others : { sound: { ...own.sound, otherSchedules: others.sound } };
}

function otherLevels(lake: LakeDocument, readers: RecordReaders) {
  return allSound(
    lake.otherSchedules.map((each, index) =>
      soundLevels(each, { path: ["lake", "otherSchedules", index], lake, readers }),
    ),
  );
}

function soundLevels<Schedule extends ScheduleDocument>(
  schedule: Schedule,
  within: Within,
): Judged<WithLevels<Schedule>> {
  const { record, ...others } = schedule;
  const { path, lake } = within;
  const { drawdown } = schedule;
  if (drawdown && record) {
    const allowed = "drawdown or record, not both";
    const remedy = "Take out the one that the lake does not follow.";
    return {
      problems: [{ path: [...path, "record"], found: "a record beside a drawdown", allowed, remedy }],
    };
  }
  if (record) {
    const read = readRecord(record, { ...within, path: [...path, "record"] });
    return read.problems ? read : { sound: { ...schedule, record: read.sound } };
  }
  const problems = drawdown ? drawdownProblems(drawdown, [...path, "drawdown"], lake) : [noLevels(path)];
  return problems.length > 0 ? { problems } : { sound: others };
}

const noLevels = (path: Path): Contradiction => ({
  path: [...path, "drawdown"],
  found: "nothing",
  allowed: "points of an operating year under drawdown, or levels of several years under record",
});

function drawdownProblems(
  drawdown: NonNullable<ScheduleDocument["drawdown"]>,
  path: Path,
  { minimumElevation, maximumElevation }: LakeDocument,
): Contradiction[] {
  return drawdown.flatMap(({ on, elevation }, index) => {
    const problems: Contradiction[] = [];
    const before = drawdown[index - 1];
    if (!isDate(on)) {
      problems.push({
        path: [...path, index, "on"],
        found: `"${on}"`,
        allowed: "a day that the month has (29 February is left out)",
      });
    } else if (before && isDate(before.on) && dayNumber(on) <= dayNumber(before.on)) {
      problems.push({
        path: [...path, index, "on"],
        found: `"${on}"`,
        allowed: `a day after that of the point before, "${before.on}"`,
      });
    }
    if (elevation.value < minimumElevation.value || elevation.value > maximumElevation.value) {
      problems.push({
        path: [...path, index, "elevation"],
        found: elevation.text,
        allowed: `an elevation from ${minimumElevation.text} to ${maximumElevation.text}`,
      });
    }
    return problems;
  });
}

function isDate(on: string): boolean {
  const [month = 0, day = 0] = on.split("-").map(Number);
  return day <= (monthDays[month - 1] ?? 0);
}

function readRecord(record: RecordDocument, { path, lake, readers }: Within): Judged<ReadRecord> {
  const { csv, file, kept, fillGapsUpTo } = record;
  if (csv === undefined) {
    // an unreadable file, or a kept record that is not there, is reported by its reader
    const problem = { path: [...path, "csv"], found: "nothing", allowed: "CSV text" };
    return { problems: file === undefined && kept === undefined ? [problem] : [] };
  }
  const { minimumElevation, maximumElevation } = lake;
  const reading = readers.levels(csv, { fillGapsUpTo, minimumElevation, maximumElevation });
  if (reading.record) return { sound: { ...record, levels: reading.record } };
  const place = [...path, kept !== undefined ? "kept" : file !== undefined ? "file" : "csv"];
  return { problems: reading.problems.map((problem) => ({ ...problem, path: place })) };
}

function storageValueProblems({ storageValue, storageValueOrigin }: LakeDocument): Contradiction[] {
  if (storageValue === undefined || storageValueOrigin !== undefined) return [];
  const allowed = "a text that says where the value of stored water comes from";
  return [{ path: ["lake", "storageValueOrigin"], found: "nothing", allowed }];
}

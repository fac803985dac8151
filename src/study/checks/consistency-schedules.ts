import { monthDays } from "../../model/lake/calendar.js";
import type { ScheduleDocument } from "../format/schedule-schema.js";
import type { StudyDocument } from "../format/schema.js";
import { dayNumber } from "../prepare/to-model.js";
import { type Contradiction, repeatedIds } from "../reading/contradiction.js";
import { readLevelRecord } from "../reading/level-record.js";

type LakeDocument = StudyDocument["lake"];
type Path = readonly PropertyKey[];

/** The lake's own levels and its other schedules, each against the limits of the lake. */
export function scheduleProblems(lake: LakeDocument): Contradiction[] {
  const { otherSchedules } = lake;
  return [
    ...levelsProblems(lake, ["lake"], lake),
    ...otherSchedules.flatMap((each, index) => levelsProblems(each, ["lake", "otherSchedules", index], lake)),
    ...repeatedIds(otherSchedules, ["lake", "otherSchedules"]),
    ...storageValueProblems(lake),
  ];
}

function levelsProblems(schedule: ScheduleDocument, path: Path, lake: LakeDocument): Contradiction[] {
  const { drawdown, record } = schedule;
  if (drawdown && record) {
    const allowed = "drawdown or record, not both";
    const remedy = "Take out the one that the lake does not follow.";
    return [{ path: [...path, "record"], found: "a record beside a drawdown", allowed, remedy }];
  }
  if (drawdown) return drawdownProblems(drawdown, [...path, "drawdown"], lake);
  if (record) return recordProblems(record, [...path, "record"], lake);
  const allowed = "points of an operating year under drawdown, or levels of several years under record";
  return [{ path: [...path, "drawdown"], found: "nothing", allowed }];
}

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

function recordProblems(
  record: NonNullable<ScheduleDocument["record"]>,
  path: Path,
  lake: LakeDocument,
): Contradiction[] {
  const { csv, file, fillGapsUpTo } = record;
  if (csv === undefined) {
    // a file that could not be read is reported where it was looked for
    return file === undefined ? [{ path: [...path, "csv"], found: "nothing", allowed: "CSV text" }] : [];
  }
  const reading = readLevelRecord(csv, { ...lake, fillGapsUpTo });
  if (reading.record) return [];
  const place = [...path, file === undefined ? "csv" : "file"];
  return reading.problems.map((problem) => ({ ...problem, path: place }));
}

function storageValueProblems({ storageValue, storageValueOrigin }: LakeDocument): Contradiction[] {
  if (storageValue === undefined || storageValueOrigin !== undefined) return [];
  const allowed = "a text that says where the value of stored water comes from";
  return [{ path: ["lake", "storageValueOrigin"], found: "nothing", allowed }];
}

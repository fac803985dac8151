import type { WrittenStudy } from "../format/schema.js";
import type { Contradiction } from "../reading/contradiction.js";
import type { RecordReaders } from "../reading/record-readers.js";
import { scheduleProblems } from "./consistency-schedules.js";

type LakeDocument = WrittenStudy["lake"];

/** Contradictions among the lake's limits, storage table and schedules. */
export function levelProblems(lake: LakeDocument, readers: RecordReaders): Contradiction[] {
  return [
    ...limitProblems(lake),
    ...tableProblems(lake),
    ...coverageProblems(lake),
    ...scheduleProblems(lake, readers),
  ];
}

function limitProblems({ minimumElevation, maximumElevation }: LakeDocument): Contradiction[] {
  if (minimumElevation.value < maximumElevation.value) return [];
  return [
    {
      path: ["lake", "minimumElevation"],
      found: minimumElevation.text,
      allowed: `an elevation below the maximum, ${maximumElevation.text}`,
    },
  ];
}

function tableProblems({ storageTable }: LakeDocument): Contradiction[] {
  return storageTable.slice(1).flatMap((row, index) => {
    const below = storageTable[index];
    const keys = ["elevation", "area", "storage"] as const;
    return keys
      .filter(
        (key) =>
          below !== undefined &&
          (key === "elevation" ? row[key].value <= below[key].value : row[key].value < below[key].value),
      )
      .map((key) => ({
        path: ["lake", "storageTable", index + 1, key],
        found: row[key].text,
        allowed: `${key === "elevation" ? "a value above" : "at least the value"} of the row before, ${below?.[key].text}`,
      }));
  });
}

/** The table must cover the lake's whole range of levels. */
function coverageProblems({
  storageTable,
  minimumElevation,
  maximumElevation,
}: LakeDocument): Contradiction[] {
  const [lowest, highest] = [storageTable[0], storageTable.at(-1)];
  if (!lowest || !highest) return [];
  const isCovered =
    lowest.elevation.value <= minimumElevation.value && highest.elevation.value >= maximumElevation.value;
  if (isCovered) return [];
  return [
    {
      path: ["lake", "storageTable"],
      found: `rows from ${lowest.elevation.text} to ${highest.elevation.text}`,
      allowed: `rows that reach from ${minimumElevation.text} or below to ${maximumElevation.text} or above`,
    },
  ];
}

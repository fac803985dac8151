import { isCertain } from "../../model/program/class-chances.js";
import type { BoatsDocument } from "../format/boats-schema.js";
import type { ReadBoats } from "../format/read-records.js";
import { type Contradiction, type Judged, repeatedIds } from "../reading/contradiction.js";
import type { RecordReaders } from "../reading/record-readers.js";
import type { SeasonCounts } from "../reading/season-rows.js";
import { shareProblems } from "./share-sums.js";

/** Contradictions among vessel classes, their counts and the log of seasons. */
export function boatProblems(boats: BoatsDocument, readers: RecordReaders): Contradiction[] {
  return [
    ...repeatedIds(boats.classes, ["boats", "classes"]),
    ...shareProblems(boats.classes, ["boats", "classes"], "launches"),
    ...countProblems(boats),
    ...(soundSeasons(boats, readers).problems ?? []),
  ];
}

function countProblems({ classes }: BoatsDocument): Contradiction[] {
  return classes.flatMap(({ fouled }, index) =>
    "found" in fouled && fouled.found > fouled.of
      ? [
          {
            path: ["boats", "classes", index, "fouled", "found"],
            found: `found: ${fouled.found} of: ${fouled.of}`,
            allowed: "no more boats found fouled than were looked at",
          },
        ]
      : [],
  );
}

/** The log of seasons with its parsed content. */
export function soundSeasons(
  { classes, seasons }: BoatsDocument,
  readers: RecordReaders,
): Judged<ReadBoats["seasons"]> {
  if (!seasons) return { sound: undefined };
  const classIds = classes.map(({ id }) => id);
  const reading = readers.seasons(seasons.csv, classIds);
  const problems = reading.log
    ? reading.log.rows.flatMap((row) => certaintyProblems(row, classes))
    : reading.problems;
  if (reading.log && problems.length === 0) return { sound: { ...seasons, log: reading.log } };
  return { problems: problems.map((problem) => ({ ...problem, path: ["boats", "seasons", "csv"] })) };
}

/** Counts that contradict a class whose chance was entered as certain: 0 % or 100 %. */
function certaintyProblems(
  { line, vesselClass, screened, fouled }: SeasonCounts,
  classes: BoatsDocument["classes"],
): Omit<Contradiction, "path">[] {
  const entered = classes.find(({ id }) => id === vesselClass)?.fouled;
  if (!entered || "found" in entered || !isCertain(entered.value)) return [];
  if (fouled === entered.value * screened) return [];
  return [
    {
      line,
      found: `fouled ${fouled} of ${screened} screened of "${vesselClass}", whose share fouled is ${entered.text}`,
      allowed: "for such a class no counts that show otherwise",
      remedy:
        "Correct the count, or enter a chance above 0 % and below 100 %, from which counts can be learned.",
    },
  ];
}

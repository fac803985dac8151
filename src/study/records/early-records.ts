import { z } from "zod";
import type { SoundParts } from "../checks/sound-parts.js";
import { identifier, quantity } from "../format/fields.js";
import { largestRecordBytes } from "../format/schedule-schema.js";
import { trafficSchema } from "../format/traffic-schema.js";
import type { Contradiction, RecordProblem } from "../reading/contradiction.js";
import { valueAt } from "../reading/problems.js";
import type { RecordReaders } from "../reading/record-readers.js";

type Path = readonly PropertyKey[];

/**
 * Faults of records in parts of a study that cannot be read yet: a record is judged by itself, as far as what is there
 * says how, so that its author need not finish the rest of the part first.
 */
export function earlyRecords(
  document: unknown,
  { lake, boats }: SoundParts,
  readers: RecordReaders,
): Contradiction[] {
  return [
    ...(lake ? [] : levelFaults(document, readers)),
    ...(boats ? [] : [...seasonFaults(document, readers), ...countFaults(document, readers)]),
  ];
}

const elevation = quantity("elevation");

function levelFaults(document: unknown, readers: RecordReaders): Contradiction[] {
  const others = valueAt(document, ["lake", "otherSchedules"]);
  const places: Path[] = [
    ["lake", "record"],
    ...(Array.isArray(others) ? others : []).map((_other, index) => [
      "lake",
      "otherSchedules",
      index,
      "record",
    ]),
  ];
  const limit = (key: string) => elevation.safeParse(valueAt(document, ["lake", key])).data;
  const limits = {
    minimumElevation: limit("minimumElevation"),
    maximumElevation: limit("maximumElevation"),
  };
  return places.flatMap((place) => {
    const isKept = valueAt(document, [...place, "kept"]) !== undefined;
    const gaps = valueAt(document, [...place, "fillGapsUpTo"]);
    const fillGapsUpTo = typeof gaps === "number" ? gaps : 0;
    return faultsAt(document, [...place, "csv"], (csv) =>
      readers.levels(csv, { fillGapsUpTo, ...limits }),
    ).map((fault) => (isKept ? { ...fault, path: [...place, "kept"] } : fault));
  });
}

/** The classes as far as they are named: without any, no line of a log can name one. */
function seasonFaults(document: unknown, readers: RecordReaders): Contradiction[] {
  const classIds = idsIn(valueAt(document, ["boats", "classes"]));
  if (classIds.length === 0) return [];
  return faultsAt(document, ["boats", "seasons", "csv"], (csv) => readers.seasons(csv, classIds));
}

function countFaults(document: unknown, readers: RecordReaders): Contradiction[] {
  const traffic = trafficSchema.safeParse(valueAt(document, ["boats", "traffic"])).data;
  const { monthGroups } = traffic ?? {};
  if (!monthGroups) return [];
  const siteIds = idsIn(valueAt(document, ["boats", "sites"]));
  return faultsAt(document, ["boats", "traffic", "csv"], (csv) =>
    readers.counts(csv, { monthGroups, siteIds }),
  );
}

function idsIn(list: unknown): string[] {
  const items = z.array(z.looseObject({ id: identifier })).safeParse(list).data ?? [];
  return items.map(({ id }) => id);
}

function faultsAt(
  document: unknown,
  path: Path,
  read: (csv: string) => object | { readonly problems: readonly RecordProblem[] },
): Contradiction[] {
  const csv = valueAt(document, path);
  if (typeof csv !== "string" || csv.length > largestRecordBytes) return [];
  const reading = read(csv);
  return "problems" in reading ? reading.problems.map((problem) => ({ ...problem, path })) : [];
}

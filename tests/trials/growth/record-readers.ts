import { readStructureTable } from "#product/editor/table/structure-table.js";
import { largestRecordBytes } from "#product/study/format/schedule-schema.js";
import { readLevelRecord } from "#product/study/reading/levels/level-record.js";
import { largestStudyBytes } from "#product/study/reading/read.js";
import { readSeasonLog } from "#product/study/reading/season-log.js";
import { readTrafficCounts } from "#product/study/reading/traffic-counts.js";
import { parseQuantity } from "#product/units/quantity.js";
import { smallLakes, withStructures } from "../fuzz/studies.js";
import type { Reader } from "./measure.js";

const levels = {
  fillGapsUpTo: 5,
  minimumElevation: parseQuantity("100 m", "elevation"),
  maximumElevation: parseQuantity("500 m", "elevation"),
};
const counts = {
  monthGroups: [{ id: "all", name: "All", months: ["jul" as const] }],
  siteIds: ["north"],
};

/** What a table says before the text that is tried: nothing, its head, or the head and a quotation mark. */
const starts = (head: string) => [
  { place: "whole", before: "" },
  { place: "below its head", before: `${head}\n` },
  { place: "in quotation marks", before: `${head}\n"` },
];

interface Table {
  readonly name: string;
  readonly head: string;
  readonly most: number;
  readonly read: (csv: string) => unknown;
}

/** Tables of each kind, pasted or beside a study. */
export function recordReaders(): readonly Reader[] {
  // A table is judged with its study, whose own structures would take the time that is to be noticed.
  const lake = withStructures(smallLakes()[0], ["jetty"]);
  const tables: readonly Table[] = [
    {
      name: "levels",
      head: "date,elevation (m)",
      most: largestRecordBytes,
      read: (csv) => readLevelRecord(csv, levels),
    },
    {
      name: "seasons",
      head: "season,class,screened,setAside,fouled",
      most: largestRecordBytes / 4,
      read: (csv) => readSeasonLog(csv, ["local"]),
    },
    {
      name: "traffic counts",
      head: "date,hour,launches",
      most: largestRecordBytes,
      read: (csv) => readTrafficCounts(csv, counts),
    },
    {
      name: "a pasted table",
      head: "name,bearer,count",
      most: largestStudyBytes,
      read: (csv) => readStructureTable(csv, "dock", lake),
    },
  ];
  return tables.flatMap(({ name, head, most, read }) =>
    starts(head).map(({ place, before }) => ({
      name: `${name}, ${place}`,
      most,
      read: (text: string) => read(before + text),
    })),
  );
}

import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { projectRoot } from "../../../src/project-root.js";
import { exportText } from "../../../src/study/exports/file-text.js";
import { readWork } from "../../../src/study/exports/orders/read-work.js";
import { readBoatLog } from "../../../src/study/exports/read-boat-log.js";
import { readLevelExport } from "../../../src/study/exports/read-levels.js";
import { readSamples } from "../../../src/study/exports/read-samples.js";
import {
  boatLogSchema,
  levelExportSchema,
  sampleLogSchema,
  workOrdersSchema,
} from "../../../src/study/format/export-schema.js";
import { InputError } from "../../../src/study/reading/problems.js";

const folder = join(projectRoot, "tests", "bad", "exports");

const levels = levelExportSchema.parse({ date: "Read on", level: "Pool (ft)" });
const boats = boatLogSchema.parse({
  ...{ date: "Season", class: "Kind", screened: "Screened", setAside: "Held", fouled: "Mussels" },
});
const samples = sampleLogSchema.parse({
  ...{ date: "Taken", result: "Result", all: "planktonTows", results: { ND: "none" } },
});
const work = workOrdersSchema.parse({
  ...{ date: "Closed", structure: "Asset", hours: "Hours", outage: "Down", all: "strainer" },
});

const readers = {
  levels: (text: string) => readLevelExport(text, levels),
  pool: (text: string) => readLevelExport(text, { ...levels, level: "Pool" }),
  stones: (text: string) => readLevelExport(text, { ...levels, level: "Pool (stones)" }),
  boats: (text: string) => readBoatLog(text, boats, ["day-use"]),
  samples: (text: string) => readSamples(text, samples),
  work: (text: string) => readWork(text, work, ["city-intake"]),
};

/** What is told of a file, whatever it is told of: its bytes, its columns, or one of its lines. */
function toldOf(reader: keyof typeof readers, file: string) {
  try {
    const read = readers[reader](exportText(readFileSync(join(folder, file)), file));
    return [...read.asked.map(({ problem }) => problem), ...read.refused].map(
      ({ line, found, allowed, remedy }) => [line ?? "the file", found, allowed, remedy],
    );
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    return error.problems.map(({ path, found, allowed, remedy }) => [path, found, allowed, remedy]);
  }
}

type Case = readonly [
  file: string,
  reader: keyof typeof readers,
  place: number | string,
  ...told: [found: string, allowed: string, remedy: string],
];

/** One mistake in each file, with where it is told, what was found, what is allowed and what to do. */
const cases: readonly Case[] = [
  [
    "column-missing-in-the-next-file.csv",
    "levels",
    1,
    'no column "Pool (ft)"; there are Read on, Stage (ft)',
    "columns named",
    "Choose the columns",
  ],
  ["thirtieth-of-february.csv", "levels", 3, "2011-02-30", "a day that the month has", "Correct the date"],
  ["two-levels-of-one-day.csv", "levels", 4, "2011-01-02 a second time", "one level for each date", "mean"],
  ["ambiguous-dates.csv", "levels", 2, "2011-03-04 with the month first", "only one way", "Say whether"],
  [
    "dates-in-two-orders.csv",
    "levels",
    3,
    "the day in different places",
    "dates in one order",
    "Say whether",
  ],
  ["unit-nowhere.csv", "pool", 1, "Pool", "ft", "unit"],
  ["unit-unknown.csv", "stones", 1, "stones", "ft", "unit"],
  ["quote-never-closed.csv", "levels", 3, "quotation mark", "only around a whole value", "Correct the line"],
  [
    "spreadsheet-in-utf-16.csv",
    "levels",
    "line 1",
    "another encoding",
    "UTF-8",
    "Save or export the file as UTF-8",
  ],
  [
    "another-encoding.csv",
    "levels",
    "line 3",
    "another encoding",
    "UTF-8",
    "Save or export the file as UTF-8",
  ],
  ["empty.csv", "levels", "the file", "an empty file", "a line of column names", "Export the file again"],
  [
    "no-column-names.csv",
    "levels",
    "the file",
    "no line of column names",
    "columns named",
    "Choose the columns",
  ],
  ["thousands-or-decimals.csv", "levels", 2, "may be 1.240 or 1240", "only one way", "a point or a comma"],
  ["point-and-comma.csv", "levels", 3, "1241.5", "throughout", "a point or a comma"],
  ["word-in-place-of-a-level.csv", "levels", 3, "Ice", "listed as missing", "List those"],
  ["one-column-twice.csv", "levels", 1, "two columns", "each mapped column once", "Rename one"],
  ["negative-boats.csv", "boats", 2, 'boats screened "-40"', "a whole number of boats", "Correct it"],
  ["half-a-boat.csv", "boats", 2, 'boats screened "40.5"', "a whole number of boats", "Correct it"],
  [
    "more-held-than-screened.csv",
    "boats",
    2,
    'boats screened "4"',
    "no fewer than were held or had mussels, 5",
    "Correct it",
  ],
  ["season-misspelt.csv", "boats", 2, 'date "2o27"', "or a season such as 2027", "Correct it"],
  ["class-unknown.csv", "boats", 2, "“Visitor” in 1 line", "day-use", "Say which class"],
  ["class-left-out.csv", "boats", 2, "class nothing", "a word for a class", "Correct it"],
  ["month-13.csv", "samples", 2, 'date "2026-13-01"', "month", "Correct it"],
  [
    "result-unknown.csv",
    "samples",
    2,
    "“Perhaps” in 1 line",
    "none, mussels or unconfirmed",
    "Say what each",
  ],
  ["result-left-out.csv", "samples", 2, "result nothing", "a count, or a word", "Correct it"],
  ["negative-hours.csv", "work", 2, 'hours of work "-2"', "hours from 0", "Correct it"],
  ["outage-longer-than-a-year.csv", "work", 2, 'hours out of service "9000"', "a year", "Correct it"],
  ["structure-unknown.csv", "work", 2, "“Pump 9” in 1 line", "city-intake", "Say which structure"],
];

describe("a malformed export", () => {
  it.each(cases)("%s is told by its place, what was found, what is allowed and what to do", (...each) => {
    const [file, reader, place, ...told] = each;
    const [first] = toldOf(reader, file);
    expect(first).toEqual([place, ...told.map((text) => expect.stringContaining(text))]);
  });

  it("has a line above for each file of the folder", () => {
    expect(readdirSync(folder).sort()).toEqual(cases.map(([file]) => file).sort());
  });
});

import { basename, dirname } from "node:path";
import { levelsPlace, recordEdits } from "../../editor/files/record-edits.js";
import { edited, type Place } from "../../editor/study-text.js";
import { typedNumber } from "../../study/exports/export-numbers.js";
import { judgedRecord } from "../../study/exports/judged-record.js";
import type { LevelExport } from "../../study/exports/level-export.js";
import { fileColumns } from "../../study/exports/proposed-columns.js";
import { readLevelExport } from "../../study/exports/read-levels.js";
import { recordTold } from "../../study/exports/record-told.js";
import { type LevelColumnsMapped, levelExportSchema } from "../../study/format/export-schema.js";
import { gapSetting } from "../../study/format/schedule-schema.js";
import { firstProblems } from "../../study/reading/csv-lines.js";
import { InputError, type Problem, problemsOf, sentence, valueAt } from "../../study/reading/problems.js";
import { keepBeside } from "../../study/records/record-folder.js";
import { UsageError } from "../arguments.js";
import { writeWhole } from "../write-whole.js";

import { exportedFile, mustBeAnswered, mustBeWhole, problemIn, studyTextAt } from "./exported-file.js";

export interface RecordArguments {
  readonly file: string;
  /** Fields of the mapping, and fillGapsUpTo and origin of the record. */
  readonly settings: ReadonlyArray<{ readonly id: string; readonly value: string }>;
  readonly schedule: string | undefined;
  /** Whether a schedule gives way to the record. */
  readonly replaces: boolean;
  /** Whether the record is kept without the lines that cannot be read. */
  readonly isPartial: boolean;
}

/** Reads an exported file of levels into a study: the record is kept beside it, and how it was read in it. */
export function recordCommand(path: string, asked: RecordArguments, print: (text: string) => void): void {
  const { text, document } = studyTextAt(path);
  const place = levelsPlace(document, asked.schedule);
  if (!place)
    throw new UsageError(`--schedule is "${asked.schedule}"; allowed: an id of lake.otherSchedules.`);
  if (valueAt(document, [...place, "drawdown"]) !== undefined && !asked.replaces) {
    throw new InputError(basename(path), [
      {
        path: [...place, "drawdown"].join("."),
        found: "a schedule that the lake follows",
        allowed: "a schedule or a record, not both",
        remedy:
          "Add --replace to put the record in its place; keep a copy if you may want the schedule back.",
      },
    ]);
  }
  const name = basename(asked.file);
  const file = exportedFile(asked.file);
  const { mapping, fillGapsUpTo, origin } = settingsOf(document, place, { ...asked, name, csvText: file });
  const read = readLevelExport(file, mapping);
  const csv = soundRecord(read, name, asked.isPartial);
  const gaps = fillGapsUpTo ?? Number(valueAt(document, [...place, "record", "fillGapsUpTo"]) ?? 0);
  const reading = judgedRecord(csv, document, gaps);
  if (!reading.record)
    throw new InputError(
      name,
      reading.problems.map((each) => problemIn("the record", each)),
    );
  const { digest, path: kept } = keepBeside(dirname(path), csv);
  const edits = recordEdits(document, place, { digest, fileName: name, mapping, fillGapsUpTo, origin });
  writeWhole(path, edited(text, edits));
  const system = valueAt(document, ["study", "units"]) === "si" ? "si" : "us";
  for (const line of [...read.told, ...recordTold(reading, system)]) print(line);
  for (const each of firstProblems(read.refused)) print(`Left out: ${sentence(problemIn(name, each))}`);
  print(`Kept as ${kept}; ${basename(path)} names it by its digest. Keep both in your version control.`);
}

/** The record without faults, or with the lines that have them left out. @throws InputError */
function soundRecord({ csv, asked, refused }: LevelExport, name: string, isPartial: boolean): string {
  mustBeAnswered(name, asked, answers);
  mustBeWhole(name, refused, isPartial && csv !== undefined);
  return csv ?? "";
}

/** How each question is answered on the command line. */
const answers: Readonly<Record<LevelExport["asked"][number]["about"], string>> = {
  columns: "--set date=NAME --set level=NAME",
  unit: "--set unit=ft",
  dates: "--set dates=month-first or --set dates=day-first",
  decimals: "--set decimals=point or --set decimals=comma",
  missing: "--set missing=WORD,WORD",
  several: "--set several=mean",
};

interface Settings {
  readonly mapping: LevelColumnsMapped;
  readonly fillGapsUpTo?: number | undefined;
  readonly origin: string | undefined;
}

/** The mapping that the study has, with what is set now; for a first file its columns are told. @throws InputError */
function settingsOf(
  document: unknown,
  place: Place,
  {
    settings,
    name,
    csvText,
  }: Pick<RecordArguments, "settings"> & { readonly name: string; readonly csvText: string },
): Settings {
  const set = new Map(settings.map(({ id, value }) => [id, value]));
  const numbers = ["gaugeZero", "fillGapsUpTo"];
  const given = Object.fromEntries(
    [...set].map(([id, value]) => {
      if (id === "missing") return [id, value.split(/[,;]/).map((word) => word.trim())];
      return [id, numbers.includes(id) ? typedNumber(value) : value];
    }),
  );
  const { fillGapsUpTo, origin, ...columns } = given;
  const before = Object(valueAt(document, [...place, "record", "export"]) ?? {});
  const parsed = levelExportSchema.safeParse({ ...before, ...columns });
  const gaps = gapSetting.safeParse({ fillGapsUpTo });
  if (!gaps.success) throw new InputError(name, problemsOf(gaps.error.issues, given));
  if (!parsed.success) {
    throw new InputError(name, [
      ...columnsTold(csvText),
      ...problemsOf(parsed.error.issues, { ...before, ...columns }),
    ]);
  }
  return {
    mapping: parsed.data,
    ...gaps.data,
    origin,
  };
}

/** The names to choose from. */
function columnsTold(text: string): Problem[] {
  const found = fileColumns(text);
  if (!found) return [];
  const { date = "NAME", level = "NAME" } = found.proposed;
  return [
    {
      path: `line ${found.line}`,
      found: `the columns ${found.columns.map(({ name }) => name).join(", ")}`,
      allowed: "two of them mapped: dates and levels",
      remedy: `For instance --set date="${date}" --set level="${level}"; the study remembers them.`,
    },
  ];
}

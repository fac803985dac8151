import { basename, dirname } from "node:path";
import { levelsPlace, recordEdits } from "../../editor/files/record-edits.js";
import { edited, type Place } from "../../editor/study-text.js";
import { typedList } from "../../study/exports/export-numbers.js";
import { judgedRecord } from "../../study/exports/judged-record.js";
import type { LevelExport } from "../../study/exports/level-export.js";
import { fileColumns } from "../../study/exports/proposed-columns.js";
import { readLevelExport } from "../../study/exports/read-levels.js";
import { recordTold } from "../../study/exports/record-told.js";
import { type LevelColumnsMapped, levelExportSchema } from "../../study/format/export-schema.js";
import { gapSetting } from "../../study/format/schedule-schema.js";
import { InputError, problemsOf, valueAt } from "../../study/reading/problems.js";
import { keepBeside } from "../../study/records/record-folder.js";
import { UsageError } from "../arguments.js";
import { writeWhole } from "../write-whole.js";
import {
  exportedFile,
  type FileArguments,
  leftOutTold,
  mustBeAnswered,
  mustBeWhole,
  problemIn,
  settingsOf,
  studyTextAt,
} from "./exported-file.js";
import { wholeMapping } from "./whole-mapping.js";

/** What is set are fields of the mapping, and fillGapsUpTo and origin of the record. */
export interface RecordArguments extends FileArguments {
  readonly schedule: string | undefined;
  /** Whether a schedule gives way to the record. */
  readonly replaces: boolean;
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
  const { mapping, fillGapsUpTo, origin } = recordSettings(document, place, {
    set: settingsOf(asked.settings),
    name,
    file,
  });
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
  for (const line of [...read.told, ...recordTold(reading, system), ...leftOutTold(name, read.refused)])
    print(line);
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

interface Given {
  readonly set: Readonly<Record<string, string>>;
  readonly name: string;
  readonly file: string;
}

/** The mapping that the study has, with what is set now. @throws InputError */
function recordSettings(document: unknown, place: Place, { set, name, file }: Given): Settings {
  const { fillGapsUpTo, origin, ...columns } = set;
  const typed = { fillGapsUpTo: fillGapsUpTo === undefined ? undefined : typedNumber(fillGapsUpTo) };
  const gaps = gapSetting.safeParse(typed);
  if (!gaps.success) throw new InputError(name, problemsOf(gaps.error.issues, typed));
  const before = Object(valueAt(document, [...place, "record", "export"]) ?? {});
  const given = { ...before, ...Object.fromEntries(Object.entries(columns).map(typedField)) };
  const { date = "NAME", level = "NAME" } = fileColumns(file)?.proposed ?? {};
  const example = `--set date="${date}" --set level="${level}"`;
  const of = { name, file, wanted: "two of them mapped: dates and levels", example };
  return { mapping: wholeMapping(levelExportSchema, given, of), ...gaps.data, origin };
}

function typedField([id, text]: readonly [string, string]): readonly [string, unknown] {
  if (id === "missing") return [id, typedList(text)];
  return [id, id === "gaugeZero" ? typedNumber(text) : text];
}

/** What was typed for a number: the number, or the text as it is where it is none. */
const typedNumber = (text: string): number | string =>
  text.trim() !== "" && Number.isFinite(Number(text)) ? Number(text) : text;

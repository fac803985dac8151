import { basename } from "node:path";
import { logEdits } from "../../editor/files/log-edits.js";
import { edited } from "../../editor/study-text.js";
import { readBoatLog } from "../../study/exports/read-boat-log.js";
import { classIdsOf } from "../../study/exports/tried-log.js";
import { type BoatColumnsMapped, boatLogSchema } from "../../study/format/export-schema.js";
import { firstProblems } from "../../study/reading/csv-lines.js";
import { sentence, valueAt } from "../../study/reading/problems.js";
import { writeWhole } from "../write-whole.js";
import {
  exportedFile,
  type FileArguments,
  listIn,
  mustBeAnswered,
  mustBeWhole,
  problemIn,
  settingsOf,
  studyTextAt,
  wholeMapping,
  withWords,
} from "./exported-file.js";

/** Sums a log of inspected boats into a study: its chances follow from it and, where asked for, the stations' minutes. */
export function logCommand(path: string, asked: FileArguments, print: (text: string) => void): void {
  const { text, document } = studyTextAt(path);
  const name = basename(asked.file);
  const file = exportedFile(asked.file);
  const { stations = "", origin, ...columns } = settingsOf(asked.settings);
  const mapping = mappingOf(document, columns, { name, file });
  const log = readBoatLog(file, mapping, classIdsOf(document));
  mustBeAnswered(name, log.asked, answers);
  mustBeWhole(name, log.refused, asked.isPartial && log.sums.classes.length > 0);
  const { edits, told } = logEdits(document, {
    ...{ sums: log.sums, mapping, fileName: name, origin },
    stations: listIn(stations),
  });
  writeWhole(path, edited(text, edits));
  for (const line of [...log.told, ...told]) print(line);
  for (const each of firstProblems(log.refused)) print(`Left out: ${sentence(problemIn(name, each))}`);
}

const answers = {
  columns: "--set date=NAME --set class=NAME --set setAside=NAME --set fouled=NAME",
  dates: "--set dates=month-first or --set dates=day-first",
  decimals: "--set decimals=point or --set decimals=comma",
  classes: '--set "classes=WORD=CLASS; WORD=CLASS"',
} as const;

/** The mapping that the study has, with what is set now. @throws InputError */
function mappingOf(
  document: unknown,
  { yes, classes, ...columns }: Record<string, string>,
  of: { readonly name: string; readonly file: string },
): BoatColumnsMapped {
  const before = Object(valueAt(document, ["boats", "seasons", "export"]) ?? {});
  const listed = yes === undefined ? {} : { yes: listIn(yes) };
  const given = { ...before, ...columns, ...listed, ...withWords(before, { classes }) };
  const wanted = "columns mapped to date, class, setAside and fouled";
  return wholeMapping(boatLogSchema, given, { ...of, wanted, example: answers.columns });
}

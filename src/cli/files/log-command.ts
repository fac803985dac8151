import { readFileSync } from "node:fs";
import { basename } from "node:path";
import { logEdits } from "../../editor/log-edits.js";
import { edited } from "../../editor/study-text.js";
import { fileColumns } from "../../study/exports/proposed-columns.js";
import { readBoatLog } from "../../study/exports/read-boat-log.js";
import { classIdsOf } from "../../study/exports/tried-log.js";
import { type BoatColumnsMapped, boatLogSchema } from "../../study/format/export-schema.js";
import { firstProblems } from "../../study/reading/csv-lines.js";
import { InputError, problemsOf, sentence, valueAt } from "../../study/reading/problems.js";
import { parseText } from "../../study/reading/read.js";
import { decodeStudy } from "../../study/reading/study-bytes.js";
import { writeWhole } from "../write-whole.js";
import {
  exportedFile,
  type FileArguments,
  listIn,
  mustBeAnswered,
  mustBeWhole,
  pairsIn,
  problemIn,
} from "./exported-file.js";

/** Sums a log of inspected boats into a study: its chances follow from it and, where asked for, the stations' minutes. */
export function logCommand(path: string, asked: FileArguments, print: (text: string) => void): void {
  const text = decodeStudy(readFileSync(path), basename(path));
  const document = parseText(text, basename(path));
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

const settingsOf = (settings: FileArguments["settings"]): Record<string, string> =>
  Object.fromEntries(settings.map(({ id, value }) => [id, value]));

const answers: Readonly<Record<string, string>> = {
  columns: "--set date=NAME --set class=NAME --set setAside=NAME --set fouled=NAME",
  dates: "--set dates=month-first or --set dates=day-first",
  decimals: "--set decimals=point or --set decimals=comma",
  classes: '--set "classes=WORD=CLASS; WORD=CLASS"',
};

/** The mapping that the study has, with what is set now. @throws InputError */
function mappingOf(
  document: unknown,
  { yes, classes, ...columns }: Record<string, string>,
  { name, file }: { readonly name: string; readonly file: string },
): BoatColumnsMapped {
  const before = Object(valueAt(document, ["boats", "seasons", "export"]) ?? {});
  const given = {
    ...{ ...before, ...columns },
    ...(yes === undefined ? {} : { yes: listIn(yes) }),
    ...(classes === undefined ? {} : { classes: { ...Object(before.classes), ...pairsIn(classes) } }),
  };
  const parsed = boatLogSchema.safeParse(given);
  if (parsed.success) return parsed.data;
  const found = fileColumns(file);
  const names = found?.columns.map((each) => each.name).join(", ") ?? "none";
  throw new InputError(name, [
    {
      path: found ? `line ${found.line}` : "the file",
      found: `the columns ${names}`,
      allowed: "columns mapped to date, class, setAside and fouled",
      remedy: `For instance ${answers.columns}; the study remembers them.`,
    },
    ...problemsOf(parsed.error.issues, given),
  ]);
}

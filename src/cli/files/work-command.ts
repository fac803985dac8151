import { basename, dirname } from "node:path";
import { loadAssumptions } from "../../assumptions/load.js";
import { workEdits } from "../../editor/files/work-edits.js";
import { edited } from "../../editor/study-text.js";
import { assumptionsFolder } from "../../report/document/assets.js";
import { workTable } from "../../report/papers/work-table.js";
import { readWork } from "../../study/exports/orders/read-work.js";
import { structureIdsOf } from "../../study/exports/orders/tried-work.js";
import { type WorkColumnsMapped, workOrdersSchema } from "../../study/format/export-schema.js";
import { firstProblems } from "../../study/reading/csv-lines.js";
import { sentence, valueAt } from "../../study/reading/problems.js";
import { tableText } from "../table-text.js";
import { writeWhole } from "../write-whole.js";
import {
  exportedFile,
  type FileArguments,
  mustBeAnswered,
  mustBeWhole,
  problemIn,
  settingsOf,
  studyTextAt,
  wholeMapping,
  withWords,
} from "./exported-file.js";

/** Measures work orders and outages: what an hour, a cleaning and an outage take becomes own values of the study. */
export function workCommand(path: string, asked: FileArguments, print: (text: string) => void): void {
  const { text, document } = studyTextAt(path);
  const name = basename(asked.file);
  const file = exportedFile(asked.file);
  const { origin, ...columns } = settingsOf(asked.settings);
  const mapping = mappingOf(document, columns, { name, file });
  const { sums, ...read } = readWork(file, mapping, structureIdsOf(document));
  mustBeAnswered(name, read.asked, answers);
  mustBeWhole(name, read.refused, asked.isPartial && sums !== undefined);
  if (!sums) return;
  const assumptions = loadAssumptions(assumptionsFolder, dirname(path));
  const { edits, told } = workEdits(document, { sums, mapping, fileName: name, origin }, assumptions);
  writeWhole(path, edited(text, edits));
  print(tableText(workTable(sums, new Map())));
  for (const line of [...read.told, ...told]) print(line);
  for (const each of firstProblems(read.refused)) print(`Left out: ${sentence(problemIn(name, each))}`);
}

const answers = {
  columns: "--set date=NAME --set structure=NAME --set work=NAME --set hours=NAME --set outage=NAME",
  unit: "--set energyUnit=MWh",
  dates: "--set dates=month-first or --set dates=day-first",
  decimals: "--set decimals=point or --set decimals=comma",
  structures: '--set "structures=WORD=ID; WORD=other"',
  works: '--set "works=WORD=strainer; WORD=debris", or --set all=outage where no column has it',
};

/** The mapping that the study has, with what is set now. @throws InputError */
function mappingOf(
  document: unknown,
  { structures, works, ...columns }: Record<string, string>,
  of: { readonly name: string; readonly file: string },
): WorkColumnsMapped {
  const before = Object(valueAt(document, ["workOrders", "export"]) ?? {});
  const given = { ...before, ...columns, ...withWords(before, { structures, works }) };
  const wanted = "columns mapped to date and structure, and to work and amounts";
  return wholeMapping(workOrdersSchema, given, { ...of, wanted, example: answers.columns });
}

import { dirname } from "node:path";
import { loadAssumptions } from "../assumptions/load.js";
import { workerPool } from "../odds/pool.js";
import { searchOf } from "../odds/search.js";
import { drawingThreads } from "../odds/threads.js";
import { assumptionsFolder } from "../report/document/assets.js";
import { levelTables } from "../report/search/level-tables.js";
import { searchTables } from "../report/search/search-tables.js";
import { wrapped } from "../report/words/format.js";
import type { TableView } from "../report/words/view-types.js";
import type { StudyDocument } from "../study/format/schema.js";
import { oddsSettings } from "../study/format/uncertainty-schema.js";
import { readStudyFile } from "../study/reading/read.js";
import type { SearchResult } from "../study/search/result.js";
import { drawn } from "./odds-command.js";
import { tableText } from "./table-text.js";

/** Searches a study for the program that fits and prints what is found. */
export async function searchCommand(
  path: string,
  { workers, asJson }: { readonly workers: number | undefined; readonly asJson: boolean },
  print: (text: string) => void,
): Promise<void> {
  const document = readStudyFile(path);
  const study = { document, settings: oddsSettings(document.study.uncertainty) };
  const assumptions = loadAssumptions(assumptionsFolder, dirname(path));
  const pool = workerPool(() => assumptions, drawingThreads(workers));
  const result = await drawn(searchOf, study, pool);
  if (asJson) {
    print(JSON.stringify(result, undefined, 2));
    return;
  }
  print([document.study.name, ...programText(result, document), ...levelText(result, document)].join("\n"));
}

const withNote = (table: TableView): string =>
  [tableText(table), ...(table.note ? [...wrapped(table.note, noteWidth), ""] : [])].join("\n");

const noteWidth = 100;

function programText({ programs }: SearchResult, document: StudyDocument): string[] {
  if (!programs) return [];
  const { lead, frontier, typed, answers, steps, timing, worth } = searchTables(programs, document);
  return [...lead, "", ...[frontier, typed, answers, steps, timing, worth].map(withNote)];
}

function levelText({ levels }: SearchResult, document: StudyDocument): string[] {
  if (!levels) return [];
  const { lead, schedules, cautions } = levelTables(levels, document);
  return [...lead, "", withNote(schedules), "Cautions", ...cautions];
}

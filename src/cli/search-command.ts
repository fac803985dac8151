import { loadAssumptions } from "../assumptions/load.js";
import { workerPool } from "../odds/pool.js";
import { searchOf } from "../odds/search.js";
import { assumptionsFolder } from "../report/document/assets.js";
import { searchTables } from "../report/search/search-tables.js";
import { oddsSettings } from "../study/format/uncertainty-schema.js";
import { readStudyFile } from "../study/reading/read.js";
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
  const pool = workerPool(loadAssumptions(assumptionsFolder), workers);
  const result = await drawn(searchOf, study, pool);
  if (asJson) {
    print(JSON.stringify(result, undefined, 2));
    return;
  }
  const { lead, frontier, typed, answers, steps, timing, worth } = searchTables(result, document);
  const tables = [frontier, typed, answers, steps, timing, worth].map(tableText);
  print([document.study.name, ...lead, "", ...tables].join("\n"));
}

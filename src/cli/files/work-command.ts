import { dirname } from "node:path";
import { loadAssumptions } from "../../assumptions/load.js";
import { workEdits } from "../../editor/files/work-edits.js";
import { assumptionsFolder } from "../../report/document/assets.js";
import { workTable } from "../../report/papers/work-table.js";
import { workOrders } from "../../study/exports/orders/tried-work.js";
import { valueAt } from "../../study/reading/problems.js";
import { tableText } from "../table-text.js";
import { type FileArguments, settingsOf, studyTextAt } from "./exported-file.js";
import { readInto } from "./read-into.js";

/** Measures work orders and outages: what an hour, a cleaning and an outage take becomes own values of the study. */
export function workCommand(path: string, asked: FileArguments, print: (text: string) => void): void {
  const study = studyTextAt(path);
  const { document } = study;
  const assumptions = loadAssumptions(assumptionsFolder, dirname(path));
  const told = readInto(
    study,
    { ...asked, settings: settingsOf(asked.settings) },
    {
      ...{ kind: workOrders, mapped: valueAt(document, ["workOrders", "export"]), answers },
      words: ["structures", "works"],
      wanted: "columns mapped to date and structure, and to work and amounts",
      changes: (sums, said) => ({
        ...workEdits(document, { sums, ...said }, assumptions),
        shown: [tableText(workTable(sums, new Map()))],
      }),
    },
  );
  for (const line of told) print(line);
}

const answers = {
  columns: "--set date=NAME --set structure=NAME --set work=NAME --set hours=NAME --set outage=NAME",
  unit: "--set energyUnit=MWh",
  dates: "--set dates=month-first or --set dates=day-first",
  decimals: "--set decimals=point or --set decimals=comma",
  structures: '--set "structures=WORD=ID; WORD=other", and --set unmapped=other for all words not mapped',
  works: '--set "works=WORD=strainer; WORD=debris", or --set all=outage where no column has it',
};

import { logEdits } from "../../editor/files/log-edits.js";
import { typedList } from "../../study/exports/export-numbers.js";
import { boatLogs } from "../../study/exports/tried-log.js";
import { valueAt } from "../../study/reading/problems.js";
import { type FileArguments, settingsOf, studyTextAt } from "./exported-file.js";
import { readInto } from "./read-into.js";

/** Sums a log of inspected boats into a study: its chances follow from it and, where asked for, the stations' minutes. */
export function logCommand(path: string, asked: FileArguments, print: (text: string) => void): void {
  const study = studyTextAt(path);
  const { document } = study;
  const { stations = "", ...settings } = settingsOf(asked.settings);
  const told = readInto(
    study,
    { ...asked, settings },
    {
      ...{ kind: boatLogs, mapped: valueAt(document, ["boats", "seasons", "export"]), answers },
      ...{
        words: ["classes"],
        lists: ["yes", "no"],
        wanted: "columns mapped to date, class, setAside and fouled",
      },
      changes: (sums, said) => ({
        ...logEdits(document, { sums, ...said, stations: typedList(stations) }),
        shown: [],
      }),
    },
  );
  for (const line of told) print(line);
}

const answers = {
  columns: "--set date=NAME --set class=NAME --set setAside=NAME --set fouled=NAME",
  dates: "--set dates=month-first or --set dates=day-first",
  decimals: "--set decimals=point or --set decimals=comma",
  classes: '--set "classes=WORD=CLASS; WORD=CLASS"',
};

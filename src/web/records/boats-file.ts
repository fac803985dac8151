import { logEdits } from "../../editor/files/log-edits.js";
import { childOf, itemsOf } from "../../editor/form-values.js";
import { head, num, row, type TableView } from "../../report/words/view-types.js";
import type { BoatSums } from "../../study/exports/boat-sums.js";
import { valueAt } from "../../study/reading/problems.js";
import { type ExportKind, named, optionsOf, shownExport, textAt } from "./export-kind.js";

/** Logs of inspected boats: kept as sums by season and class. */
export const boatsFile: ExportKind = {
  path: "/records/boats",
  part: { name: "Boats", path: "/edit/boats" },
  title: "Logs of inspected boats",
  guide: [
    "Choose a file from your inspection stations: a line for each boat, or sums by day or season. Say once which columns hold what and which class each word means; next year’s file needs no answer.",
    "Only sums by season and class are kept, and mean minutes. Columns that name people or plates are dropped as the file is read, and no line of it stays. Seasons of the file take the place of the same seasons before; others stay.",
  ],
  fileLabel: "File with the boats",
  keepLabel: "Keep the sums",
  note: "Log of boats from",
  hasDecimals: true,
  columns: [
    {
      ...{ key: "date", label: "Column of the dates, or of the seasons", needed: true },
      likely: /date|day|season|year/i,
    },
    {
      ...{ key: "class", label: "Column of the classes of boats", needed: true },
      likely: /class|type|kind|vessel/i,
    },
    {
      ...{ key: "setAside", label: "Column of boats held for full inspection", needed: true },
      likely: /held|hold|set.?aside/i,
    },
    { key: "fouled", label: "Column of boats with mussels", needed: true, likely: /mussel|foul/i },
    {
      ...{ key: "screened", label: "Column of the number screened, if a line is a sum", needed: false },
      likely: /screened/i,
    },
    { key: "quickCheck", label: "Column of the minutes of the quick check", needed: false },
    { key: "fullInspection", label: "Column of the minutes of the full inspection", needed: false },
  ],
  words: [
    {
      ...{ about: "classes", label: "The class that" },
      choices: (document) => named(itemsOf(childOf(childOf(document, "boats"), "classes"))),
    },
  ],
  settings: (document) => [
    { key: "yes", label: "Words that mean yes, besides yes, y, true, x and 1", isMapped: true, list: true },
    { key: "no", label: "Words that mean no, besides no, n, false, 0 and -", isMapped: true, list: true },
    {
      ...{ key: "stations", label: "Stations that get the measured minutes and the share held" },
      choices: named(optionsOf(document).filter((each) => valueAt(each, ["station"]) !== undefined)),
      several: true,
    },
  ],
  mapped: (document) => valueAt(document, ["boats", "seasons", "export"]),
  origin: (document) => textAt(document, "boats", "seasons", "origin"),
  tried: async ({ answers }, trial, { form, fileName, origin }) =>
    shownExport(await answers.ask("logTried", trial), sumsTable, (sums, mapping) =>
      logEdits(trial.document, { sums, mapping, fileName, origin, stations: form.set.stations ?? [] }),
    ),
};

/** All that is kept of a log. */
const sumsTable = ({ classes }: BoatSums): TableView => ({
  id: "sums",
  caption: "What is kept: boats by season and class",
  head: head("Season", "Class", num("Screened"), num("Held"), num("With mussels")),
  rows: classes.map(({ season, vesselClass, screened, setAside, fouled }) => {
    const counts = [screened, setAside, fouled].map((count) => num(count.toLocaleString("en-US")));
    return row(String(season), vesselClass, ...counts);
  }),
});

import { sampleEdits, sampleMapping } from "../../editor/files/sample-edits.js";
import { head, num, row, type TableView } from "../../report/words/view-types.js";
import type { SampleYear } from "../../study/exports/sample-years.js";
import { type ExportKind, named, optionsOf, shownExport, textAt } from "./export-kind.js";
import type { Choice } from "./file-choices.js";
import { setting } from "./sent-export.js";

const kinds: readonly Choice[] = [
  { value: "planktonTows", label: "Plankton tow" },
  { value: "settlementPlates", label: "Settlement plate" },
  { value: "searches", label: "Search of shores and docks" },
  { value: "ednaSamples", label: "eDNA sample" },
];

/** Samples for mussels: counted by year, and years without a find become clean years. */
export const samplesFile: ExportKind = {
  path: "/records/samples",
  part: { name: "Boats", path: "/edit/boats" },
  title: "Samples for mussels",
  guide: [
    "Choose a file of samples, your own or from the laboratory: a line for each sample, with its date and result. Say once which columns hold what and what each word means; next year’s file needs no answer.",
    "Only counts by year are kept. Columns that name people are dropped as the file is read, and no line of it stays. Years without a find and with at least a usual effort become clean years, from which the chance is learned; years that the study has already are not counted twice.",
  ],
  fileLabel: "File with the samples",
  keepLabel: "Keep the counts",
  note: "Samples from",
  hasDecimals: false,
  columns: [
    { key: "date", label: "Column of the dates", needed: true, likely: /date|day|taken/i },
    {
      key: "result",
      label: "Column of the results",
      needed: true,
      likely: /result|find|found|mussel|veliger/i,
    },
    {
      ...{ key: "kind", label: "Column of the kinds of samples", needed: false },
      likely: /kind|type|method|gear/i,
    },
    { key: "place", label: "Column of the places", needed: false, likely: /place|station|site|location/i },
  ],
  words: [
    {
      ...{ about: "kinds", label: "The kind of sample that" },
      choices: () => [...kinds, { value: "other", label: "Another kind, not counted" }],
    },
    {
      ...{ about: "results", label: "The result that" },
      choices: () => [
        { value: "none", label: "No mussels" },
        { value: "mussels", label: "Mussels" },
        { value: "unconfirmed", label: "A find that was not confirmed" },
      ],
    },
  ],
  settings: (document) => [
    {
      ...{ key: "all", label: "Kind of all samples, if no column has it", isMapped: true },
      choices: [{ value: "", label: "A column has it" }, ...kinds],
    },
    {
      ...{ key: "under", label: "Option whose checks were in force in these years" },
      choices: [{ value: "", label: "None" }, ...named(optionsOf(document))],
    },
    {
      ...{ key: "watching", label: "Options whose monitoring gets the yearly counts", several: true },
      choices: named(optionsOf(document)),
    },
  ],
  mapped: sampleMapping,
  origin: (document) => textAt(document, "boats", "samples", "origin"),
  tried: async ({ answers }, trial, { form, fileName, origin }) =>
    shownExport(await answers.ask("samplesTried", trial), yearsTable, (found, mapping) =>
      sampleEdits(trial.document, {
        ...{ ...found, mapping, fileName, origin },
        under: setting(form, "under") || undefined,
        watching: form.set.watching ?? [],
      }),
    ),
};

const yearsTable = ({ years }: { readonly years: readonly SampleYear[] }): TableView => ({
  id: "sums",
  caption: "Samples by year; a plate counts once a season, a search once a day",
  head: head(
    ...["Year", num("Places"), num("Tows"), num("Plates"), num("Searches"), num("eDNA")],
    ...[num("Other"), num("With mussels"), num("Unconfirmed")],
  ),
  rows: years.map(({ year, places, counts, other, mussels, unconfirmed }) =>
    row(
      String(year),
      num(places === 0 ? "–" : String(places)),
      ...[...Object.values(counts), other, mussels, unconfirmed].map((each) =>
        num(each.toLocaleString("en-US")),
      ),
    ),
  ),
});

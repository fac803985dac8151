import { workEdits } from "../../editor/files/work-edits.js";
import { childOf, itemsOf } from "../../editor/form-values.js";
import { workTable } from "../../report/papers/work-table.js";
import { workKinds, workNames } from "../../study/exports/orders/work-kinds.js";
import { valueAt } from "../../study/reading/problems.js";
import { type ExportKind, named, shownExport, textAt } from "./export-kind.js";
import type { Choice } from "./file-choices.js";

const works: readonly Choice[] = workNames.map((value) => ({ value, label: workKinds[value].title }));

const structuresOf = (document: unknown): readonly Choice[] => [
  ...named(itemsOf(childOf(document, "structures"))),
  { value: "other", label: "None of this study" },
];

const namesOf = (document: unknown): ReadonlyMap<string, string> =>
  new Map(structuresOf(document).map(({ value, label }) => [value, label]));

/** Work orders and outages: what an hour, a cleaning and an outage take becomes own values. */
export const workFile: ExportKind = {
  path: "/records/work",
  part: { name: "Assumptions", path: "/assumptions" },
  title: "Work orders and outages",
  guide: [
    "Choose a file from your maintenance system: a line for each order or outage, with its date, structure and kind of work, and hours, labor cost, parts, hours out of service or energy lost as far as it has them. Say once which columns hold what and what each word means.",
    "Only own values are kept, each with the number of its orders: the price of an hour of work, the hours of a cleaning, and how long it takes equipment out of service. Columns that name people are dropped as the file is read, and no line of it stays. A lake without mussels has no orders for mussels: how often they will call for work is computed, as before.",
  ],
  fileLabel: "File with the orders",
  keepLabel: "Keep the own values",
  note: "Work orders from",
  hasDecimals: true,
  columns: [
    { key: "date", label: "Column of the dates", needed: true, likely: /date|day|closed|start/i },
    {
      ...{ key: "structure", label: "Column of the structures or equipment", needed: true },
      likely: /structure|equipment|asset|unit/i,
    },
    {
      ...{ key: "work", label: "Column of the kinds of work", needed: false },
      likely: /type|kind|activity|cause|^work$/i,
    },
    {
      ...{ key: "order", label: "Column of the numbers of the orders", needed: false },
      likely: /order|number|^wo\b|^no\.?$/i,
    },
    {
      ...{ key: "hours", label: "Column of the hours of work", needed: false },
      likely: /labou?r h|man.?h|work h|^hours$/i,
    },
    {
      ...{ key: "laborCost", label: "Column of the cost of these hours, without parts", needed: false },
      likely: /labou?r (cost|\$)|wages/i,
    },
    { key: "parts", label: "Column of the cost of parts", needed: false, likely: /part|material/i },
    {
      ...{ key: "outage", label: "Column of the hours out of service", needed: false },
      likely: /outage|out of service|down/i,
    },
    { key: "energy", label: "Column of the energy lost", needed: false, likely: /energy|mwh|kwh/i },
  ],
  words: [
    {
      ...{ about: "structures", label: "The structure that" },
      choices: structuresOf,
    },
    { about: "works", label: "The kind of work that", choices: () => works },
  ],
  settings: () => [
    {
      ...{ key: "unmapped", label: "Words for structures that are not mapped here", isMapped: true },
      choices: [
        { value: "", label: "Ask what each means" },
        { value: "other", label: "Count all as none of this study" },
      ],
    },
    {
      ...{ key: "all", label: "Kind of all orders, if no column has it", isMapped: true },
      choices: [{ value: "", label: "A column has it" }, ...works],
    },
    { key: "energyUnit", label: "Unit of the energy lost, if its column’s name has none", isMapped: true },
  ],
  mapped: (document) => valueAt(document, ["workOrders", "export"]),
  origin: (document) => textAt(document, "workOrders", "origin"),
  tried: async ({ answers, assumptions }, trial, { fileName, origin }) =>
    shownExport(
      await answers.ask("workTried", trial),
      (sums) => workTable(sums, namesOf(trial.document)),
      (sums, mapping) => workEdits(trial.document, { sums, mapping, fileName, origin }, assumptions),
    ),
};

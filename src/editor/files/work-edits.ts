import type { Assumption, AssumptionSet } from "../../assumptions/entry.js";
import { applyOverrides } from "../../assumptions/override.js";
import { counted } from "../../counted.js";
import { hourlyRate } from "../../study/exports/orders/work-kinds.js";
import type { MeasuredValue, WorkSums } from "../../study/exports/orders/work-sums.js";
import type { WorkColumnsMapped } from "../../study/format/export-schema.js";
import { valueAt } from "../../study/reading/problems.js";
import { overrideEdits, type WrittenOverride } from "../override-edits.js";
import { ownValues } from "../own-value.js";
import type { Edit } from "../study-text.js";
import { fileOrigin, keptName } from "./file-origin.js";
import { rangeAround } from "./measured-range.js";
import { saidMapping } from "./said-mapping.js";

interface MeasuredWork {
  readonly sums: WorkSums;
  readonly mapping: WorkColumnsMapped;
  readonly fileName: string;
  readonly origin: string | undefined;
}

/** Changes of a study's text that take measured work in as own values, and what they do in sentences. */
export function workEdits(
  document: unknown,
  work: MeasuredWork,
  assumptions: AssumptionSet,
): { readonly edits: Edit[]; readonly told: string[] } {
  const before = ownValues(document);
  const own: WrittenOverride[] = [];
  const told: string[] = [];
  for (const measured of work.sums.values) {
    const entry = assumptions.entries.get(measured.id);
    if (!entry) continue;
    const { title } = entry;
    const value = valueText(measured, entry, moneySign(document));
    const override = { id: measured.id, value, reason: reasonOf(measured, work) };
    const [problem] = applyOverrides(assumptions, [override]).problems;
    if (problem) {
      told.push(
        `Not taken for the ${title}: found ${value} of ${counted(measured.orders, "order")}; allowed: ${problem.allowed}.`,
      );
      continue;
    }
    own.push(override);
    const was = before.get(measured.id)?.value ?? `the usual ${entry.value} ${entry.unit}`;
    told.push(
      `Own value for the ${title}: ${value}, of ${counted(measured.orders, "order")}; before: ${was}.`,
    );
  }
  const at = (key: string) => ["workOrders", key];
  const origin = fileOrigin({
    ...{ told: work.origin, before: valueAt(document, at("origin")), fileName: work.fileName },
  });
  return {
    edits: [
      ...overrideEdits(document, own),
      { at: at("export"), value: saidMapping(work.mapping) },
      { at: at("origin"), value: origin },
    ],
    told: [...told, ...notSpoken(work.sums)],
  };
}

const digits = 3;
const hoursPerDay = 24;

/** "4.58 ± 2.15 h"; a mean alone where its range does not show in the digits that are kept. */
function valueText(measured: MeasuredValue, entry: Assumption, sign: string): string {
  const isDays = entry.unit === "d";
  const rounded = (hours: number) => Number((isDays ? hours / hoursPerDay : hours).toPrecision(digits));
  const unit = measured.id === hourlyRate ? `${sign}/h` : isDays ? "d" : "h";
  const [mean, around] = [measured.mean, rangeAround(measured, entry)];
  const range = rounded(mean - around) < rounded(mean) ? ` ± ${rounded(around)}` : "";
  return `${rounded(mean)}${range} ${unit}`;
}

function moneySign(document: unknown): string {
  const currency = valueAt(document, ["money", "currency"]) ?? "USD";
  return currency === "USD" ? "$" : String(currency);
}

function reasonOf(measured: MeasuredValue, { sums: { from, to }, fileName }: MeasuredWork): string {
  const range = "; ± from what eight in ten orders span and the usual range";
  const paid = measured.id === hourlyRate ? "; as paid then" : "";
  return `Operator record: ${counted(measured.orders, "order")} of ${spanText(from, to)} in ${keptName(fileName)}${range}${paid}`;
}

const spanText = (from: number, to: number) => (from === to ? String(from) : `${from} to ${to}`);

/** What the orders do not speak to, so that nobody takes today’s work for that of mussels. */
function notSpoken({ sums, amounts }: WorkSums): string[] {
  const today = sums.filter(({ work }) => work === "debris" || work === "outage");
  const orders = today.reduce((sum, each) => sum + each.orders, 0);
  const others = sums.reduce((sum, each) => sum + (each.structure === "other" ? each.orders : 0), 0);
  return [
    ...(others > 0
      ? [
          `Shown, but changing nothing: ${counted(others, "order")} for what is not a structure of this study.`,
        ]
      : []),
    ...(orders > 0
      ? [
          `Shown, but changing nothing: ${counted(orders, "order")} for debris or another outage. That work goes on with or without mussels.`,
        ]
      : []),
    ...(amounts.energy > 0
      ? [
          "Energy lost is shown but changes nothing: it is today’s loss. What a lost MWh is worth is each plant’s energyPrice.",
        ]
      : []),
    "Orders from before mussels show what an hour costs and how long cleanings and outages last. They cannot show how often mussels will call for work: that is computed, as before.",
  ];
}

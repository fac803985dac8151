import type { Assumption } from "../assumptions/entry.js";
import { at } from "../model/lake/calendar.js";
import { amountOf, type CostLine, type Money, noMoney, sumOf } from "../model/money/line.js";
import type { CostWeights } from "../model/present-value.js";
import type { StructureResult } from "../model/structures/structure.js";
import { rangeText, unitText } from "./assumption-text.js";
import type { ReportContext } from "./context.js";
import { lineDimensions, significant } from "./format.js";
import { matureYear } from "./infestation-view.js";
import { byYearTable } from "./infestation-years.js";
import { isCounted, lineWeights } from "./line-weights.js";
import { pricesText } from "./money-view.js";
import { groupRow, head, num, type RowView, row, type TableView } from "./view-types.js";

export interface AppendixView {
  readonly lines: TableView;
  readonly byYear: TableView;
  readonly assumptions: TableView;
  readonly overrides: TableView | undefined;
  readonly checks: TableView;
  readonly sources: readonly { readonly key: string; readonly citation: string; readonly read: string }[];
  readonly bases: string;
}

export function appendixView(context: ReportContext): AppendixView {
  return {
    lines: linesTable(context),
    byYear: byYearTable(context),
    assumptions: assumptionsTable(context),
    overrides: overridesTable(context),
    checks: checksTable(context),
    sources: sources(context),
    bases: basesText(context),
  };
}

/** Every cost line, summed over the horizon with its weight: the rows add up to the expected present value. */
function linesTable(context: ReportContext): TableView {
  const { format, comparison, priceYear } = context;
  const mature = matureYear(context);
  const weights = context.comparison.baseline.weights;
  const groups = [
    ...comparison.structures.map((result) => structureLines(result, weights, context)),
    ...attempts(context),
  ];
  return {
    id: "table-lines",
    caption: `Cost lines of an infestation, prices of ${priceYear}`,
    head: head(
      "Line",
      num(`Quantity, year ${mature + 1}`),
      "Unit",
      num("Unit rate"),
      num(`Amount, year ${mature + 1}`),
      num("Expected present value"),
      "Assumptions",
    ),
    rows: groups.flatMap(({ rows }) => rows),
    total: row(
      "All lines",
      num(""),
      "",
      num(""),
      num(""),
      num(format.exactMoney(sumOf(groups.map(({ sum }) => sum)))),
      "",
    ),
    note: `Quantity × unit rate is the amount, in year ${mature + 1} of appendix B; a dash where the line does not occur in that year. Expected present value: amounts of all years weighed by the weights of appendix B, without a program. Behind every layer stand assumptions ${layerNumbers(context)}.`,
  };
}

function structureLines(result: StructureResult, weights: CostWeights, context: ReportContext) {
  const { format } = context;
  const years = result.years.slice(-weights.noticed.length);
  const names = [...new Set(years.flatMap((lines) => lines.filter(isCounted).map((line) => line.what)))];
  const rows: RowView[] = [];
  let structureSum = noMoney;
  for (const name of names) {
    const occurrences = years.map((lines) => lines.find((line) => line.what === name));
    const sum = occurrences.reduce<Money>(
      (total, line, year) =>
        line ? total.plus(amountOf(line).times(at(lineWeights(line, weights), year))) : total,
      noMoney,
    );
    structureSum = structureSum.plus(sum);
    const sample = occurrences.find((line) => line !== undefined);
    if (sample) rows.push(lineRow(sample, occurrences[matureYear(context)], sum, context));
  }
  if (rows.length === 0) return { rows, sum: structureSum };
  const heading = groupRow(`${result.structure.name} (${context.bearerName(result.structure.bearer)})`);
  const sumRow = row("Sum", num(""), "", num(""), num(""), num(format.exactMoney(structureSum)), "");
  return { rows: [heading, ...rows, sumRow], sum: structureSum };
}

/** Containment without a program, where it states a response. */
function attempts({ comparison, format, bearerName }: ReportContext) {
  const { containment } = comparison.baseline;
  if (containment === undefined) return [];
  const { line, presentValue } = containment;
  const each = num(format.rate(line.unitRate));
  const sum = num(format.exactMoney(presentValue));
  const heading = groupRow(`Attempts to be rid of mussels (${bearerName(line.bearer)})`);
  return [
    {
      rows: [heading, row(line.what, num("–"), "each", each, num("–"), sum, "study")],
      sum: presentValue,
    },
  ];
}

function lineRow(
  sample: CostLine,
  mature: CostLine | undefined,
  sum: Money,
  context: ReportContext,
): RowView {
  const { format } = context;
  const { quantity, rate, unit } = lineDimensions[sample.quantityKind];
  const shown = mature ?? sample;
  return row(
    sample.what,
    num(mature ? format.number(mature.quantity, quantity) : "–"),
    unit ?? format.unit(quantity),
    num(format.rate(format.display(shown.unitRate, rate))),
    num(mature ? format.exactMoney(amountOf(mature)) : "–"),
    num(format.exactMoney(sum)),
    sample.assumptionIds.map(context.assumptionNumber).filter(Boolean).join(", ") || "study",
  );
}

function layerNumbers({ comparison, assumptionNumber }: ReportContext): string {
  const numbers = comparison.lake.layerAssumptionIds
    .map((id) => Number(assumptionNumber(id).slice(1)))
    .filter((number) => number > 0)
    .sort((a, b) => a - b);
  const runs: Array<[number, number]> = [];
  for (const number of numbers) {
    const last = runs.at(-1);
    if (last && last[1] === number - 1) last[1] = number;
    else runs.push([number, number]);
  }
  return runs.map(([from, to]) => (from === to ? `A${from}` : `A${from}–A${to}`)).join(", ");
}

function assumptionsTable(context: ReportContext): TableView {
  const { run, assumptionNumber } = context;
  const used = [...run.usedAssumptions].sort().flatMap((id) => run.assumptions.entries.get(id) ?? []);
  const overrides = new Map(run.overrides.map((override) => [override.entry.id, override]));
  return {
    id: "table-assumptions",
    caption: "Every assumption used, with its origin",
    head: head("Assumption", num("Value (low–high), unit"), "Basis", "Source and note"),
    rows: used.map((entry) => {
      const own = overrides.get(entry.id);
      return row(
        `${assumptionNumber(entry.id)} ${breakable(entry.id)}`,
        num(
          own
            ? `${own.text} (own) (${entry.low}–${entry.high}) ${unitText(entry)}`
            : [`${entry.value} (${rangeText(entry)}) ${unitText(entry)}`, usedText(entry, context)]
                .filter(Boolean)
                .join(" → "),
        ),
        own ? "operator" : entry.basis,
        [`[${entry.source}]`, entry.note].filter(Boolean).join(" "),
      );
    }),
    note: pricesNote(context),
  };
}

/** An id that may break after its dots. */
const breakable = (id: string) => id.replaceAll(".", ".\u200b");

/** A price in the study's money with what it was multiplied by; nothing where it is used as its source has it. */
function usedText(entry: Assumption, { run, priceYear }: ReportContext): string {
  const factor = run.prices.factorOf(entry);
  if (factor === 1) return "";
  const { currency } = run.document.money;
  const year = run.prices.index ? priceYear : entry.priceYear;
  const unit = entry.unit.replace("$", currency);
  return `${significant(entry.value * factor, 4)} ${unit} of ${year} (× ${significant(factor, 4)})`;
}

function pricesNote(context: ReportContext): string {
  return `A value stands as its source has it; after the arrow, as it is used. Values between low and high are drawn by a beta-PERT distribution where no other is named. ${pricesText(context)} “Judged” means that no published value was found: replace it with the operator's own.`;
}

function overridesTable(context: ReportContext): TableView | undefined {
  const { run } = context;
  if (run.overrides.length === 0) return undefined;
  return {
    id: "table-overrides",
    caption: "Own values in place of the project's assumptions",
    head: head("Assumption", num("Own value"), num("Project's value"), "Reason", "Within the stated range"),
    rows: run.overrides.map(({ entry, text, reason, outsideRange }) =>
      row(
        entry.id,
        num(text),
        num([`${entry.value} ${unitText(entry)}`, usedText(entry, context)].filter(Boolean).join(" → ")),
        reason,
        outsideRange ? "no" : "yes",
      ),
    ),
  };
}

function checksTable({ comparison }: ReportContext): TableView {
  return {
    id: "table-checks",
    caption: "Plausibility checks",
    head: head("Check", "Found", "Allowed", "Passed"),
    rows: comparison.checks.map((check) => ({
      ...row(check.what, check.found, check.allowed, check.passed ? "yes" : "NO"),
      failed: !check.passed,
    })),
  };
}

function usedEntries({ run }: ReportContext): Assumption[] {
  return run.usedAssumptions.flatMap((id) => run.assumptions.entries.get(id) ?? []);
}

/** Every source of the project, since notes name others than the one that an entry stands on. */
function sources({ run }: ReportContext) {
  return [...run.assumptions.sources].sort().map(([key, source]) => ({ key, ...source }));
}

/** How many of the assumptions used stand on what. */
function basesText(context: ReportContext): string {
  const overridden = new Set(context.run.overrides.map(({ entry }) => entry.id));
  const counts = new Map<string, number>();
  for (const { id, basis } of usedEntries(context)) {
    const name = overridden.has(id) ? "operator's own" : basis;
    counts.set(name, (counts.get(name) ?? 0) + 1);
  }
  const parts = [...counts].sort((a, b) => b[1] - a[1]).map(([basis, count]) => `${count} ${basis}`);
  return `Of ${usedEntries(context).length} assumptions used: ${parts.join(", ")}.`;
}

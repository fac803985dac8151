import type { Assumption } from "../assumptions/entry.js";
import { isControl } from "../model/infestation-cost.js";
import { at } from "../model/lake/calendar.js";
import { amountOf, type CostLine, type Money, noMoney, sumOf } from "../model/money/line.js";
import { priceGroupOf } from "../model/money/price-group.js";
import { type CostWeights, presentValueByAge, weightsOf } from "../model/present-value.js";
import type { StructureResult } from "../model/structures/structure.js";
import type { ReportContext } from "./context.js";
import { lineDimensions, significant } from "./format.js";
import { matureYear } from "./infestation-view.js";
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
  const groups = comparison.structures.map((result) => structureLines(result, weights, context));
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

/** What a line weighs in the present value in each year of an infestation: losses count before it is noticed too. */
function lineWeights(line: CostLine, weights: CostWeights): readonly number[] {
  const { unnoticed, noticed } = weightsOf(priceGroupOf(line), weights);
  return isControl(line) ? noticed : noticed.map((weight, age) => weight + at(unnoticed, age));
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

const isCounted = (line: CostLine) => line.type !== "apart";

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

/** Cost in each year since establishment, and what a unit of it weighs in the present value without a program. */
function byYearTable(context: ReportContext): TableView {
  const { comparison, format, horizon } = context;
  const weights = context.comparison.baseline.weights;
  const values = presentValueByAge(comparison.infestation, weights);
  const since = context.infestedSince === undefined ? "since establishment" : "of this budget";
  return {
    id: "table-by-year",
    caption: `Cost of an infestation by year ${since}, prices of ${context.priceYear}`,
    head: head(
      "Year",
      num("Density, share of capacity"),
      num("All structures"),
      num("Weight"),
      num(weights.rising.size === 0 ? "Amount × weight" : "Weighed, with rises"),
    ),
    rows: Array.from({ length: horizon }, (_, year) => {
      const amount = at(comparison.infestation.byYear, year);
      return row(
        String(year + 1),
        num(at(comparison.lake.densityByYear, year).toFixed(2)),
        num(format.exactMoney(amount)),
        num(at(weights.noticed, year).toFixed(4)),
        num(format.exactMoney(at(values, year))),
      );
    }),
    total: row(
      "Sum",
      num(""),
      num(""),
      num(""),
      num(format.exactMoney(comparison.baseline.presentValue.infestation)),
    ),
    note:
      "Weight: sum over the years of the horizon of the chance that establishment was that long ago, times the discount factor, without a program." +
      (weights.rising.size === 0
        ? ""
        : " Costs whose prices rise otherwise than prices in general weigh by their own weights, with the rise in each year; so does appendix A."),
    compact: true,
  };
}

function assumptionsTable(context: ReportContext): TableView {
  const { run, assumptionNumber } = context;
  const used = [...run.usedAssumptions].sort().flatMap((id) => run.assumptions.entries.get(id) ?? []);
  const overrides = new Map(run.overrides.map((override) => [override.entry.id, override]));
  return {
    id: "table-assumptions",
    caption: "Every assumption used, with its origin",
    head: head("Assumption", num("Value (low–high), unit"), num("Used"), "Basis", "Source and note"),
    rows: used.map((entry) => {
      const own = overrides.get(entry.id);
      return row(
        `${assumptionNumber(entry.id)} ${breakable(entry.id)}`,
        num(`${entry.value} (${entry.low}–${entry.high}) ${unitText(entry)}`),
        num(own ? `${own.text} (own)` : usedText(entry, context)),
        own ? "operator" : entry.basis,
        [`[${entry.source}]`, entry.note].filter(Boolean).join(" "),
      );
    }),
    note: pricesNote(context),
  };
}

/** An id that may break after its dots. */
const breakable = (id: string) => id.replaceAll(".", ".\u200b");

function unitText({ unit, priceYear }: Assumption): string {
  if (unit === "1") return "";
  return priceYear === undefined ? unit : `${unit.replace("$", "USD")} of ${priceYear}`;
}

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
  return `Value: as its source has it. Used: what it is turned into, where that differs. ${pricesText(context)} “Judged” means that no published value was found: replace it with the operator's own.`;
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

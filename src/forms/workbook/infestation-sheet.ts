import type { PriceGroup } from "../../model/money/price-group.js";
import type { ReportContext } from "../../report/document/context.js";
import { lineDimensions } from "../../report/words/format.js";
import type { YearlyLine } from "../../study/traced/yearly-lines.js";
import { amountOf, number, sum, sumOfKey, sumOfProducts, times, type Worked } from "./formula.js";
import { type Grid, grid } from "./grid.js";
import { groupWords } from "./money-inputs.js";
import { type SheetDraft, strong, text, value } from "./sheet.js";

type Part = YearlyLine["part"];

/** A group of prices that rise otherwise, or prices in general. */
export type Rising = PriceGroup | undefined;

export interface InfestationSheets {
  readonly drafts: () => readonly SheetDraft[];
  /** Where the quantity of a line in a year of an infestation stands, for sheets of other schedules. */
  readonly quantity: (line: YearlyLine, age: number) => Worked | undefined;
  /** What all losses, or all work, of prices of a group cost in a year of an infestation, counted from 0. */
  readonly cost: (part: Part, rising: Rising, age: number) => Worked;
  /**
   * Writes what each line weighs in the expected present value.
   * @param beside what has no yearly line: attempts at containment
   * @returns the sum of the expected present values
   */
  readonly weigh: (
    weight: (part: Part, rising: Rising, age: number) => Worked,
    beside: { readonly name: string; readonly presentValue: Worked } | undefined,
  ) => Worked;
}

const heads = [
  ...["Structure", "Line", "Kind", "Who pays", "Counts as", "Unit", "Unit rate"],
  "Expected present value",
];
const keyColumn = 4;
const rateColumn = 6;
const valueColumn = 7;
const firstYear = 8;
const headRow = 3;
const firstWeight = headRow + 1;

interface Parts {
  readonly lines: readonly YearlyLine[];
  readonly rateOf: (line: YearlyLine) => Worked;
  /** Added to the names of the sheets of another schedule. */
  readonly suffix: string;
  readonly schedule: string;
  readonly groups: readonly Rising[];
  /** The lake's own levels, under which a quantity may be the same. */
  readonly own: Pick<InfestationSheets, "quantity"> | undefined;
}

const keyOf = (part: Part, rising: Rising) =>
  rising === undefined ? part : `${part}, ${groupWords[rising]}`;

/** Every cost line of every year of an infestation: quantities as the program computed them, and amounts at the unit rates. */
export function infestationSheets(context: ReportContext, parts: Parts): InfestationSheets {
  const names = {
    lines: `Infestation lines${parts.suffix}`,
    quantities: `Infestation quantities${parts.suffix}`,
  };
  const sheet = grid(names.lines);
  const quantities = grid(names.quantities);
  const keys = parts.groups.flatMap((rising) =>
    (["losses", "work"] as const).map((part) => ({ part, rising, key: keyOf(part, rising) })),
  );
  writeHeads(
    sheet,
    `Damage, line by line, ${parts.schedule}`,
    parts.own ? ofOther(context) : introduction(context),
    context,
  );
  writeHeads(quantities, `Quantities of the damage, ${parts.schedule}`, ofQuantities, context);
  const first = firstWeight + keys.length;
  const last = first + parts.lines.length - 1;
  parts.lines.forEach((line, index) => {
    writeLine({ sheet, quantities, row: first + index }, line, context, parts);
  });
  const rowOf = (part: Part, rising: Rising) => keys.findIndex(({ key }) => key === keyOf(part, rising));
  keys.forEach(({ key }, index) => {
    writeSums(sheet, { key, row: last + 1 + index, first, last, years: context.horizon });
  });
  const rows = new Map(parts.lines.map((line, index) => [lineKey(line), first + index]));
  return {
    quantity: (line, age) => {
      const row = rows.get(lineKey(line));
      return row === undefined ? undefined : quantities.at(row, firstYear + age);
    },
    drafts: () => [draftOf(sheet, context), draftOf(quantities, context)],
    cost: (part, rising, age) => sheet.at(last + 1 + rowOf(part, rising), firstYear + age),
    weigh: (weight, beside) => {
      keys.forEach(({ part, rising, key }, index) => {
        const row = firstWeight + index;
        sheet.putRow(row, [text(""), text(`Weight of ${key}`, "note")]);
        for (let age = 0; age < context.horizon; age++) {
          sheet.put(row, firstYear + age, value(weight(part, rising, age), "factor"));
        }
      });
      const across = (row: number) => sheet.across(row, firstYear, firstYear + context.horizon - 1);
      parts.lines.forEach(({ part, rising }, index) => {
        const row = first + index;
        const weights = across(firstWeight + rowOf(part, rising));
        sheet.put(row, valueColumn, value(sumOfProducts(across(row), weights), "cents"));
      });
      return writeAll(sheet, { first, last, row: last + 1 + keys.length }, beside);
    },
  };
}

function writeHeads(sheet: Grid, title: string, note: string, { horizon }: ReportContext): void {
  sheet.put(0, 0, text(title, "title"));
  sheet.put(1, 0, text(note, "note"));
  const years = Array.from({ length: horizon }, (_, age) => `Year ${age + 1}`);
  sheet.putRow(
    headRow,
    [...heads, ...years].map((each) => text(each, "head")),
  );
}

function introduction({ run, priceYear, infestedSince, comparison }: ReportContext): string {
  const weight =
    infestedSince === undefined
      ? `the discounted chance that the lake is in that year of an infestation under “${comparison.baseline.option.name}”`
      : "the discount factor";
  return `${run.document.money.currency} of ${priceYear}, by year of the infestation. Amount = quantity × unit rate, rounded to the cent. Weight: ${weight}, with the rise of the line’s price; losses count before mussels are detected too, work and protection after that. Expected present value = amounts × weights.`;
}

const ofOther = ({ run, priceYear }: ReportContext) =>
  `${run.document.money.currency} of ${priceYear}, by year of the infestation, for options that follow these levels once mussels are detected; courses of those options weigh the sums below. Amount = quantity × unit rate, rounded to the cent.`;

const lineKey = ({ sample: { structure, what, type, bearer, quantityKind } }: YearlyLine) =>
  JSON.stringify([structure, what, type, bearer, quantityKind]);

const ofQuantities =
  "Computed by the program for the plans that it chose, by year of the infestation. Where a unit rate is a mean that is not the same in all years, quantities are told in units of that of the last. A quantity that is that of the year before, or that under the lake’s own levels, is a link to it.";

function writeLine(
  { sheet, quantities, row }: { sheet: Grid; quantities: Grid; row: number },
  line: YearlyLine,
  context: ReportContext,
  { rateOf, own }: Pick<Parts, "rateOf" | "own">,
): void {
  const { sample, structureName, part, rising } = line;
  const { quantity: dimension, unit } = lineDimensions[sample.quantityKind];
  const names = [structureName, sample.what, sample.type, context.bearerName(sample.bearer)];
  for (const each of [sheet, quantities]) {
    const unitName = unit ?? context.format.unit(dimension);
    each.putRow(
      row,
      [...names, keyOf(part, rising), unitName].map((name) => text(name)),
    );
  }
  const rate = sheet.put(row, rateColumn, value(rateOf(line), "plain"));
  line.years.forEach((year, age) => {
    if (!year) return;
    const shown = context.format.display(year.quantity, dimension);
    const alike = [quantities.at(row, firstYear + age - 1), own?.quantity(line, age)].find(
      (cell) => cell?.result === shown,
    );
    const quantity = quantities.put(row, firstYear + age, value(alike ?? shown, "plain"));
    sheet.put(row, firstYear + age, value(amountOf(times(quantity, rate), year.cents), "cents"));
  });
}

interface SumPlace {
  readonly key: string;
  readonly row: number;
  readonly first: number;
  readonly last: number;
  readonly years: number;
}

function writeSums(sheet: Grid, { key, row, first, last, years }: SumPlace): void {
  sheet.putRow(row, [strong(text("Together")), text(""), text(""), text(""), strong(text(key))]);
  for (let column = firstYear; column < firstYear + years; column++) {
    const all =
      last < first
        ? number(0)
        : sumOfKey(sheet.keys(keyColumn, first, last), key, sheet.down(column, first, last));
    sheet.put(row, column, strong(value(all, "cents")));
  }
}

function writeAll(
  sheet: Grid,
  { first, last, row }: { first: number; last: number; row: number },
  beside: { readonly name: string; readonly presentValue: Worked } | undefined,
): Worked {
  if (beside) {
    sheet.putRow(row, [text("Eradication attempts"), text(beside.name), text("work")]);
    sheet.put(row, valueColumn, value(beside.presentValue, "cents"));
  }
  const end = beside ? row + 1 : row;
  sheet.put(end, 0, strong(text("All lines")));
  const all = last < first && !beside ? number(0) : sum(sheet.down(valueColumn, first, end - 1));
  return sheet.put(end, valueColumn, strong(value(all, "cents")));
}

const draftOf = (sheet: Grid, { horizon }: ReportContext): SheetDraft =>
  sheet.draft({
    widths: [28, 40, 12, 26, 18, 14, 14, 18, ...Array.from({ length: horizon }, () => 14)],
    headRows: headRow + 1,
  });

import type { FiscalRow, FiscalTable } from "../../model/money/fiscal-years.js";
import type { ReportContext } from "../document/context.js";
import { carrying } from "../print/carried-totals.js";
import { capitalised, percent } from "../words/format.js";
import { groupNames, togetherText } from "../words/line-groups.js";
import { monthName } from "../words/month-name.js";
import { head, num, row, subtotalRow, type TableView } from "../words/view-types.js";

/** Most lines that a budget shows without their groups. */
const mostUngrouped = 8;

/** The requested option's program by fiscal year, to the cent; absent where the lake is infested or nothing is spent. */
export function budgetTable(context: ReportContext): TableView | undefined {
  const { requested, infestedSince, run } = context;
  const { budget } = requested;
  if (infestedSince !== undefined || budget === undefined) return undefined;
  const { currency } = run.document.money;
  const startsMidYear = monthBefore(context) !== undefined;
  const isGrouped = budget.rows.length > mostUngrouped;
  const centsOf = (each: FiscalRow) => [...(startsMidYear ? [each.before] : []), ...each.cents, each.total];
  const cells = (each: FiscalRow) => centsOf(each).map((cents) => num(context.format.cents(cents)));
  const named = (group: string, name: string) => (isGrouped ? [group, name] : [name]);
  const lines = budget.groups.flatMap(({ group, rows, subtotal }) => [
    ...rows.map((each, index) => ({
      row: row(...named(index === 0 ? groupNames[group] : "", capitalised(each.name)), ...cells(each)),
      cents: centsOf(each),
    })),
    ...(isGrouped && rows.length > 1
      ? [{ row: subtotalRow(...named("", togetherText(group)), ...cells(subtotal)), cents: undefined }]
      : []),
  ]);
  return {
    id: "table-budget",
    caption: `Each line of “${requested.result.option.name}” by fiscal year while the lake stays clean, ${currency} of each year`,
    head: head(
      ...named("Group", "Line"),
      ...(startsMidYear ? [num("Before")] : []),
      ...budget.years.map(({ endYear }) => num(`FY ${endYear}`)),
      num(budget.years.length === 1 ? "That year" : `${budget.years.length} years`),
    ),
    ...carrying(
      lines.map(({ row: line }) => line),
      {
        columns: lines[0]?.cents?.map((_, place) => place + named("", "").length) ?? [],
        amounts: lines.map(({ cents }) => cents),
        text: context.format.cents,
      },
    ),
    total: row(...named("", budget.totals.name), ...cells(budget.totals)),
    note: budgetNote(budget, context),
    compact: true,
  };
}

/** The last month before the first fiscal year, where that is not the calendar year. */
function monthBefore({ comparison }: ReportContext): string | undefined {
  const { fiscalYearStart } = comparison.input.money;
  return fiscalYearStart === 1 ? undefined : monthName(fiscalYearStart - 2);
}

function budgetNote({ years }: FiscalTable, context: ReportContext): string {
  const { inflation, fiscalYearStart, startYear } = context.comparison.input.money;
  const { inflationOrigin } = context.run.document.money;
  const last = monthBefore(context);
  const { share } = context.requested.result.option.afterInfestation;
  const origin = inflationOrigin ?? "none is assumed in the study";
  return [
    `Only while the lake stays clean: once it is infested the program ${share === 0 ? "ends" : `continues at ${percent(share)} of this`}.`,
    `Prices of ${context.priceYear}, ${inflation === 0 ? "without inflation" : `raised by ${percent(inflation, 3)} a year (${origin})`}.`,
    last === undefined
      ? "Fiscal years are calendar years."
      : `Fiscal years start in ${monthName(fiscalYearStart - 1)} and are called by the year in which they end: FY ${years[0]?.endYear} begins in ${years[0]?.startYear}. A calendar year's amount is spread evenly over its months; “Before” is January to ${last} ${startYear}.`,
    "Equipment is paid in full when it is bought and replaced, not at its yearly capital recovery; what it costs to run is a line of its own. Fees are income and shown as negative.",
  ].join(" ");
}

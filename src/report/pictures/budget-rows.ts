import type { Ask, AskYear } from "../board/ask.js";
import type { ReportContext } from "../document/context.js";
import { alternativeOf, barBetween, type PictureRow, type RowPicture, scaleOver } from "./row-picture.js";

/** The request of each fiscal year beside last year's budget and spending, where they are entered. */
export function budgetRows({ years }: Ask, context: ReportContext): RowPicture {
  const { run, format } = context;
  const { lastYearBudget, lastYearActual } = run.document.report.ask;
  const before = [
    ...(lastYearBudget ? [{ name: "Last year, budget", amount: lastYearBudget.value }] : []),
    ...(lastYearActual ? [{ name: "Last year, actual", amount: lastYearActual.value }] : []),
  ];
  const place = scaleOver([...before.map(({ amount }) => amount), ...years.map(({ request }) => request)]);
  const rows: PictureRow[] = [
    ...before.map(({ name, amount }) => ({
      name,
      value: format.exactMoney(amount),
      bars: [barBetween("before", 0, amount, place)],
    })),
    ...years.map((year) => ({
      name: year.name,
      value: format.exactMoney(year.request),
      bars: barsOf(year, place),
    })),
  ];
  const title = titleOf(years, lastYearBudget?.value, context);
  const bought = years.some(({ purchases, request }) => purchases > 0 && purchases <= request);
  return {
    title,
    alternative: alternativeOf(title, rows),
    rows,
    lines: [],
    note: `Net of fees${context.request?.funded.sources.length ? ", grants and partners" : ""} and other revenue.${bought ? " Hatched: equipment bought that year." : ""}${before.length === 0 ? " Last year’s budget and spending are not entered." : ""}`,
  };
}

/** What goes on each year, and at its end what is bought in that one. */
function barsOf({ request, purchases }: AskYear, place: (amount: number) => number) {
  const ongoing = request - purchases;
  return purchases > 0 && ongoing >= 0
    ? [barBetween("ramp", 0, ongoing, place), barBetween("once", ongoing, request, place)]
    : [barBetween("ramp", 0, request, place)];
}

function titleOf(years: readonly AskYear[], lastYear: number | undefined, { format }: ReportContext): string {
  const [first, second] = years;
  if (!first) return "No fiscal year is asked for";
  const asked =
    first.request >= 0
      ? `${first.name} asks for ${format.exactMoney(first.request)}`
      : `${first.name} brings in ${format.exactMoney(-first.request)}`;
  if (lastYear !== undefined) return `${asked}, ${againstLast(first.request - lastYear, format.exactMoney)}`;
  return second && first.purchases > 0 && second.request < first.request
    ? `${asked}, and later years for less, once the equipment is bought`
    : asked;
}

function againstLast(more: number, money: (amount: number) => string): string {
  if (Math.round(more) === 0) return "as much as last year’s budget";
  return `${money(Math.abs(more))} ${more > 0 ? "more" : "less"} than last year’s budget`;
}

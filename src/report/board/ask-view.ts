import { at } from "../../lists.js";
import { appendixLetter } from "../../study/format/report-schema.js";
import type { ReportContext } from "../document/context.js";
import { budgetRows } from "../pictures/budget-rows.js";
import type { RowPicture } from "../pictures/row-picture.js";
import { percent } from "../words/format.js";
import { head, num, row, type TableView } from "../words/view-types.js";
import { type Ask, type AskAmounts, type AskYear, askOf } from "./ask.js";

/** What the board is asked for, on page 1 and year by year. */
export interface AskView {
  /** First and second fiscal year, and all years of the request. */
  readonly table: TableView;
  readonly byYear: TableView;
  readonly picture: RowPicture;
}

export function askView(context: ReportContext): AskView | undefined {
  const ask = askOf(context);
  if (!ask) return undefined;
  return {
    table: firstTable(ask, context),
    byYear: yearsTable(ask, context),
    picture: budgetRows(ask, context),
  };
}

/** Without the odds a contingency that the study asks for has no amount yet. */
function ongoingName({ request, run }: ReportContext): string {
  if (request?.contingency) return "Ongoing cost, with contingency";
  return request && run.document.report.ask.contingency ? "Ongoing cost, before contingency" : "Ongoing cost";
}

function linesOf(context: ReportContext) {
  const { request } = context;
  const isSome = (cents: readonly number[] = []) => cents.some((each) => each !== 0);
  const { funded, budget } = request ?? {};
  return [
    ["purchases", isSome(budget?.parts.once.cents) ? "Bought or paid once" : "Bought that year: equipment"],
    ["ongoing", ongoingName(context)],
    ["revenue", funded?.sources.length ? "Fees, grants and other revenue" : "Fees and other revenue"],
  ] as const;
}

function firstTable(ask: Ask, context: ReportContext): TableView {
  const { currency } = context.run.document.money;
  return {
    id: "table-ask",
    caption: `The request, ${currency} of each fiscal year, while the lake stays clean`,
    ...askRows([...ask.years.slice(0, 2), ...allYears(ask)], context),
    compact: true,
  };
}

/** All years together, where there are more than those beside it. */
function allYears({ years, total }: Ask): AskYear[] {
  if (years.length < 2) return [];
  return [{ ...total, name: `${at(years, 0).name}–${at(years, years.length - 1).name.replace("FY ", "")}` }];
}

function yearsTable(ask: Ask, context: ReportContext): TableView {
  const { run, requested, priceYear } = context;
  const { inflation } = context.comparison.input.money;
  const { share } = requested.result.option.afterInfestation;
  const { currency } = run.document.money;
  return {
    id: "table-ask-years",
    caption: `“${requested.result.option.name}” by fiscal year while the lake stays clean, ${currency} of each year`,
    ...askRows([...ask.years, ...allYears(ask)], context),
    compact: true,
    note: `Prices of ${priceYear}, ${inflation === 0 ? "without inflation" : `raised by ${percent(inflation, 3)} a year`}. Once the lake is infested the program ${share === 0 ? "ends" : `continues at ${percent(share)} of this`}. Equipment is paid in full in the year in which it is bought. Each line of the budget is in appendix ${appendixLetter("program-detail")}.`,
  };
}

/** Lines in which nothing stands are left out. */
function askRows(
  columns: readonly AskYear[],
  context: ReportContext,
): Pick<TableView, "head" | "rows" | "total"> {
  const cells = (part: keyof AskAmounts) =>
    columns.map((each) => num(each[part] === 0 ? "–" : context.format.exactMoney(each[part])));
  return {
    head: head("", ...columns.map(({ name }) => num(name))),
    rows: linesOf(context)
      .filter(([part]) => columns.some((each) => each[part] !== 0))
      .map(([part, name]) => row(name, ...cells(part))),
    total: row("Request", ...cells("request")),
  };
}

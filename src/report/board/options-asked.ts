import { counted } from "../../counted.js";
import { at } from "../../lists.js";
import type { TracedOption } from "../../study/traced/traced-option.js";
import type { ReportContext } from "../document/context.js";
import { significant } from "../words/format.js";
import { head, num, row, type TableView } from "../words/view-types.js";
import { askFrom } from "./ask.js";

/** More rows than these leave no room for the rest of the page. */
const mostRows = 8;

/** What each option would ask of the next fiscal years, with its staff; absent where none has a budget. */
export function optionsAskedTable({
  traced,
  format,
  infestedSince,
  requested,
  request,
  run,
}: ReportContext): TableView | undefined {
  const own = traced.options.find(({ result }) => result === requested.result)?.budget;
  if (infestedSince !== undefined || !own) return undefined;
  const { years } = askFrom(own);
  const columns = years.slice(0, 2).map(({ name }) => name);
  const isShown = ({ result }: TracedOption, index: number) =>
    index < mostRows - 1 || result === requested.result;
  const shown = traced.options.filter(isShown).slice(0, mostRows);
  const left = traced.options.length - shown.length;
  const cells = ({ budget, result }: TracedOption) => {
    const told = budget && askFrom(budget, result === requested.result ? request?.funded : undefined);
    return columns.map((_, year) => {
      const amount = told ? at(told.years, year).request : 0;
      return num(amount === 0 ? "–" : format.exactMoney(amount));
    });
  };
  return {
    id: "table-options-asked",
    caption: `What each option asks of the budget while the lake stays clean, ${run.document.money.currency} of each fiscal year`,
    head: head("Option", num("Staff hours a year"), ...columns.map((name) => num(name))),
    rows: shown.map((each) =>
      row(
        each.result.option.name,
        num(each.staffHours === 0 ? "–" : significant(Math.round(each.staffHours), 9)),
        ...cells(each),
      ),
    ),
    compact: true,
    ...noted([
      ...(request
        ? [`“${requested.result.option.name}” net of its grants and partners, with its contingency.`]
        : []),
      ...(left > 0 ? [`${counted(left, "more option", "more options")} in the appendix.`] : []),
    ]),
  };
}

const noted = (notes: readonly string[]) => (notes.length === 0 ? {} : { note: notes.join(" ") });

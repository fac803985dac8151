import { at } from "../../lists.js";
import type { BearerShare } from "../../model/bearers.js";
import type { Money } from "../../model/money/decimal.js";
import type { ReportContext } from "../document/context.js";
import { addingUp, stepFor } from "../words/adding-up.js";
import { head, num, row, type TableView } from "../words/view-types.js";
import { boardMoney } from "./board-money.js";

/** What each bearer loses, saves, pays now and would pay in proportion, for the requested option. */
export function bearersTable(context: ReportContext): TableView {
  const { requested, format } = context;
  const columns = columnsOf.map((read) => requested.bearers.map((each) => read(each).toNumber()));
  const rounded = columns.map((column) => addingUp(column, stepFor(column)));
  const { exactMoney } = boardMoney(format);
  const partners = context.request?.funded.sources.length ?? 0;
  const amount = (value: number) => num(value === 0 ? "–" : exactMoney(value));
  return {
    id: "table-bearers",
    caption: `Who pays: “${requested.result.option.name}”, present values, prices of ${context.priceYear}`,
    head: head(
      "Payer",
      num("Damage without"),
      num("Damage avoided"),
      num("Pays now"),
      num("Share if split by benefit"),
    ),
    rows: requested.bearers.map(({ name }, index) =>
      row(name, ...rounded.map(({ parts }) => amount(at(parts, index)))),
    ),
    total: row("All", ...rounded.map(({ sum }) => amount(sum))),
    note: `${partners > 0 ? "Pays now: before the grants and partners of the request, which pay in the years of their terms. " : ""}Share if split by benefit: each payer's part of the added cost is its part of the damage avoided. Who should pay is for the board to decide. Each column is rounded to three or four figures of its largest amount, adjusted so that totals match.`,
  };
}

const columnsOf: ReadonlyArray<(each: BearerShare) => Money> = [
  ({ lossWithout }) => lossWithout,
  ({ avoided }) => avoided,
  ({ paysNow }) => paysNow,
  ({ proportionalShare }) => proportionalShare,
];

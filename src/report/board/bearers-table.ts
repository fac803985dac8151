import { at } from "../../lists.js";
import type { BearerShare } from "../../model/bearers.js";
import type { Money } from "../../model/money/decimal.js";
import type { ReportContext } from "../document/context.js";
import { addingUp, stepFor } from "../words/adding-up.js";
import { head, num, row, type TableView } from "../words/view-types.js";

/** What each bearer loses, saves, pays now and would pay in proportion, for the requested option. */
export function bearersTable(context: ReportContext): TableView {
  const { requested, format } = context;
  const columns = columnsOf.map((read) => requested.bearers.map((each) => read(each).toNumber()));
  const rounded = columns.map((column) => addingUp(column, stepFor(column)));
  const amount = (value: number) => num(format.exactMoney(value));
  return {
    id: "table-bearers",
    caption: `Who bears it: “${requested.result.option.name}”, present values, prices of ${context.priceYear}`,
    head: head(
      "Bearer",
      num("Loss without"),
      num("Loss avoided"),
      num("Pays of the cost now"),
      num("Would pay in proportion"),
    ),
    rows: requested.bearers.map(({ name }, index) =>
      row(name, ...rounded.map(({ parts }) => amount(at(parts, index)))),
    ),
    total: row("All", ...rounded.map(({ sum }) => amount(sum))),
    note: `In proportion: each bearer's part of the added cost is its part of the loss avoided. Who should pay is for the board to decide. Each column is rounded to three or four figures of its largest amount, with the least change that makes it add up as printed.`,
  };
}

const columnsOf: ReadonlyArray<(each: BearerShare) => Money> = [
  ({ lossWithout }) => lossWithout,
  ({ avoided }) => avoided,
  ({ paysNow }) => paysNow,
  ({ proportionalShare }) => proportionalShare,
];

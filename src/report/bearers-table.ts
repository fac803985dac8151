import type { BearerShare } from "../model/bearers.js";
import { type Money, sumOf } from "../model/money/line.js";
import type { ReportContext } from "./context.js";
import { head, num, row, type TableView } from "./view-types.js";

/** What each bearer loses, saves, pays now and would pay in proportion, for the requested option. */
export function bearersTable(context: ReportContext): TableView {
  const { requested, format } = context;
  const total = (read: (each: BearerShare) => Money) => num(format.money(sumOf(requested.bearers.map(read))));
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
    rows: requested.bearers.map((each) =>
      row(
        each.name,
        num(format.money(each.lossWithout)),
        num(format.money(each.avoided)),
        num(format.money(each.paysNow)),
        num(format.money(each.proportionalShare)),
      ),
    ),
    total: row(
      "All",
      total((each) => each.lossWithout),
      total((each) => each.avoided),
      total((each) => each.paysNow),
      total((each) => each.proportionalShare),
    ),
    note: "In proportion: each bearer's part of the added cost is its part of the loss avoided. Who should pay is for the board to decide.",
  };
}

import type { WorkSums } from "../../study/exports/orders/work-sums.js";
import { head, num, row, type TableView } from "../words/view-types.js";

const written = (amount: number) =>
  num(amount.toLocaleString("en-US", { maximumFractionDigits: amount < 10 ? 1 : 0 }));
const kilowattHours = 1000;

/** Work orders by structure and kind of work. @param names of the structures, by id */
export function workTable(
  { from, to, orders, amounts, sums }: WorkSums,
  names: ReadonlyMap<string, string>,
): TableView {
  const cells = ({ hours, laborCost, parts, outage, energy }: WorkSums["amounts"]) =>
    [hours, laborCost, parts, outage, energy / kilowattHours].map(written);
  return {
    id: "sums",
    caption: `Work orders and outages, ${from === to ? from : `${from} to ${to}`}`,
    head: head(
      ...["Structure", "Work", num("Orders"), num("Hours of work"), num("Labor cost"), num("Parts")],
      ...[num("Hours out of service"), num("Energy lost, MWh")],
    ),
    rows: sums.map((each) =>
      row(
        names.get(each.structure) ?? each.structure,
        each.title,
        written(each.orders),
        ...cells(each.amounts),
      ),
    ),
    total: row("Total", "", written(orders), ...cells(amounts)),
  };
}

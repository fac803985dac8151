import type { UnitCost } from "../../study/traced/unit-costs.js";
import type { ReportContext } from "../document/context.js";
import { capitalised } from "../words/format.js";
import { head, num, row, type TableView } from "../words/view-types.js";

/** The dimension of a price by what is measured. */
const priceOf = {
  volume: "moneyPerVolume",
  treatedVolume: "moneyPerTreatedVolume",
  landArea: "moneyPerLandArea",
} as const satisfies Record<UnitCost["measure"], string>;

/** What mussels cost by the water or the land that a structure serves; absent where none has such an output. */
export function unitCostsTable({ traced, format, priceYear }: ReportContext): TableView | undefined {
  const rows = traced.structures.flatMap(({ result, unitCosts }) =>
    unitCosts.map(({ what, quantity, measure, costPerYear, perUnit, alongWith }) =>
      row(
        alongWith === undefined ? result.structure.name : `${result.structure.name}, with ${alongWith}`,
        capitalised(what),
        num(format.quantity(quantity, measure)),
        num(format.money(costPerYear)),
        num(`${format.rate(format.display(perUnit, priceOf[measure]))}/${format.unit(priceOf[measure])}`),
      ),
    ),
  );
  if (rows.length === 0) return undefined;
  return {
    id: "table-unit-costs",
    caption: `What mussels cost by water and land, prices of ${priceYear}`,
    head: head("Structure", "By", num("In a year"), num("Per year, once established"), num("Cost")),
    rows,
    note: "The yearly cost of a mature infestation over what the structure delivers or treats in a year. Published figures by volume are of other plants, other years and often of dosing alone.",
  };
}

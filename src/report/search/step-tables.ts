import { percent } from "../words/format.js";
import { head, num, row, type TableView } from "../words/view-types.js";
import { chanceHead, type ProgramContext, points, signed } from "./program-cells.js";

export function stepTable(context: ProgramContext): TableView {
  const { result, format } = context;
  return {
    id: "table-search-steps",
    caption: `The next step from “${result.baseName}”: one thing more or less`,
    head: head(
      "Step",
      num("Cost a year"),
      num("Chance"),
      num("Infestation avoided"),
      num("Left after the program"),
    ),
    rows: result.steps.map(({ what, costPerYear, chance, avoidedLoss, netBenefit }) =>
      row(
        what,
        num(signed(costPerYear, format.money)),
        num(signed(chance, points)),
        num(signed(avoidedLoss, format.money)),
        num(signed(netBenefit, format.money)),
      ),
    ),
    note: "Infestation avoided and what is left: expected present values over the horizon. An inspector more than the wait needs shortens the wait and avoids nothing. Hours are put where most boats come.",
  };
}

export function timingTable(context: ProgramContext): TableView {
  const { result, format, startYear } = context;
  return {
    id: "table-search-timing",
    caption: `When “${result.baseName}” begins and ends`,
    head: head("Years", chanceHead(context.horizon), num("Program"), num("Infestation"), num("Together")),
    rows: result.timings.map(({ what, years, chance, program, loss, cost }) =>
      row(
        what === "from" ? `from ${startYear + years} on` : `ends after ${startYear + years - 1}, if clean`,
        num(percent(chance)),
        ...[program, loss, cost].map((amount) => num(format.money(amount))),
      ),
    ),
    note: "Expected present values. The chance of a lake that has stayed clean is taken as the same each year, apart from what the study says of other ways in.",
  };
}

export function worthTable({ result, format, startYear }: ProgramContext): TableView {
  return {
    id: "table-search-worth",
    caption: `What one year of “${result.baseName}” is worth, the other years unchanged`,
    head: head("Year", num("Damage avoided less cost, present value")),
    rows: result.worthByYear.map((worth, year) =>
      row(String(startYear + year), num(signed(worth, format.money))),
    ),
    compact: true,
  };
}

import { counted } from "../../counted.js";
import type { StudyDocument } from "../../study/format/schema.js";
import type { Odds } from "../../study/odds/odds.js";
import { formatter, percent, significant } from "../words/format.js";
import { head, num, row, type TableView } from "../words/view-types.js";

interface OddsTables {
  readonly drawn: string;
  readonly tables: readonly TableView[];
}

/** Costs as they come about, and the chances of each option. */
export function oddsTables(odds: Odds, document: StudyDocument): OddsTables {
  const count = (value: number) => significant(value, 7);
  return {
    drawn:
      `${count(odds.futures)} possible futures: ${count(odds.lakes)} draws of the lake and what mussels cost in it, ` +
      `and for each ${count(odds.futures / odds.lakes)} draws of chances and luck. ` +
      `${odds.inputs} quantities were drawn from their ranges (seed ${odds.settings.seed}).`,
    tables: [costTable(odds, document), chanceTable(odds, document)],
  };
}

function costTable({ options }: Odds, { money, study }: StudyDocument): TableView {
  const format = formatter(money.currency, study.units);
  const shares = options[0]?.cost.map(({ share }) => share) ?? [];
  return {
    id: "table-odds-cost",
    caption: `Cost of program and infestation over ${counted(money.horizon, "year")}, present value, prices of ${money.priceYear}`,
    head: head("Option", num("On average"), ...shares.map((share) => num(`In ${percent(share)} at most`))),
    rows: options.map(({ name, meanCost, cost }) =>
      row(name, num(format.money(meanCost.value)), ...cost.map(({ value }) => num(format.money(value)))),
    ),
    note: `Standard errors of the averages: ${options.map(({ name, meanCost }) => `${name} ${format.money(meanCost.standardError)}`).join(", ")}.`,
  };
}

function chanceTable({ options, baseline }: Odds, { money, study }: StudyDocument): TableView {
  const format = formatter(money.currency, study.units);
  const confidence = options[0]?.budget.confidence ?? 0;
  const none = options.find(({ id }) => id === baseline)?.name ?? baseline;
  return {
    id: "table-odds-chance",
    caption: `Chances, against “${none}”`,
    head: head(
      "Option",
      num(`Ever infested within ${counted(money.horizon, "year")}`),
      num("Infested at the end"),
      num("Cheaper as it comes out"),
      num("Worth its cost on average over luck"),
      num("Net benefit on average"),
      num(`Yearly budget, enough in ${percent(confidence)}`),
    ),
    rows: options.map(({ name, everInfested, infestedAtEnd, against, budget }) =>
      row(
        name,
        num(percent(everInfested.value)),
        num(percent(infestedAtEnd.value)),
        num(against ? percent(against.cheaper.value) : "–"),
        num(against ? percent(against.worthIt.value) : "–"),
        num(against ? format.money(against.netBenefit.value) : "–"),
        num(format.money(budget.value)),
      ),
    ),
  };
}

import { counted } from "../../counted.js";
import type { StudyDocument } from "../../study/format/schema.js";
import type { EarlyFigures } from "../../study/odds/early-figures.js";
import type { Odds } from "../../study/odds/odds.js";
import { clearPercent, formatter, percent, significant } from "../words/format.js";
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
      `${count(odds.futures)} simulated outcomes: ${count(odds.lakes)} sets of values for the lake and what mussels cost in it, ` +
      `each with ${count(odds.futures / odds.lakes)} courses of chance. ` +
      `${odds.inputs} quantities were varied within their ranges (seed ${odds.settings.seed}).`,
    tables: [costTable(odds, document), chanceTable(odds, document)],
  };
}

/** What the first draws say, while the rest is made: on the screen alone. */
export function earlyTable({ lakes, options }: EarlyFigures, { money, study }: StudyDocument): TableView {
  const format = formatter(money.currency, study.units);
  return {
    id: "table-odds-early",
    caption: `Preliminary, from the first ${significant(lakes, 7)} draws of the lake`,
    head: head(
      "Option",
      num("Cost on average"),
      num(`Mussels establish within ${counted(money.horizon, "year")}`),
      num("Chance that it pays"),
      num("Net benefit on average"),
    ),
    rows: options.map(({ name, meanCost, everInfested, against }) =>
      row(
        name,
        num(format.money(meanCost)),
        num(percent(everInfested)),
        num(against ? clearPercent(against.cheaper) : "–"),
        num(against ? format.money(against.netBenefit) : "–"),
      ),
    ),
    note: "These figures may still move. Reports wait for the final ones.",
  };
}

function costTable({ options }: Odds, { money, study }: StudyDocument): TableView {
  const format = formatter(money.currency, study.units);
  const shares = options[0]?.cost.map(({ share }) => share) ?? [];
  return {
    id: "table-odds-cost",
    caption: `Cost of program and infestation over ${counted(money.horizon, "year")}, present value, prices of ${money.priceYear}`,
    head: head("Option", num("On average"), ...shares.map((share) => num(`${share * 100}th percentile`))),
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
      num(`Mussels establish within ${counted(money.horizon, "year")}`),
      num("Infested at the end"),
      num("Chance that it pays"),
      num("Pays on average, of assumption sets"),
      num("Net benefit on average"),
      num(`Annual budget, sufficient in ${percent(confidence)}`),
    ),
    rows: options.map(({ name, everInfested, infestedAtEnd, against, budget }) =>
      row(
        name,
        num(percent(everInfested.value)),
        num(percent(infestedAtEnd.value)),
        num(against ? clearPercent(against.cheaper.value) : "–"),
        num(against ? clearPercent(against.worthIt.value) : "–"),
        num(against ? format.money(against.netBenefit.value) : "–"),
        num(format.money(budget.value)),
      ),
    ),
  };
}

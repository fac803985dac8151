import { counted } from "../../counted.js";
import { boardMoney } from "../board/board-money.js";
import type { ReportContext } from "../document/context.js";
import { oneDecimal, percent, significant } from "../words/format.js";
import { head, num, row, type TableView } from "../words/view-types.js";
import { watchText } from "./detection-words.js";

/** What is done to detect mussels and what is tried then. */
export function watchTable(context: ReportContext): TableView {
  const { format, horizon } = context;
  return {
    id: "table-watch",
    caption: "How each option watches for mussels, and what it tries when they are detected",
    head: head(
      "Option",
      "Watched for each year by",
      num("Mean years undetected"),
      "Tried then",
      num(`Attempts in ${counted(horizon, "year")}`),
      num("Of them successful"),
    ),
    rows: context.traced.options.map(({ result: { option, containment }, meanYearsUnnoticed }) =>
      row(
        option.name,
        watchText(option.monitoring),
        num(oneDecimal(meanYearsUnnoticed)),
        option.response
          ? `${option.response.name}: ${format.money(option.response.cost)}, chance ${percent(option.response.chance)}, up to year ${option.response.latestYear}`
          : "nothing",
        num(containment ? significant(containment.attempts, 2) : "–"),
        num(containment ? significant(containment.successes, 2) : "–"),
      ),
    ),
    note: "Mean years undetected: whole years that are expected to pass before the one in which mussels are detected. Attempts and successes are expected numbers, multiplied by the chance that mussels establish and are detected while they are still tried against.",
  };
}

/** The expected cost of an infestation, parted by when mussels are detected; the parts add up to that of the comparison. */
export function detectionCostTable(context: ReportContext): TableView {
  const format = boardMoney(context.format);
  return {
    id: "table-noticed-costs",
    caption: `Expected cost of an infestation before and after it is detected, present values, prices of ${context.priceYear}`,
    head: head(
      "Option",
      num("Losses before"),
      num("Losses after"),
      num("Work, protection, duties after"),
      num("Eradication attempts"),
      num("Together"),
    ),
    rows: context.traced.options.map(({ result, noticedCosts }) =>
      row(
        result.option.name,
        num(format.exactMoney(noticedCosts.lossesBefore)),
        num(format.exactMoney(noticedCosts.lossesAfter)),
        num(format.exactMoney(noticedCosts.doneAfter)),
        num(format.exactMoney(noticedCosts.attempts)),
        num(format.exactMoney(result.presentValue.infestation)),
      ),
    ),
    note: "Before: what is lost while nobody knows of the mussels. What an option spends on watching is part of its yearly cost.",
  };
}

import { counted } from "../../counted.js";
import { noMoney } from "../../model/money/decimal.js";
import type { OptionResult } from "../../model/option.js";
import { meanDelay } from "../../model/risk/detection.js";
import { weightedSum } from "../../model/risk/expectation.js";
import { allOptions, type ReportContext } from "../document/context.js";
import { oneDecimal, percent, significant } from "../words/format.js";
import { head, num, row, type TableView } from "../words/view-types.js";
import { watchText } from "./detection-words.js";

/** What is done to notice mussels and what is tried then. */
export function watchTable(context: ReportContext): TableView {
  const { format, horizon } = context;
  return {
    id: "table-watch",
    caption: "How each option watches for mussels, and what it tries when they are noticed",
    head: head(
      "Option",
      "Watched for each year by",
      num("Mean years unnoticed"),
      "Tried then",
      num(`Attempts in ${counted(horizon, "year")}`),
      num("Of them successful"),
    ),
    rows: allOptions(context).map(({ option, noticing, containment }) =>
      row(
        option.name,
        watchText(option.monitoring),
        num(oneDecimal(meanDelay(noticing.chanceByAge))),
        option.response
          ? `${option.response.name}: ${format.money(option.response.cost)}, chance ${percent(option.response.chance)}, up to year ${option.response.latestYear}`
          : "nothing",
        num(containment ? significant(containment.attempts, 2) : "–"),
        num(containment ? significant(containment.successes, 2) : "–"),
      ),
    ),
    note: "Mean years unnoticed: whole years that are expected to pass before the one in which mussels are noticed. Attempts and successes are expected numbers, weighed by the chance that mussels come in and are noticed while they are still tried against.",
  };
}

/** The expected cost of an infestation, parted by when mussels are noticed; the parts add up to that of the comparison. */
export function detectionCostTable(context: ReportContext): TableView {
  const { format } = context;
  return {
    id: "table-noticed-costs",
    caption: `Expected cost of an infestation before and after it is noticed, present values, prices of ${context.priceYear}`,
    head: head(
      "Option",
      num("Losses before"),
      num("Losses after"),
      num("Work, protection, duties after"),
      num("Attempts to be rid of it"),
      num("Together"),
    ),
    rows: allOptions(context).map((result) =>
      row(
        result.option.name,
        ...partsOf(result).map((part) => num(format.exactMoney(part))),
        num(format.exactMoney(result.presentValue.infestation)),
      ),
    ),
    note: "Before: what is lost while nobody knows of the mussels. What an option spends on watching is part of its yearly cost.",
  };
}

function partsOf({ unnoticed, schedule, weights, containment }: OptionResult) {
  const { harm, control } = schedule.infestation;
  return [
    weightedSum(unnoticed.harm, weights.unnoticed),
    weightedSum(harm, weights.noticed),
    weightedSum(control, weights.noticed),
    containment?.presentValue ?? noMoney,
  ];
}

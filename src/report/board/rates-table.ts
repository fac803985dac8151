import type { OptionBalance } from "../../model/option-balance.js";
import type { RateBalance } from "../../model/other-rates.js";
import type { ReportContext } from "../document/context.js";
import { ratioCell } from "../words/balance-signs.js";
import { percent } from "../words/format.js";
import { head, num, row, type TableView } from "../words/view-types.js";

/** Options against the baseline at the study's discount rate and others, the lowest rate first. */
export function ratesTable(options: readonly OptionBalance[], context: ReportContext): TableView {
  const { format, comparison, run } = context;
  const own = comparison.input.money.discountRate;
  const balances = (option: OptionBalance): RateBalance[] =>
    [{ ...option, rate: own }, ...option.atOtherRates()].sort((one, other) => one.rate - other.rate);
  const rates = options[0] ? balances(options[0]).map(({ rate }) => rate) : [];
  return {
    id: "table-rates",
    caption: `At other discount rates, present values, prices of ${context.priceYear}`,
    head: head(
      "Option",
      ...rates.flatMap((rate) => [num(`Net benefit at ${percent(rate, 3)}`), num("Ratio")]),
    ),
    rows: options.map((option) =>
      row(
        option.result.option.name,
        ...balances(option).flatMap((each) => [
          num(format.money(each.netBenefit)),
          num(ratioCell({ ...option, ...each }, comparison.discountFactors)),
        ]),
      ),
    ),
    note: `Real rates a year; the study's is ${percent(own, 3)}. ${originText(run.document.money.otherDiscountRates)} Plans stay as chosen, and the capital of equipment and plans as paid off, at the study's rate.`,
  };
}

const originText = (ownRates: unknown) =>
  ownRates === undefined
    ? "The others are those that federal circulars are remembered to have, from memory until they are read [omb-a-4, omb-a-94]."
    : "The others are the study's choice.";

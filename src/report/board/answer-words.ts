import type { Money } from "../../model/money/decimal.js";
import type { ReportContext } from "../document/context.js";
import { isNextToNothing, signOf } from "../words/balance-signs.js";
import { onlyFollows } from "../words/option-kind.js";

/** What an option that costs no more than doing nothing, or next to nothing more, or avoids nothing, comes to: one sentence. */
export function plainAnswer(context: ReportContext, loss: string): string {
  const requested = context.weighed(context.requested);
  const { addedProgramCost, avoidedLoss, netBenefit } = requested;
  const [added, avoided, net] = [addedProgramCost, avoidedLoss, netBenefit].map(signOf);
  if (net === 0 && (added === 0 || avoided === 0)) return noDifference(context, loss);
  const start = net === 1 ? startOfYes(context, avoided) : "No. On our best estimate";
  const name = `“${requested.result.option.name}”`;
  const but = added === -1 && avoided === -1 && net !== 1 ? ": no less than it saves" : "";
  return `${start} ${name} ${costText(context)} and ${lossText(context, loss)}, in present value${but}.`;
}

/** An option that saves money and avoids no loss is worth it, yet answers no question about keeping mussels out with a yes. */
function startOfYes({ requested, infestedSince }: ReportContext, avoided: number | undefined): string {
  const isOfLevels = infestedSince !== undefined || onlyFollows(requested.result);
  return avoided === 1 || isOfLevels
    ? "Yes, on our best estimate:"
    : "It is worth it on our best estimate, though not for keeping mussels out:";
}

function noDifference({ requested }: ReportContext, loss: string): string {
  return `It makes no difference on this estimate: “${requested.result.option.name}” costs the authority nothing more than doing nothing and avoids no ${loss}.`;
}

function costText({ requested: option, weighed, format }: ReportContext): string {
  const requested = weighed(option);
  const { addedProgramCost } = requested;
  switch (signOf(addedProgramCost)) {
    case -1:
      return `saves ${format.money(addedProgramCost.abs())} of cost`;
    case 0:
      return "costs the authority nothing more than doing nothing";
    case 1:
      return isNextToNothing(requested)
        ? "costs next to nothing more than doing nothing"
        : `costs ${format.money(addedProgramCost)}`;
  }
}

function lossText({ requested, weighed, format }: ReportContext, loss: string): string {
  const { avoidedLoss } = weighed(requested);
  switch (signOf(avoidedLoss)) {
    case -1:
      return `adds ${format.money(avoidedLoss.abs())} of ${loss}`;
    case 0:
      return `avoids no ${loss}`;
    case 1:
      return `avoids ${format.money(avoidedLoss)} of ${loss}`;
  }
}

/** Where a year's cost is met by what comes in, or more than met, that no money is asked for; else empty. */
export function noMoneyText(perYear: Money, money: (amount: Money) => string): string {
  switch (signOf(perYear)) {
    case -1:
      return `No money is asked for: it is expected to bring in a surplus of ${money(perYear.abs())} a year.`;
    case 0:
      return "No money is asked for: its fees and other revenue are expected to meet its cost.";
    case 1:
      return "";
  }
}

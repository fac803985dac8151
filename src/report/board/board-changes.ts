import type { OptionBalance } from "../../model/compare.js";
import type { ReportContext } from "../document/context.js";
import { pays, signOf } from "../words/balance-signs.js";
import { factorText, percent } from "../words/format.js";

/** Where the answer turns: the chance, the loss and the cost of the program. */
export function boardChanges(context: ReportContext): string[] {
  return [chanceChange(context), lossChange(context), budgetChange(context)];
}

/** Yearly chances at which an option pays: none, from one on, or from next to nothing. */
type ChanceToPay = { readonly from: number } | { readonly upTo: number } | "any" | "none";

function chanceToPay({ breakEven, ...balance }: OptionBalance): ChanceToPay {
  const { hazard, hazards } = breakEven;
  const [first] = hazards.turns;
  if (hazard === undefined) return pays(balance) ? "any" : "none";
  if (first?.pays) return { from: hazard };
  return first ? { upTo: first.value } : "any";
}

/** The same in a cell of a table. */
export function chanceCell(balance: OptionBalance): string {
  const chance = chanceToPay(balance);
  if (typeof chance === "string") return chance;
  return "from" in chance ? percent(chance.from) : `up to ${percent(chance.upTo)}`;
}

/** What stands beside it on the first page. */
export function chanceNote(balance: OptionBalance): string {
  const chance = chanceToPay(balance);
  if (chance === "none") return "at no chance of infestation does it pay";
  if (chance === "any") return "it pays at any chance of infestation";
  return "from" in chance
    ? "the program pays above this chance without it"
    : "the program pays up to this chance without it";
}

function chanceChange({ requested, comparison }: ReportContext): string {
  const estimate = `the estimate is ${percent(comparison.baseline.hazard)}.`;
  const chance = chanceToPay(requested);
  if (chance === "any") return "It pays at any yearly chance of infestation.";
  if (chance === "none") {
    return "No yearly chance of infestation, however high, makes this option pay at its present cost.";
  }
  return "from" in chance
    ? `The answer turns at a yearly chance of ${percent(chance.from)} without the program; ${estimate}`
    : `It pays up to a yearly chance of ${percent(chance.upTo)} without the program; ${estimate}`;
}

function lossChange({ requested }: ReportContext): string {
  const { addedProgramCost, avoidedLoss, breakEven } = requested;
  if (breakEven.lossFactor !== undefined) {
    return `It turns if an infestation costs ${factorText(breakEven.lossFactor)} of what is estimated here.`;
  }
  const [added, avoided] = [signOf(addedProgramCost), signOf(avoidedLoss)];
  if (avoided === 1) return "It costs nothing more, and so pays however little an infestation costs.";
  if (added === -1) {
    return avoided === 0
      ? "It avoids no loss, and is worth what it saves whatever an infestation costs."
      : `It turns if an infestation costs ${factorText(addedProgramCost.dividedBy(avoidedLoss).toNumber())} of what is estimated here.`;
  }
  return avoided === -1
    ? "It adds to the loss, so no infestation cost would make it pay."
    : "The option avoids no loss, so no infestation cost would make it pay.";
}

/** The break-even budget where there is one above nothing. */
export function budgetToPay({ breakEven }: Pick<OptionBalance, "breakEven">) {
  const { programPerYear } = breakEven;
  return programPerYear && signOf(programPerYear) > 0 ? programPerYear : undefined;
}

function budgetChange({ requested, format }: ReportContext): string {
  const budget = budgetToPay(requested);
  if (!budget) return "No budget above zero is carried by the losses avoided.";
  const { programPerYear } = requested.result;
  const costs =
    signOf(programPerYear) === 1
      ? `it costs ${format.money(programPerYear)}.`
      : signOf(programPerYear) === 0
        ? "it costs nothing, net of what comes in."
        : `it brings in ${format.money(programPerYear.abs())}.`;
  return `It turns if the program costs ${format.money(budget)} a year; ${costs}`;
}

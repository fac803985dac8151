import type { OptionBalance } from "../../model/option-balance.js";
import type { ReportContext } from "../document/context.js";
import { pays, signOf } from "../words/balance-signs.js";
import { factorText, percent } from "../words/format.js";

/** What would change the answer: the chance, the damage and the cost of the program; nothing where nothing would. */
export function boardChanges(context: ReportContext): string[] {
  if (context.confidence?.pays.isFirm) return ["Nothing within reason changes this answer."];
  return [chanceChange(context), lossChange(context), budgetChange(context)];
}

/** On what the changes stand, where the answer is an average and they are not; absent where nothing would change it. */
export const changesBasis = ({ confidence, headline }: ReportContext): string | undefined =>
  headline && !confidence?.pays.isFirm ? "one at a time (from central values, not averages)" : undefined;

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
  if (chance === "none") return "however high the chance, it would cost more than it saves";
  if (chance === "any") return "it pays at any chance of infestation";
  return "from" in chance
    ? "pays if the chance without the program is higher"
    : "pays if the chance without the program is lower";
}

/** Under which condition an option pays, as it stands now: it does, or it would. */
const underCondition = (balance: OptionBalance, holds: string, would: string) =>
  pays(balance) ? `It pays as long as ${holds}` : `It would pay if ${would}`;

function chanceChange({ requested, comparison }: ReportContext): string {
  const estimate = `we estimate ${percent(comparison.baseline.hazard)}.`;
  const chance = chanceToPay(requested);
  if (chance === "any") return "It pays at any yearly chance of infestation.";
  if (chance === "none")
    return "At no yearly chance of infestation, however high, would it pay at its present cost.";
  const subject = "the yearly chance of infestation without it";
  const [value, side] = "from" in chance ? [chance.from, "above"] : [chance.upTo, "below"];
  const at = `${side} ${percent(value)}; ${estimate}`;
  return underCondition(requested, `${subject} is ${at}`, `${subject} were ${at}`);
}

function lossChange({ requested }: ReportContext): string {
  const { addedProgramCost, avoidedLoss, breakEven } = requested;
  const { lossFactor } = breakEven;
  if (lossFactor !== undefined) {
    const at = `at least ${overEstimate(lossFactor)}`;
    return `${underCondition(requested, `damage is ${at}`, `damage were ${at}`)}.`;
  }
  const [added, avoided] = [signOf(addedProgramCost), signOf(avoidedLoss)];
  if (avoided === 1) return "It costs nothing more, and so pays however little damage mussels do.";
  if (added === -1) {
    if (avoided === 0) return "It avoids no damage, and is worth what it saves whatever mussels cost.";
    const at = `at most ${overEstimate(addedProgramCost.dividedBy(avoidedLoss).toNumber())}`;
    return `${underCondition(requested, `damage is ${at}`, `damage were ${at}`)}.`;
  }
  return avoided === -1
    ? "It adds to the damage, so at no level of damage would it pay."
    : "It avoids no damage, so at no level of damage would it pay.";
}

/** A factor on the damage: "22% higher than estimated", "2.2 times the estimate", "85% of the estimate". */
const overEstimate = (factor: number) =>
  factor > 1 && factor <= 2
    ? `${percent(factor - 1)} higher than estimated`
    : `${factorText(factor)} the estimate`;

/** The break-even budget where there is one above nothing. */
export function budgetToPay({ breakEven }: Pick<OptionBalance, "breakEven">) {
  const { programPerYear } = breakEven;
  return programPerYear && signOf(programPerYear) > 0 ? programPerYear : undefined;
}

function budgetChange({ requested, format }: ReportContext): string {
  const budget = budgetToPay(requested);
  if (!budget) return "The damage avoided would cover no program cost above zero.";
  const { programPerYear } = requested.result;
  if (signOf(programPerYear) === 1) {
    const change = budget.dividedBy(programPerYear).toNumber() - 1;
    const size = percent(Math.abs(change));
    return change < 0
      ? `It would pay if the program cost at least ${size} less.`
      : `It pays as long as the program costs less than ${change > 1 ? `${factorText(change + 1)} the estimate` : `${size} more`}.`;
  }
  const costs =
    signOf(programPerYear) === 0
      ? "it costs nothing, net of what comes in."
      : `it brings in ${format.money(programPerYear.abs())}.`;
  const at = `${format.money(budget)} a year or less; ${costs}`;
  return underCondition(requested, `the program costs ${at}`, `the program cost ${at}`);
}

import type { StudyRun } from "../../study/prepare/compute.js";
import { requestedOption } from "../document/context.js";
import { hasRatio, pays, signOf } from "../words/balance-signs.js";
import { formatter, ratio } from "../words/format.js";

/** The balance in one line, for the head of a page: both sides per year, their ratio, and the answer in few words. */
export interface BalanceLine {
  readonly ramp: BalanceSide;
  readonly rack: BalanceSide;
  /** Absent where the option costs no more than none, or where the lake is infested already. */
  readonly ratio: string | undefined;
  readonly pays: boolean;
  readonly answer: string;
}

interface BalanceSide {
  readonly label: string;
  readonly value: string;
  /** Length of its bar, in percent of the longer one. */
  readonly length: number;
}

const answers = { [-1]: "Costs more than it saves", 0: "Makes no difference", 1: "Pays" };

export function balanceLine(run: Pick<StudyRun, "document" | "comparison">): BalanceLine {
  const { document, comparison } = run;
  const { money } = formatter(document.money.currency, document.study.units);
  const requested = requestedOption(run);
  const yearly = requested.perYear();
  const isInfested = document.lake.infestedSince !== undefined;
  const spent = yearly.addedProgramCost;
  const avoided = isInfested
    ? comparison.baseline.equivalentYearly.infestation.toNumber()
    : yearly.avoidedLoss;
  const longest = Math.max(spent, avoided, 1);
  const side = (label: string, amount: number): BalanceSide => ({
    label,
    value: `${money(Math.abs(amount))}/yr`,
    length: Math.round((Math.max(0, amount) / longest) * 100),
  });
  return {
    ramp: side(spent < 0 ? "Saved at the ramp" : "Spent at the ramp", spent),
    rack: side(isInfested ? "Upkeep" : avoided < 0 ? "Damage added" : "Damage avoided", avoided),
    ratio: !isInfested && hasRatio(requested) ? ratio(requested.benefitCostRatio) : undefined,
    pays: pays(requested),
    answer: isInfested ? "A maintenance budget" : answers[signOf(requested.netBenefit)],
  };
}

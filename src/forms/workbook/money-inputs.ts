import type { PriceGroup } from "../../model/money/price-group.js";
import type { ReportContext } from "../../report/document/context.js";
import { isSame, minus, number, oneLess, over, plus, power, type Worked, when } from "./formula.js";
import type { InputList } from "./input-sheet.js";

export interface MoneyInputs {
  readonly rate: Worked;
  /** Share of a year by which payments precede its end. */
  readonly before: Worked;
  readonly horizon: Worked;
  readonly startYear: Worked;
  readonly priceYear: Worked;
  readonly inflation: Worked;
  /** Yearly rises of the groups whose prices rise otherwise than prices in general. */
  readonly rises: ReadonlyMap<PriceGroup, Worked>;
}

export const groupWords: Readonly<Record<PriceGroup, string>> = {
  energy: "energy",
  water: "water",
  labour: "labor on structures",
  treatment: "treatment",
  wages: "wages of the program",
  equipment: "equipment",
  fees: "fees",
  other: "everything else",
};

/** The budget of the requested program; of a lake that is infested already there is none. */
export const budgetOf = ({ infestedSince, requested }: ReportContext) =>
  infestedSince === undefined ? requested.budget : undefined;

export function moneyInputs(inputs: InputList, context: ReportContext): MoneyInputs {
  const { comparison, horizon, run } = context;
  const { money } = comparison.input;
  const { discountRateOrigin } = run.document.money;
  inputs.section("Money and time");
  const perYear = { look: "percent", unit: "a year" } as const;
  return {
    rate: inputs.add({
      ...{ name: "Discount rate, real", amount: money.discountRate, ...perYear },
      origin: discountRateOrigin,
    }),
    before: inputs.add({
      name: "Share of a year by which payments precede its end",
      amount: money.timing === "mid-year" ? 1 / 2 : 0,
      look: "plain",
      unit: "0.5 in the middle, 0 at the end",
    }),
    horizon: inputs.add({
      ...{ name: "Horizon", amount: horizon, look: "whole", unit: `years, 1 to ${horizon}` },
      origin: "A longer one is computed by the program; a shorter one keeps the plans chosen for this one.",
      limits: [1, horizon],
    }),
    inflation: budgetOf(context)
      ? inputs.add({ name: "General inflation, for budgets", amount: money.inflation, ...perYear })
      : number(money.inflation),
    rises: new Map(
      (money.escalation ?? []).map(({ group, rate }) => [
        group,
        inputs.add({
          ...{ name: `Rise above inflation of ${groupWords[group]}`, amount: rate, ...perYear },
        }),
      ]),
    ),
    startYear: inputs.addComputed({ name: "First year", amount: money.startYear, look: "whole" }),
    priceYear: inputs.addComputed({ name: "Year of prices", amount: money.priceYear, look: "whole" }),
  };
}

/** Capital recovery, i/(1 − (1+i)^−n). */
export const capitalRecovery = (rate: Worked, life: Worked): Worked =>
  when(
    isSame(rate, number(0)),
    over(number(1), life),
    over(rate, oneLess(power(plus(number(1), rate), minus(number(0), life)))),
  );

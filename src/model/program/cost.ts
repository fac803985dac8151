import type { MoneySettings, ProgramOption } from "../inputs.js";
import { capitalRecoveryFactor } from "../money/interest.js";
import { type CostLine, costLine, type LineDraft } from "../money/line.js";

/**
 * A year of an option while the lake is not infested: wages with loading, equipment at its capital recovery
 * over its life, yearly lines, and fees as revenue (negative). Money of the price year.
 */
export function programLines(option: ProgramOption, money: MoneySettings): CostLine[] {
  const line = (draft: Pick<LineDraft, "what" | "quantity" | "quantityKind" | "unitRate" | "type">) =>
    costLine({ structure: option.id, bearer: money.programBearer, assumptionIds: [], ...draft });
  return [
    ...option.staff.map(({ name, hoursPerYear, wage, loading }) =>
      line({
        what: name,
        type: "program",
        quantity: hoursPerYear,
        quantityKind: "hours",
        unitRate: wage * (1 + loading),
      }),
    ),
    ...option.equipment.map(({ name, count, price, life }) =>
      line({
        what: `${name}, yearly over ${life} years`,
        type: "program",
        quantity: count,
        quantityKind: "each",
        unitRate: price * capitalRecoveryFactor(money.discountRate, life),
      }),
    ),
    ...option.yearly.map(({ name, cost }) =>
      line({ what: name, type: "program", quantity: 1, quantityKind: "year", unitRate: cost }),
    ),
    ...option.fees.map(({ name, countPerYear, fee }) =>
      line({ what: name, type: "revenue", quantity: countPerYear, quantityKind: "each", unitRate: -fee }),
    ),
  ];
}

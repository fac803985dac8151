import type { MoneySettings, ProgramOption } from "../inputs.js";
import { at } from "../lake/calendar.js";
import { type CashBasis, cashBasis } from "../money/cash-basis.js";
import { growthFactors, priceGrowth } from "../money/escalation.js";
import { capitalRecoveryFactor, discountFactors } from "../money/interest.js";

/** A program's equipment counted in two ways; present values, for a program that runs in full over the horizon. */
export interface EquipmentBases extends CashBasis {
  /** Purchases less residual value. */
  readonly cash: number;
  /** Yearly capital recovery, as the comparison counts it. */
  readonly recovery: number;
}

/** Absent where the option has no equipment. */
export function equipmentBases(option: ProgramOption, money: MoneySettings): EquipmentBases | undefined {
  if (option.equipment.length === 0) return undefined;
  const { horizon, discountRate, timing } = money;
  const rise = money.escalation?.find(({ group }) => group === "equipment")?.rate ?? 0;
  const risen = growthFactors(horizon, rise, money);
  const yearOfRecovery = discountFactors(horizon, discountRate, timing).reduce(
    (sum, factor, year) => sum + factor * at(risen, year),
    0,
  );
  const riseAt = (time: number) => priceGrowth(rise, time, money);
  let [purchases, residual, recovery] = [0, 0, 0];
  for (const { count, price, life } of option.equipment) {
    const basis = cashBasis({ price: count * price, life, firstYear: 1 }, horizon, discountRate, riseAt);
    purchases += basis.purchases;
    residual += basis.residual;
    recovery += count * price * capitalRecoveryFactor(discountRate, life) * yearOfRecovery;
  }
  return { purchases, residual, cash: purchases - residual, recovery };
}

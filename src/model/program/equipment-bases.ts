import { at } from "../../lists.js";
import type { MoneySettings, ProgramOption } from "../inputs.js";
import { type CashBasis, cashBasis } from "../money/cash-basis.js";
import { growthFactors, priceGrowth } from "../money/escalation.js";
import { capitalRecoveryFactor, discountFactors } from "../money/interest.js";

import { priceGroupOf } from "../money/price-group.js";
import type { CostGroup } from "./groups.js";

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
  const factors = discountFactors(horizon, discountRate, timing);
  let [purchases, residual, recovery] = [0, 0, 0];
  for (const { count, price, life, group = "equipment" } of option.equipment) {
    const rise = riseOf(group, money);
    const risen = growthFactors(horizon, rise, money);
    const yearOfRecovery = factors.reduce((sum, factor, year) => sum + factor * at(risen, year), 0);
    const riseAt = (time: number) => priceGrowth(rise, time, money);
    const basis = cashBasis({ price: count * price, life, firstYear: 1 }, horizon, discountRate, riseAt);
    purchases += basis.purchases;
    residual += basis.residual;
    recovery += count * price * capitalRecoveryFactor(discountRate, life) * yearOfRecovery;
  }
  return { purchases, residual, cash: purchases - residual, recovery };
}

/** Yearly rise of the price of what a program's lines of a group pay for. */
function riseOf(group: CostGroup, { escalation = [] }: MoneySettings): number {
  const own = priceGroupOf({ type: "program", quantityKind: "each", group });
  return escalation.find((each) => each.group === own)?.rate ?? 0;
}

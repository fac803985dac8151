import { discountFactor } from "./interest.js";
import { type Equipment, purchaseTimes, residualValue } from "./residual.js";

/** Present value of equipment as it is paid for, and of what is left of it. */
export interface CashBasis {
  readonly purchases: number;
  readonly residual: number;
}

/**
 * Equipment counted when it is bought, less what the last purchase is worth at the horizon's end: Z = Σ p e(τ) (1+r)^−τ
 * and R = w e(l) (1+r)^−n, over the times τ of purchase, of which l is the last; w is its worth there by straight line
 * at constant prices.
 * @param rate real discount rate
 * @param riseAt e: price at a time in years from the start of year 1 for 1 in the price year
 */
export function cashBasis(
  equipment: Equipment,
  horizon: number,
  rate: number,
  riseAt: (time: number) => number,
): CashBasis {
  const times = purchaseTimes(equipment, horizon);
  const worth = (time: number) => discountFactor(time, rate, "end-of-year");
  return {
    purchases: times.reduce((sum, time) => sum + equipment.price * riseAt(time) * worth(time), 0),
    residual: residualValue(equipment, horizon) * riseAt(times.at(-1) ?? 0) * worth(horizon),
  };
}

import { Decimal as Base } from "decimal.js";

/** Our own Decimal: 28 significant digits, half-even; the package's shared settings are left alone. */
export const Money = Base.clone({ precision: 28, rounding: Base.ROUND_HALF_EVEN });
export type Money = InstanceType<typeof Money>;

export const noMoney: Money = new Money(0);

export const centsPerUnit = 100;

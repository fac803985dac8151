import { Decimal as Base } from "decimal.js";

/** Our own Decimal: 28 significant digits, half-even; the package's shared settings are left alone. */
export const Money = Base.clone({ precision: 28, rounding: Base.ROUND_HALF_EVEN });
export type Money = InstanceType<typeof Money>;

export const noMoney: Money = new Money(0);

/** What the quantity of a line measures, so that the report can print it in the reader's units. */
export type QuantityKind =
  | "area"
  | "mass"
  | "energy"
  | "volume"
  | "hours"
  | "days"
  | "visits"
  | "each"
  | "year";

/** One reason to pay, in one year: the atom of every total. */
export interface CostLine {
  readonly structure: string;
  readonly what: string;
  /** Work restores service; loss is what is not delivered meanwhile. */
  readonly type: "work" | "loss" | "protection" | "program" | "revenue" | "apart";
  readonly bearer: string;
  readonly quantity: number;
  readonly quantityKind: QuantityKind;
  /** Money per unit of the quantity in the model's unit (m², kg, kWh, m³, h, d). */
  readonly unitRate: number;
  readonly amount: Money;
  readonly assumptionIds: readonly string[];
}

export type LineDraft = Omit<CostLine, "amount">;

/** Makes a line; its amount is quantity × unit rate, rounded to the cent once. */
export function costLine(draft: LineDraft): CostLine {
  const amount = new Money((draft.quantity * draft.unitRate).toFixed(2));
  if (!amount.isFinite()) throw new Error(`${draft.structure}: ${draft.what} is not a finite amount`);
  return { ...draft, amount };
}

export function sumOf(amounts: Iterable<Money>): Money {
  let sum = noMoney;
  for (const amount of amounts) sum = sum.plus(amount);
  return sum;
}

export const totalOf = (lines: readonly CostLine[]): Money => sumOf(lines.map((line) => line.amount));

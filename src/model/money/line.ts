import type { AssumptionId } from "../register/register.js";
import type { Bearer } from "./bearer.js";
import { centsPerUnit, Money, noMoney } from "./decimal.js";

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
  /**
   * Work restores service; a loss is what is not delivered because of mussels, an outage what is not delivered while
   * someone works. A duty is a yearly amount that staff entered, a policy one that the authority is free to choose, and
   * what stands apart is no cost of the structures at all.
   */
  readonly type:
    | "work"
    | "loss"
    | "outage"
    | "protection"
    | "program"
    | "revenue"
    | "duty"
    | "policy"
    | "apart";
  readonly bearer: Bearer;
  readonly quantity: number;
  readonly quantityKind: QuantityKind;
  /** Money per unit of the quantity in the model's unit (m², kg, kWh, m³, h, d). */
  readonly unitRate: number;
  /** Quantity × unit rate, rounded to the cent once: a whole number, so that sums are exact. */
  readonly cents: number;
  readonly assumptionIds: readonly AssumptionId[];
}

export type LineDraft = Omit<CostLine, "cents">;

/** A sum that is no amount of money anybody has: its inputs hold a value or a unit that was not meant. */
export class AmountError extends RangeError {
  constructor(
    /** Id of the structure or option. */
    readonly structure: string,
    readonly what: string,
    readonly amount: number,
  ) {
    super(`${structure}: ${what} is not a finite amount: ${amount}`);
  }
}

/** Quantity × unit rate in whole cents; half a cent rounds away from zero. */
export function roundedCents(quantity: number, unitRate: number): number {
  const exact = quantity * unitRate * centsPerUnit;
  return Math.sign(exact) * Math.round(Math.abs(exact));
}

/** Makes a line. @throws AmountError naming structure and line if it is no sum of money */
export function costLine(draft: LineDraft): CostLine {
  const { structure, what, type, bearer, quantity, quantityKind, unitRate, assumptionIds } = draft;
  const cents = roundedCents(quantity, unitRate);
  if (!Number.isSafeInteger(cents)) throw new AmountError(structure, what, quantity * unitRate);
  return { structure, what, type, bearer, quantity, quantityKind, unitRate, assumptionIds, cents };
}

export const amountOf = ({ cents }: CostLine): Money => moneyOf(cents);

/** Whole cents as money. @throws Error where they are more than can be kept exactly */
export function moneyOf(cents: number): Money {
  if (!Number.isSafeInteger(cents)) throw new Error(`${cents} cents: too large to be kept to the cent`);
  return new Money(cents).dividedBy(centsPerUnit);
}

export function sumOf(amounts: Iterable<Money>): Money {
  let sum = noMoney;
  for (const amount of amounts) sum = sum.plus(amount);
  return sum;
}

/** Sum of lines: exact, since it adds whole cents. */
export function totalOf(lines: Iterable<CostLine>): Money {
  let cents = 0;
  for (const line of lines) cents += line.cents;
  return moneyOf(cents);
}

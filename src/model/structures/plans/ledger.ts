import { noElement } from "../../../lists.js";
import type { Charge, Limit, LimitLoad, Priced, Tell } from "../component.js";
import { type PlanWeights, partOf } from "./weights.js";

/**
 * What was told of many months, one after the other, in columns: a month is the entries since the one before it, and the
 * limit that came nearest. Of thousands of months that plans are compared by, only those of the plan that is chosen are
 * ever told again.
 */
export class Ledger {
  readonly #weights: PlanWeights;
  readonly #charges: Charge[] = [];
  readonly #quantities: number[] = [];
  readonly #costs: number[] = [];
  /** The part of a cost that each entry belongs to. */
  readonly #parts: number[] = [];
  readonly #ends: number[] = [0];
  readonly #limits: Limit[] = [];
  readonly #loads: number[] = [];

  constructor(weights: PlanWeights) {
    this.#weights = weights;
  }

  readonly tell: Tell = (charge, quantity) => {
    if (quantity === 0) return;
    this.#charges.push(charge);
    this.#quantities.push(quantity);
    this.#costs.push(quantity * charge.unitRate);
    this.#parts.push(partOf(charge, this.#weights));
  };

  /** Ends a month. @returns its number */
  endMonth({ limit, load }: LimitLoad): number {
    this.#limits.push(limit);
    this.#loads.push(load);
    return this.#ends.push(this.#charges.length) - 2;
  }

  /** Adds what a month costs to the parts of a cost. */
  addTo(sums: number[], month: number): void {
    const end = this.#ends[month + 1] ?? noElement(this.#ends, month + 1);
    for (let entry = this.#ends[month] ?? 0; entry < end; entry++) {
      const part = this.#parts[entry] ?? 0;
      sums[part] = (sums[part] ?? 0) + (this.#costs[entry] ?? 0);
    }
  }

  loadIn(month: number): number {
    return this.#loads[month] ?? noElement(this.#loads, month);
  }

  /** The limit that came nearest in a month. */
  nearestIn(month: number): LimitLoad {
    return { limit: this.#limits[month] ?? noElement(this.#limits, month), load: this.loadIn(month) };
  }

  /** Tells a month to someone else. */
  tellAgain(tell: Tell, month: number): void {
    const end = this.#ends[month + 1] ?? noElement(this.#ends, month + 1);
    for (let entry = this.#ends[month] ?? 0; entry < end; entry++) {
      tell(
        this.#charges[entry] ?? noElement(this.#charges, entry),
        this.#quantities[entry] ?? noElement(this.#quantities, entry),
      );
    }
  }
}

export function tellAll(tell: Tell, lines: readonly Priced[]): void {
  for (const line of lines) tell(line, line.quantity);
}

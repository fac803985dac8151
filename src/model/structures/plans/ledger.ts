import { noElement } from "../../../lists.js";
import type { Charge, Priced, Tell } from "../component.js";
import { type PlanWeights, partOf } from "./weights.js";

/** Entries from one up to, but without, another. */
export interface Stretch {
  readonly first: number;
  readonly end: number;
}

/**
 * What was told of many months, one after the other: a month is a stretch of it. Of thousands of months that plans are
 * compared by, only those of the plan that is chosen are ever told again.
 */
export class Ledger {
  readonly #charges: Charge[] = [];
  readonly #quantities: number[] = [];

  readonly tell: Tell = (charge, quantity) => {
    this.#charges.push(charge);
    this.#quantities.push(quantity);
  };

  get length(): number {
    return this.#charges.length;
  }

  /** Adds what the entries cost to the parts of a cost. */
  addTo(sums: number[], { first, end }: Stretch, weights: PlanWeights): void {
    for (let entry = first; entry < end; entry++) {
      const charge = this.#charges[entry] ?? noElement(this.#charges, entry);
      const part = partOf(charge, weights);
      sums[part] = (sums[part] ?? 0) + (this.#quantities[entry] ?? 0) * charge.unitRate;
    }
  }

  /** Tells the same entries to someone else. */
  tellAgain(tell: Tell, { first, end }: Stretch): void {
    for (let entry = first; entry < end; entry++) {
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

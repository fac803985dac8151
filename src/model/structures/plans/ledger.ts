import { noElement } from "../../../lists.js";
import type { Charge, Limit, LimitLoad, Priced, Tell } from "../component.js";
import { noCost, type PlanWeights, partOf } from "./weights.js";

/**
 * What was told of many months, one after the other, in columns: a month is the entries since the one before it, their sum,
 * and the limit that came nearest. Of thousands of months that plans are compared by, only those of the plan that is chosen
 * are ever told again.
 */
export class Ledger {
  readonly #weights: PlanWeights;
  readonly #charges: Charge[] = [];
  readonly #quantities: number[] = [];
  /** What was told since the last month's end, by the parts of a cost. */
  readonly #told: number[];
  /** The same of each month, one after the other. */
  readonly #costs: number[] = [];
  readonly #ends: number[] = [0];
  readonly #limits: Limit[] = [];
  readonly #loads: number[] = [];

  constructor(weights: PlanWeights) {
    this.#weights = weights;
    this.#told = noCost(weights);
  }

  readonly tell: Tell = (charge, quantity) => {
    if (quantity === 0) return;
    this.#charges.push(charge);
    this.#quantities.push(quantity);
    const part = partOf(charge, this.#weights);
    this.#told[part] = (this.#told[part] ?? 0) + quantity * charge.unitRate;
  };

  /** Ends a month. @returns its number */
  endMonth({ limit, load }: LimitLoad): number {
    this.#limits.push(limit);
    this.#loads.push(load);
    for (let part = 0; part < this.#told.length; part++) {
      this.#costs.push(this.#told[part] ?? 0);
      this.#told[part] = 0;
    }
    return this.#ends.push(this.#charges.length) - 2;
  }

  /** Adds what a month costs to the parts of a cost. */
  addTo(sums: number[], month: number): void {
    const start = month * sums.length;
    for (let part = 0; part < sums.length; part++)
      sums[part] = (sums[part] ?? 0) + (this.#costs[start + part] ?? noElement(this.#costs, start + part));
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

import { noElement } from "../../../lists.js";
import type { NumberRoom } from "../../mussels/number-room.js";
import type { Charge, Limit, LimitLoad, Priced, Tell } from "../component.js";
import { type PlanWeights, partOf } from "./weights.js";

/** Months for which a ledger has room at first, and takes as many again when they are full: most parts need them. */
const usualMonths = 144;

/**
 * What was told of many months, one after the other: a month is the entries since the one before it, their sum, and the
 * limit that came nearest. Of thousands of months that plans are compared by, only those of the plan that is chosen are
 * ever told again.
 */
export class Ledger {
  readonly #weights: PlanWeights;
  readonly #room: NumberRoom;
  readonly #charges: Charge[] = [];
  readonly #quantities: number[] = [];
  readonly #limits: Limit[] = [];
  /** Parts of a cost. */
  readonly #parts: number;
  /** By month: its cost, part by part, how near it came to its limit, and the number of entries at its end. */
  #rows: Float64Array;
  /** Where the row of the month that is being told begins. */
  #row = 0;

  constructor(weights: PlanWeights, room: NumberRoom) {
    this.#weights = weights;
    this.#room = room;
    this.#parts = weights.groups.length + 1;
    this.#rows = room(usualMonths * this.#width);
  }

  get #width(): number {
    return this.#parts + 2;
  }

  readonly tell: Tell = (charge, quantity) => {
    if (quantity === 0) return;
    this.#charges.push(charge);
    this.#quantities.push(quantity);
    const place = this.#row + partOf(charge, this.#weights);
    this.#rows[place] = (this.#rows[place] ?? 0) + quantity * charge.unitRate;
  };

  /** Ends a month. @returns its number */
  endMonth({ limit, load }: LimitLoad): number {
    this.#rows[this.#row + this.#parts] = load;
    this.#rows[this.#row + this.#parts + 1] = this.#charges.length;
    this.#row += this.#width;
    if (this.#row === this.#rows.length) {
      const more = this.#room(2 * this.#row);
      more.set(this.#rows);
      this.#rows = more;
    }
    return this.#limits.push(limit) - 1;
  }

  /** Adds what a month costs to the parts of a cost. */
  addTo(sums: number[], month: number): void {
    const row = month * this.#width;
    for (let part = 0; part < sums.length; part++)
      sums[part] = (sums[part] ?? 0) + (this.#rows[row + part] ?? 0);
  }

  loadIn(month: number): number {
    return this.#rows[month * this.#width + this.#parts] ?? noElement(this.#rows, month);
  }

  /** The limit that came nearest in a month. */
  nearestIn(month: number): LimitLoad {
    return { limit: this.#limits[month] ?? noElement(this.#limits, month), load: this.loadIn(month) };
  }

  /** Tells a month to someone else. */
  tellAgain(tell: Tell, month: number): void {
    const end = this.#endOf(month);
    for (let entry = month === 0 ? 0 : this.#endOf(month - 1); entry < end; entry++) {
      tell(
        this.#charges[entry] ?? noElement(this.#charges, entry),
        this.#quantities[entry] ?? noElement(this.#quantities, entry),
      );
    }
  }

  #endOf(month: number): number {
    return this.#rows[month * this.#width + this.#parts + 1] ?? noElement(this.#rows, month);
  }
}

export function tellAll(tell: Tell, lines: readonly Priced[]): void {
  for (const line of lines) tell(line, line.quantity);
}

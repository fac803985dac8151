import { centsPerUnit, type Money } from "./money/decimal.js";
import { moneyOf } from "./money/line.js";
import type { PriceGroup } from "./money/price-group.js";

/** A cost by year since establishment, in constant prices, all together and by what it is; lists of money are made when asked for. */
export interface CostStream {
  readonly byYear: readonly Money[];
  /** What is lost, whether anyone knows of the mussels or not. */
  readonly harm: readonly Money[];
  /** What is done about them: only once they are noticed. */
  readonly control: readonly Money[];
  readonly plain: PlainStream;
}

/** The same in plain numbers, for sums with weights that are no whole numbers. */
interface PlainStream {
  readonly byYear: readonly number[];
  readonly harm: readonly number[];
  readonly control: readonly number[];
}

/** What an infestation costs by year since establishment. */
export interface YearlyCost extends CostStream {
  /** Of this, the parts whose prices rise otherwise than prices in general. */
  readonly rising: ReadonlyMap<PriceGroup, CostStream>;
}

/** Whole cents by year: what is lost, what is done, and of both the parts whose prices rise otherwise. */
export interface CentsByYear {
  readonly harm: number[];
  readonly control: number[];
  readonly rising: Map<PriceGroup, CentsByYear>;
}

export const noCents = (horizon: number): CentsByYear => ({
  harm: Array<number>(horizon).fill(0),
  control: Array<number>(horizon).fill(0),
  rising: new Map(),
});

/** For who asks: most of the many streams are read in plain numbers alone. */
export const moneyIn = ({ harm, control }: CentsByYear) => ({
  byYear: (): readonly Money[] => Array.from(together(harm, control), moneyOf),
  harm: (): readonly Money[] => Array.from(harm, moneyOf),
  control: (): readonly Money[] => Array.from(control, moneyOf),
});

export function plainOf({ harm, control }: CentsByYear): PlainStream {
  return { byYear: inUnits(together(harm, control)), harm: inUnits(harm), control: inUnits(control) };
}

export const risingOf = ({ rising }: CentsByYear): YearlyCost["rising"] =>
  new Map([...rising].map(([group, cents]) => [group, new Stream(cents)]));

/** One of the many: money is made when asked for and then kept. */
export class Stream implements YearlyCost {
  readonly plain: PlainStream;
  readonly rising: YearlyCost["rising"];
  readonly #cents: CentsByYear;
  readonly #money: { [Part in "byYear" | "harm" | "control"]?: readonly Money[] } = {};

  constructor(cents: CentsByYear) {
    this.plain = plainOf(cents);
    this.rising = risingOf(cents);
    this.#cents = cents;
  }

  get byYear() {
    return this.#made("byYear");
  }
  get harm() {
    return this.#made("harm");
  }
  get control() {
    return this.#made("control");
  }

  #made(part: "byYear" | "harm" | "control"): readonly Money[] {
    const made = this.#money[part] ?? moneyIn(this.#cents)[part]();
    this.#money[part] = made;
    return made;
  }
}

const together = (harm: readonly number[], control: readonly number[]) =>
  harm.map((cents, year) => cents + (control[year] ?? 0));

const inUnits = (cents: readonly number[]): number[] => cents.map((each) => each / centsPerUnit);

import { at, noElement, numbersBy } from "../../../lists.js";
import type { AssumptionId } from "../../register/register.js";
import type { Charge, Priced, Tell, YearTable } from "../component.js";

export const firstOf = (table: YearTable, list: number): number => (list === 0 ? 0 : endOf(table, list - 1));

export const endOf = ({ ends }: YearTable, list: number): number => ends[list] ?? noElement(ends, list);

/** The lines of each year; of years that are alike they are the same. */
export function linesByYear(table: YearTable): ReadonlyArray<readonly Priced[]> {
  const lists = table.ends.map((end, list) =>
    Array.from({ length: end - firstOf(table, list) }, (_, line) =>
      lineAt(table, firstOf(table, list) + line),
    ),
  );
  return table.lists.map((list) => at(lists, list));
}

function lineAt({ charges, quantities, unitRates, assumptionIds }: YearTable, line: number): Priced {
  const { what, type, quantityKind } = at(charges, line);
  return {
    what,
    type,
    quantity: at(quantities, line),
    quantityKind,
    unitRate: at(unitRates, line),
    assumptionIds: at(assumptionIds, line),
  };
}

/** By year, the first that has the same list in each of some tables. */
export const firstAlike = (tables: readonly YearTable[], count: number): number[] =>
  numbersBy(count, (year) => {
    let first = 0;
    while (!tables.every(({ lists }) => lists[first] === lists[year])) first += 1;
    return first;
  });

/** A table of lists as they stand. */
export function tableOf(years: ReadonlyArray<readonly Priced[]>): YearTable {
  const known: (readonly Priced[])[] = [];
  const lists: number[] = [];
  const told = new MergedLists();
  for (const lines of years) {
    let list = known.lastIndexOf(lines);
    if (list < 0) {
      list = known.push(lines) - 1;
      told.addList(lines);
    }
    lists.push(list);
  }
  return told.table(lists);
}

/** The first charge of a list that has the name, type and kind of one: of many alike one is kept. */
function alikeIn(charges: readonly Charge[], charge: Charge): Charge {
  const { what, type, quantityKind } = charge;
  for (const each of charges)
    if (each.what === what && each.type === type && each.quantityKind === quantityKind) return each;
  return charge;
}

interface Joined {
  readonly one: readonly AssumptionId[];
  readonly other: readonly AssumptionId[];
  readonly both: readonly AssumptionId[];
}

/**
 * Adds up what it is told under the same name, list by list, with the assumptions of all of it; the merged unit rate is the
 * mean weighted by quantity.
 */
export class MergedLists {
  readonly #ends: number[] = [];
  readonly #charges: Charge[] = [];
  readonly #ids: (readonly AssumptionId[])[] = [];
  readonly #quantities: number[] = [];
  /** Costs of the list that is told, unit rates of those before. */
  readonly #rates: number[] = [];
  /** The assumptions that were added last to each line: a charge that is told month by month brings the same ones. */
  readonly #added: (readonly AssumptionId[])[] = [];
  readonly #joined: Joined[] = [];
  #first = 0;

  readonly tell: Tell = (charge, quantity) => {
    if (quantity === 0) return;
    const cost = quantity * charge.unitRate;
    const ids = charge.assumptionIds;
    const line = this.#lineOf(charge);
    if (line < 0) {
      this.#push(charge, quantity, cost);
      return;
    }
    this.#quantities[line] = (this.#quantities[line] ?? 0) + quantity;
    this.#rates[line] = (this.#rates[line] ?? 0) + cost;
    if (this.#added[line] === ids) return;
    this.#ids[line] = this.#together(at(this.#ids, line), ids);
    this.#added[line] = ids;
  };

  /** Ends the list that is told. @returns its number */
  endList(): number {
    for (let line = this.#first; line < this.#charges.length; line++)
      this.#rates[line] = (this.#rates[line] ?? 0) / (this.#quantities[line] ?? 0);
    this.#end();
    return this.#ends.length - 1;
  }

  /** A list as it stands, in which nothing is added up. */
  addList(lines: readonly Priced[]): void {
    for (const line of lines) this.#push(line, line.quantity, line.unitRate);
    this.#end();
  }

  /** What was told, in columns without room for more. @param lists by year, the number of its list */
  table(lists: readonly number[]): YearTable {
    return {
      lists,
      ends: this.#ends.slice(),
      charges: this.#charges.slice(),
      assumptionIds: this.#ids.slice(),
      quantities: this.#quantities.slice(),
      unitRates: this.#rates.slice(),
    };
  }

  #push(charge: Charge, quantity: number, rate: number): void {
    this.#charges.push(charge);
    this.#ids.push(charge.assumptionIds);
    this.#added.push(charge.assumptionIds);
    this.#quantities.push(quantity);
    this.#rates.push(rate);
  }

  #end(): void {
    for (let line = this.#first; line < this.#charges.length; line++)
      this.#charges[line] = alikeIn(this.#charges, at(this.#charges, line));
    this.#first = this.#charges.length;
    this.#ends.push(this.#first);
  }

  #lineOf(charge: Charge): number {
    const charges = this.#charges;
    for (let line = this.#first; line < charges.length; line++) if (charges[line] === charge) return line;
    const { what } = charge;
    for (let line = this.#first; line < charges.length; line++) if (charges[line]?.what === what) return line;
    return -1;
  }

  /** The same list where it holds all of the others already, and once for the same two. */
  #together(one: readonly AssumptionId[], other: readonly AssumptionId[]): readonly AssumptionId[] {
    for (const each of this.#joined) if (each.one === one && each.other === other) return each.both;
    const both = other.every((id) => one.includes(id)) ? one : [...new Set([...one, ...other])];
    this.#joined.push({ one, other, both });
    return both;
  }
}

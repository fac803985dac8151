import type { Assumption } from "../../assumptions/entry.js";
import type { ShortTypical } from "../../assumptions/typical-short.js";
import type { DimensionName } from "../../units/dimensions.js";
import type { SpreadQuantity } from "../../units/spread.js";
import { noSurerThanTyped } from "../typed/no-surer.js";
import { amountText, isMoney, mapped, type Range, rangeOf, type Writing } from "./amount-text.js";
import { TypicalValue } from "./typical-value.js";

/** Typical values that forms offer as well. */
type OfferedTypical =
  | "typical.fouled-infested-water"
  | "typical.coverage-roadside"
  | "typical.coverage-locked-ramp"
  | "typical.sensitivity"
  | "typical.efficacy";
/** Entries that the model reads as well. */
type ModelEntry = "hydraulics.viscosity";
export type TypicalId = ShortTypical | OfferedTypical | ModelEntry;

/** Typical values by their ids. */
export type TypicalValues = ReadonlyMap<string, Assumption>;

/** What a study is filled up with. */
export interface Filling {
  readonly writing: Writing;
  /** An entry's range. */
  readonly typical: (id: TypicalId) => Range;
  /** A typical value of the study, with its range; `change` turns the entry's values into the field's. */
  readonly ranged: (
    id: TypicalId,
    dimension: DimensionName,
    change?: (each: number) => number,
  ) => TypicalValue;
  /** The same without a range. */
  readonly single: (
    id: TypicalId,
    dimension: DimensionName,
    change?: (each: number) => number,
  ) => TypicalValue;
  /** An amount that is told as typical because of an entry. */
  readonly amount: (id: TypicalId, range: Range, dimension: DimensionName) => TypicalValue;
  /** An amount that follows from what the author gave. */
  readonly text: (range: Range, dimension: DimensionName) => string | number;
  /** Of water, as the model has it. */
  readonly viscosity: number;
  /** Year of whose prices the entries are. */
  readonly priceYear: number;
}

const same = (each: number) => each;
const middle = ({ value }: Range): Range => ({
  low: value,
  value,
  high: value,
});

/** @param rate units of the study's currency for a US dollar */
export function filling(values: TypicalValues, writing: Writing, rate: number): Filling {
  const entryOf = (id: TypicalId): Assumption => {
    const entry = values.get(id);
    if (!entry) throw new Error(`no entry ${id}`);
    return entry;
  };
  const priced = (dimension: DimensionName) => (isMoney(dimension) ? rate : 1);
  const text = (range: Range, dimension: DimensionName) => amountText(range, dimension, writing);
  const amount = (id: TypicalId, range: Range, dimension: DimensionName) =>
    new TypicalValue(id, text(range, dimension), (path) =>
      text(noSurerThanTyped(range, { path, dimension }, { entries: values }), dimension),
    );
  const converted = (id: TypicalId, dimension: DimensionName, change: (each: number) => number) =>
    mapped(entryOf(id), (each) => change(each) * priced(dimension));
  return {
    writing,
    typical: entryOf,
    ranged: (id, dimension, change = same) => amount(id, converted(id, dimension, change), dimension),
    single: (id, dimension, change = same) => amount(id, middle(converted(id, dimension, change)), dimension),
    amount,
    text,
    viscosity: entryOf("hydraulics.viscosity").value,
    priceYear: entryOf("typical.wage").priceYear ?? Number.NaN,
  };
}

/** A fact as the author wrote it, or else a typical value. */
export const factOr = (fact: SpreadQuantity | undefined, typical: () => unknown): unknown =>
  fact ? fact.text : typical();

/** A fact's range, or that of a typical value. */
export const rangeOr = (fact: SpreadQuantity | undefined, typical: Range): Range =>
  fact ? rangeOf(fact) : typical;

import { at, sumOf } from "../../lists.js";
import type { Formula } from "./sheet.js";

/** A part of a formula with the value that it has now: what is built of such parts is worked out as it is written. */
export interface Worked extends Formula {
  readonly result: number;
  /** Whether it joins parts by signs, and stands in brackets where another sign could tear it apart. */
  readonly joins: boolean;
}

/** A stretch of cells with their values. */
export interface Stretch {
  readonly formula: string;
  readonly results: readonly number[];
}

/** What is so or not. */
export interface Condition {
  readonly formula: string;
  readonly isSo: boolean;
}

const whole = (formula: string, result: number): Worked => ({ formula, result, joins: false });
const joined = (formula: string, result: number): Worked => ({ formula, result, joins: true });
const held = ({ formula, joins }: Worked) => (joins ? `(${formula})` : formula);

export const cell = whole;

/** A number that a relation has of itself, as the 1 of 1 − h. */
export const number = (constant: number): Worked =>
  constant < 0 ? joined(String(constant), constant) : whole(String(constant), constant);

export const plus = (...terms: readonly Worked[]): Worked =>
  terms.length === 1
    ? at(terms, 0)
    : joined(terms.map(({ formula }) => formula).join("+") || "0", sumOf(terms.map(({ result }) => result)));

export const minus = (from: Worked, less: Worked): Worked =>
  joined(`${from.formula}-${held(less)}`, from.result - less.result);

export const times = (...factors: readonly Worked[]): Worked =>
  factors.length === 1
    ? at(factors, 0)
    : joined(
        factors.map(held).join("*"),
        factors.reduce((product, { result }) => product * result, 1),
      );

export const over = (part: Worked, of: Worked): Worked =>
  joined(`${held(part)}/${held(of)}`, part.result / of.result);

export const power = (base: Worked, exponent: Worked): Worked =>
  joined(`${held(base)}^${held(exponent)}`, base.result ** exponent.result);

export const oneLess = (part: Worked): Worked => minus(number(1), part);

export const exponential = (of: Worked): Worked => whole(`EXP(${of.formula})`, Math.exp(of.result));

export const least = (...of: readonly Worked[]): Worked => extreme("MIN", Math.min, of);
export const most = (...of: readonly Worked[]): Worked => extreme("MAX", Math.max, of);

const extreme = (name: string, find: (...values: number[]) => number, of: readonly Worked[]): Worked =>
  whole(`${name}(${of.map(({ formula }) => formula).join(",")})`, find(...of.map(({ result }) => result)));

/** Half a cent is rounded away from nothing. */
export const toTheCent = (amount: Worked): Worked =>
  whole(`ROUND(${amount.formula},2)`, roundedAway(amount.result, 100));

const roundedAway = (amount: number, steps: number) =>
  (Math.sign(amount) * Math.round(Math.abs(amount) * steps)) / steps;

/** The least whole number from this on. @param amount 0 or more */
export const roundedUp = (amount: Worked): Worked =>
  whole(`ROUNDUP(${amount.formula},0)`, Math.ceil(amount.result));

/** Next to half a cent a spreadsheet may round to the other side than the model did. */
const nearHalfACent = 1e-6;

/** An amount as the model rounded it: what lies next to half a cent is moved to the side that it took. */
export function amountOf(exact: Worked, cents: number): Worked {
  const scaled = Math.abs(exact.result * 100);
  if (Math.abs((scaled % 1) - 1 / 2) >= nearHalfACent) return { ...toTheCent(exact), result: cents / 100 };
  const moved = Math.sign(cents / 100 - exact.result) * nearHalfACent;
  return whole(`ROUND(${exact.formula}${moved < 0 ? "-" : "+"}0.000001,2)`, cents / 100);
}

export const sum = (...of: ReadonlyArray<Stretch | Worked>): Worked =>
  of.length === 0
    ? number(0)
    : whole(
        `SUM(${of.map(({ formula }) => formula).join(",")})`,
        sumOf(of.flatMap((each) => ("results" in each ? each.results : [each.result]))),
      );

export const sumOfProducts = (first: Stretch, ...others: readonly Stretch[]): Worked =>
  whole(
    `SUMPRODUCT(${[first, ...others].map(({ formula }) => formula).join(",")})`,
    sumOf(
      first.results.map((each, index) =>
        others.reduce((product, { results }) => product * at(results, index), each),
      ),
    ),
  );

/** Sum of those whose key is this one; keys are words of the program's own. */
export const sumOfKey = (
  keys: { readonly formula: string; readonly texts: readonly string[] },
  key: string,
  of: Stretch,
): Worked =>
  whole(
    `SUMIF(${keys.formula},"${key}",${of.formula})`,
    sumOf(of.results.filter((_, index) => keys.texts[index] === key)),
  );

/** Sum of those whose number is at most this one. */
export const sumUpTo = (numbers: Stretch, last: Worked, of: Stretch): Worked =>
  whole(
    `SUMIF(${numbers.formula},"<="&${held(last)},${of.formula})`,
    sumOf(of.results.filter((_, index) => at(numbers.results, index) <= last.result)),
  );

/** The one whose number is this. */
export const valueAtNumber = (numbers: Stretch, sought: Worked, of: Stretch): Worked =>
  whole(
    `SUMIF(${numbers.formula},${sought.formula},${of.formula})`,
    sumOf(of.results.filter((_, index) => at(numbers.results, index) === sought.result)),
  );

export const isAbove = (one: Worked, other: Worked): Condition => ({
  formula: `${one.formula}>${other.formula}`,
  isSo: one.result > other.result,
});

export const isSame = (one: Worked, other: Worked): Condition => ({
  formula: `${one.formula}=${other.formula}`,
  isSo: one.result === other.result,
});

export const isNot = ({ formula, isSo }: Condition): Condition => ({
  formula: `NOT(${formula})`,
  isSo: !isSo,
});

export const both = (one: Condition, other: Condition): Condition => ({
  formula: `AND(${one.formula},${other.formula})`,
  isSo: one.isSo && other.isSo,
});

export const either = (one: Condition, other: Condition): Condition => ({
  formula: `OR(${one.formula},${other.formula})`,
  isSo: one.isSo || other.isSo,
});

export const when = (condition: Condition, then: Worked, otherwise: Worked): Worked =>
  whole(
    `IF(${condition.formula},${then.formula},${otherwise.formula})`,
    condition.isSo ? then.result : otherwise.result,
  );

/** Words in place of a number where a condition does not hold. */
export const whenOrWords = (condition: Condition, then: Formula, words: string): Formula => ({
  formula: `IF(${condition.formula},${then.formula},"${words}")`,
  result: condition.isSo ? then.result : words,
});

import { at } from "../../lists.js";
import { requireFinite, requireSameLength, requireValues, requireWithin } from "./allowed.js";
import { cholesky, type Matrix, multiplied, solvedForward } from "./cholesky.js";
import { correlations } from "./correlation.js";
import { normalQuantile } from "./normal-quantile.js";
import { risingOrder } from "./ranks.js";

/**
 * Columns put into an order in which their rank correlations are near the target matrix; each keeps its values, so a
 * Latin hypercube stays one. The first column keeps its order too. Meant for shares, before quantiles are taken of
 * them: there no two are equal.
 * Normal scores of the columns' ranks are freed of their own correlation, given the target's, and the columns are put in
 * the order of the result. Source: Iman and Conover 1982. Communications in Statistics - Simulation and Computation
 * 11(3):311-334 (from memory). Unlike the paper, which takes the target for the scores themselves, the scores get
 * 2 sin(πρ/6), with which normal numbers have the rank correlation ρ (Pearson 1907, from memory).
 * A column added to the group at its end leaves the others as they are.
 * @throws RangeError if the target is no correlation matrix of the columns, or the columns are too short or do not vary
 */
export function withRankCorrelation(columns: Matrix, target: Matrix): number[][] {
  requireColumns(columns);
  requireCorrelations(target, columns.length);
  const wanted = cholesky(
    "rank correlation matrix",
    target.map((row, index) => row.map((each, column) => (index === column ? 1 : scoreCorrelation(each)))),
    "Bring the correlations nearer to 0",
  );
  const draws = at(columns, 0).length;
  // Van der Waerden's: the normal quantile of rank / (n + 1).
  const sorted = at(columns, 0).map((_, index) => normalQuantile((index + 1) / (draws + 1)));
  const scores = columns.map((column) => placedByRank(sorted, column));
  const found = cholesky(
    `correlations of ${columns.length} columns as drawn`,
    correlations(scores),
    "Draw each column by itself",
  );
  const mixed = at(scores, 0).map((_, draw) => {
    const drawn = scores.map((column) => at(column, draw));
    return multiplied(wanted, solvedForward(found, drawn));
  });
  return columns.map((column, index) => {
    const guide = mixed.map((draw) => at(draw, index));
    return inOrderOf(column, guide);
  });
}

/**
 * Columns that all move with one common cause: each pair has the same rank correlation, 0 to 1. At 1 all rise and fall
 * with the first. A column added at the end leaves the others as they are.
 * @throws RangeError for a correlation outside 0 to 1, or columns that are too short or do not vary
 */
export function withCommonFactor(columns: Matrix, rankCorrelation: number): number[][] {
  requireColumns(columns);
  requireWithin("rank correlation of the group", rankCorrelation, 0, 1);
  if (rankCorrelation === 1) return columns.map((column) => inOrderOf(column, at(columns, 0)));
  const row = (index: number) => columns.map((_, other) => (index === other ? 1 : rankCorrelation));
  return withRankCorrelation(
    columns,
    columns.map((_, index) => row(index)),
  );
}

const scoreCorrelation = (rankCorrelation: number) => 2 * Math.sin((Math.PI * rankCorrelation) / 6);

/** The values in the order of the guide: the least where the guide is least, and so on. */
const inOrderOf = (values: readonly number[], guide: readonly number[]): number[] =>
  placedByRank(
    values.toSorted((one, other) => one - other),
    guide,
  );

function placedByRank(sorted: readonly number[], guide: readonly number[]): number[] {
  const arranged = Array<number>(sorted.length).fill(0);
  risingOrder(guide).forEach((place, rank) => {
    arranged[place] = at(sorted, rank);
  });
  return arranged;
}

function requireColumns(columns: Matrix): void {
  if (columns.length === 0) throw new RangeError("a group of 0 columns; allowed: 1 or more");
  columns.forEach((column, index) => {
    requireValues(`column ${index}`, column, columns.length + 1);
    requireSameLength(`column ${index}`, column, "column 0", at(columns, 0));
  });
}

function requireCorrelations(target: Matrix, size: number): void {
  const name = (row: number, column: number) => `rank correlation matrix: row ${row}, column ${column}`;
  if (target.length !== size || target.some((row) => row.length !== size)) {
    const sizes = target.map((row) => row.length).join(", ");
    throw new RangeError(`rank correlation matrix: rows of ${sizes}; allowed: ${size} rows of ${size}`);
  }
  target.forEach((row, index) => {
    row.forEach((value, column) => {
      requireFinite(name(index, column), value);
      requireWithin(name(index, column), value, -1, 1);
      const mirrored = at(at(target, column), index);
      if (value !== mirrored) {
        throw new RangeError(`${name(index, column)} is ${value}, mirrored ${mirrored}; allowed: equal`);
      }
    });
    if (row[index] !== 1) throw new RangeError(`${name(index, index)} is ${row[index]}; allowed: 1`);
  });
}

import { at } from "../../lists.js";

export type Matrix = readonly (readonly number[])[];

/**
 * Lower triangular L with L Lᵀ equal to a symmetric matrix, which exists only if the matrix is positive definite.
 * @throws RangeError that names the first row that contradicts those before it or follows from them, and then the remedy
 */
export function cholesky(name: string, matrix: Matrix, remedy: string): number[][] {
  const factor: number[][] = [];
  matrix.forEach((entries, row) => {
    const own: number[] = [];
    for (let column = 0; column < row; column++) {
      const other = at(factor, column);
      own.push((at(entries, column) - product(own, other, column)) / at(other, column));
    }
    const left = at(entries, row) - product(own, own, row);
    if (!(left > leastLeft * at(entries, row))) {
      throw new RangeError(
        `${name}: row ${row} cannot stand beside the rows before it; allowed: a positive definite matrix. ${remedy}`,
      );
    }
    own.push(Math.sqrt(left));
    factor.push(own);
  });
  return factor;
}

/** Of what is left of a row less than this is rounding. */
const leastLeft = 1e-12;

function product(one: readonly number[], other: readonly number[], length: number): number {
  let sum = 0;
  for (let index = 0; index < length; index++) sum += at(one, index) * at(other, index);
  return sum;
}

/** The vector x with L x equal to a vector, for a lower triangular L without zeros on its diagonal. */
export function solvedForward(factor: Matrix, vector: readonly number[]): number[] {
  const solution: number[] = [];
  factor.forEach((entries, row) => {
    solution.push((at(vector, row) - product(entries, solution, row)) / at(entries, row));
  });
  return solution;
}

/** L x for a lower triangular L. */
export function multiplied(factor: Matrix, vector: readonly number[]): number[] {
  return factor.map((entries, row) => product(entries, vector, row + 1));
}

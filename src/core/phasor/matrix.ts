import { complex, type Complex } from "../terms";
import { LEAST_OHMS, INVERSE_WITHIN } from "./tolerances";

/** A small dense complex matrix, row by row. */
export type Matrix = readonly (readonly Complex[])[];

/** A matrix of so many rows and columns, each entry asked for by its place. */
export const fillMatrix = (
  rows: number,
  columns: number,
  at: (row: number, column: number) => Complex,
): Complex[][] =>
  Array.from({ length: rows }, (_, row) =>
    Array.from({ length: columns }, (_unused, column) => at(row, column)),
  );

/** The rows and columns named, in that order. */
export const pick = (matrix: Matrix, rows: readonly number[], columns = rows): Complex[][] =>
  rows.map((row) => columns.map((column) => matrix[row]![column]!));

/** The product of an m × n and an n × k matrix, m × k. */
export const multiply = (a: Matrix, b: Matrix): Complex[][] =>
  fillMatrix(a.length, b[0]?.length ?? 0, (row, column) =>
    a[row]!.reduce<Complex>(
      (sum, it, k) => complex.add(sum, complex.times(it, b[k]![column]!)),
      complex.zero,
    ),
  );

/** An m × n matrix times a vector of n, a vector of m. */
export const times = (a: Matrix, vector: readonly Complex[]): Complex[] =>
  a.map((row) =>
    row.reduce<Complex>((sum, it, k) => complex.add(sum, complex.times(it, vector[k]!)), complex.zero),
  );

/** The difference of two matrices of one shape. */
export const subtractMatrix = (a: Matrix, b: Matrix): Complex[][] =>
  a.map((row, i) => row.map((it, j) => complex.subtract(it, b[i]![j]!)));

/**
 * Inverse by Gauss and Jordan with partial pivoting.
 * @throws RangeError when the matrix is singular
 */
export function invert(matrix: Matrix): Complex[][] {
  const size = matrix.length;
  const work = matrix.map((row, i) => [...row, ...row.map((_, j): Complex => (i === j ? [1, 0] : [0, 0]))]);
  for (let column = 0; column < size; column++) {
    let pivotRow = column;
    for (let row = column + 1; row < size; row++)
      if (complex.magnitude(work[row]![column]!) > complex.magnitude(work[pivotRow]![column]!))
        pivotRow = row;
    if (complex.magnitude(work[pivotRow]![column]!) === 0) throw new RangeError("the matrix is singular");
    [work[column], work[pivotRow]] = [work[pivotRow]!, work[column]!];
    const scale = complex.inverse(work[column]![column]!);
    work[column] = work[column]!.map((it) => complex.times(it, scale));
    for (let row = 0; row < size; row++) {
      if (row === column) continue;
      const factor = work[row]![column]!;
      if (factor[0] === 0 && factor[1] === 0) continue;
      work[row] = work[row]!.map((it, k) => complex.subtract(it, complex.times(factor, work[column]![k]!)));
    }
  }
  return work.map((row) => row.slice(size));
}

/**
 * Inverse of an impedance matrix. One without an inverse (no impedance at all, perfect coupling) is a file's way to say
 * that there is next to none: it stands with a microohm more on its diagonal.
 */
export function invertOhms(ohms: Matrix): Complex[][] {
  try {
    const siemens = invert(ohms);
    const unit = multiply(ohms, siemens);
    const isInverse = unit.every((row, i) =>
      row.every(([re, im], j) => Math.abs(re - (i === j ? 1 : 0)) + Math.abs(im) < INVERSE_WITHIN),
    );
    if (isInverse) return siemens;
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
  }
  return invert(
    ohms.map((row, i) => row.map(([re, im], j): Complex => [re + (i === j ? LEAST_OHMS : 0), im])),
  );
}

/**
 * Kron reduction: eliminates conductors whose far ends are bonded to earth at both ends.
 * Source: Kron 1952; Kersting, Distribution System Modeling and Analysis, section 4.1.6 (from memory).
 */
export function kronReduce(matrix: Matrix, keep: readonly number[]): Complex[][] {
  const drop = matrix.map((_, index) => index).filter((index) => !keep.includes(index));
  if (drop.length === 0) return pick(matrix, keep);
  const kept = pick(matrix, keep);
  return subtractMatrix(
    kept,
    multiply(multiply(pick(matrix, keep, drop), invert(pick(matrix, drop))), pick(matrix, drop, keep)),
  );
}

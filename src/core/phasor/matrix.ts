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
  fillMatrix(a.length, b[0]?.length ?? 0, (row, column) => sumOfProducts(a[row]!, (k) => b[k]![column]!));

/** An m × n matrix times a vector of n, a vector of m. */
export const times = (a: Matrix, vector: readonly Complex[]): Complex[] =>
  a.map((row) => sumOfProducts(row, (k) => vector[k]!));

function sumOfProducts(row: readonly Complex[], other: (k: number) => Complex): Complex {
  let re = 0;
  let im = 0;
  for (let k = 0; k < row.length; k++) {
    const [aRe, aIm] = row[k]!;
    const [bRe, bIm] = other(k);
    re += aRe * bRe - aIm * bIm;
    im += aRe * bIm + aIm * bRe;
  }
  return [re, im];
}

/** The difference of two matrices of one shape. */
export const subtractMatrix = (a: Matrix, b: Matrix): Complex[][] =>
  a.map((row, i) => row.map((it, j) => complex.subtract(it, b[i]![j]!)));

/**
 * Inverse by Gauss and Jordan with partial pivoting, in two flat columns of numbers: a feeder asks for thousands.
 * @throws RangeError when the matrix is singular
 */
export function invert(matrix: Matrix): Complex[][] {
  const size = matrix.length;
  const width = 2 * size;
  const re = new Float64Array(size * width);
  const im = new Float64Array(size * width);
  for (let row = 0; row < size; row++) {
    for (let column = 0; column < size; column++)
      [re[row * width + column], im[row * width + column]] = matrix[row]![column]!;
    re[row * width + size + row] = 1;
  }
  for (let column = 0; column < size; column++) {
    const pivot = largestBelow(re, im, width, column, size);
    if (re[pivot * width + column] === 0 && im[pivot * width + column] === 0)
      throw new RangeError("the matrix is singular");
    swapRows(re, width, column, pivot);
    swapRows(im, width, column, pivot);
    divideRow(re, im, width, column);
    for (let row = 0; row < size; row++) if (row !== column) takeRow(re, im, width, row, column);
  }
  return fillMatrix(size, size, (row, column) => {
    const at = row * width + size + column;
    return [re[at]!, im[at]!];
  });
}

/** The row from `column` down with the largest entry in that column. */
function largestBelow(re: Float64Array, im: Float64Array, width: number, column: number, size: number) {
  const magnitude = (row: number) => Math.hypot(re[row * width + column]!, im[row * width + column]!);
  let best = column;
  for (let row = column + 1; row < size; row++) if (magnitude(row) > magnitude(best)) best = row;
  return best;
}

function swapRows(values: Float64Array, width: number, a: number, b: number): void {
  if (a === b) return;
  for (let k = 0; k < width; k++) {
    const kept = values[a * width + k]!;
    values[a * width + k] = values[b * width + k]!;
    values[b * width + k] = kept;
  }
}

/** Divides a row by its entry on the diagonal. */
function divideRow(re: Float64Array, im: Float64Array, width: number, row: number): void {
  const start = row * width;
  const [byRe, byIm] = complex.inverse([re[start + row]!, im[start + row]!]);
  for (let at = start; at < start + width; at++) {
    const was = re[at]!;
    re[at] = was * byRe - im[at]! * byIm;
    im[at] = was * byIm + im[at]! * byRe;
  }
}

/** Takes so much of another row from a row that its entry in that column vanishes. */
function takeRow(re: Float64Array, im: Float64Array, width: number, row: number, other: number): void {
  const [start, from] = [row * width, other * width];
  const byRe = re[start + other]!;
  const byIm = im[start + other]!;
  if (byRe === 0 && byIm === 0) return;
  for (let k = 0; k < width; k++) {
    re[start + k]! -= byRe * re[from + k]! - byIm * im[from + k]!;
    im[start + k]! -= byRe * im[from + k]! + byIm * re[from + k]!;
  }
}

/**
 * Inverse of an impedance matrix. One without an inverse (no impedance at all, perfect coupling) is a file's way to say
 * that there is next to none: it stands with a microohm more on its diagonal.
 */
export const invertOhms = (ohms: Matrix): Complex[][] =>
  trueInverse(ohms) ??
  invert(ohms.map((row, i) => row.map(([re, im], j): Complex => [re + (i === j ? LEAST_OHMS : 0), im])));

/** The inverse of a matrix where the two together are the unit matrix. */
export function trueInverse(ohms: Matrix): Complex[][] | undefined {
  try {
    const siemens = invert(ohms);
    const unit = multiply(ohms, siemens);
    const isInverse = unit.every((row, i) =>
      row.every(([re, im], j) => Math.abs(re - (i === j ? 1 : 0)) + Math.abs(im) < INVERSE_WITHIN),
    );
    return isInverse ? siemens : undefined;
  } catch (error) {
    if (error instanceof RangeError) return undefined;
    throw error;
  }
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

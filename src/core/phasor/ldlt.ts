/**
 * Sparse LDLᵀ of a complex symmetric matrix, row by row (up-looking), without pivoting.
 * The method is that of Davis, Direct Methods for Sparse Linear Systems (2006), chapter 4, and his LDL of 2005.
 */

/** The upper triangle of a symmetric matrix in compressed columns; column k holds rows up to k, the diagonal last. */
export interface UpperPattern {
  readonly size: number;
  readonly start: Int32Array;
  readonly row: Int32Array;
}

/**
 * Spacing of numbers beside 1. A pivot that is less than this beside the largest term that it is the sum of is nothing but
 * rounding: the rounding itself stands for it, with the sign of that term, and a refinement makes good what it costs.
 */
const ROUNDING = 2 ** -52;

/** Which entries of L there will be, and the elimination tree. */
export interface Symbolic {
  readonly pattern: UpperPattern;
  readonly parent: Int32Array;
  readonly start: Int32Array;
  /** rows of each column of L, increasing */
  readonly row: Int32Array;
}

/** The factors, as columns of L and the inverse pivots. */
export interface Factor {
  readonly symbolic: Symbolic;
  readonly re: Float64Array;
  readonly im: Float64Array;
  readonly inverseRe: Float64Array;
  readonly inverseIm: Float64Array;
  /** the first row whose pivot vanished, −1 for none: then the numbers mean nothing */
  singularAt: number;
}

/** Finds the elimination tree and the pattern of L. */
export function analyse(pattern: UpperPattern): Symbolic {
  const { size, start, row } = pattern;
  const parent = new Int32Array(size).fill(-1);
  const mark = new Int32Array(size).fill(-1);
  const count = new Int32Array(size);
  for (let k = 0; k < size; k++) {
    mark[k] = k;
    for (let p = start[k]!; p < start[k + 1]!; p++) {
      for (let i = row[p]!; mark[i] !== k; i = parent[i]!) {
        if (parent[i] === -1) parent[i] = k;
        count[i]!++;
        mark[i] = k;
      }
    }
  }
  const columnStart = new Int32Array(size + 1);
  for (let k = 0; k < size; k++) columnStart[k + 1] = columnStart[k]! + count[k]!;
  const rows = new Int32Array(columnStart[size]!);
  const next = columnStart.slice(0, size);
  mark.fill(-1);
  for (let k = 0; k < size; k++) {
    mark[k] = k;
    for (let p = start[k]!; p < start[k + 1]!; p++) {
      for (let i = row[p]!; mark[i] !== k; i = parent[i]!) {
        rows[next[i]!++] = k;
        mark[i] = k;
      }
    }
  }
  return { pattern, parent, start: columnStart, row: rows };
}

/** Work space that one factorization needs: reused, so that a change of one switch allocates nothing. */
export class Factorizer {
  private readonly yRe: Float64Array;
  private readonly yIm: Float64Array;
  private readonly rowPattern: Int32Array;
  private readonly mark: Int32Array;
  /** entries of each column filled so far */
  private readonly filled: Int32Array;

  constructor(readonly symbolic: Symbolic) {
    const { size } = symbolic.pattern;
    this.yRe = new Float64Array(size);
    this.yIm = new Float64Array(size);
    this.rowPattern = new Int32Array(size);
    this.mark = new Int32Array(size);
    this.filled = new Int32Array(size);
  }

  /** Factors the whole matrix whose values stand in the order of the pattern. */
  factor(valuesRe: Float64Array, valuesIm: Float64Array): Factor {
    const { size } = this.symbolic.pattern;
    const entries = this.symbolic.row.length;
    const factor: Factor = {
      symbolic: this.symbolic,
      re: new Float64Array(entries),
      im: new Float64Array(entries),
      inverseRe: new Float64Array(size),
      inverseIm: new Float64Array(size),
      singularAt: -1,
    };
    this.filled.fill(0);
    this.mark.fill(-1);
    for (let k = 0; k < size; k++) this.row(factor, k, valuesRe, valuesIm);
    return factor;
  }

  /** Row k of L and pivot k from the rows above. */
  private row(factor: Factor, k: number, valuesRe: Float64Array, valuesIm: Float64Array): void {
    const { pattern, parent, start, row } = this.symbolic;
    const { re, im, inverseRe, inverseIm } = factor;
    const { yRe, yIm, rowPattern, mark, filled } = this;
    const { size } = pattern;
    let top = size;
    mark[k] = k;
    let pivotRe = 0;
    let pivotIm = 0;
    let largestRe = 0;
    let largestIm = 0;
    let largest = 0;
    for (let p = pattern.start[k]!; p < pattern.start[k + 1]!; p++) {
      let i = pattern.row[p]!;
      if (i === k) {
        pivotRe += valuesRe[p]!;
        pivotIm += valuesIm[p]!;
        largestRe = pivotRe;
        largestIm = pivotIm;
        largest = Math.abs(pivotRe) + Math.abs(pivotIm);
        continue;
      }
      yRe[i]! += valuesRe[p]!;
      yIm[i]! += valuesIm[p]!;
      let length = 0;
      for (; mark[i] !== k; i = parent[i]!) {
        rowPattern[length++] = i;
        mark[i] = k;
      }
      while (length > 0) rowPattern[--top] = rowPattern[--length]!;
    }
    for (; top < size; top++) {
      const i = rowPattern[top]!;
      const aRe = yRe[i]!;
      const aIm = yIm[i]!;
      yRe[i] = 0;
      yIm[i] = 0;
      const end = start[i]! + filled[i]!++;
      // What stands open takes its room and nothing else: of many things in parallel nearly all entries are nothing.
      if (aRe === 0 && aIm === 0) continue;
      for (let p = start[i]!; p < end; p++) {
        const at = row[p]!;
        yRe[at]! -= re[p]! * aRe - im[p]! * aIm;
        yIm[at]! -= re[p]! * aIm + im[p]! * aRe;
      }
      const lRe = aRe * inverseRe[i]! - aIm * inverseIm[i]!;
      const lIm = aRe * inverseIm[i]! + aIm * inverseRe[i]!;
      const takenRe = lRe * aRe - lIm * aIm;
      const takenIm = lRe * aIm + lIm * aRe;
      const taken = Math.abs(takenRe) + Math.abs(takenIm);
      if (taken > largest) {
        largestRe = -takenRe;
        largestIm = -takenIm;
        largest = taken;
      }
      pivotRe -= takenRe;
      pivotIm -= takenIm;
      re[end] = lRe;
      im[end] = lIm;
    }
    if (Math.abs(pivotRe) + Math.abs(pivotIm) < largest * ROUNDING) {
      pivotRe = largestRe * ROUNDING;
      pivotIm = largestIm * ROUNDING;
    }
    const square = pivotRe * pivotRe + pivotIm * pivotIm;
    if (!(square > 0) || !Number.isFinite(square)) {
      if (factor.singularAt === -1) factor.singularAt = k;
      inverseRe[k] = 0;
      inverseIm[k] = 0;
      return;
    }
    inverseRe[k] = pivotRe / square;
    inverseIm[k] = -pivotIm / square;
  }
}

/** Solves in place, in the order of elimination. */
export function solveInPlace(factor: Factor, xRe: Float64Array, xIm: Float64Array): void {
  const { symbolic, re, im, inverseRe, inverseIm } = factor;
  const { start, row } = symbolic;
  const { size } = symbolic.pattern;
  for (let k = 0; k < size; k++) {
    const aRe = xRe[k]!;
    const aIm = xIm[k]!;
    if (aRe === 0 && aIm === 0) continue;
    for (let p = start[k]!; p < start[k + 1]!; p++) {
      const at = row[p]!;
      xRe[at]! -= re[p]! * aRe - im[p]! * aIm;
      xIm[at]! -= re[p]! * aIm + im[p]! * aRe;
    }
  }
  for (let k = 0; k < size; k++) {
    const aRe = xRe[k]!;
    const aIm = xIm[k]!;
    xRe[k] = aRe * inverseRe[k]! - aIm * inverseIm[k]!;
    xIm[k] = aRe * inverseIm[k]! + aIm * inverseRe[k]!;
  }
  for (let k = size - 1; k >= 0; k--) {
    let sumRe = xRe[k]!;
    let sumIm = xIm[k]!;
    for (let p = start[k]!; p < start[k + 1]!; p++) {
      const at = row[p]!;
      sumRe -= re[p]! * xRe[at]! - im[p]! * xIm[at]!;
      sumIm -= re[p]! * xIm[at]! + im[p]! * xRe[at]!;
    }
    xRe[k] = sumRe;
    xIm[k] = sumIm;
  }
}

/** A sparse vector carried forward through L: rows of the elimination tree's path, increasing. */
export interface Carried {
  readonly row: Int32Array;
  readonly re: Float64Array;
  readonly im: Float64Array;
}

/** The entries of a vector that has few, by their row. */
export type SparseVector = readonly (readonly [row: number, re: number, im: number])[];

/**
 * L⁻¹ of a vector with few entries: only the paths from them to the root of the elimination tree are walked. Two such
 * vectors give uᵀ A⁻¹ v by `between`, without a whole solve.
 */
export class Carrier {
  private readonly re: Float64Array;
  private readonly im: Float64Array;
  /** number of the last vector that came through a row */
  private readonly visit: Int32Array;
  private readonly rows: Int32Array;
  private visits = 0;
  /** of each vector that is walked up beside others, re and im */
  private readonly beside: Float64Array[] = [];
  constructor(private readonly factor: Factor) {
    const { size } = factor.symbolic.pattern;
    this.re = new Float64Array(size);
    this.im = new Float64Array(size);
    this.visit = new Int32Array(size);
    this.rows = new Int32Array(size);
  }

  carry(entries: SparseVector): Carried {
    const { symbolic, re: lRe, im: lIm } = this.factor;
    const { parent, start, row } = symbolic;
    const { re, im, visit, rows } = this;
    const stamp = ++this.visits;
    let count = 0;
    let isIncreasing = true;
    for (const [at, valueRe, valueIm] of entries) {
      re[at]! += valueRe;
      im[at]! += valueIm;
      for (let k = at; k !== -1 && visit[k] !== stamp; k = parent[k]!) {
        visit[k] = stamp;
        if (count > 0 && rows[count - 1]! > k) isIncreasing = false;
        rows[count++] = k;
      }
    }
    const path = rows.slice(0, count);
    // One path is increasing as it is; several may have to be put in order.
    if (!isIncreasing) path.sort();
    for (const k of path) {
      const aRe = re[k]!;
      const aIm = im[k]!;
      if (aRe === 0 && aIm === 0) continue;
      for (let p = start[k]!; p < start[k + 1]!; p++) {
        const at = row[p]!;
        re[at]! -= lRe[p]! * aRe - lIm[p]! * aIm;
        im[at]! -= lRe[p]! * aIm + lIm[p]! * aRe;
      }
    }
    const carried: Carried = { row: path, re: new Float64Array(count), im: new Float64Array(count) };
    for (let at = 0; at < count; at++) {
      const k = path[at]!;
      carried.re[at] = re[k]!;
      carried.im[at] = im[k]!;
      re[k] = 0;
      im[k] = 0;
    }
    return carried;
  }

  /**
   * uᵀ A⁻¹ v of each pair out of a few vectors whose entries lie on one path to the root, as those of one point do: walked up
   * together, and nothing kept. Other digits at the end than `between`, which sums from the root.
   *
   * @returns re and im by turns, row by row; undefined where the entries lie on several paths
   */
  among(vectors: readonly SparseVector[]): Float64Array | undefined {
    const { symbolic, re: lRe, im: lIm, inverseRe, inverseIm } = this.factor;
    const { parent, start, row } = symbolic;
    const count = vectors.length;
    while (this.beside.length < 2 * count) this.beside.push(new Float64Array(parent.length));
    const { beside } = this;
    let lowest = parent.length;
    let left = 0;
    const stamp = ++this.visits;
    vectors.forEach((entries, nth) => {
      for (const [at, valueRe, valueIm] of entries) {
        beside[2 * nth]![at]! += valueRe;
        beside[2 * nth + 1]![at]! += valueIm;
        lowest = Math.min(lowest, at);
        if (this.visit[at] !== stamp) left++;
        this.visit[at] = stamp;
      }
    });
    const sums = new Float64Array(2 * count * count);
    const [aRe, aIm] = [new Float64Array(count), new Float64Array(count)];
    for (let k = left === 0 ? -1 : lowest; k !== -1; k = parent[k]!) {
      if (this.visit[k] === stamp) left--;
      let isNothing = true;
      for (let nth = 0; nth < count; nth++) {
        aRe[nth] = beside[2 * nth]![k]!;
        aIm[nth] = beside[2 * nth + 1]![k]!;
        beside[2 * nth]![k] = 0;
        beside[2 * nth + 1]![k] = 0;
        if (aRe[nth] !== 0 || aIm[nth] !== 0) isNothing = false;
      }
      if (isNothing) continue;
      for (let one = 0; one < count; one++) {
        const scaledRe = aRe[one]! * inverseRe[k]! - aIm[one]! * inverseIm[k]!;
        const scaledIm = aRe[one]! * inverseIm[k]! + aIm[one]! * inverseRe[k]!;
        for (let other = 0; other < count; other++) {
          const at = 2 * (one * count + other);
          sums[at]! += scaledRe * aRe[other]! - scaledIm * aIm[other]!;
          sums[at + 1]! += scaledRe * aIm[other]! + scaledIm * aRe[other]!;
        }
        const [xRe, xIm] = [beside[2 * one]!, beside[2 * one + 1]!];
        for (let p = start[k]!; p < start[k + 1]!; p++) {
          const at = row[p]!;
          xRe[at]! -= lRe[p]! * aRe[one]! - lIm[p]! * aIm[one]!;
          xIm[at]! -= lRe[p]! * aIm[one]! + lIm[p]! * aRe[one]!;
        }
      }
    }
    if (left === 0) return sums;
    for (const values of beside) values.fill(0);
    return undefined;
  }

  /** uᵀ A⁻¹ v of two carried vectors. */
  between(u: Carried, v: Carried): [re: number, im: number] {
    const { inverseRe, inverseIm } = this.factor;
    let sumRe = 0;
    let sumIm = 0;
    let i = u.row.length - 1;
    let j = v.row.length - 1;
    // Paths meet at the root and run together from where they join: walk both from the root down.
    while (i >= 0 && j >= 0) {
      const a = u.row[i]!;
      const b = v.row[j]!;
      if (a > b) i--;
      else if (b > a) j--;
      else {
        const re = u.re[i]! * v.re[j]! - u.im[i]! * v.im[j]!;
        const im = u.re[i]! * v.im[j]! + u.im[i]! * v.re[j]!;
        sumRe += re * inverseRe[a]! - im * inverseIm[a]!;
        sumIm += re * inverseIm[a]! + im * inverseRe[a]!;
        i--;
        j--;
      }
    }
    return [sumRe, sumIm];
  }
}

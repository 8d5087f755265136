import { type Circuit, EARTH } from "../network";

/**
 * Shares the currents of ideal joins that lie in parallel. Their volts say nothing of how current divides between them,
 * so it divides as between equal tiny resistances: the least sum of squares. Changes the currents in place.
 */
export function loopCurrents(
  circuit: Circuit,
  redundant: Uint8Array,
  joinRe: Float64Array,
  joinIm: Float64Array,
): void {
  const closing = [...redundant.keys()].filter((k) => redundant[k] === 1);
  if (closing.length === 0) return;
  const loops = closing.map((k) => loopThrough(circuit, redundant, k));
  const gram = loops.map((a) => loops.map((b) => dot(a, b)));
  for (const current of [joinRe, joinIm]) {
    const wanted = loops.map((loop) => -[...loop].reduce((sum, [k, sign]) => sum + sign * current[k]!, 0));
    const share = solveSymmetric(gram, wanted);
    loops.forEach((loop, index) => {
      for (const [k, sign] of loop) current[k]! += sign * share[index]!;
    });
  }
}

/** Joins around a loop, with the sign of their current in it: the closing join, then the way back through the others. */
type Loop = ReadonlyMap<number, number>;

function loopThrough(circuit: Circuit, redundant: Uint8Array, closing: number): Loop {
  const { joins } = circuit;
  const index = (node: number) => (node === EARTH ? circuit.nodeCount : node);
  const around = new Map<number, number[]>();
  for (let k = 0; k < joins.count; k++) {
    if (joins.closed[k] === 0 || redundant[k] !== 0) continue;
    for (const node of [index(joins.from[k]!), index(joins.to[k]!)]) {
      const known = around.get(node);
      if (known === undefined) around.set(node, [k]);
      else known.push(k);
    }
  }
  const start = index(joins.to[closing]!);
  const goal = index(joins.from[closing]!);
  const cameBy = new Map<number, { join: number; sign: number; before: number }>();
  const queue = [start];
  const seen = new Set(queue);
  for (const node of queue) {
    if (node === goal) break;
    for (const k of around.get(node) ?? []) {
      const [from, to] = [index(joins.from[k]!), index(joins.to[k]!)];
      const other = node === from ? to : from;
      if (seen.has(other)) continue;
      seen.add(other);
      cameBy.set(other, { join: k, sign: node === from ? 1 : -1, before: node });
      queue.push(other);
    }
  }
  const loop = new Map([[closing, 1]]);
  for (let at = goal; at !== start;) {
    const step = cameBy.get(at)!;
    loop.set(step.join, step.sign);
    at = step.before;
  }
  return loop;
}

const dot = (a: Loop, b: Loop): number => [...a].reduce((sum, [k, sign]) => sum + sign * (b.get(k) ?? 0), 0);

/** Solves a small symmetric positive definite system by elimination. */
function solveSymmetric(matrix: readonly (readonly number[])[], right: readonly number[]): number[] {
  const rows = matrix.map((row, i) => [...row, right[i]!]);
  rows.forEach((pivotRow, k) => {
    for (let i = k + 1; i < rows.length; i++) {
      const factor = rows[i]![k]! / pivotRow[k]!;
      for (let j = k; j <= rows.length; j++) rows[i]![j]! -= factor * pivotRow[j]!;
    }
  });
  const x = new Array<number>(rows.length).fill(0);
  for (let k = rows.length - 1; k >= 0; k--) {
    let sum = rows[k]![rows.length]!;
    for (let j = k + 1; j < rows.length; j++) sum -= rows[k]![j]! * x[j]!;
    x[k] = sum / rows[k]![k]!;
  }
  return x;
}

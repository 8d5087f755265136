import { type Circuit, EARTH } from "../network";
import { LOOPS_SHARED_WITHIN } from "./tolerances";

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
  const forest = forestOf(circuit, redundant);
  const loops = closing.map((k) => loopThrough(circuit, forest, k));
  for (const current of [joinRe, joinIm]) {
    const wanted = Float64Array.from(loops, (loop) => -along(loop, current));
    const share = shareOf(loops, wanted, current.length);
    loops.forEach((loop, index) => add(loop, share[index]!, current));
  }
}

/** Joins around a loop by turns with the sign of their current in it: the closing join, then the way back through the others. */
type Loop = readonly number[];

/** Sum of the currents along a loop. */
function along(loop: Loop, current: Float64Array): number {
  let sum = 0;
  for (let at = 0; at < loop.length; at += 2) sum += loop[at + 1]! * current[loop[at]!]!;
  return sum;
}

function add(loop: Loop, amps: number, to: Float64Array): void {
  for (let at = 0; at < loop.length; at += 2) to[loop[at]!]! += loop[at + 1]! * amps;
}

/** Closed joins that close no loop, as trees: the join by which each node was come to, and how many lie before it. */
interface Forest {
  readonly by: Int32Array;
  readonly before: Int32Array;
  readonly depth: Int32Array;
}

const indexOf = ({ nodeCount }: Circuit, node: number): number => (node === EARTH ? nodeCount : node);

function forestOf(circuit: Circuit, redundant: Uint8Array): Forest {
  const { joins, nodeCount } = circuit;
  const around: number[][] = Array.from({ length: nodeCount + 1 }, () => []);
  for (let k = 0; k < joins.count; k++) {
    if (joins.closed[k] === 0 || redundant[k] !== 0) continue;
    around[indexOf(circuit, joins.from[k]!)]!.push(k);
    around[indexOf(circuit, joins.to[k]!)]!.push(k);
  }
  const by = new Int32Array(nodeCount + 1).fill(-1);
  const before = new Int32Array(nodeCount + 1).fill(-1);
  const depth = new Int32Array(nodeCount + 1).fill(-1);
  for (let root = 0; root <= nodeCount; root++) {
    if (depth[root] !== -1) continue;
    depth[root] = 0;
    const queue = [root];
    for (const node of queue)
      for (const k of around[node]!) {
        const from = indexOf(circuit, joins.from[k]!);
        const other = from === node ? indexOf(circuit, joins.to[k]!) : from;
        if (depth[other] !== -1) continue;
        depth[other] = depth[node]! + 1;
        by[other] = k;
        before[other] = node;
        queue.push(other);
      }
  }
  return { by, before, depth };
}

function loopThrough(circuit: Circuit, { by, before, depth }: Forest, closing: number): Loop {
  const { joins } = circuit;
  const loop = [closing, 1];
  // The loop goes on from where the closing join ends, and comes back to where it begins.
  let end = indexOf(circuit, joins.to[closing]!);
  let start = indexOf(circuit, joins.from[closing]!);
  while (end !== start) {
    const isEnd = depth[end]! >= depth[start]!;
    const node = isEnd ? end : start;
    const k = by[node]!;
    const isUp = indexOf(circuit, joins.from[k]!) === node;
    loop.push(k, isUp === isEnd ? 1 : -1);
    if (isEnd) end = before[node]!;
    else start = before[node]!;
  }
  return loop;
}

/** Currents around the loops that make the sum along each what is wanted, by conjugate gradients: loops share joins, but few each. */
function shareOf(loops: readonly Loop[], wanted: Float64Array, joinCount: number): Float64Array {
  const share = new Float64Array(loops.length);
  const left = wanted.slice();
  const way = wanted.slice();
  const onJoins = new Float64Array(joinCount);
  const dot = (a: Float64Array, b: Float64Array) => a.reduce((sum, it, at) => sum + it * b[at]!, 0);
  const asked = dot(left, left);
  let square = asked;
  for (
    let round = 0;
    round < 10 * loops.length && square > LOOPS_SHARED_WITHIN * LOOPS_SHARED_WITHIN * asked;
    round++
  ) {
    onJoins.fill(0);
    loops.forEach((loop, index) => add(loop, way[index]!, onJoins));
    const across = Float64Array.from(loops, (loop) => along(loop, onJoins));
    const far = square / dot(way, across);
    for (let at = 0; at < share.length; at++) {
      share[at]! += far * way[at]!;
      left[at]! -= far * across[at]!;
    }
    const next = dot(left, left);
    for (let at = 0; at < way.length; at++) way[at] = left[at]! + (next / square) * way[at]!;
    square = next;
  }
  return share;
}

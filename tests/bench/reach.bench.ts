import { expect, test } from "vitest";
import type { StillhotDocument } from "../../src/core";
import {
  circuitOf,
  conductorGraphOf,
  nodeName,
  reachGraphOf,
  reachOf,
  standingOf,
} from "../../src/core/network";
import { sidelineSystem } from "../support/sideline";
import { medianMilliseconds, report } from "../support/measure";

/** A bare breadth-first pass over the same columns: nothing but which nodes are joined. */
function bareWalk(
  rowStart: Int32Array,
  around: Int32Array,
  from: Int32Array,
  to: Int32Array,
  on: Uint8Array,
  start: number,
) {
  const seen = new Uint8Array(rowStart.length - 1);
  const queue = new Int32Array(rowStart.length - 1);
  let tail = 1;
  queue[0] = start;
  seen[start] = 1;
  for (let head = 0; head < tail; head++) {
    const node = queue[head]!;
    for (let at = rowStart[node]!, end = rowStart[node + 1]!; at < end; at++) {
      const edge = around[at]! >> 1;
      if (on[edge] === 0) continue;
      const other = (around[at]! & 1) === 0 ? to[edge]! : from[edge]!;
      if (seen[other] === 1) continue;
      seen[other] = 1;
      queue[tail++] = other;
    }
  }
  return tail;
}

for (const devices of [1000, 10000, 100000])
  test(`reach of ${devices} elements`, () => {
    const document = sidelineSystem(devices) as unknown as StillhotDocument;
    const circuit = circuitOf(document.system);
    const graph = reachGraphOf(circuit);
    const standing = standingOf(circuit);
    const reach = medianMilliseconds(() => reachOf(circuit, standing, { groundsLifted: true }));
    const bare = medianMilliseconds(() => {
      for (const letter of ["A", "B", "C", "N"] as const)
        bareWalk(
          graph.rowStart,
          graph.around,
          graph.from,
          graph.to,
          graph.on,
          circuit.nodeOf.get(`sub/${letter}`)!,
        );
    });
    const library = conductorGraphOf(circuit);
    const { tied } = reachOf(circuit, standing, { groundsLifted: true });
    const isTied = new Set(
      [...tied.keys()].filter((node) => tied[node] === 1).map((it) => nodeName(circuit, it)),
    );
    const supplied = circuit.emfs
      .filter(({ part }) => part.on)
      .flatMap(({ legs }) => legs.map((it) => nodeName(circuit, it)));
    const onGraphology = medianMilliseconds(() => {
      const seen = new Set(supplied);
      for (const node of seen)
        library.forEachEdge(node, (_edge, { on, kind }, from, to) => {
          const other = from === node ? to : from;
          if (on && kind !== "ground" && !isTied.has(other)) seen.add(other);
        });
      return seen.size;
    }, 3);
    report(
      `reach, ${devices} elements, against a bare pass over the same columns`,
      reach / bare,
      "at most 3",
    );
    report(
      `the same walk on graphology against reach, ${devices} elements`,
      onGraphology / reach,
      "at least 10",
    );
    expect(reach / bare).toBeLessThan(3);
    expect(onGraphology / reach).toBeGreaterThan(10);
  });

import { expect, test } from "vitest";
import type { StillhotDocument } from "../../src/core";
import {
  type Circuit,
  circuitOf,
  conductorGraphOf,
  EARTH,
  nodeName,
  REACH,
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

/** The walk of `reachOf` as one writes it on a graph library: neutrals tied to earth first, then every arrival with the one before it. */
function walkOnGraphology(
  graph: ReturnType<typeof conductorGraphOf>,
  { ties, neutrals, supplies }: ReturnType<typeof startsOf>,
): ReadonlyMap<string, Arrival> {
  const tied = new Set(ties);
  for (const node of tied)
    graph.forEachEdge(node, (_edge, { on, kind }, from, to) => {
      const other = from === node ? to : from;
      if (on && kind === "metallic" && neutrals.has(other)) tied.add(other);
    });
  const arrivals = new Map<string, Arrival>();
  const queue: Arrival[] = [];
  const arrive = (arrival: Arrival) => {
    const name = `${arrival.isForward ? "forward" : "backfeed"} ${arrival.node}`;
    if (tied.has(arrival.node) || arrivals.has(name)) return;
    arrivals.set(name, arrival);
    queue.push(arrival);
  };
  supplies.forEach(arrive);
  for (const before of queue)
    graph.forEachEdge(before.node, (by, { on, kind }, from, to) => {
      if (!on || kind === "ground") return;
      const leaves = from === before.node;
      const isForward = before.isForward && (kind === "metallic" || (kind === "forward" && leaves));
      arrive({ node: leaves ? to : from, isForward, before, by });
    });
  return arrivals;
}

interface Arrival {
  readonly node: string;
  readonly isForward: boolean;
  readonly before?: Arrival;
  readonly by?: string;
}

/** Where the walk on names begins: neutral ends at earth, and what supplies. */
function startsOf(circuit: Circuit) {
  const nameOf = (node: number) => nodeName(circuit, node);
  const { joins, rods, emfs, letterOfNode } = circuit;
  const atEarth = [...joins.to.keys()].filter((k) => joins.to[k] === EARTH && joins.closed[k] === 1);
  return {
    ties: [...rods.map(({ node }) => node), ...atEarth.map((k) => joins.from[k]!)].map(nameOf),
    neutrals: new Set([...letterOfNode.keys()].filter((node) => letterOfNode[node] === "N").map(nameOf)),
    supplies: emfs
      .filter(({ part }) => part.on)
      .flatMap(({ part, legs, star }) =>
        [...legs, star]
          .filter((node) => node !== EARTH)
          .map((node): Arrival => ({ node: nameOf(node), isForward: part.role !== "generator" })),
      ),
  };
}

for (const devices of [1000, 10000, 100000])
  test(`reach of ${devices} elements`, () => {
    const document = sidelineSystem(devices) as unknown as StillhotDocument;
    const circuit = circuitOf(document.system);
    const graph = reachGraphOf(circuit);
    const standing = standingOf(circuit);
    const library = conductorGraphOf(circuit);
    const starts = startsOf(circuit);
    // What is short is slow until it is compiled: a small system is walked more often.
    const rounds = Math.max(7, Math.round(500_000 / devices));
    const reach = medianMilliseconds(() => reachOf(circuit, standing, { groundsLifted: true }), rounds);
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
    }, rounds);
    const onGraphology = medianMilliseconds(() => walkOnGraphology(library, starts), rounds);

    const { how } = reachOf(circuit, standing, { groundsLifted: true });
    const arrivals = walkOnGraphology(library, starts);
    const bitOf = (name: string, bit: number) => (arrivals.has(name) ? bit : 0);
    for (let node = 0; node < circuit.nodeCount; node++) {
      const name = nodeName(circuit, node);
      const wanted = bitOf(`forward ${name}`, REACH.forward) | bitOf(`backfeed ${name}`, REACH.backfeed);
      if (how[node] !== wanted) expect.fail(`${name} is reached otherwise on graphology`);
    }
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

import { connectedComponents } from "graphology-components";
import { expect, test } from "vitest";
import { randomDocument } from "../../../tests/support/randomSystems";
import { readDocument } from "../document";
import { circuitOf } from "./circuitOf";
import { floodFrom, wayBack } from "./flood";
import { conductorGraphOf, nodeName } from "./graph";
import { reachGraphOf } from "./reach";

const systemOf = (seed: number) => {
  const file = readDocument(JSON.stringify(randomDocument(seed, { parts: 12 })));
  if (!("document" in file)) throw new Error(file.problems.map((it) => it.path).join());
  return file.document.system;
};

test("the graph has a node for each of the circuit and an edge for each way between two", () => {
  for (let seed = 1; seed <= 8; seed++) {
    const circuit = circuitOf(systemOf(seed));
    const graph = conductorGraphOf(circuit);
    expect([graph.order, graph.size]).toEqual([circuit.nodeCount, reachGraphOf(circuit).edgeCount]);
  }
});

/** graphology-components is the outside. */
test("a walk over every edge comes to all of a component and to nothing else, by an unbroken way", () => {
  let walks = 0;
  for (let seed = 1; seed <= 8; seed++) {
    const circuit = circuitOf(systemOf(seed));
    const graph = reachGraphOf(circuit);
    const components = connectedComponents(conductorGraphOf(circuit)).map((it) => it.toSorted());
    for (let start = 0; start < circuit.nodeCount; start += 5) {
      const flood = floodFrom(graph, [start, start], () => true);
      const names = flood.nodes.map((node) => nodeName(circuit, node));
      expect(names.toSorted()).toEqual(components.find((it) => it.includes(names[0]!)));
      for (const node of flood.nodes) {
        const way = wayBack(graph, flood, node);
        expect(way.reduce((at, edge) => graph.from[edge]! + graph.to[edge]! - at, node)).toBe(start);
      }
      walks++;
    }
  }
  expect(walks).toBeGreaterThan(40);
});

test("a walk ends where it is told to, and goes over no edge that does not pass", () => {
  const circuit = circuitOf(systemOf(3));
  const graph = reachGraphOf(circuit);
  const [node] = graph.from;
  expect(floodFrom(graph, [node!], () => false).nodes).toEqual([node]);
  const whole = floodFrom(graph, [node!], () => true).nodes;
  for (const [nth, last] of whole.entries()) {
    const ended = floodFrom(
      graph,
      [node!],
      () => true,
      (it) => it === last,
    );
    expect(ended.nodes).toEqual(whole.slice(0, nth + 1));
  }
  expect(whole.length).toBeGreaterThan(10);
  expect(
    floodFrom(
      graph,
      [node!],
      () => true,
      (it) => it === graph.to[0],
    ).nodes.at(-1),
  ).toBe(graph.to[0]);
});

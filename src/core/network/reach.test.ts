import { connectedComponents } from "graphology-components";
import Graph from "graphology";
import { describe, expect, test } from "vitest";
import { draws } from "../../../tests/support/draws";
import { randomDocument } from "../../../tests/support/randomSystems";
import { readDocument, type StillhotDocument } from "../document";
import { circuitOf, conductorGraphOf, nodeName, reachOf, standingOf } from ".";

const drawings: StillhotDocument[] = Array.from({ length: draws(200) }, (_, seed) =>
  readDocument(JSON.stringify(randomDocument(seed + 5000, { parts: 14 }))),
).flatMap((read) => ("document" in read ? [read.document] : []));

describe("N1 what the columns reach is what a general-purpose graph library finds connected (graphology-components)", () => {
  test("a conductor is reached exactly when its component, without tied neutrals, holds a source that is on", () => {
    for (const { system } of drawings) {
      const circuit = circuitOf(system);
      const reach = reachOf(circuit, standingOf(circuit), { groundsLifted: false });
      const tied = new Set(
        [...reach.tied.keys()].filter((node) => reach.tied[node] === 1).map((it) => nodeName(circuit, it)),
      );
      const joined = new Graph({ multi: true, type: "undirected" });
      conductorGraphOf(circuit).forEachNode((node) => {
        if (!tied.has(node)) joined.addNode(node);
      });
      conductorGraphOf(circuit).forEachEdge((_edge, { on }, from, to) => {
        if (on && joined.hasNode(from) && joined.hasNode(to)) joined.addEdge(from, to);
      });
      const seeds = new Set(
        circuit.emfs
          .filter((_, emf) => standingOf(circuit).emfOn[emf] === 1)
          .flatMap(({ legs, star }) => [...legs, star])
          .filter((node) => node >= 0)
          .map((node) => nodeName(circuit, node)),
      );
      const fed = new Set(
        connectedComponents(joined)
          .filter((names) => names.some((it) => seeds.has(it)))
          .flat(),
      );
      for (let node = 0; node < circuit.nodeCount; node++)
        expect(reach.how[node] !== 0, nodeName(circuit, node)).toBe(fed.has(nodeName(circuit, node)));
    }
  });
});

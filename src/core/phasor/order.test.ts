import { expect, test } from "vitest";
import { drawn } from "../../../tests/support/drawn";
import { circuitOf } from "../network";
import { eliminationOrder } from "./order";

/** A source with so many cutouts side by side on its pole, each of a phase and the neutral. */
function sideBySide(count: number) {
  const cutouts = Array.from({ length: count }, (_, n) => [
    `c${n}`,
    { kind: "cutout", phases: "A", from: "hub", to: `end${n}` },
  ]);
  const source = { kind: "source", phases: "ABC", at: "hub", kvLL: 12.47 };
  return circuitOf(drawn({ elements: { source, ...Object.fromEntries(cutouts) } }).system);
}

test("the currents of a device with several conductors go before the last of its points, so that what hangs on one pole fills nothing in", () => {
  const circuit = sideBySide(50);
  const placeOf = new Map([...eliminationOrder(circuit)].map((unknown, place) => [unknown, place]));
  const hub = [...circuit.nodeOf].flatMap(([id, node]) => (id.startsWith("hub") ? [placeOf.get(node)!] : []));
  const { joins, elementIds, nodeCount } = circuit;
  const currents = Array.from({ length: joins.count }, (_, join) => join)
    .filter((join) => elementIds[joins.element[join]!]!.startsWith("c"))
    .map((join) => placeOf.get(nodeCount + join)!);
  expect(currents.length).toBeGreaterThanOrEqual(100);
  expect(Math.max(...currents)).toBeLessThan(Math.min(...hub));
});

import { expect, test } from "vitest";
import { draw } from "../../../tests/support/jobNotation";
import { buildCircuit } from "./buildCircuit";

test("what runs beside a span stands at the span's stretch, with what it is and how far away, and at no other", () => {
  const { system } = draw(`
    s1  source p1    ABC kvLL=12.47
    sp1 span   p1-p2 A
    sp2 span   p2-p3 A
    nb1 nearby span=sp1 kvLL=34.5 relation=parallel spacingM=3
    nb2 nearby span=sp1 kvLL=69 relation=parallel spacingM=9
    w1  work   p2    A
  `);
  const { stretches, elementIds } = buildCircuit(system);
  const told = stretches.map(({ element, alongside }) => [
    elementIds[element],
    alongside.map((it) => [elementIds[it.element], it.spacingM]),
  ]);
  expect(told).toEqual([
    [
      "sp1",
      [
        ["nb1", 3],
        ["nb2", 9],
      ],
    ],
    ["sp2", []],
  ]);
});

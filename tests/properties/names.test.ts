import { expect, test } from "vitest";
import { asHeard, labelIn, type System } from "../../src/core";
import { french } from "../../src/core/terms/messages/fr";
import { drawing8500 } from "../support/ieee8500";
import { type Drawn, MADE } from "../support/madeDrawings";
import { namesIn, namesThere, takenForEachOther } from "../support/namesIn";

const DRAWINGS: (readonly [string, Drawn])[] = [
  ...MADE,
  ["the 8500-node feeder", drawing8500("balanced")],
  ["four hundred cutouts of one label on one pole", fourHundred()],
];

test.each(DRAWINGS)("D18 no two things of %s are called alike, and none by its id", (_, drawn) => {
  for (const catalogue of [undefined, french]) {
    const called = namesIn(drawn, catalogue);
    expect(takenForEachOther(called)).toEqual([]);
    expect(
      [...called].filter(([heard, [id]]) => heard === asHeard(id!) && labelIn(drawn.system, id!) === ""),
    ).toEqual([]);
  }
});

test.each(DRAWINGS)(
  "D18 nor are two things at one structure of %s, as a step under its visit has them",
  (_, drawn) => {
    for (const catalogue of [undefined, french])
      expect(namesThere(drawn, catalogue).flatMap(takenForEachOther)).toEqual([]);
  },
);

test.each(MADE)("no point and no device of %s have one id", (_, { system }) => {
  expect(Object.keys(system.points).filter((id) => Object.hasOwn(system.elements, id))).toEqual([]);
});

function fourHundred(): Drawn {
  const numbers = Array.from({ length: 400 }, (_, at) => at);
  return {
    system: {
      frequencyHz: 60,
      structures: { s: { label: "Pole 1" } },
      points: { p: { on: "s" }, ...Object.fromEntries(numbers.map((n) => [`q${n}`, { on: "s" }])) },
      elements: Object.fromEntries(
        numbers.map((n) => [
          `c${n}`,
          { kind: "cutout", from: "p", to: `q${n}`, phases: "A", label: "cutout" },
        ]),
      ),
    } as unknown as System,
  };
}

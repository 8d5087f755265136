import { expect, test } from "vitest";
import { asHeard, labelIn, nameIn, say, structuresOf, type System } from "../../src/core";
import { treeOf } from "../../src/core/drawing/layout/tree";
import { french } from "../../src/core/words";
import { drawing8500 } from "../support/ieee8500";
import { type Drawn, MADE } from "../support/madeDrawings";
import { spell } from "../support/words";
import { namesIn, namesThere, takenForEachOther } from "../support/namesIn";

/** A line of poles of one number, a pad of that number, and two points of one number from a file without structures. */
const OF_ONE_NUMBER = {
  system: {
    frequencyHz: 60,
    structures: {
      s1: { label: "Pole 7" },
      s2: { label: "pole-7" },
      s3: { label: "Pad 7", kind: "pad" },
      s4: { label: "Pole 7, tap" },
    },
    points: {
      p1: { on: "s1" },
      p2: { on: "s2" },
      p3: { on: "s3" },
      p4: { on: "s4" },
      p5: {},
      p6: { label: "Pole 8" },
      p7: { label: "Pole 8" },
    },
    elements: {
      src: { kind: "source", phases: "A", at: "p1", kvLL: 12.47 },
      ...Object.fromEntries(
        [1, 2, 3, 4, 6].map((n) => [
          `sp${n}`,
          { kind: "span", phases: "A", from: `p${n}`, to: `p${n === 4 ? 5 : n + 1}` },
        ]),
      ),
      c1: { kind: "cutout", phases: "A", from: "p5", to: "p6" },
    },
  } as unknown as System,
};

const DRAWINGS: (readonly [string, Drawn])[] = [
  ...MADE,
  ["the 8500-node feeder", drawing8500("balanced")],
  ["four hundred cutouts of one label on one pole", fourHundred()],
  ["poles of one number", OF_ONE_NUMBER],
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

test.each(DRAWINGS)(
  "D18 no two plates of a picture of %s are written alike, however little room there is",
  (_, { system }) => {
    const plates = new Set([...treeOf(system).branches.values()].map(({ plate }) => plate));
    const written = [...plates].flatMap(({ id, title, short, number }) =>
      [...new Set([title, short, number].map(asHeard))].map((it) => [it, id] as const),
    );
    const twice = written.filter(([it], nth) => it !== "" && written.findIndex(([a]) => a === it) !== nth);
    expect(twice).toEqual([]);
    expect(structuresOf(system).size).toBeGreaterThanOrEqual(plates.size);
  },
);

test.each(MADE)("no point and no device of %s have one id", (_, { system }) => {
  expect(Object.keys(system.points).filter((id) => Object.hasOwn(system.elements, id))).toEqual([]);
});

test("what is labelled with nothing that can be read goes by what it is and where, as what has no label does", () => {
  const { system } = OF_ONE_NUMBER;
  const told = (label: string) => {
    const structures = {
      ...system.structures,
      s2: { label },
      s3: { label },
    } as unknown as System["structures"];
    const drawn = { system: { ...system, structures } as System };
    return ["s2", "s3", "p2", "sp2"].map((id) => spell(say("name.plain", { name: nameIn(drawn, id) })));
  };
  expect(told("   ")).toEqual(told(""));
  expect(told("?")).not.toEqual(told(""));
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

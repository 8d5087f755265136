import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import {
  evidenceOf,
  isSameStructure,
  isUnreadable,
  readDocument,
  readValue,
  type System,
  structureOf,
  structuresOf,
  writeDocument,
} from ".";
import type { Json, JsonObject } from "../terms";
import { manyOnOnePole } from "../../../tests/support/manyOnOnePole";
import { spell, spellProblem } from "../../../tests/support/words";

const file = (system: object): Json => ({
  format: "stillhot",
  formatVersion: 1,
  title: "",
  system: system as JsonObject,
});

const read = (system: object): System => {
  const found = readValue(file(system));
  if (isUnreadable(found)) throw new Error(found.problems.map(spellProblem).join("\n"));
  return found.document.system;
};

/** A sideline off a main: clamp and cutout on pole 30, a transformer on pole 31, a house. */
const POINTS = {
  sub: { label: "Substation", kind: "station" },
  p30: { label: "Pole 30" },
  p30b: { label: "Pole 30, cutout top" },
  p30c: { label: "Pole 30, cutout bottom" },
  p31: { label: "Pole 31" },
  p31s: { label: "T1 secondary" },
  h: { label: "House", kind: "service" },
};
const ELEMENTS = {
  s1: { kind: "source", phases: "A", at: "sub", kvLL: 12.47 },
  main: { kind: "span", phases: "A", from: "sub", to: "p30" },
  k1: { kind: "clamp", phases: "A", from: "p30", to: "p30b" },
  c1: { kind: "cutout", phases: "A", from: "p30b", to: "p30c" },
  sp1: { kind: "span", phases: "A", from: "p30c", to: "p31" },
  t1: {
    kind: "transformer",
    phases: "A",
    from: "p31",
    to: "p31s",
    connection: "single",
    kva: 25,
    primaryKv: 7.2,
    secondaryV: 240,
  },
  m1: { kind: "meter", phases: "12", from: "p31s", to: "h" },
  ld1: { kind: "load", phases: "12", at: "h", kw: 2 },
};

/** Every structure as `id label: points | elements`. */
const told = (system: System): string[] =>
  [...structuresOf(system)].map(
    ([id, { label, points, elements }]) => `${id} ${label}: ${points.join(" ")} | ${elements.join(" ")}`,
  );

describe("D11 A file that names no structures has them derived: what is joined by anything but a span, of one kind", () => {
  test("a sideline", () => {
    expect(told(read({ points: POINTS, elements: ELEMENTS }))).toEqual([
      "sub Substation: sub | s1",
      "p30 Pole 30: p30 p30b p30c | k1 c1",
      "p31 Pole 31: p31 p31s | t1",
      "h House: h | ld1",
    ]);
  });

  test("a meter between a pole and a house is on neither, and a span is on neither", () => {
    const system = read({ points: POINTS, elements: ELEMENTS });
    expect(structureOf(system, "m1")).toBeUndefined();
    expect(structureOf(system, "sp1")).toBeUndefined();
    expect(structureOf(system, "c1")?.id).toBe("p30");
    expect(isSameStructure(system, "p30", "p30c")).toBe(true);
    expect(isSameStructure(system, "p30", "nothing")).toBe(false);
    expect(isSameStructure(system, "nothing", "nothing")).toBe(false);
  });
});

describe("D12 What the file says stands before what is derived", () => {
  const structures = {
    s30: { label: "Pole 30" },
    s31: { label: "Pole 31", x: 100, y: 0, evidence: "seen" },
    sh: { label: "House", kind: "service" },
  };

  test("points that say nothing join the structure that they hang on", () => {
    const points = { ...POINTS, p30: { on: "s30" }, p31s: { on: "s31" }, h: { on: "sh", kind: "service" } };
    const elements = { ...ELEMENTS, m1: { ...ELEMENTS.m1, on: "sh" } };
    expect(told(read({ structures, points, elements }))).toEqual([
      "s30 Pole 30: p30 p30b p30c | k1 c1",
      "s31 Pole 31: p31 p31s | t1",
      "sh House: h | m1 ld1",
      "sub Substation: sub | s1",
    ]);
  });

  test("a point without a kind of its own has its structure's", () => {
    const points = { ...POINTS, p30: { on: "v" }, p30b: { kind: "pad" }, p30c: { kind: "pad" } };
    const system = read({ structures: { v: { kind: "pad" } }, points, elements: ELEMENTS });
    expect(structureOf(system, "p30c")?.id).toBe("v");
  });

  test("what was seen at a structure holds for what is on it and says nothing itself", () => {
    const points = { ...POINTS, p31: { on: "s31" }, p31s: { on: "s31", evidence: "told" } };
    const elements = { ...ELEMENTS, ld1: { ...ELEMENTS.ld1, evidence: "assumed" } };
    const system = read({ structures, points, elements });
    const known = ["p31", "t1", "p31s", "ld1", "p30", "sp1"].map((id) => [id, evidenceOf(system, id)]);
    expect(Object.fromEntries(known)).toEqual({
      p31: "seen",
      t1: "seen",
      p31s: "told",
      ld1: "assumed",
      p30: "map",
      sp1: "map",
    });
  });

  test("a structure that nothing is on is a structure", () => {
    const system = read({ structures, points: {}, elements: {} });
    expect(told(system)).toEqual(["s30 Pole 30:  | ", "s31 Pole 31:  | ", "sh House:  | "]);
    expect(structureOf(system, "s31")).toMatchObject({ evidence: "seen", x: 100, isDerived: false });
  });
});

describe("What is wrong with structures is told with its path", () => {
  const structures = { s30: { label: "Pole 30" } };
  const system = (change: object) => ({ structures, points: POINTS, elements: ELEMENTS, ...change });
  test.each<[string, object, string]>([
    [
      "a structure that is not there",
      system({ points: { ...POINTS, p30: { on: "s99" } } }),
      'system.points.p30.on: found "s99", expected the id of a structure of this file',
    ],
    [
      "a point on two",
      system({ points: { ...POINTS, p30: { on: ["s30", "s31"] } } }),
      "system.points.p30.on: found a list of 2, expected an id",
    ],
    [
      "a device on what is no structure",
      system({ elements: { ...ELEMENTS, c1: { ...ELEMENTS.c1, on: "p30" } } }),
      'system.elements.c1.on: found "p30", expected the id of a structure of this file',
    ],
    [
      "a circle",
      system({ structures: { s30: { on: "s31" }, s31: { on: "s30" } } }),
      "system.structures.s30.on: a structure is on no other one; only points and devices say what they are on",
    ],
    [
      "an id that a point has",
      system({ structures: { p30: {} } }),
      "system.structures.p30: is the id of system.points.p30 too, expected one that nothing else has",
    ],
    [
      "an id that a device has",
      system({ structures: { c1: {} } }),
      "system.structures.c1: is the id of system.elements.c1 too, expected one that nothing else has",
    ],
    ["no map", system({ structures: [] }), "system.structures: found a list of 0, expected an object"],
    ["no record", system({ structures: { s30: 3 } }), "system.structures.s30: found 3, expected an object"],
    [
      "another kind",
      system({ structures: { s30: { kind: "tree" } } }),
      'system.structures.s30.kind: found "tree", expected one of pole, pad, vault, station, service',
    ],
    [
      "a label of 2 001 letters",
      system({ structures: { s30: { label: "x".repeat(2001) } } }),
      "system.structures.s30.label: ",
    ],
    [
      "a condition that nobody knows",
      system({ structures: { s30: { condition: "fine" } } }),
      'system.structures.s30.condition: found "fine"',
    ],
  ])("%s", (_, found, wanted) => {
    const answer = readValue(file(found));
    if (!isUnreadable(answer)) throw new Error("was read");
    expect(spellProblem(answer.problems[0]!)).toContain(wanted);
  });

  test("a source is turned on, not on a pole", () => {
    const answer = readValue(file(system({ elements: { ...ELEMENTS, s1: { ...ELEMENTS.s1, on: "s30" } } })));
    expect(isUnreadable(answer) && answer.problems[0]!.path).toBe("system.elements.s1.on");
  });
});

describe("A drawing that misleads is read, and what misleads is named", () => {
  const warned = (system: object): string[] => {
    const found = readValue(file(system));
    if (isUnreadable(found)) throw new Error(found.problems.map(spellProblem).join("\n"));
    return found.warnings.map(({ rule, where }) => `${rule} ${where}`);
  };
  const poles = (labels: readonly string[]): object => ({
    structures: Object.fromEntries(labels.map((label, n) => [`s${n}`, { label }])),
    points: Object.fromEntries(labels.map((_, n) => [`p${n}`, { on: `s${n}` }])),
    elements: {},
  });

  test.each<[string, object, string[]]>([
    ["two poles of one number", poles(["Pole 30", "Pole 30"]), ["name-twice s0, s1"]],
    ["but for case, spaces and punctuation", poles(["Pole 30", "POLE-30"]), ["name-twice s0, s1"]],
    ["two numbers", poles(["Pole 30", "Pole 31"]), []],
    ["no number at all", poles(["", ""]), []],
    [
      "forty of one number",
      poles(Array.from({ length: 40 }, () => "Pole 30")),
      ["name-twice s0, s1, s2, s3, s4, s5, s6, s7"],
    ],
    [
      "a place and a device of one pole",
      {
        structures: { s30: { label: "Pole 30" } },
        points: { ...POINTS, p30: { on: "s30" }, p30b: { on: "s30", label: "sideline cutout" } },
        elements: { ...ELEMENTS, c1: { ...ELEMENTS.c1, label: "Sideline cutout" } },
      },
      ["name-twice p30b, c1"],
    ],
    [
      "a device on a pole that it has no end at",
      {
        structures: { s30: { label: "Pole 30" } },
        points: { ...POINTS, p30: { on: "s30" } },
        elements: { ...ELEMENTS, t1: { ...ELEMENTS.t1, on: "s30" } },
      },
      ["on-elsewhere t1"],
    ],
    [
      "a point and a device of one id",
      {
        points: { p30: {}, c1: {} },
        elements: { c1: { kind: "cutout", phases: "A", from: "p30", to: "c1" } },
      },
      ["id-twice c1"],
    ],
    ["more on one pole than anybody could make out", manyOnOnePole(150), ["crowded-structure q"]],
    ["a good many on one pole", manyOnOnePole(149), []],
  ])("%s", (_, found, wanted) => {
    expect(warned(found)).toEqual(wanted);
  });
});

test("who is told of a crowded pole, or of one id, is told which, without an id", () => {
  const found = readValue(file(manyOnOnePole(10_000)));
  if (isUnreadable(found)) throw new Error("unreadable");
  expect(found.warnings.map(({ message }) => spell(message))).toEqual([
    "10000 devices and 10001 points are on Pole 1: laid out by the program they are one mark that counts what is open, tagged and grounded",
  ]);
});

test("ten thousand points on one pole are one pole", () => {
  const points: Record<string, object> = {};
  const elements: Record<string, object> = {};
  for (let n = 0; n < 10_000; n++) {
    points[`p${n}`] = { on: "s" };
    if (n > 0) elements[`l${n}`] = { kind: "lead", phases: "A", from: `p${n - 1}`, to: `p${n}` };
  }
  const system = read({ structures: { s: { label: "Pole 1" } }, points, elements });
  expect(structureOf(system, "l5000")?.points).toHaveLength(10_000);
});

describe("A file from before gives its bytes back", () => {
  test.each(
    ["demos", "scenarios"].flatMap((it) =>
      readdirSync(`shared/${it}`)
        .filter((name) => name.endsWith(".stillhot.json"))
        .map((name) => `shared/${it}/${name}`),
    ),
  )("%s", (path) => {
    const text = readFileSync(path, "utf8");
    const found = readDocument(text);
    expect(isUnreadable(found)).toBe(false);
    expect(isUnreadable(found) || writeDocument(found.document)).toBe(text);
  });
});

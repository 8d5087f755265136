import { describe, expect, test } from "vitest";
import { isRefusal } from "../../terms";
import { spell } from "../../../../tests/support/words";
import { edits, evidenceOf, readDocument, structureOf, structuresOf, writeDocument } from "..";
import type { StillhotDocument } from "../types";

const document = (system: object, job?: object): StillhotDocument => {
  const read = readDocument(JSON.stringify({ format: "stillhot", formatVersion: 1, title: "", system, job }));
  if ("problems" in read) throw new Error(JSON.stringify(read.problems));
  return read.document;
};

/** Pole 30 with a clamp and a cutout, and pole 31 behind it; no structure stands in the file. */
const DERIVED = document({
  points: {
    sub: { label: "Substation", kind: "station" },
    p30: { label: "Pole 30, main line" },
    p30b: { label: "Pole 30, cutout top", evidence: "assumed" },
    p30c: { label: "Pole 30, cutout bottom" },
    p31: { label: "Pole 31" },
  },
  elements: {
    src: { kind: "source", phases: "A", at: "sub", kvLL: 12.47 },
    main: { kind: "span", phases: "A", from: "sub", to: "p30" },
    k1: { kind: "clamp", phases: "A", from: "p30", to: "p30b", evidence: "told" },
    c1: { kind: "cutout", phases: "A", from: "p30b", to: "p30c" },
    sp1: { kind: "span", phases: "A", from: "p30c", to: "p31" },
  },
});

const done = (edit: edits.Things | ReturnType<typeof edits.seeStructure>, before = DERIVED) => {
  const change = (typeof edit === "function" ? edit : edits.removeThings(edit))(before);
  if (isRefusal(change)) throw new Error(spell(change.refused));
  return change;
};

test("a derived structure that is seen stands in the file, named by what its labels begin with, its places by the rest", () => {
  const { after, made } = done(edits.seeStructure("p30", "2026-03-31"));
  const [id = ""] = made ?? [];
  expect(after.system.structures).toEqual({
    [id]: { label: "Pole 30", evidence: "seen", seenOn: "2026-03-31" },
  });
  const { points } = after.system;
  expect(Object.values(points).map(({ label, on }) => [label, on])).toEqual([
    ["Substation", undefined],
    ["main line", id],
    ["cutout top", id],
    ["cutout bottom", id],
    ["Pole 31", undefined],
  ]);
});

test("whoever sees a structure sees all that is on it, and nothing else", () => {
  const { after } = done(edits.seeStructure("p30", "2026-03-31"));
  const seen = ["p30", "p30b", "p30c", "k1", "c1", "p31", "sp1"].filter(
    (id) => evidenceOf(after.system, id) === "seen",
  );
  expect(seen).toEqual(["p30", "p30b", "p30c", "k1", "c1"]);
});

test("a structure comes to stand in the file without anything of it being known otherwise", () => {
  const { after } = done(edits.setStructureKeys("p30", { condition: "leaning" }));
  for (const id of [...Object.keys(DERIVED.system.points), ...Object.keys(DERIVED.system.elements)])
    expect([id, evidenceOf(after.system, id)]).toEqual([id, evidenceOf(DERIVED.system, id)]);
  expect(structureOf(after.system, "c1")?.condition).toBe("leaning");
});

test.each([
  ["a day that is none", edits.seeStructure("p30", "2026-02-31x"), /2026-02-31x/],
  ["a structure that is not there", edits.seeStructure("p99", "2026-03-31"), /p99/],
  ["a key that it has not", edits.setStructureKeys("p30", { earthOhms: 25 }), /earthOhms/],
  ["the name of another one", edits.setStructureKeys("p31", { label: "Substation" }), /Substation/],
])("%s is refused in one sentence", (_, edit, says) => {
  const result = edit(DERIVED);
  expect(isRefusal(result) && spell(result.refused)).toMatch(says);
});

describe("removing a structure", () => {
  test("says what goes with it", () => {
    const { after, also = [] } = done({ structures: ["p30"] });
    expect(Object.keys(after.system.points)).toEqual(["sub", "p31"]);
    expect(Object.keys(after.system.elements)).toEqual(["src"]);
    expect(also.map((it) => spell(it))).toEqual([
      expect.stringMatching(
        /^With Pole 30, main line goes what is on it and the line to it: .*cutout.*; .*span/,
      ),
    ]);
  });

  test("leaves no structure of the file without a point", () => {
    const seen = done(edits.seeStructure("p30", "2026-03-31"));
    expect(done({ structures: [...(seen.made ?? [])] }, seen.after).after.system.structures).toBeUndefined();
    expect(done({ points: ["p30", "p30b", "p30c"] }, seen.after).after.system.structures).toBeUndefined();
    expect(done({ points: ["p30c"] }, seen.after).after.system.structures).toBeDefined();
  });
});

describe("a copy of a structure", () => {
  const { after: before, made = [] } = done(edits.seeStructure("p30", "2026-03-31"));
  const copy = done(edits.duplicate({ points: ["p30", "p30b", "p30c"] }, { x: 40, y: 40 }), before);

  test("is a structure of its own with the next number, that nobody has seen", () => {
    const others = [...structuresOf(copy.after.system).values()].filter(
      (it) => !it.isDerived && it.id !== made[0],
    );
    expect(others.map(({ label, evidence, points }) => [label, evidence, points.length])).toEqual([
      ["Pole 32", "map", 3],
    ]);
    expect(structuresOf(copy.after.system).get(made[0] as never)?.points).toHaveLength(3);
  });

  test("of a part of it stays on the same one", () => {
    const part = done(edits.duplicate({ points: ["p30c"] }, { x: 40, y: 40 }), before);
    expect(structuresOf(part.after.system).get(made[0] as never)?.points).toHaveLength(4);
  });

  test("goes into another drawing with its structure, and reads back", () => {
    const empty = document({ points: {}, elements: {} });
    const pasted = done(edits.paste(edits.copyOf(before, { points: ["p30", "p30b", "p30c"] })), empty);
    expect(Object.values(pasted.after.system.structures ?? {})).toEqual([{ label: "Pole 30" }]);
    expect("problems" in readDocument(writeDocument(pasted.after))).toBe(false);
    const part = done(edits.paste(edits.copyOf(before, { points: ["p30c"] })), empty);
    expect(Object.values(part.after.system.points)[0]).not.toHaveProperty("on");
  });
});

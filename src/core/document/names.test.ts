import { describe, expect, test } from "vitest";
import { say } from "../terms";
import { elementName, structureName } from "./names";
import type { System } from "./types";
import { readDocument } from "./read";
import { isUnreadable } from "./problem";
import { french, spell } from "../../../tests/support/words";

const POINTS = {
  p1: { label: "Pole 1", x: 0, y: 0 },
  p2: { label: "Pole 2", x: 100, y: 0 },
  p3: { x: 200, y: 0 },
  p4: { label: "Pole 4", x: 300, y: 0 },
  p5: { label: "Pole 4", x: 400, y: 0 },
};

/** What a drawing of these elements calls the first of them. */
function called(elements: Readonly<Record<string, object>>, catalogue?: typeof french): string {
  const read = readDocument(
    JSON.stringify({
      format: "stillhot",
      formatVersion: 1,
      title: "",
      system: { frequencyHz: 60, points: POINTS, elements },
    }),
  );
  if (isUnreadable(read)) throw new Error("the drawing cannot be read");
  const name = elementName(read.document, Object.keys(elements)[0]!);
  return spell(say("name.plain", { name }), catalogue);
}

const between = (kind: string, from: string, to: string, more: object = {}) => ({
  kind,
  from,
  to,
  phases: "A",
  ...more,
});

test.each([
  ["its label", { k1: between("clamp", "p1", "p2", { label: "tap clamp T" }) }, "tap clamp T"],
  ["where it stands", { k1: between("clamp", "p1", "p2") }, "tap clamp at Pole 1"],
  ["where it stands, without a label", { k1: between("clamp", "p3", "p2") }, "tap clamp at Pole 2"],
  ["from where to where it runs", { sp: between("span", "p1", "p2") }, "span from Pole 1 to Pole 2"],
  [
    "its structure, where the other of its kind there has a label",
    { k1: between("clamp", "p1", "p2"), k2: between("clamp", "p1", "p3", { label: "other" }) },
    "tap clamp at Pole 1",
  ],
  [
    "its place in the count, where another of its kind is on the same structure",
    { k1: between("clamp", "p1", "p2"), k2: between("clamp", "p2", "p1") },
    "1st tap clamp at Pole 1",
  ],
  [
    "which of two places of one name it is at",
    { k1: between("clamp", "p4", "p5") },
    "tap clamp at Pole 4 (1st of that name)",
  ],
  [
    "where it is on, for a ground set",
    { g1: { kind: "ground", at: "p1", phases: "A", to: "earth" }, sp: between("span", "p1", "p2") },
    "ground set at Pole 1",
  ],
])("a thing is called by %s", (_, elements, name) => {
  expect(called(elements)).toBe(name);
});

test("the name is in the language that is read", () => {
  expect(called({ k1: between("clamp", "p1", "p2") }, french)).toBe("pince de dérivation (Pole 1)");
});

describe("what has no number is called by what a person finds it by", () => {
  const span = (from: string, to: string) => between("span", from, to);
  const LINE = {
    s1: { kind: "source", at: "n30", phases: "A", volts: 7200 },
    sp1: span("n30", "a"),
    sp2: span("a", "b"),
    sp3: span("b", "n32"),
  };
  const STANDS = { n30: { label: "Pole 30" }, n32: { label: "Pole 32" }, a: {}, b: {}, c: {}, d: {}, e: {} };
  const hung = (id: string, kind: string, at: string, label?: string) => ({
    [`${id}`]: between(kind, at, `${at}x`, label === undefined ? {} : { label }),
  });

  function namesOf(elements: object, points: object, catalogue?: typeof french): Record<string, string> {
    const system = { frequencyHz: 60, points, elements } as unknown as System;
    const ids = Object.keys(points).filter((it) => !it.endsWith("x"));
    return Object.fromEntries(
      ids.map((id) => [id, spell(say("name.plain", { name: structureName({ system }, id) }), catalogue)]),
    );
  }

  test("where it stands on the way between two numbers, counted along it from the first", () => {
    expect(namesOf(LINE, STANDS)).toMatchObject({
      a: "1st pole past Pole 30 toward Pole 32",
      b: "2nd pole past Pole 30 toward Pole 32",
    });
    expect(namesOf(LINE, STANDS, french)).toMatchObject({
      a: "1er poteau après Pole 30 vers Pole 32",
      b: "2e poteau après Pole 30 vers Pole 32",
    });
  });

  test("what it alone carries", () => {
    expect(namesOf({ ...LINE, ...hung("r", "recloser", "b") }, { ...STANDS, bx: {} })).toMatchObject({
      a: "1st pole past Pole 30 toward Pole 32",
      b: "pole with recloser past Pole 30",
    });
  });

  test("what is written on it, where both carry the same", () => {
    const both = { ...LINE, ...hung("c1", "cutout", "a", "F-12"), ...hung("c2", "cutout", "b", "F-13") };
    expect(namesOf(both, { ...STANDS, ax: {}, bx: {} })).toMatchObject({
      a: "pole with F-12 past Pole 30",
      b: "pole with F-13 past Pole 30",
    });
  });

  test("the one that it branches from, and by counting only along that branch", () => {
    const branch = { ...LINE, sp4: span("a", "c"), sp5: span("c", "d"), sp6: span("n30", "e") };
    expect(namesOf(branch, STANDS)).toMatchObject({
      c: "1st pole on the branch from 1st pole past Pole 30 toward Pole 32",
      d: "2nd pole on the branch from 1st pole past Pole 30 toward Pole 32",
      e: "pole past Pole 30 on the branch without numbers",
    });
  });

  test("its kind, which has a gender in French", () => {
    const structures = { v1: { kind: "vault" }, v2: { kind: "vault" } };
    const points = { ...STANDS, a: { on: "v1" }, b: { on: "v2" } };
    const system = { frequencyHz: 60, structures, points, elements: LINE } as unknown as System;
    const name = structureName({ system }, "v1");
    expect(spell(say("name.plain", { name }), french)).toBe(
      "1re chambre souterraine après Pole 30 vers Pole 32",
    );
  });
});

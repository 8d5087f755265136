import { describe, expect, test } from "vitest";
import { isUnreadable, readDocument, type SavedElement, type SavedPoint, type StillhotDocument } from ".";
import { patched, produced, withRecords } from "./patching";

const read = readDocument(
  JSON.stringify({
    format: "stillhot",
    formatVersion: 1,
    title: "Reed tap",
    system: {
      points: { p1: {}, "7": { x: 200 }, p2: { x: 400 } },
      elements: {
        s1: { kind: "source", at: "p1", phases: "ABC", kvLL: 12.47 },
        sp1: { kind: "span", from: "p1", to: "p2", phases: "ABC" },
        "12": { kind: "span", from: "p2", to: "7", phases: "A" },
      },
    },
  }),
);
if (isUnreadable(read)) throw new Error("the drawing of the test does not read");
const before: StillhotDocument = read.document;
const span: SavedElement = { kind: "span", from: "p1", to: "p2", phases: "A" };

describe("one record put is what immer makes of the same recipe", () => {
  test.each([
    ["an element in place of another", "elements", "sp1", span],
    ["an element whose id is a number", "elements", "12", span],
    ["an element that is new", "elements", "sp2", span],
    ["one that is new, with a number for an id", "elements", "3", span],
    ["a point in place of another", "points", "p2", { x: 300 }],
    ["a point that is new", "points", "p3", { x: 300 }],
  ] as const)("%s", (_, kind, id, record) => {
    const recipe = produced<{ system: Record<string, Record<string, SavedPoint | SavedElement>> }>(
      before,
      (draft) => {
        draft.system[kind]![id] = record;
      },
    );
    const own = withRecords(before, { [kind]: { [id]: record } });
    expect(own).toEqual(recipe);
    expect(Object.keys(own.after.system[kind])).toEqual(Object.keys(recipe.after.system[kind]));
    expect(Object.isFrozen(own.after.system[kind])).toBe(true);
    expect(patched(own.after, own.inverse)).toEqual(before);
    expect(patched(before, own.forward)).toEqual(own.after);
  });
});

import { expect, test } from "vitest";
import { say } from "../terms";
import { french } from "../terms/messages/fr";
import { elementName } from "./names";
import { readDocument } from "./read";
import { isUnreadable } from "./problem";
import { spell } from "../../../tests/support/words";

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

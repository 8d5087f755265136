import { describe, expect, test } from "vitest";
import { edits, type StillhotDocument } from "../document";
import { isRefusal } from "../terms";
import { assess } from "./assess";
import { cutOffBy } from "./cutOff";

/** A source, a clamp onto a sideline of two spans, a cutout and a transformer at its end. */
const DRAWING = {
  format: "stillhot",
  formatVersion: 1,
  title: "",
  system: {
    frequencyHz: 60,
    points: { p1: {}, p2: {}, p3: {}, p4: {}, p5: {}, p6: {} },
    elements: {
      s1: { kind: "source", at: "p1", phases: "ABC", kvLL: 12.47 },
      k1: { kind: "clamp", from: "p1", to: "p2", phases: "A" },
      l1: { kind: "span", from: "p2", to: "p3", phases: "A", lengthM: 100 },
      l2: { kind: "span", from: "p3", to: "p4", phases: "A", lengthM: 50 },
      c1: { kind: "cutout", from: "p4", to: "p5", phases: "A", open: "A" },
      l3: { kind: "span", from: "p5", to: "p6", phases: "A", lengthM: 20 },
    },
  },
} as unknown as StillhotDocument;

const done = (document: StillhotDocument, edit: (before: StillhotDocument) => unknown): StillhotDocument => {
  const change = edit(document) as { after: StillhotDocument };
  if (isRefusal(change)) throw new Error(JSON.stringify(change));
  return change.after;
};

describe("H9 what an edit cuts off from every source is said, with what joins it again", () => {
  test.each<
    [what: string, edit: ReturnType<typeof edits.setTitle>, cut: string[], mended: object | undefined]
  >([
    [
      "a clamp",
      edits.removeThings({ elements: ["k1"] }),
      ["p2/A", "p3/A", "p4/A", "p5/A", "p6/A"],
      { k1: { kind: "clamp", from: "p1", to: "p2", phases: "A" } },
    ],
    [
      "a span",
      edits.removeThings({ elements: ["l1"] }),
      ["p3/A", "p4/A", "p5/A", "p6/A"],
      { l1: { kind: "span", from: "p2", to: "p3", phases: "A", lengthM: 100 } },
    ],
    [
      "a pole with both of its spans",
      edits.removeThings({ points: ["p3"] }),
      ["p4/A", "p5/A", "p6/A"],
      { sp1: { kind: "span", from: "p2", to: "p4", phases: "A", lengthM: 150 } },
    ],
    [
      "a clamp changed to another phase",
      edits.setElementKeys("k1", { phases: "B" }),
      ["p2/A", "p3/A", "p4/A", "p5/A", "p6/A"],
      undefined,
    ],
    ["what nothing hangs on", edits.removeThings({ points: ["p6"] }), [], undefined],
    ["an open device is not what is missing", edits.open("k1", "A"), [], undefined],
  ])("%s", (_, edit, conductors, mended) => {
    const after = done(DRAWING, edit);
    const cut = cutOffBy(DRAWING.system, after.system);
    expect(cut?.conductors ?? []).toEqual(conductors);
    for (const id of conductors)
      expect(assess(after).conductors[id as never]).toMatchObject({ state: "unknown" });
    if (mended === undefined) return expect(cut?.bridge).toBeUndefined();
    const joined = done(after, cut!.bridge!.edit);
    expect(joined.system.elements).toMatchObject(mended);
    expect(cutOffBy(DRAWING.system, joined.system)).toBeUndefined();
  });
});

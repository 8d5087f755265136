import { expect, test } from "vitest";
import { spell } from "../../../../tests/support/words";
import { isRefusal } from "../../terms";
import { conductorsOf, edits, readDocument } from "..";

/** A tap on A with a transformer behind a cutout, and a sub-tap on two phases further on; B and C go on along the line. */
const system = (more: object = {}) => ({
  points: { sub: {}, p1: {}, p2: {}, p3: {}, p4: {}, p5: {} },
  elements: {
    s: { kind: "source", phases: "ABC", at: "sub", kvLL: 12.47 },
    l: { kind: "span", phases: "ABC", from: "sub", to: "p1" },
    k: { kind: "clamp", phases: "A", from: "p1", to: "p2", open: "A" },
    c: { kind: "cutout", phases: "A", from: "p2", to: "p3" },
    t: {
      kind: "transformer",
      phases: "A",
      from: "p3",
      to: "p4",
      connection: "single",
      kva: 25,
      primaryKv: 7.2,
      secondaryV: 240,
    },
    h: { kind: "load", phases: "12", at: "p4", kw: 3 },
    v: { kind: "clamp", phases: "AB", from: "p1", to: "p5" },
    w: {
      kind: "transformer",
      phases: "AB",
      from: "p5",
      to: "p6",
      connection: "single",
      kva: 25,
      primaryKv: 12.47,
      secondaryV: 240,
    },
    ...more,
  },
});
const drawing = (more: object = {}, points: object = {}) => {
  const { points: all, elements } = system(more);
  const read = readDocument(
    JSON.stringify({
      format: "stillhot",
      formatVersion: 1,
      title: "",
      system: { points: { ...all, p6: {}, ...points }, elements },
      job: {
        workPoints: { w1: { at: "p3", conductors: "A" }, w2: { at: "p1", conductors: "A" } },
        steps: [
          { do: "open", element: "c", phases: "A" },
          { do: "test", at: "p3", phases: "A" },
          { do: "test", at: "p1", phases: "A" },
        ],
      },
    }),
  );
  if ("problems" in read) throw new Error(JSON.stringify(read.problems));
  return read.document;
};

test("a tap goes onto another phase whole, with its work points and steps, and the rest stays", () => {
  const change = edits.changePhase("k", 2)(drawing());
  if (isRefusal(change)) throw new Error(spell(change.refused));
  const { system: after, job } = change.after;
  expect(Object.entries(after.elements).map(([id, it]) => [id, (it as { phases?: string }).phases])).toEqual([
    ["s", "ABC"],
    ["l", "ABC"],
    ["k", "C"],
    ["c", "C"],
    ["t", "C"],
    ["h", "12"],
    ["v", "AB"],
    ["w", "AB"],
  ]);
  expect((after.elements as unknown as Record<string, { open?: string }>)["k"]!.open).toBe("C");
  expect(conductorsOf(after).get("p3")).toEqual(["C", "N"]);
  expect(job).toMatchObject({
    workPoints: { w1: { conductors: "C" }, w2: { conductors: "A" } },
    steps: [{ phases: "C" }, { phases: "C" }, { phases: "A" }],
  });
  expect(change.forward.length).toBeLessThanOrEqual(4);
});

test("a unit between two phases keeps two", () => {
  const change = edits.changePhase("v", 1)(drawing());
  if (isRefusal(change)) throw new Error(spell(change.refused));
  const { v, w } = change.after.system.elements as unknown as Record<string, { phases: string }>;
  expect([v!.phases, w!.phases]).toEqual(["BC", "BC"]);
});

test.each([
  [
    "a second way back to the line",
    { b: { kind: "disconnect", phases: "A", from: "p3", to: "p1", open: "A" } },
  ],
  ["a source of its own", { b: { kind: "source", phases: "A", at: "p3", kvLL: 12.47 } }],
])("what is joined to the rest by %s is refused", (_, more) => {
  const result = edits.changePhase("k", 1)(drawing(more));
  expect(isRefusal(result) && spell(result.refused)).toMatch(/another way/);
});

import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { hasPlacedPoints, isUnreadable, readDocument, type StillhotDocument, structureOf } from "../document";
import { isRefusal } from "../terms";
import { arrangementOf } from "./arrangement";
import { poleAt } from "./poleAt";

const DEMO = new URL("../../../shared/demos/sideline-three-transformers.stillhot.json", import.meta.url);
const demo = (): StillhotDocument => {
  const read = readDocument(readFileSync(DEMO, "utf8"));
  if (isUnreadable(read)) throw new Error("the demo does not read");
  return read.document;
};

const ACROSS = { way: "across", text: 1 } as const;
const at = (document: StillhotDocument, point: string) => arrangementOf(document, ACROSS).at(point)!;

function traced(before: StillhotDocument, x: number, y: number) {
  const change = poleAt({ x, y }, { way: "across" })(before);
  if (isRefusal(change)) throw new Error(change.refused.key);
  return { after: change.after, id: change.made![0]! };
}

test("a pole stands at the very spot, in a drawing of nothing and in one that the program lays out", () => {
  const empty: StillhotDocument = { ...demo(), system: { frequencyHz: 60, points: {}, elements: {} } };
  delete (empty as { job?: unknown }).job;
  for (const before of [empty, demo()]) {
    const first = traced(before, 1200, -340);
    const second = traced(first.after, 40, 700);
    expect(hasPlacedPoints(second.after.system)).toBe(false);
    for (const [{ id }, x, y] of [
      [first, 1200, -340],
      [second, 40, 700],
    ] as const) {
      expect(at(second.after, id).x).toBeCloseTo(x);
      expect(at(second.after, id).y).toBeCloseTo(y);
    }
  }
});

test("poles that are put one below the other stay where they were put, though the line then runs down", () => {
  let document: StillhotDocument = { ...demo(), system: { frequencyHz: 60, points: {}, elements: {} } };
  delete (document as { job?: unknown }).job;
  const put: (readonly [string, number, number])[] = [];
  for (const [x, y] of [
    [0, 0],
    [60, 40],
    [40, 300],
    [0, 620],
  ] as const) {
    const { after, id } = traced(document, x, y);
    document = after;
    put.push([id, x, y]);
  }
  expect(put.map(([id]) => [id, Math.round(at(document, id).x), Math.round(at(document, id).y)])).toEqual(
    put,
  );
});

test("the poles that were there stay where they stood", () => {
  const before = demo();
  const { after, id } = traced(before, 1200, -340);
  for (const point of Object.keys(before.system.points)) {
    const own = structureOf(after.system, point)?.id;
    if (own === structureOf(after.system, id)?.id) continue;
    expect([point, at(after, point).x, at(after, point).y].map(String)).toEqual(
      [point, at(before, point).x, at(before, point).y].map(String),
    );
  }
});

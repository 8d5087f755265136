import { describe, expect, test } from "vitest";
import { type Box, type Scene, sceneOf, type StillhotDocument } from "../../core";
import { inEnglish } from "../words/catalogue";
import { emptyDrawing } from "../session/emptyDrawing";
import { isInSight } from "./inSight";

/** A line that runs right and then down, with nothing in the corner that it goes around. */
const aroundACorner = {
  ...emptyDrawing,
  system: {
    frequencyHz: 60,
    points: {
      p1: { x: 0, y: 0, kind: "pole" },
      p2: { x: 1000, y: 0, kind: "pole" },
      p3: { x: 1000, y: 1000, kind: "pole" },
    },
    elements: {
      s1: { kind: "span", from: "p1", to: "p2", phases: ["C"] },
      s2: { kind: "span", from: "p2", to: "p3", phases: ["C"] },
    },
  },
} as unknown as StillhotDocument;

const drawn = (document: StillhotDocument): Scene => sceneOf(document, undefined, { catalogue: inEnglish });

const box = (left: number, top: number, side: number): Box => ({
  left,
  top,
  right: left + side,
  bottom: top + side,
});

describe("what is in view of a line around a corner", () => {
  const scene = drawn(aroundACorner);
  test.each([
    ["all of it", box(-500, -500, 3000), true],
    ["a piece of the first span, without a pole", box(400, -50, 100), true],
    ["a piece of the second span", box(950, 500, 100), true],
    ["a pole", box(-20, -20, 40), true],
    ["nothing, far to the right", box(5000, 0, 500), false],
    ["nothing, in the corner that the line goes around", box(100, 400, 300), false],
  ])("%s", (_, view, expected) => expect(isInSight(scene, view)).toBe(expected));
});

test("an empty drawing misses nothing", () =>
  expect(isInSight(drawn(emptyDrawing), box(0, 0, 100))).toBe(true));

import { expect, test } from "vitest";
import { demoDrawings } from "../../../tests/support/demoDrawings";
import type { StillhotDocument, System } from "../document";
import { checksTold } from ".";

const [, whole] = demoDrawings()[0]!;
/** The drawing with so large a share of its points. */
function someOf(share: number): StillhotDocument {
  const points = Object.entries(whole.system.points);
  const left = Object.fromEntries(points.slice(0, Math.ceil(share * points.length))) as System["points"];
  return { ...whole, system: { ...whole.system, points: left } };
}

test.each([
  ["most of the drawing, within two openings", 0.9, 2, true],
  ["most of it, with no opening that could be left out", 0.9, 0, false],
  ["a small part of it", 0.3, 2, false],
])(
  "a piece that holds %s says how to have a smaller one: at %d of it, %d openings",
  (_what, share, openings, says) => {
    const rest = { parts: [], compared: 1, workPointsLeft: 0, stepsLeft: 0, scenarioLeft: false };
    const told = checksTold(whole, { ...rest, document: someOf(share), openings });
    expect(told.some(({ key }) => key === "piece.most")).toBe(says);
  },
);

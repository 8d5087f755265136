import { readFileSync } from "node:fs";
import { applyPatches, type Patch } from "immer";
import { expect, test } from "vitest";
import {
  type Edit,
  edits,
  isRefusal,
  readDocument,
  type StillhotDocument,
  writeDocument,
} from "../../src/core";
import { report } from "../support/measure";
import { drawFrom } from "../support/randomSystems";

const EDITS = 100_000;
/** It takes a minute or two; a busy machine may take longer. */
const PATIENCE_MS = 30 * 60_000;
/** The drawing is kept about as large as a real one: what is added beyond is removed again. */
const MOST_ELEMENTS = 60;
const MOST_POINTS = 120;

/** The history that is kept is bounded; here every single edit of an endless one is taken back and done again. */
test(
  "E1 100 000 random edits undone to the start and redone to the end give the same bytes",
  () => {
    const read = readDocument(readFileSync("shared/demos/quarry-lane.stillhot.json", "utf8"));
    if (!("document" in read)) throw new Error("the demo does not read");
    const draw = drawFrom(7);
    let document: StillhotDocument = read.document;
    const start = writeDocument(document);
    const done: { forward: readonly Patch[]; inverse: readonly Patch[] }[] = [];
    const began = performance.now();
    while (done.length < EDITS) {
      const change = randomEdit(document)(document);
      if (isRefusal(change)) continue;
      done.push({ forward: change.forward, inverse: change.inverse });
      document = change.after;
    }
    const end = writeDocument(document);
    for (const { inverse } of done.toReversed()) document = applyPatches(document, [...inverse]);
    expect(writeDocument(document)).toBe(start);
    for (const { forward } of done) document = applyPatches(document, [...forward]);
    expect(writeDocument(document)).toBe(end);
    const seconds = (performance.now() - began) / 1000;
    report("edits, undone and redone, a second", (3 * EDITS) / seconds, "no number");
    report(`seconds for ${EDITS} of them there, back and there again`, seconds, "a couple of minutes");

    function randomEdit({ system }: StillhotDocument): Edit {
      const points = Object.keys(system.points);
      const elements = Object.keys(system.elements);
      const point = points.length > 0 ? draw.oneOf(points) : "none";
      const element = elements.length > 0 ? draw.oneOf(elements) : "none";
      if (points.length > MOST_POINTS) return edits.removeThings({ points: [point] });
      if (elements.length > MOST_ELEMENTS)
        return edits.removeThings({ elements: [element], points: draw.chance(0.5) ? [point] : [] });
      return draw.oneOf<() => Edit>([
        () => edits.movePoints([point], { x: draw.between(-300, 300), y: draw.between(-300, 300) }),
        () => edits.addPoint({ x: draw.between(0, 2000), y: draw.between(0, 2000) }),
        () => edits.growFrom(point, draw.oneOf(["span", "cutout", "disconnect"] as const), { x: 100, y: 40 }),
        () => edits.open(element),
        () => edits.close(element),
        () => edits.tag(element),
        () => edits.untag(element),
        () => edits.block(element),
        () => edits.setElementKeys(element, { label: `label ${draw.between(0, 999)}` }),
        () => edits.setTitle(`title ${draw.between(0, 999)}`),
        () => edits.removeThings({ elements: [element] }),
        () => edits.removeThings({ points: [point] }),
        () => edits.addWorkPoint(point),
        () => edits.duplicate({ elements: [element] }, { x: 40, y: 40 }),
      ])();
    }
  },
  PATIENCE_MS,
);

import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import {
  english,
  assess,
  changeOf,
  type Edit,
  edits,
  indexOf,
  isRefusal,
  readDocument,
  routesOf,
  type Scene,
  sceneOf,
  statesByReach,
  type StillhotDocument,
} from "../../src/core";
import { patched } from "../../src/core/document";
import { drawFrom, randomDocument } from "../support/randomSystems";
import { expectSame } from "../support/same";
import { draws } from "../support/draws";

const read = (text: string): StillhotDocument => {
  const file = readDocument(text);
  if (!("document" in file)) throw new Error(JSON.stringify(file.problems));
  return file.document;
};

const drawings = [
  ...readdirSync("shared/demos")
    .filter((it) => it.endsWith(".stillhot.json"))
    .map((it) => read(readFileSync(`shared/demos/${it}`, "utf8"))),
  ...Array.from({ length: draws(12) }, (_, seed) =>
    read(JSON.stringify(randomDocument(seed + 300, { parts: 16 }))),
  ),
];

/** A scene by what each piece is of: the order of pieces is that of the drawing, and says nothing. */
function told({ pieces, routes, bounds }: Scene) {
  return {
    pieces: new Map(pieces.map((it) => [`${it.owner.of} ${it.owner.id}`, { ...it }])),
    routes: new Map(routes),
    bounds,
  };
}

/** What lies about each point. */
const hits = (scene: Scene) =>
  [...scene.points.values()].map(({ box }) =>
    [...indexOf(scene).near(box)]
      .map(({ owner, box, spine }) => ({ owner, box, spine }))
      .sort((a, b) => (`${a.owner.of} ${a.owner.id}` < `${b.owner.of} ${b.owner.id}` ? -1 : 1)),
  );

const anew = (document: StillhotDocument): StillhotDocument => structuredClone(document);

/** How each scene was carried over, of all the drawings. */
const ways = new Set<string>();

describe.each(drawings.map((it, index) => [index, it] as const))("drawing %i", (index, start) => {
  test("G3 a scene carried over an edit is the one drawn anew, and says which pieces differ", () => {
    const draw = drawFrom(index + 1);
    let document = start;
    let scene = sceneOf(document, assess(document), { catalogue: english });
    let done = 0;
    while (done < 25) {
      const points = Object.keys(document.system.points);
      const elements = Object.keys(document.system.elements);
      const [point, other] = [draw.oneOf(points), draw.oneOf(points)];
      const element = draw.oneOf(elements);
      const edit = draw.oneOf<() => Edit>([
        () => edits.movePoints([point], { x: draw.between(-90, 90), y: draw.between(-90, 90) }),
        () => edits.placePoints({ [point]: { x: draw.between(0, 9), y: 0 }, [other]: { x: 0, y: 0 } }),
        () => edits.open(element),
        () => edits.close(element),
        () => edits.growFrom(point, draw.oneOf(["span", "cutout", "lead"] as const), { x: 40, y: 20 }),
        () => edits.addElement("span", { from: point, to: other }),
        () => edits.addElement("load", { at: point }, { kw: 1 }),
        () => edits.setElementKeys(element, { label: `label ${done}` }),
        () => edits.removeThings({ elements: [element] }),
        () => edits.removeThings({ points: [point] }),
        () => edits.duplicate({ elements: [element] }, { x: 40, y: 40 }),
        () => edits.addWorkPoint(point),
      ])();
      const change = edit(document);
      if (isRefusal(change)) continue;
      done++;
      const isTakenBack = draw.chance(0.3);
      document = isTakenBack ? patched(change.after, change.inverse) : change.after;
      if (points.length < 3 || elements.length < 3) break;

      const states = draw.chance(0.5) ? statesByReach(document.system) : undefined;
      const assessment = states === undefined ? assess(document) : undefined;
      const options = { catalogue: english, ...(states === undefined ? {} : { states }) };
      const next = sceneOf(document, assessment, options);
      const fresh = anew(document);
      expectSame(told(next), told(sceneOf(fresh, assessment, options)));
      expectSame(routesOf(document.system), routesOf(fresh.system));

      const changed = changeOf(next);
      ways.add(changed?.of ?? "anew");
      if (changed?.before === scene) {
        if (changed.of === "pieces") {
          const left = new Set(scene.pieces);
          for (const piece of changed.gone) expect(left.delete(piece)).toBe(true);
          for (const piece of changed.come) left.add(piece);
          expect(left).toEqual(new Set(next.pieces));
        } else for (const [id, { overall }] of next.elements) expect(changed.overallOf(id)).toBe(overall);
        expectSame(hits(next), hits({ ...next, pieces: [...next.pieces] }));
      }
      scene = next;
    }
  });
});

test("scenes were carried over piece by piece, and by their looks alone", () => {
  expect(ways).toContain("pieces");
  expect(ways).toContain("looks");
});

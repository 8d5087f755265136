import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { isUnreadable, readDocument, type StillhotDocument } from "../document";
import { assess } from "../hazard";
import { type Box, type Note, overlaps, placeNotes, type Scene, sceneOf, type Way } from ".";

const shared = new URL("../../../shared/", import.meta.url);
const drawings = ["demos", "scenarios"].flatMap((folder) =>
  readdirSync(new URL(`${folder}/`, shared))
    .filter((it) => it.endsWith(".stillhot.json"))
    .map((name): [string, StillhotDocument] => {
      const read = readDocument(readFileSync(new URL(`${folder}/${name}`, shared), "utf8"));
      if (isUnreadable(read)) throw new Error(`${name} does not read`);
      return [name.replace(".stillhot.json", ""), read.document];
    }),
);

const boxOfNote = ({ x, y, width, height }: ReturnType<typeof placeNotes>[number], scale: number): Box => ({
  left: x - width / 2 / scale + 1e-6,
  right: x + width / 2 / scale - 1e-6,
  top: y - height / 2 / scale + 1e-6,
  bottom: y + height / 2 / scale - 1e-6,
});

/** Boxes of symbols: not of the conductors between them. */
const symbolBoxes = ({ elements, routes }: Scene): Box[] =>
  [...elements.keys()].flatMap((id) => {
    const laid = routes.get(id)?.laid;
    const piece = elements.get(id)!;
    if (laid === undefined || piece.shapes.every(({ shape }) => shape === "strand")) return [];
    const { x, y } = laid.centre;
    return [{ left: x - 10, right: x + 10, top: y - 10, bottom: y + 10 }];
  });

/** What tells a hazard is never left out. */
const ALWAYS: readonly Note["kind"][] = ["title", "work", "open", "tag", "badge"];

describe.each(drawings)("%s is laid out", (_name, document) => {
  const assessment = assess(document);
  const scenes = (["across", "down"] as const).map((way): [Way, Scene] => [
    way,
    sceneOf({ ...document }, assessment, { way }),
  ]);

  test.each(scenes)(
    "running %s, every point and device has a place, and every way is square",
    (_way, scene) => {
      expect([...scene.points.keys()].sort()).toEqual(Object.keys(document.system.points).sort());
      for (const { laid } of scene.routes.values())
        laid!.spots.slice(1).forEach((to, nth) => {
          const from = laid!.spots[nth]!;
          expect(Math.min(Math.abs(to.x - from.x), Math.abs(to.y - from.y))).toBeLessThan(1e-6);
        });
    },
  );

  test.each(scenes)("running %s, no plate covers another, and no symbol another", (_way, scene) => {
    const plates = scene.plates.map(({ box }) => box);
    const symbols = symbolBoxes(scene);
    for (const boxes of [plates, symbols])
      for (const [nth, one] of boxes.entries())
        for (const other of boxes.slice(nth + 1)) expect(overlaps(one, other)).toBe(false);
  });

  test.each(scenes)(
    "running %s, labels cover no symbol and no other note, and no badge is left out",
    (_way, scene) => {
      for (const scale of [0.5, 0.75, 1]) {
        const placed = placeNotes(scene, scale);
        const symbols = symbolBoxes(scene);
        const shown = new Set(placed.map(({ note }) => note));
        const wanted = scene.pieces.flatMap(({ notes }) => notes).filter(({ kind }) => ALWAYS.includes(kind));
        expect(wanted.filter((it) => !shown.has(it)).map(({ text }) => text)).toEqual([]);
        const boxes = placed.map((it) => ({ note: it.note, box: boxOfNote(it, scale) }));
        for (const [nth, { note, box }] of boxes.entries()) {
          if (note.kind === "elementLabel")
            expect(
              symbols.some((it) => overlaps(it, box)),
              note.text,
            ).toBe(false);
          for (const other of boxes.slice(nth + 1))
            if (note.kind !== "work" && other.note.kind !== "work")
              expect(overlaps(box, other.box), `${note.text} / ${other.note.text}`).toBe(false);
        }
      }
    },
  );
});

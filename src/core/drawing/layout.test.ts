import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { isUnreadable, readDocument, type StillhotDocument } from "../document";
import { assess } from "../hazard";
import {
  bestLie,
  type Box,
  boxOf,
  distanceOf,
  lettersAt,
  type Note,
  NOTE_SIZES,
  isAfar,
  overlaps,
  overviewOf,
  placeNotes,
  type Scene,
  sceneOf,
  symbolBoxOf,
  type Way,
} from ".";

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

/** Boxes of symbols with what they belong to: not of the conductors between them. */
const symbolsOf = ({ elements, routes }: Scene): { id: string; middle: Box; box: Box }[] =>
  [...elements.keys()].flatMap((id) => {
    const laid = routes.get(id)?.laid;
    const piece = elements.get(id)!;
    if (laid === undefined || piece.shapes.every(({ shape }) => shape === "strand")) return [];
    const { x, y } = laid.centre;
    return [
      { id, middle: { left: x - 10, right: x + 10, top: y - 10, bottom: y + 10 }, box: symbolBoxOf(piece)! },
    ];
  });

const symbolBoxes = (scene: Scene): Box[] => symbolsOf(scene).map(({ middle }) => middle);

/** Stretches of conductors, without their width; a slanting one in pieces. */
const wiresOf = ({ pieces }: Scene): Box[] =>
  pieces.flatMap(({ shapes }) =>
    shapes.flatMap((it) => {
      if (it.shape !== "strand") return [];
      const boxes: Box[] = [];
      for (let k = 0; k + 3 < it.points.length; k += 2) {
        const [x, y, toX, toY] = it.points.slice(k, k + 4) as [number, number, number, number];
        const parts = x === toX || y === toY ? 1 : 20;
        const at = (part: number) => [x + ((toX - x) * part) / parts, y + ((toY - y) * part) / parts];
        for (let part = 0; part < parts; part++) boxes.push(boxOf([...at(part), ...at(part + 1)], 0.5));
      }
      return boxes;
    }),
  );

/** A window for the drawing on a phone, upright and on its side, on a tablet and on desks, and the width of a page. */
const ROOMS = [
  { width: 360, height: 320 },
  { width: 390, height: 560 },
  { width: 768, height: 700 },
  { width: 844, height: 250 },
  { width: 820, height: 520 },
  { width: 1900, height: 900 },
] as const;

/** The scale at which a whole scene is shown in a room, and the sizes of letters there. */
function shownIn({ bounds }: Scene, { width, height }: (typeof ROOMS)[number]) {
  const { left, right, top, bottom } = bounds!;
  const scale = Math.min(1.5, (width - 28) / (right - left), (height - 84) / (bottom - top));
  const factor = lettersAt(scale);
  return { scale, sizes: { label: NOTE_SIZES.label * factor, small: NOTE_SIZES.small * factor } };
}

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

  test.each(ROOMS)(
    "G7 shown whole in $width × $height, what is written stands free and at its own symbol",
    (room) => {
      const scene = sceneOf({ ...document }, assessment, bestLie(document, room, lettersAt));
      const { scale, sizes } = shownIn(scene, room);
      if (isAfar(scene, scale)) return expect(overviewOf(scene).plates).toHaveLength(scene.plates.length);
      const wires = wiresOf(scene);
      const symbols = symbolsOf(scene);
      for (const it of placeNotes(scene, scale, sizes)) {
        const { note } = it;
        if (note.kind !== "elementLabel") continue;
        const box = boxOfNote(it, scale);
        expect(
          wires.some((wire) => overlaps(wire, box)),
          `${note.text} on a line`,
        ).toBe(false);
        const plates = scene.plates.filter(({ shapes }) => shapes.length > 0).map(({ plate }) => plate.box);
        const isCut = (plate: Box) =>
          overlaps(plate, box) &&
          !(
            plate.left <= box.left &&
            plate.right >= box.right &&
            plate.top <= box.top &&
            plate.bottom >= box.bottom
          );
        expect(plates.some(isCut), `${note.text} on an edge`).toBe(false);
        const nearest = symbols.reduce((best, one) =>
          distanceOf(one.box, box) < distanceOf(best.box, box) ? one : best,
        );
        const own = symbols.find(({ id }) => id === note.owner.id)!;
        expect(distanceOf(own.box, box), `${note.text} is nearest to ${nearest.id}`).toBeLessThanOrEqual(
          distanceOf(nearest.box, box) + 1e-6,
        );
      }
      return undefined;
    },
  );
});

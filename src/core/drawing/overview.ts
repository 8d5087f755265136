import { isLine } from "../devices";
import { complete, savedElement } from "../document";
import { type ElementId, lettersOf, spell } from "../terms";
import { isAfar, symbolLengthAt } from "./arrangement";
import { countedOn, wordsOf } from "./counted";
import { symbolSizeAt } from "./labels";
import { isLegs, LINE_APART } from "./layout/inside";
import { worstOf } from "./palettes";
import type { PlatePiece } from "./plates";
import type { Scene } from "./scene";
import { sectionsOf } from "./sections";
import { LEAST_STRUCTURE } from "./tolerances";
import { type Note, type Piece, type Spot, tellsStanding, unionOf } from "./shapes";

/** Whether structures are too near to each other for a mark each: a section is one mark then. */
const isFurther = (scene: Pick<Scene, "plates" | "text">, scale: number): boolean =>
  scene.plates.length > 1 && symbolLengthAt(scene, scale) < LEAST_STRUCTURE;

const overviews = { structures: new WeakMap<Scene, Scene>(), sections: new WeakMap<Scene, Scene>() };

/**
 * A drawing from afar: a structure is one mark with its number and its worst state, with what is open, tagged and
 * grounded there counted; between the marks is the line. From further yet a section is one mark, where it begins, with
 * how many structures more it has. A drawing that persons placed point by point is as it was.
 *
 * @param scale at which it is shown; each structure has its mark where it is left out
 */
export function overviewOf(scene: Scene, scale = Infinity): Scene {
  if (scene.plates.length === 0) return scene;
  const areSections = isFurther(scene, scale);
  const overviewsOf = overviews[areSections ? "sections" : "structures"];
  const known = overviewsOf.get(scene);
  if (known !== undefined) return known;
  const elements = new Map<ElementId, Piece>();
  const marks = marksOf(scene);
  for (const [id, piece] of scene.elements) {
    const spine = piece.within === true ? undefined : fromMarkToMark(piece.spine, marks);
    if (spine !== undefined) elements.set(id, lineOf(piece, spine));
  }
  const plates = (areSections ? bySection(scene) : scene.plates.map((it) => [it])).map((it) =>
    markOf(it, scene),
  );
  const works = new Map([...scene.works].map(([id, it]) => [id, flagOf(it, marks)]));
  // Where work is done first, then where something is open, tagged or grounded, then numbers, and then what is longer: it
  // may stand beside its place. From so far that not all have room, those are left.
  const worked = [...scene.works.values()].map(({ spine }) => spine);
  const isWorked = ({ plate: { box } }: PlatePiece) =>
    worked.some(([x = 0, y = 0]) => x >= box.left && x <= box.right && y >= box.top && y <= box.bottom);
  const rank = (it: PlatePiece) =>
    isWorked(it) ? -2 : it.notes.length > 1 ? -1 : (it.notes[0]?.text.length ?? 0);
  const byRank = [...plates].sort((one, other) => rank(one) - rank(other));
  const lines = [...elements].flatMap(([id, piece]) => abreast(id, piece, scene));
  const pieces = [...byRank, ...lines, ...works.values()];
  const overview: Scene = {
    ...scene,
    works,
    elements,
    points: new Map(),
    plates,
    pieces,
    bounds: unionOf(pieces.map(({ box }) => box)),
  };
  overviewsOf.set(scene, overview);
  return overview;
}

/**
 * A drawing that persons placed point by point, from so far that no symbol can be read: its lines, its work places, and
 * what is open or tagged there. Any other is as it was.
 */
export function linesAlone(scene: Scene, scale: number): Scene {
  if (scene.plates.length > 0 || !isAfar(scene, scale)) return scene;
  const pieces = scene.pieces.flatMap((piece): Piece[] => {
    if (piece.owner.of === "point") return [];
    if (piece.owner.of !== "element") return [piece];
    return [{ ...lineOf(piece, piece.spine), notes: piece.notes.filter(tellsStanding) }];
  });
  return { ...scene, points: new Map(), pieces };
}

/** Where the mark of the structure of each point stands, by where the point stands. */
function marksOf({ plates, points }: Scene): ReadonlyMap<string, Spot> {
  const marks = new Map<string, Spot>();
  for (const { plate } of plates) {
    const [x = 0, y = 0] = points.get(plate.points[0]!)?.spine ?? [];
    for (const id of plate.points) marks.set(keyOf(points.get(id)?.spine ?? []), { x, y });
  }
  return marks;
}

const keyOf = ([x, y]: readonly number[]): string => `${x} ${y}`;

/** The way of a line from one structure's mark to the other's; nothing for what stays on one structure. */
function fromMarkToMark(spine: readonly number[], marks: ReadonlyMap<string, Spot>) {
  const [first, last] = [spine.slice(0, 2), spine.slice(-2)];
  const [from, to] = [marks.get(keyOf(first)), marks.get(keyOf(last))];
  if (from === undefined || to === undefined) return spine;
  if (from === to) return undefined;
  return [from.x, from.y, first[0]!, from.y, ...spine, last[0]!, to.y, to.x, to.y];
}

/** An element as one line of its worst look. */
const lineOf = (piece: Piece, spine: readonly number[]): Piece => ({
  owner: piece.owner,
  box: piece.box,
  overall: piece.overall,
  spine,
  shapes: [{ shape: "strand", points: spine, letter: "A", look: piece.overall, feed: 0 }],
  notes: [],
});

/** A line as one stroke for each of its phases, as far apart as from near: how many it has is seen from afar as well. */
function abreast(id: ElementId, piece: Piece, { document, text }: Scene): readonly Piece[] {
  const element = complete(savedElement(document.system.elements, id)!);
  if (!isLine(element) || isLegs(element.phases)) return [piece];
  const { length } = lettersOf(element.phases);
  const aside = Array.from({ length }, (_, nth) => nth - (length - 1) / 2);
  return aside.map((by) =>
    by === 0 ? piece : lineOf(piece, movedAside(piece.spine, by * LINE_APART * symbolSizeAt(text))),
  );
}

/** A way of level and upright stretches, so far to one side of it. */
function movedAside(spine: readonly number[], by: number): readonly number[] {
  const spots: (readonly [number, number])[] = [];
  for (let k = 0; k + 1 < spine.length; k += 2) {
    const [x, y] = [spine[k]!, spine[k + 1]!];
    if (spots.at(-1)?.[0] !== x || spots.at(-1)?.[1] !== y) spots.push([x, y]);
  }
  const ways = spots
    .slice(1)
    .map(([x, y], nth): Way => [Math.sign(x - spots[nth]![0]), Math.sign(y - spots[nth]![1])]);
  const beside = ([x, y]: readonly [number, number], [dx, dy]: Way) => [x - dy * by, y + dx * by] as const;
  return spots.flatMap((spot, nth): readonly number[] => {
    const [before, after] = [ways[nth - 1] ?? ways[nth], ways[nth] ?? ways[nth - 1]];
    if (before === undefined || after === undefined) return spot;
    if (before[0] === after[0] && before[1] === after[1]) return beside(spot, before);
    const isTurnedBack = before[0] === -after[0] && before[1] === -after[1];
    return isTurnedBack
      ? [...beside(spot, before), ...beside(spot, after)]
      : beside(beside(spot, before), after);
  });
}
type Way = readonly [number, number];

/** The flag of a work place beside its ring, with the place alone. */
function flagOf(piece: Piece, marks: ReadonlyMap<string, Spot>): Piece {
  const { x, y } = marks.get(keyOf(piece.spine)) ?? { x: piece.spine[0]!, y: piece.spine[1]! };
  const notes = piece.notes.map((it): Note => {
    const [text = it.text] = it.lines ?? [];
    return { ...it, x, y, drop: 0, text, lines: [text], ring: { x, y }, sides: ROUND, gap: 28, reach: 0 };
  });
  return { ...piece, notes, spine: [x, y] };
}

const ROUND: Note["sides"] = [
  [0, -1],
  [1, 0],
  [0, 1],
  [1, -1],
  [-1, -1],
  [-1, 0],
  [1, 1],
  [-1, 1],
];

/** The structures of each section, in the order in which the current comes to them. */
function bySection({ document: { system }, plates }: Scene): readonly PlatePiece[][] {
  const sections = new Map<number, PlatePiece[]>();
  for (const piece of plates) {
    const section = sectionsOf(system).get(piece.plate.points[0]!)!;
    const before = sections.get(section);
    if (before === undefined) sections.set(section, [piece]);
    else before.push(piece);
  }
  return [...sections.values()];
}

/** One mark for a structure, or for several where the first of them stands. */
function markOf(pieces: readonly PlatePiece[], scene: Scene): PlatePiece {
  const [piece] = pieces as readonly [PlatePiece];
  const { plate, owner } = piece;
  const [x = 0, y = 0] = scene.points.get(plate.points[0]!)?.spine ?? [];
  const place = { owner, x, y, look: worstOf(pieces.map(({ overall }) => overall)) };
  const { number } = plate;
  const mark: Note = {
    ...place,
    kind: "mark",
    text: pieces.length === 1 ? number : `${number} +${pieces.length - 1}`,
    sides: [[0, 0], ...ROUND],
    gap: 4,
    reach: 0,
  };
  const beside: Note = {
    ...place,
    kind: "count",
    text: countedWords(pieces, scene),
    sides: [[0, 1], ...ROUND],
    gap: 15,
    reach: 0,
  };
  return {
    ...piece,
    overall: place.look,
    shapes: [],
    notes: beside.text === "" ? [mark] : [mark, beside],
    box: { left: x - 1, right: x + 1, top: y - 1, bottom: y + 1 },
  };
}

/** What is counted on structures, in words. */
function countedWords(pieces: readonly PlatePiece[], { document, catalogue }: Scene): string {
  const counted = pieces
    .map(({ plate }) => countedOn(document.system, plate))
    .reduce((sum, it) => ({
      open: sum.open + it.open,
      tagged: sum.tagged + it.tagged,
      grounds: sum.grounds + it.grounds,
    }));
  return wordsOf(counted, (message) => spell(message, catalogue));
}

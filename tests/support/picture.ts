import { assess } from "../../src/core/hazard";
import { endPointsOf, savedElement, type StillhotDocument } from "../../src/core/document";
import type { Catalogue } from "../../src/core/terms";
import {
  bestLie,
  type Box,
  boxOf,
  distanceOf,
  distanceTo,
  isAfar,
  lettersAt,
  type Look,
  type Note,
  NOTE_SIZES,
  type NoteSizes,
  overlaps,
  overviewOf,
  placeNotes,
  type PlacedNote,
  ringAt,
  type Scene,
  type Spot,
  type Strand,
  sceneOf,
  strokesOf,
  symbolBoxOf,
  symbolLengthAt,
  widthFactor,
} from "../../src/core/drawing";

/** A window for the drawing, or the room that it has on a page [px]. */
export interface Room {
  readonly width: number;
  readonly height: number;
}

/**
 * What windows of 360, 390, 768, 1280 and 1920 px leave for the drawing, upright and on the side. Day and night are one
 * here: a palette changes no place.
 */
export const SCREENS: readonly Room[] = [
  { width: 360, height: 320 },
  { width: 640, height: 200 },
  { width: 390, height: 560 },
  { width: 844, height: 250 },
  { width: 768, height: 700 },
  { width: 1024, height: 480 },
  { width: 734, height: 540 },
  { width: 820, height: 520 },
  { width: 1374, height: 820 },
  { width: 1900, height: 900 },
];

/** A drawing on the sheet: its room, its letters, and how much wider than ours they may turn out. */
const PAPER = { room: { width: 624, height: 380 }, sizes: { label: 12, small: 12, widen: 1.1 } };

/** A drawing that is too large for a screen is read part by part, with symbols so long [px]. */
const READ = 24;
/** It is looked at so much larger, too. */
const NEARER = 1.4;

/** Where a drawing stands badly on any screen or on paper, in words. */
export function badlyShown(document: StillhotDocument, catalogue: Catalogue): readonly string[] {
  const assessment = assess(document);
  const onScreens = SCREENS.flatMap((room) => {
    const scene = sceneOf(document, assessment, { ...bestLie(document, room, lettersAt), catalogue });
    const whole = shownIn(scene, room);
    const near =
      scene.plates.length > 0 && isAfar(scene, whole.scale)
        ? lettersOf(READ / symbolLengthAt(scene, 1))
        : whole;
    const nearer = lettersOf(near.scale * NEARER);
    return [
      ...covering(placeNotes(overviewOf(scene), whole.scale, whole.sizes), whole.scale),
      ...[near, nearer].flatMap(({ scale, sizes }) => badlyWritten(scene, scale, sizes)),
    ].map((it) => `${room.width} × ${room.height}: ${it}`);
  });
  const { room, sizes } = PAPER;
  const lie = bestLie(document, room, () => 1.2);
  const scene = sceneOf(document, assessment, { ...lie, catalogue });
  const { scale } = shownIn(scene, room);
  return [...onScreens, ...badlyWritten(scene, scale, sizes).map((it) => `on paper: ${it}`)];
}

/** The scale at which a whole scene is shown in a room, and the sizes of letters there. */
export function shownIn({ bounds }: Scene, { width, height }: Room): { scale: number; sizes: NoteSizes } {
  const { left, right, top, bottom } = bounds!;
  const scale = Math.min(1.5, (width - 28) / (right - left), (height - 84) / (bottom - top));
  return lettersOf(scale);
}

/** A scale with the sizes of letters at it. */
export function lettersOf(scale: number): { scale: number; sizes: NoteSizes } {
  const factor = lettersAt(scale);
  return { scale, sizes: { label: NOTE_SIZES.label * factor, small: NOTE_SIZES.small * factor } };
}

/** In a drawing of more structures a tie may still pass over some on its way: it runs through their numbers too. */
const MOST_UNCROSSED = 60;

/** Of the ring around a work place [px]. */
const RING_STROKE = 4;

/** What tells a hazard is never left out. */
const ALWAYS: readonly Note["kind"][] = ["title", "work", "open", "tag", "badge"];

/** Where what is written on a picture that the program laid out stands badly: in words, none where it stands well. */
export function badlyWritten(scene: Scene, scale: number, sizes: NoteSizes): readonly string[] {
  if (isAfar(scene, scale)) return [];
  const placed = placeNotes(scene, scale, sizes);
  const shown = new Set(placed.map(({ note }) => note));
  const missing = scene.pieces
    .flatMap(({ notes }) => notes)
    .filter((it) => ALWAYS.includes(it.kind) && !shown.has(it));
  const boxes = placed.map((it) => ({ note: it.note, box: boxOfNote(it, scale) }));
  const wires = wiresOf(scene);
  const symbols = symbolsOf(scene);
  const plates = scene.plates.filter(({ shapes }) => shapes.length > 0).map(({ plate }) => plate.box);
  const rings = placed.flatMap(({ note }) => {
    if (note.ring === undefined) return [];
    const half = ringAt(note, scale) / scale;
    return [boxOf([note.ring.x, note.ring.y], half + RING_STROKE / 2 / scale)];
  });
  /** A flag may lie over the edge of its own plate, as one flies from a pole; at another it would be taken for that one's. */
  const isAtItsPlate = (box: Box, { x, y }: Spot) => {
    const own = plates.find((it) => contains(it, boxOf([x, y], 0)));
    const middle = boxOf([(box.left + box.right) / 2, (box.top + box.bottom) / 2], 0);
    return (
      own === undefined ||
      plates.every(
        (it) => it === own || (!overlaps(it, box) && distanceOf(it, middle) > distanceOf(own, middle)),
      )
    );
  };
  const lit = strandsOf(scene);
  /** A pile of parts on one pole that nobody named may have no room beside its lines. */
  const areNamed = Object.keys(scene.document.system.structures ?? {}).length > 0;
  /** Whether a tag hangs on what tells how its device stands: the two are as one then. */
  const isHungOn = (word: (typeof boxes)[number], tag: (typeof boxes)[number]) =>
    word.note.kind === "open" &&
    word.note.owner.id === tag.note.owner.id &&
    Math.abs((tag.box.left - word.box.right) * scale - 2) < 0.001;
  const touchingRings = boxes.flatMap(({ note, box }) =>
    KEEPING_OFF_RINGS.includes(note.kind) && rings.some((it) => overlaps(it, box))
      ? [`${note.text} touches the ring of a work place`]
      : [],
  );
  const misplaced = boxes.flatMap(({ note, box }) => {
    // A state stands on its own line, or nearer to one that is in the same state than to one in another.
    if (note.kind === "badge" && !note.text.includes("·"))
      return isAtItsState(note, box, lit)
        ? []
        : [`${note.text} is nearest to a line in another state than ${note.look}`];
    if (note.kind === "title")
      return [
        ...(plates.length <= MOST_UNCROSSED && wires.some((it) => overlaps(it, box))
          ? [`${note.text} lies on a line`]
          : []),
        ...(symbols.some((it) => overlaps(it.box, box)) ? [`${note.text} lies on a symbol`] : []),
        ...(plates.some((it) => overlaps(it, box) && !contains(it, box))
          ? [`${note.text} lies on an edge`]
          : []),
      ];
    if (note.kind === "work")
      return [
        ...(rings.some((it) => overlaps(it, box))
          ? [`the flag ${note.text} lies on the ring of a work place`]
          : []),
        ...(boxes.some((it) => it.note !== note && overlaps(it.box, box))
          ? [`the flag ${note.text} lies on what is written`]
          : []),
        ...(symbols.some((it) => overlaps(it.box, box)) ? [`the flag ${note.text} lies on a symbol`] : []),
        ...(wires.some((it) => overlaps(it, box)) ? [`the flag ${note.text} lies on a line`] : []),
        ...(isAtItsPlate(box, note.ring!) ? [] : [`the flag ${note.text} stands at another plate`]),
      ];
    if (note.kind === "open" || note.kind === "tag") {
      const onLine = areNamed && wires.some((it) => overlaps(it, box)) ? [`${note.text} lies on a line`] : [];
      if (note.kind === "tag" && boxes.some((it) => isHungOn(it, { note, box }))) return onLine;
      const own = symbols.find(({ id }) => id === note.owner.id);
      const nearest = Math.min(...symbols.map((it) => distanceOf(it.box, box)));
      return own === undefined || distanceOf(own.box, box) <= nearest + 1e-6
        ? onLine
        : [...onLine, `${note.text} is nearest to another symbol`];
    }
    if (note.kind !== "elementLabel") return [];
    const own = symbols.find(({ id }) => id === note.owner.id);
    if (own === undefined) return [];
    const nearest = Math.min(...symbols.map((it) => distanceOf(it.box, box)));
    return [
      ...(wires.some((it) => overlaps(it, box)) ? [`${note.text} lies on a line`] : []),
      ...(plates.some((it) => overlaps(it, box) && !contains(it, box))
        ? [`${note.text} lies on an edge`]
        : []),
      ...(symbols.some((it) => overlaps(it.box, box)) ? [`${note.text} lies on a symbol`] : []),
      ...(distanceOf(own.box, box) > nearest + 1e-6 ? [`${note.text} is nearest to another symbol`] : []),
    ];
  });
  return [
    ...missing.map(({ kind, text }) => `no ${kind} ${text}`),
    ...covering(placed, scale),
    ...touchingRings,
    ...misplaced,
    ...onOneAnother(scene, scale),
  ];
}

/** From this length on what two conductors share looks like one line, and not like two that meet or cross [px]. */
const ONE_LINE = 8;
/** Of directions less than this apart [sine]. */
const ALIKE = 0.05;

interface Stretch {
  readonly id: string;
  readonly letter: string;
  readonly look: Look;
  readonly x: number;
  readonly y: number;
  /** a unit vector */
  readonly way: Spot;
  readonly length: number;
}

/**
 * Which conductors lie on others: two that are not one would be read as one line, and a grounded one as live. What is
 * joined, of one phase and in one state may lie on one another.
 */
function onOneAnother(scene: Scene, scale: number): readonly string[] {
  const stretches = stretchesOf(scene);
  const factor = widthFactor(scale, scene.text);
  const widthOf = (look: Look) => factor * Math.max(...strokesOf(look).map(({ width }) => width));
  /** Of two lines in one state their middles are told apart where their edges touch. */
  const coreOf = (look: Look) => factor * strokesOf(look).at(-1)!.width;
  const found = new Set<string>();
  for (const [nth, one] of stretches.entries())
    for (const other of stretches.slice(nth + 1)) {
      const touching =
        (one.look === other.look ? coreOf(one.look) : (widthOf(one.look) + widthOf(other.look)) / 2) / scale;
      if (sharedBy(one, other, touching) * scale <= ONE_LINE || isOneConductor(scene, one, other)) continue;
      const [a, b] = [one, other].map(({ id, letter, look }) => `${letter} of ${id}, ${look}`);
      found.add(`${a} lies on ${b}`);
    }
  return [...found];
}

const stretchesOf = ({ pieces }: Scene): readonly Stretch[] =>
  pieces.flatMap(({ owner: { id }, shapes }) =>
    shapes.flatMap((it) => {
      if (it.shape !== "strand") return [];
      const stretches: Stretch[] = [];
      for (let k = 0; k + 3 < it.points.length; k += 2) {
        const [x, y, toX, toY] = it.points.slice(k, k + 4) as [number, number, number, number];
        const length = Math.hypot(toX - x, toY - y);
        const way = { x: (toX - x) / length, y: (toY - y) / length };
        if (length > 0) stretches.push({ id, letter: it.letter, look: it.look, x, y, way, length });
      }
      return stretches;
    }),
  );

/** How far along one another two stretches run nearer than so much. */
function sharedBy(one: Stretch, other: Stretch, near: number): number {
  if (Math.abs(one.way.x * other.way.y - one.way.y * other.way.x) > ALIKE) return 0;
  const along = (x: number, y: number) => (x - one.x) * one.way.x + (y - one.y) * one.way.y;
  const beside = (x: number, y: number) => Math.abs((y - one.y) * one.way.x - (x - one.x) * one.way.y);
  const ends = [0, other.length].map(
    (by) => [other.x + other.way.x * by, other.y + other.way.y * by] as const,
  );
  if (ends.some(([x, y]) => beside(x, y) >= near)) return 0;
  const [from, to] = ends.map(([x, y]) => along(x, y)).sort((a, b) => a - b);
  return Math.min(one.length, to!) - Math.max(0, from!);
}

/** Conductors of one thing in one state may touch where they come together at its symbol. */
function isOneConductor({ document }: Scene, one: Stretch, other: Stretch): boolean {
  if (one.look !== other.look) return false;
  if (one.id === other.id) return true;
  const [a, b] = [one, other].map(({ id }) => endPointsOf(savedElement(document.system.elements, id)));
  return one.letter === other.letter && a!.some((it) => b!.includes(it));
}

/** What says how a device stands, and what hangs on it, may have no room but there. */
const KEEPING_OFF_RINGS: readonly Note["kind"][] = [
  "title",
  "badge",
  "work",
  "letter",
  "count",
  "pointLabel",
  "elementLabel",
];

type StrandOf = Strand & { readonly id: string };

/** The phase conductors of a scene, with what they belong to. */
const strandsOf = ({ pieces }: Scene): readonly StrandOf[] =>
  pieces.flatMap(({ owner, shapes }) =>
    shapes.flatMap((it) => (it.shape === "strand" && it.letter !== "N" ? [{ ...it, id: owner.id }] : [])),
  );

function isAtItsState(note: Note, box: Box, strands: readonly StrandOf[]): boolean {
  const [x, y] = [(box.left + box.right) / 2, (box.top + box.bottom) / 2];
  const reach = strands.map((it) => distanceTo(it.points, x, y));
  const least = Math.min(...reach);
  return (
    note.text.startsWith("N ") ||
    strands.length === 0 ||
    strands.some(
      ({ look, id }, nth) => reach[nth]! <= least + 0.01 && (look === note.look || id === note.owner.id),
    )
  );
}

/** Which notes cover others; a flag of a work place may lie on what it must. */
function covering(placed: readonly PlacedNote[], scale: number): readonly string[] {
  const boxes = placed
    .filter(({ note }) => note.kind !== "work")
    .map((it) => ({ note: it.note, box: boxOfNote(it, scale) }));
  return boxes.flatMap(({ note, box }, nth) =>
    boxes
      .slice(nth + 1)
      .filter((it) => overlaps(box, it.box))
      .map((it) => `${note.text} covers ${it.note.text}`),
  );
}

export const boxOfNote = ({ x, y, width, height }: PlacedNote, scale: number): Box => ({
  left: x - width / 2 / scale + 1e-6,
  right: x + width / 2 / scale - 1e-6,
  top: y - height / 2 / scale + 1e-6,
  bottom: y + height / 2 / scale - 1e-6,
});

const contains = (outer: Box, inner: Box): boolean =>
  outer.left <= inner.left &&
  outer.right >= inner.right &&
  outer.top <= inner.top &&
  outer.bottom >= inner.bottom;

/** Boxes of symbols with what they belong to: not of the conductors between them. */
export const symbolsOf = ({ elements, routes }: Scene): { id: string; middle: Box; box: Box }[] =>
  [...elements.keys()].flatMap((id) => {
    const laid = routes.get(id)?.laid;
    const piece = elements.get(id)!;
    if (laid === undefined || piece.shapes.every(({ shape }) => shape === "strand")) return [];
    const { x, y } = laid.centre;
    return [
      { id, middle: { left: x - 10, right: x + 10, top: y - 10, bottom: y + 10 }, box: symbolBoxOf(piece)! },
    ];
  });

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

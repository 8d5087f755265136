import type { CircuitElement } from "../devices";
import {
  complete,
  completePoint,
  conductorsOf,
  jobOf,
  type Point,
  type SavedElement,
  type StillhotDocument,
} from "../document";
import type { Assessment, ConductorReport } from "../hazard";
import {
  type Catalogue,
  conductorId,
  type ElementId,
  type Letter,
  type Message,
  type PointId,
  say,
  spell,
  type WorkPointId,
} from "../terms";
import { feedOf } from "./feed";
import { badgeOf, worstOf } from "./palettes";
import { pieceOf, type Surroundings } from "./pieces";
import { freest, type Route, routesOf } from "./routes";
import { type Box, boxOf, type Look, type Note, type Piece, type Shape, unionOf } from "./shapes";

export interface SceneOptions {
  /** the words on the drawing, English where it is left out */
  readonly catalogue?: Catalogue;
}

/** A whole drawing as one list of pieces, for the canvas, the SVG file and print. */
export interface Scene {
  readonly pieces: readonly Piece[];
  readonly elements: ReadonlyMap<ElementId, Piece>;
  readonly points: ReadonlyMap<PointId, Piece>;
  readonly routes: ReadonlyMap<ElementId, Route>;
  /** nothing where the drawing is empty */
  readonly bounds: Box | undefined;
}

/** What an element's piece was drawn from, to draw it again only where something changed. */
interface Remembered {
  readonly drawnFrom: string;
  readonly catalogue: Catalogue | undefined;
  readonly piece: Piece;
}
const remembered = new WeakMap<SavedElement, Remembered>();

/** Draws a document as it stands. Without an assessment every conductor looks unknown. */
export function sceneOf(
  document: StillhotDocument,
  assessment: Assessment | undefined,
  { catalogue }: SceneOptions = {},
): Scene {
  const { system } = document;
  const routes = routesOf(system);
  const letters = conductorsOf(system);
  const feed = feedOf(document, assessment);
  const word = (message: Message) => spell(message, catalogue);
  const look = (point: string, letter: Letter): Look =>
    lookOf(assessment?.conductors[conductorId(point, letter)]);

  const elements = new Map<ElementId, Piece>();
  for (const key in system.elements) {
    const id = key as ElementId;
    const saved = system.elements[id]!;
    const element = complete(saved);
    const route = element.kind === "nearby" ? routes.get(element.span as ElementId) : routes.get(id);
    if (route === undefined) continue;
    const ends = element as unknown as Readonly<Record<string, string>>;
    const around: Surroundings = {
      look: (end, letter) => look(ends[end]!, letter),
      feed: (letter) => feed(id, letter),
      hasNeutral: (end) => letters.get(ends[end] as PointId)?.includes("N") ?? false,
      word,
    };
    const drawnFrom = fingerprint(element, route, around);
    const known = remembered.get(saved);
    if (known?.drawnFrom === drawnFrom && known.catalogue === catalogue && ownerIs(known.piece, id)) {
      elements.set(id, known.piece);
      continue;
    }
    const piece = pieceOf(id, element, route, around);
    remembered.set(saved, { drawnFrom, catalogue, piece });
    elements.set(id, piece);
  }

  const angles = anglesByPoint(document, routes);
  const badged = pointsBesideABadge(document, elements);
  const points = new Map<PointId, Piece>();
  for (const key in system.points) {
    const id = key as PointId;
    const looks = (letters.get(id) ?? []).map((letter) => [letter, look(id, letter)] as const);
    points.set(
      id,
      pointPiece(
        id,
        completePoint(system.points[id]!),
        angles.get(id) ?? [],
        badged.has(id) ? [] : looks,
        word,
      ),
    );
  }

  const works: Piece[] = [];
  for (const [key, { at, label }] of Object.entries(jobOf(document).workPoints)) {
    const saved = system.points[at];
    if (saved === undefined) continue;
    const id = key as WorkPointId;
    works.push(
      workPiece(
        id,
        completePoint(saved),
        angles.get(at) ?? [],
        word(say("drawing.work", { label: shortened(label ?? key) })),
      ),
    );
  }

  const pieces = [...elements.values(), ...points.values(), ...works];
  return { pieces, elements, points, routes, bounds: unionOf(pieces.map((it) => it.box)) };
}

export const lookOf = (report: ConductorReport | undefined): Look => report?.state ?? "unknown";

const ownerIs = ({ owner }: Piece, id: ElementId) => owner.of === "element" && owner.id === id;

/** Everything outside the element's own record that its piece depends on, as one comparable text. */
function fingerprint(element: CircuitElement, route: Route, around: Surroundings): string {
  const { from, to, centre, along, alt } = route;
  let text = `${from.x} ${from.y} ${to?.x} ${to?.y} ${centre.x} ${centre.y} ${along.x} ${along.y} ${alt?.x} ${alt?.y}`;
  const add = (end: "from" | "to" | "alt" | "at") => {
    for (const letter of ALL_LETTERS) text += ` ${around.look(end, letter)}`;
  };
  if ("from" in element) {
    add("from");
    add("to");
    if ("alt" in element) add("alt");
    text += around.hasNeutral("from") && around.hasNeutral("to") ? " N" : "";
    for (const letter of ALL_LETTERS) text += ` ${around.feed(letter)}`;
  } else if ("at" in element) add("at");
  return text;
}
const ALL_LETTERS: readonly Letter[] = ["A", "B", "C", "1", "2", "N"];

/** Directions in which something already leaves each point, in degrees. */
function anglesByPoint(
  { system }: StillhotDocument,
  routes: ReadonlyMap<ElementId, Route>,
): Map<string, number[]> {
  const angles = new Map<string, number[]>();
  const add = (point: string, from: { x: number; y: number }, to: { x: number; y: number }) => {
    const angle = (Math.atan2(to.y - from.y, to.x - from.x) * 180) / Math.PI;
    const list = angles.get(point);
    if (list === undefined) angles.set(point, [angle]);
    else list.push(angle);
  };
  for (const [id, route] of routes) {
    const element = complete(system.elements[id]!);
    if ("from" in element) {
      add(element.from, route.from, route.start);
      add(element.to, route.to!, route.end);
    } else if ("at" in element) add(element.at, route.from, route.start);
  }
  return angles;
}

/** Points whose state a badge on a line beside them already tells. */
function pointsBesideABadge(
  { system }: StillhotDocument,
  elements: ReadonlyMap<ElementId, Piece>,
): Set<string> {
  const beside = new Set<string>();
  for (const [id, piece] of elements) {
    const element = complete(system.elements[id]!);
    if (!("from" in element) || !piece.notes.some((it) => it.kind === "badge")) continue;
    beside.add(element.from);
    beside.add(element.to);
  }
  return beside;
}

const POINT_RADIUS = 5;

/** The mark of a point by its kind: a pole is a disc, a pad a square, a station a large square, a service a house. */
function markOf({ kind, x, y }: Point): Shape[] {
  const polygon = (filled: boolean, ...offsets: number[]): Shape => ({
    shape: "stroke",
    points: offsets.map((it, k) => it + (k % 2 === 0 ? x : y)),
    closed: true,
    filled,
  });
  switch (kind) {
    case "pole":
      return [{ shape: "disc", x, y, radius: POINT_RADIUS, filled: true }];
    case "pad":
      return [polygon(true, -6, -6, 6, -6, 6, 6, -6, 6)];
    case "station":
      return [polygon(true, -8, -8, 8, -8, 8, 8, -8, 8)];
    case "service":
      return [polygon(true, -6, 5, -6, -2, 0, -8, 6, -2, 6, 5)];
  }
}

function pointPiece(
  id: PointId,
  point: Point,
  angles: readonly number[],
  looks: readonly (readonly [Letter, Look])[],
  word: (message: Message) => string,
): Piece {
  const { x, y } = point;
  const owner = { of: "point", id } as const;
  const shapes = markOf(point);
  const taken = [...angles];
  if (point.earthOhms !== undefined) {
    const angle = freest(taken, 135);
    taken.push(angle);
    shapes.push(...earthShapes(x, y, angle));
  }
  const notes: Note[] = [];
  const doubt =
    point.evidence === "assumed" || point.evidence === "told"
      ? ` · ${word(say(`drawing.${point.evidence}`))}`
      : "";
  if (point.label !== "")
    notes.push({
      kind: "pointLabel",
      text: `${point.label}${doubt}`,
      look: "ink",
      owner,
      x,
      y,
      sides: sidesAwayFrom(taken),
      gap: 4,
      reach: 7,
    });
  const text = pointBadge(looks);
  if (text !== "")
    notes.push({
      kind: "badge",
      text,
      look: worstOf(looks.map(([, look]) => look)),
      owner,
      x,
      y,
      sides: sidesAwayFrom(taken),
      gap: 2,
      reach: 7,
    });
  return {
    owner,
    shapes,
    notes,
    box: boxOf([x, y], 24),
    overall: worstOf(looks.map(([, it]) => it)),
    spine: [x, y],
  };
}

/** `ISO` where all phases agree, else `A ISO · B E`; neutrals tied to earth are left out. */
function pointBadge(looks: readonly (readonly [Letter, Look])[]): string {
  const told = looks.filter(([, look]) => badgeOf(look) !== "");
  if (told.length === 0) return "";
  if (told.every(([, look]) => look === told[0]![1])) return badgeOf(told[0]![1]);
  return told.map(([letter, look]) => `${letter} ${badgeOf(look)}`).join(" · ");
}

/** A driven ground: a small earth mark on a short tail. */
function earthShapes(x: number, y: number, degrees: number): Shape[] {
  const [dx, dy] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  const bar = (distance: number, half: number): Shape => ({
    shape: "stroke",
    points: [
      x + dx * distance - dy * half,
      y + dy * distance + dx * half,
      x + dx * distance + dy * half,
      y + dy * distance - dx * half,
    ],
    closed: false,
    filled: false,
  });
  return [
    { shape: "stroke", points: [x, y, x + dx * 13, y + dy * 13], closed: false, filled: false },
    bar(13, 6),
    bar(16.5, 4),
    bar(20, 1.5),
  ];
}

function workPiece(id: WorkPointId, { x, y }: Point, angles: readonly number[], text: string): Piece {
  const owner = { of: "workPoint", id } as const;
  const note: Note = {
    kind: "work",
    text,
    look: "ink",
    owner,
    x,
    y,
    sides: sidesAwayFrom(angles),
    gap: 24,
    reach: 0,
  };
  return { owner, shapes: [], notes: [note], box: boxOf([x, y], 40), overall: "ink", spine: [x, y] };
}

/** A flag that is longer would cover what it marks; the whole label stands in the outline and the verdict. */
const LONGEST_FLAG = 26;
const shortened = (label: string): string =>
  label.length > LONGEST_FLAG ? `${label.slice(0, LONGEST_FLAG - 1).trimEnd()}…` : label;

const AROUND: readonly (readonly [number, number])[] = [
  [1, 0],
  [0.7, -0.7],
  [0.7, 0.7],
  [-0.7, -0.7],
  [-1, 0],
  [-0.7, 0.7],
  [0.35, -0.9],
  [0.35, 0.9],
  [-0.35, -0.9],
  [-0.35, 0.9],
  [0, -1],
  [0, 1],
];

/** Directions around a point, those with nothing near them first. */
function sidesAwayFrom(angles: readonly number[]): readonly (readonly [number, number])[] {
  const room = ([dx, dy]: readonly [number, number]) =>
    Math.min(
      80,
      ...angles.map((angle) => {
        const own = (Math.atan2(dy, dx) * 180) / Math.PI;
        return Math.abs(((((own - angle) % 360) + 540) % 360) - 180);
      }),
    );
  return [...AROUND].sort((a, b) => Math.floor(room(b) / 20) - Math.floor(room(a) / 20));
}

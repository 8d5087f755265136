import type { CircuitElement } from "../devices";
import {
  complete,
  completePoint,
  conductorsOf,
  jobOf,
  type Point,
  type SavedElement,
  type SavedPoint,
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
import { feedOf, NO_FEED } from "./feed";
import { badgeOf, worstOf } from "./palettes";
import { pieceOf, type Surroundings } from "./pieces";
import { freest, type Route, routesOf } from "./routes";
import { type Box, boxOf, type Look, type Note, type Piece, type Shape, type Spot, unionOf } from "./shapes";

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

/** What a piece was drawn from, to draw it again only where something changed. */
interface Remembered {
  readonly id: string;
  readonly states: string;
  readonly route: Route | undefined;
  readonly catalogue: Catalogue | undefined;
  readonly piece: Piece;
}
const rememberedElements = new WeakMap<SavedElement, Remembered>();
const rememberedPoints = new WeakMap<SavedPoint, Remembered>();

/** Draws a document as it stands. Without an assessment every conductor looks unknown. */
export function sceneOf(
  document: StillhotDocument,
  assessment: Assessment | undefined,
  { catalogue }: SceneOptions = {},
): Scene {
  const { system } = document;
  const routes = routesOf(system);
  const feed = feedOf(document, assessment);
  const word = (message: Message) => spell(message, catalogue);
  const standing = standingOf(document, assessment);

  const elements = new Map<ElementId, Piece>();
  for (const key in system.elements) {
    const id = key as ElementId;
    const saved = system.elements[id]!;
    const element = complete(saved);
    const route = element.kind === "nearby" ? routes.get(element.span as ElementId) : routes.get(id);
    if (route === undefined) continue;
    const ends = element as unknown as Readonly<Record<string, string>>;
    const states = statesAround(
      element,
      standing,
      feed === NO_FEED ? undefined : (letter) => feed(id, letter),
    );
    const known = rememberedElements.get(saved);
    if (
      known !== undefined &&
      known.states === states &&
      known.id === id &&
      known.catalogue === catalogue &&
      isSameRoute(known.route, route)
    ) {
      elements.set(id, known.piece);
      continue;
    }
    const around: Surroundings = {
      look: (end, letter) => standing.get(ends[end]!)?.looks.get(letter) ?? "unknown",
      feed: (letter) => feed(id, letter),
      hasNeutral: (end) => standing.get(ends[end]!)?.looks.has("N") ?? false,
      word,
    };
    const piece = pieceOf(id, element, route, around);
    rememberedElements.set(saved, { id, states, route, catalogue, piece });
    elements.set(id, piece);
  }

  const angles = anglesByPoint(document, routes);
  const badged = pointsBesideABadge(document, elements);
  const points = new Map<PointId, Piece>();
  for (const key in system.points) {
    const id = key as PointId;
    const saved = system.points[id]!;
    const own = badged.has(id) ? undefined : standing.get(id);
    const taken = angles.get(id) ?? [];
    const states = `${own?.states ?? ""} ${taken.join(" ")}`;
    const known = rememberedPoints.get(saved);
    if (known !== undefined && known.states === states && known.id === id && known.catalogue === catalogue) {
      points.set(id, known.piece);
      continue;
    }
    const piece = pointPiece(id, completePoint(saved), taken, [...(own?.looks ?? [])], word);
    rememberedPoints.set(saved, { id, states, route: undefined, catalogue, piece });
    points.set(id, piece);
  }

  const works: Piece[] = [];
  for (const [key, { at, label }] of Object.entries(jobOf(document).workPoints)) {
    const saved = system.points[at];
    if (saved === undefined) continue;
    const id = key as WorkPointId;
    const text = word(say("drawing.work", { label: shortened(label ?? key) }));
    works.push(workPiece(id, completePoint(saved), angles.get(at) ?? [], text));
  }

  const pieces = [...elements.values(), ...points.values(), ...works];
  return { pieces, elements, points, routes, bounds: unionOf(pieces.map((it) => it.box)) };
}

/** How the conductors of a point look, also as one comparable text. */
interface Standing {
  readonly looks: ReadonlyMap<Letter, Look>;
  readonly states: string;
}

function standingOf(
  { system }: StillhotDocument,
  assessment: Assessment | undefined,
): ReadonlyMap<string, Standing> {
  const standing = new Map<string, Standing>();
  for (const [point, letters] of conductorsOf(system)) {
    const looks = new Map<Letter, Look>();
    let states = "";
    for (const letter of letters) {
      const look = lookOf(assessment?.conductors[conductorId(point, letter)]);
      looks.set(letter, look);
      states += `${letter} ${look} `;
    }
    standing.set(point, { looks, states });
  }
  return standing;
}

export const lookOf = (report: ConductorReport | undefined): Look => report?.state ?? "unknown";

/** The states at an element's own ends, and the way of the feed, as one comparable text. */
function statesAround(
  element: CircuitElement,
  standing: ReadonlyMap<string, Standing>,
  feed: ((letter: Letter) => number) | undefined,
): string {
  if ("at" in element) return standing.get(element.at)?.states ?? "";
  if (!("from" in element)) return "";
  let text = `${standing.get(element.from)?.states}/${standing.get(element.to)?.states}`;
  if ("alt" in element) text += `/${standing.get(element.alt)?.states}`;
  if (feed !== undefined) for (const letter of element.phases) text += feed(letter as Letter);
  return text;
}

function isSameRoute(a: Route | undefined, b: Route): boolean {
  return (
    a === b ||
    (a !== undefined &&
      isSameSpot(a.from, b.from) &&
      isSameSpot(a.to, b.to) &&
      isSameSpot(a.centre, b.centre) &&
      isSameSpot(a.along, b.along) &&
      isSameSpot(a.alt, b.alt))
  );
}

const isSameSpot = (a: Spot | undefined, b: Spot | undefined): boolean =>
  a === b || (a !== undefined && b !== undefined && a.x === b.x && a.y === b.y);

/** Directions in which something already leaves each point, in degrees. */
function anglesByPoint(
  { system }: StillhotDocument,
  routes: ReadonlyMap<ElementId, Route>,
): Map<string, number[]> {
  const angles = new Map<string, number[]>();
  const add = (point: string, from: Spot, to: Spot) => {
    const angle = Math.round((Math.atan2(to.y - from.y, to.x - from.x) * 180) / Math.PI);
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
const LONGEST_FLAG = 22;
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

import { type CircuitElement, couldFeed, deviceOf, type End, isBeside, isCable, isLoad } from "../devices";
import {
  besideOthers,
  complete,
  completePoint,
  conductorsOf,
  elementCountOf,
  elementsAt,
  endPointsOf,
  hasPlacedPoints,
  jobOf,
  perObject,
  type Point,
  pointCountOf,
  pointsAround,
  type SavedElement,
  savedElement,
  savedPoint,
  type SavedPoint,
  settingsOf,
  structureOf,
  type StillhotDocument,
  type System,
  type TouchedRecords,
  touchedSince,
  type WorkPoint,
} from "../document";
import { type Assessment, type StateColumn, stateColumn } from "../hazard";
import {
  type Catalogue,
  type ElementId,
  type Letter,
  lettersOf,
  type Message,
  type Owner,
  type PointId,
  say,
  spell,
  type WorkPointId,
} from "../terms";
import { AskedMap } from "./askedMap";
import { feedOf, type FeedOf, NO_FEED } from "./feed";
import { Looks, pointOf } from "./looks";
import { badgeOfAll, worstOf } from "./palettes";
import { hasBadge, lazyPiece, overallOf, pieceOf } from "./pieces";
import type { Surroundings } from "./pen";
import { revised } from "./revisedMap";
import { type Arrangement, arrangementOf, type Lie } from "./arrangement";
import { narrowed, onFlag } from "./labels";
import { laidPointPiece, laidWorkPiece, type PlatePiece, platePiece, rodShapes, unseenPiece } from "./plates";
import { endsOfElement, type Way } from "./layout/inside";
import type { Layout, Plate } from "./layout/layout";
import { freest, isSameRoute, type Route, routesOf } from "./routes";
import { type Box, boxOf, type Look, type Note, type Piece, type Shape, type Spot } from "./shapes";

/** How a drawing is drawn: its words, the states that it shows, and how it lies: across, in letters of one, where left out. */
export interface SceneOptions extends Partial<Lie> {
  /** the words on the drawing */
  readonly catalogue: Catalogue;
  /** states to show in place of the assessment's */
  readonly states?: StateColumn;
}

/** A whole drawing as one list of pieces, for the canvas, the SVG file and print. */
export interface Scene {
  /** the pieces of all plates, elements, points and work points that are drawn, in this order */
  readonly pieces: readonly Piece[];
  readonly elements: ReadonlyMap<ElementId, Piece>;
  readonly points: ReadonlyMap<PointId, Piece>;
  readonly works: ReadonlyMap<WorkPointId, Piece>;
  /** what the others stand on, where the program laid the drawing out */
  readonly plates: readonly PlatePiece[];
  /** which way the line runs; nothing where persons placed the points */
  readonly way: Way | undefined;
  /** how many units of the drawing a pixel of its letters takes where the program laid it out */
  readonly text: number;
  /** how much more room what is written has than it needs */
  readonly wide: number;
  readonly isLow: boolean;
  readonly routes: ReadonlyMap<ElementId, Route>;
  /** what is drawn, and the words on it */
  readonly document: StillhotDocument;
  readonly catalogue: Catalogue;
  /** nothing where the drawing is empty */
  readonly bounds: Box | undefined;
}

/** In what a scene differs from the one that it was made from: in some of its pieces, or all may look otherwise. */
export type SceneChange = { readonly before: Scene } & (SomePieces | AllLooks);

/** Pieces that are there no longer, and those that are new or in place of others. */
interface SomePieces {
  readonly of: "pieces";
  readonly gone: readonly Piece[];
  readonly come: readonly Piece[];
}

/** The same things stand where they stood. */
interface AllLooks {
  readonly of: "looks";
  /** the look that stands for a whole element, found without drawing its piece */
  readonly overallOf: (id: ElementId) => Look;
}

/** What a scene was drawn from. */
interface Drawing {
  readonly document: StillhotDocument;
  readonly looks: Looks;
  readonly feed: FeedOf;
  readonly catalogue: Catalogue;
  readonly arrangement: Arrangement;
  readonly scene: Scene;
}

/** The scene drawn last of each system: the next one of it, or of one edited from it, is made from that. */
const drawings = new WeakMap<System, Drawing>();
/** kept, so that the next edit finds it */
let newest: Drawing | undefined;

const changes = new WeakMap<Scene, { readonly before: WeakRef<Scene> } & (SomePieces | AllLooks)>();

/** How a scene differs from the one that it was made from; nothing where it was drawn from the start. */
export function changeOf(scene: Scene): SceneChange | undefined {
  const change = changes.get(scene);
  const before = change?.before.deref();
  return change === undefined || before === undefined ? undefined : { ...change, before };
}

/**
 * What a scene is made from and what is remembered with the drawing, part by part: whoever must not stand still asks for each
 * in its turn beforehand.
 */
export const PARTS_OF_A_SCENE: readonly ((document: StillhotDocument) => unknown)[] = [
  ({ system }) => conductorsOf(system),
  ({ system }) => hasPlacedPoints(system) && routesOf(system),
];

/** Draws a document as it stands. Without an assessment every conductor looks unknown. */
export function sceneOf(
  document: StillhotDocument,
  assessment: Assessment | undefined,
  { catalogue, states, way = "across", text = 1, wide = 1, isLow = false }: SceneOptions,
): Scene {
  const column = states ?? (assessment === undefined ? undefined : stateColumn(assessment.conductors));
  const looks = new Looks(document.system, column);
  const feed = feedOf(document, assessment, looks);
  const arrangement = arrangementOf(document, { way, text, wide, isLow });
  const artist = new Artist(document, looks, feed, catalogue, arrangement);
  const touched = touchedSince((it) => drawings.has(it), document.system);
  const before = touched === undefined ? undefined : drawings.get(touched.from)!;
  const scene =
    touched === undefined ||
    before!.catalogue !== catalogue ||
    before!.arrangement.layout !== arrangement.layout
      ? wholeScene(artist)
      : (restatedScene(artist, before!, touched) ?? changedScene(artist, before!, touched));
  newest = { document, looks, feed, catalogue, arrangement, scene };
  drawings.set(document.system, newest);
  return scene;
}

function wholeScene(artist: Artist): Scene {
  const { system } = artist.document;
  const elements = new Map<ElementId, Piece>();
  for (const id in system.elements) {
    const piece = artist.element(id as ElementId);
    if (piece !== undefined) elements.set(id as ElementId, piece);
  }
  const points = new Map<PointId, Piece>();
  for (const id in system.points) points.set(id as PointId, artist.point(id as PointId)!);
  return composed(elements, points, artist.works(), artist);
}

/** What is asked for seldom is made when it is: an edit of a large drawing must not wait for it. */
function composed(
  elements: Scene["elements"],
  points: Scene["points"],
  works: Scene["works"],
  artist: Pick<Scene, "routes" | "plates" | "way" | "text" | "wide" | "isLow" | "document" | "catalogue">,
): Scene {
  let pieces: readonly Piece[] | undefined;
  let bounds: Box | undefined;
  const { routes, plates, way, text, wide, isLow, document, catalogue } = artist;
  return {
    elements,
    points,
    works,
    plates,
    way,
    text,
    wide,
    isLow,
    routes,
    document,
    catalogue,
    get pieces() {
      return (pieces ??= [...plates, ...elements.values(), ...points.values(), ...works.values()].filter(
        (it) => it.isUnseen !== true,
      ));
    },
    get bounds() {
      return (bounds ??= boundsOf(this.pieces));
    },
  };
}

function boundsOf(pieces: readonly Piece[]): Box | undefined {
  if (pieces.length === 0) return undefined;
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const { box } of pieces) {
    if (box.left < left) left = box.left;
    if (box.top < top) top = box.top;
    if (box.right > right) right = box.right;
    if (box.bottom > bottom) bottom = box.bottom;
  }
  return { left, top, right, bottom };
}

/** The scene after a few things changed: whatever these cannot have reached is the same piece as before. */
function changedScene(artist: Artist, before: Drawing, touched: TouchedRecords): Scene {
  const was = before.scene;
  const ids = artist.affectedBy(before, touched);
  const elements = [...ids.elements].map((id) => [id, artist.element(id)] as const);
  const points = [...ids.points].map((id) => [id, artist.point(id)] as const);
  const works = artist.works(was.works);
  const scene = composed(
    revised(was.elements, new Map(elements)),
    revised(was.points, new Map(points)),
    works,
    artist,
  );
  const gone: Piece[] = [];
  const come: Piece[] = [];
  const note = (old: Piece | undefined, piece: Piece | undefined) => {
    if (old === piece || piece?.isUnseen === true) return;
    if (old !== undefined) gone.push(old);
    if (piece !== undefined) come.push(piece);
  };
  for (const [id, piece] of elements) note(was.elements.get(id), piece);
  for (const [id, piece] of points) note(was.points.get(id), piece);
  for (const piece of artist.plates)
    if (piece.plate.crowd !== undefined) note(pieceFor(was, piece.owner), piece);
  for (const id of new Set([...was.works.keys(), ...works.keys()])) note(was.works.get(id), works.get(id));
  changes.set(scene, { before: new WeakRef(was), of: "pieces", gone, come });
  return scene;
}

/**
 * The scene after most of the states became others, and nothing stands elsewhere: of a large drawing most of that is
 * out of sight, so that each piece is drawn when it is asked for. Nothing where that is not all.
 */
function restatedScene(artist: Artist, before: Drawing, touched: TouchedRecords): Scene | undefined {
  const was = before.scene;
  const { system } = artist.document;
  if (touched.points.size > 0 || was.routes !== artist.routes) return undefined;
  if (was.elements.size !== elementCountOf(system) || was.points.size !== pointCountOf(system))
    return undefined;
  if (!artist.looks.areManyOtherwise(before.looks)) return undefined;
  for (const id of touched.elements as ReadonlySet<ElementId>)
    if (!isSameBox(artist.element(id)?.box, was.elements.get(id)?.box)) return undefined;
  const works = artist.works(was.works);
  const isElsewhere = (id: WorkPointId, it: Piece) =>
    !was.works.has(id) || !isSameFlag(was.works.get(id)!, it);
  if (works.size !== was.works.size || [...works].some(([id, it]) => isElsewhere(id, it))) return undefined;
  const scene = composed(
    new AskedMap(system.elements, was.elements.size, (id: ElementId) => artist.element(id)!),
    new AskedMap(system.points, was.points.size, (id: PointId) => artist.point(id)!),
    works,
    artist,
  );
  changes.set(scene, { before: new WeakRef(was), of: "looks", overallOf: (id) => artist.overallOf(id) });
  return scene;
}

const isSameBox = (one: Box | undefined, other: Box | undefined): boolean =>
  one?.left === other?.left &&
  one?.top === other?.top &&
  one?.right === other?.right &&
  one?.bottom === other?.bottom;

/** The piece of a thing of the document; nothing where it is not drawn, as a structure is not that has no plate. */
export function pieceFor({ points, elements, works, plates }: Scene, { of, id }: Owner): Piece | undefined {
  if (of === "structure") return plates.find(({ plate }) => plate.id === id);
  if (of === "point") return points.get(id);
  return of === "element" ? elements.get(id) : works.get(id);
}

/** What a piece was drawn from, to draw it again only where something changed. */
interface Remembered {
  readonly id: string;
  readonly states: string;
  readonly catalogue: Catalogue;
  readonly piece: Piece;
}
const rememberedElements = new WeakMap<SavedElement, Remembered & { readonly route: Route }>();
const rememberedPoints = new WeakMap<SavedPoint, Remembered & { readonly angles: readonly number[] }>();
/** Draws the pieces of one document in one standing. */
class Artist {
  readonly routes: ReadonlyMap<ElementId, Route>;
  readonly plates: readonly PlatePiece[];
  readonly #word: (message: Message) => string;

  constructor(
    readonly document: StillhotDocument,
    readonly looks: Looks,
    readonly feed: FeedOf,
    readonly catalogue: Catalogue,
    readonly arrangement: Arrangement,
  ) {
    this.routes = arrangement.routes;
    this.#word = (message) => spell(message, catalogue);
    this.plates = arrangement.plates.map((it) => this.#plate(it));
  }

  get way(): Way | undefined {
    return this.arrangement.layout?.way;
  }

  get text(): number {
    return this.arrangement.layout?.text ?? 1;
  }

  get wide(): number {
    return this.arrangement.layout?.wide ?? 1;
  }

  get isLow(): boolean {
    return this.arrangement.layout?.isLow ?? false;
  }

  #plate(plate: Plate): PlatePiece {
    const looks = plate.points.flatMap((id) => this.#looksAt(id).map(([, look]) => look));
    const { system } = this.document;
    const isWorked = Object.values(jobOf(this.document).workPoints).some(({ at }) =>
      plate.points.includes(at),
    );
    return platePiece(plate, worstOf(looks), system, this.arrangement.layout!, isWorked, this.#word);
  }

  /** Nothing where its points are missing. */
  element(id: ElementId): Piece | undefined {
    const saved = savedElement(this.document.system.elements, id);
    if (saved === undefined) return undefined;
    const element = complete(saved);
    const route = this.#routeOf(id, element);
    if (route === undefined) return this.#oneOfACrowd(id, element);
    const states = this.#statesAround(id, element);
    const known = rememberedElements.get(saved);
    const place =
      known !== undefined && known.id === id && isSameRoute(known.route, route) ? known.piece : undefined;
    if (place !== undefined && known!.states === states && known!.catalogue === this.catalogue) return place;
    const piece = pieceOf(id, element, route, this.#around(id, element), place);
    rememberedElements.set(saved, { id, states, route, catalogue: this.catalogue, piece });
    return piece;
  }

  /** What one mark stands for is drawn by that: of itself it has its place alone, to be found and chosen there. */
  #oneOfACrowd(id: ElementId, element: CircuitElement): Piece | undefined {
    const { layout } = this.arrangement;
    const [at, ...others] = endsOfElement(element);
    const plate = at === undefined ? undefined : layout?.crowded.get(at);
    if (plate === undefined || others.some((it) => layout!.crowded.get(it) !== plate)) return undefined;
    return unseenPiece({ of: "element", id }, layout!.points.get(at!)!, this.overallOf(id));
  }

  overallOf(id: ElementId): Look {
    const element = complete(savedElement(this.document.system.elements, id)!);
    const points = pointsOf(element);
    return overallOf(element, (end, letter) => this.looks.at(points[end], letter));
  }

  /** Nothing where there is none. */
  point(id: PointId): Piece | undefined {
    const saved = savedPoint(this.document.system.points, id);
    if (saved === undefined) return undefined;
    const isToldBeside = this.#elementsAt(id).some((it) => this.#hasBadge(it));
    const angles = this.#anglesAt(id);
    const states = isToldBeside ? "" : this.looks.textAt(id);
    const known = rememberedPoints.get(saved);
    if (
      known !== undefined &&
      known.states === states &&
      known.id === id &&
      known.catalogue === this.catalogue &&
      (known.angles === angles || known.angles.join() === angles.join())
    )
      return known.piece;
    if (this.arrangement.layout !== undefined) return this.#laidPoint(id, this.arrangement.layout);
    const looks = isToldBeside ? [] : this.#looksAt(id);
    const piece = pointPiece(id, completePoint(saved), angles, looks, this.#word);
    rememberedPoints.set(saved, { id, states, angles, catalogue: this.catalogue, piece });
    return piece;
  }

  /** A point of a drawing that the program laid out: a state is told where it is another than on the way here. */
  #laidPoint(id: PointId, layout: Layout): Piece {
    const at = layout.points.get(id)!;
    const looks = this.#looksAt(id);
    const crowd = layout.crowded.get(id);
    if (crowd?.points[0] === id) return laidPointPiece(id, at, layout, looks, "", this.looks.lettersAt(id));
    if (crowd !== undefined)
      return unseenPiece({ of: "point", id }, at, worstOf(looks.map(([, look]) => look)));
    const own = badgeOfAll(looks);
    const elements = this.#elementsAt(id);
    const isToldBeside =
      elements.some((it) => this.#hasBadge(it)) ||
      (at.parent !== undefined && badgeOfAll(this.#looksAt(at.parent)) === own);
    return laidPointPiece(id, at, layout, looks, isToldBeside ? "" : own, this.#markedAt(id));
  }

  /** Conductors that have a dot at a point: those that something hangs on, and all where nothing does. */
  #markedAt(id: PointId): readonly Letter[] {
    const all = this.looks.lettersAt(id);
    const hung = this.#elementsAt(id).flatMap((it): Letter[] => {
      const element = complete(savedElement(this.document.system.elements, it)!);
      const laid = this.routes.get(it as ElementId)?.laid;
      return laid?.hangs === true && "phases" in element ? lettersOf(element.phases) : [];
    });
    return hung.length === 0 ? all : all.filter((it) => hung.includes(it));
  }

  /** @param before those that still stand and say the same stay what they are */
  works(before?: Scene["works"]): Scene["works"] {
    const works = new Map<WorkPointId, Piece>();
    for (const [key, work] of Object.entries(jobOf(this.document).workPoints)) {
      const { at } = work;
      const spot = this.arrangement.at(at);
      if (spot === undefined) continue;
      const id = key as WorkPointId;
      const plate = this.arrangement.plates.find(({ points }) => points.includes(at));
      const title = plate?.title ?? structureOf(this.document.system, at)!.label;
      const ways = this.#flagWays(work, title);
      const look = worstOf(([...work.conductors] as Letter[]).map((it) => this.looks.at(at, it)));
      const piece =
        plate === undefined
          ? workPiece(id, spot, look, this.#anglesAt(at), ways[0]!)
          : laidWorkPiece(id, spot, look, plate, this.arrangement.layout!, ways);
      const was = before?.get(id);
      works.set(id, was?.overall === look && isSameFlag(was, piece) ? was : piece);
    }
    return works;
  }

  /** Ids of all that may look otherwise than in a drawing before. */
  affectedBy(
    before: Drawing,
    touched: TouchedRecords,
  ): { elements: ReadonlySet<ElementId>; points: ReadonlySet<PointId> } {
    const { system } = this.document;
    const was = before.document.system;
    const restated = this.looks.changedSince(before.looks);
    for (const point of pointsAround(was, system, touched))
      if (conductorsOf(was).get(point) !== conductorsOf(system).get(point)) restated.add(point);
    const elements = new Set(touched.elements);
    for (const point of restated) for (const id of this.#elementsAt(point)) elements.add(id);
    if (before.feed !== NO_FEED || this.feed !== NO_FEED)
      for (const { backfed } of [before.looks, this.looks])
        for (const id of backfed) for (const at of this.#elementsAt(pointOf(id))) elements.add(at);
    if (before.scene.routes !== this.routes)
      for (const [id, route] of this.routes) if (before.scene.routes.get(id) !== route) elements.add(id);
    for (const id of besideOthers(system))
      if (elements.has((savedElement(system.elements, id) as { span?: string }).span ?? "")) elements.add(id);
    const points = new Set([...touched.points, ...restated]);
    for (const id of elements)
      for (const those of [was, system])
        for (const end of endPointsOf(savedElement(those.elements, id))) points.add(end);
    return { elements: elements as Set<ElementId>, points: points as Set<PointId> };
  }

  /** What a flag says, in one way or more: the place with its conductors, and what is to be done there, each in whole words. */
  #flagWays({ conductors, label }: WorkPoint, title: string): readonly (readonly string[])[] {
    const place = [title, [...conductors].join(" ")].filter((it) => it !== "").join(", ");
    const told = [jobOf(this.document).task, label ?? ""].map(onFlag).find((it) => it.length > 0) ?? [[]];
    const here = this.#word(say("drawing.workHere", { label: place }));
    return [[here], narrowed(here)].flatMap((place) => told.map((it) => [...place, ...it]));
  }

  #elementsAt(point: string): readonly string[] {
    return elementsAt(this.document.system).get(point) ?? [];
  }

  #routeOf(id: ElementId, element: CircuitElement): Route | undefined {
    return isBeside(element) ? this.routes.get(element.span as ElementId) : this.routes.get(id);
  }

  #looksAt(point: string): (readonly [Letter, Look])[] {
    return this.looks.lettersAt(point).map((letter) => [letter, this.looks.at(point, letter)] as const);
  }

  /** What a piece asks later, answered now: it must not keep the states of the whole drawing for its own few. */
  #around(id: ElementId, element: CircuitElement): Surroundings {
    const { looks } = this;
    const points = pointsOf(element);
    const told = deviceOf(element.kind).ends.map((end) => {
      const letters = looks.lettersAt(points[end]);
      return { end, letters, looks: letters.map((letter) => looks.at(points[end], letter)) };
    });
    const at = (asked: End) => told.find(({ end }) => end === asked);
    return {
      letters: (end) => at(end)?.letters ?? [],
      look: (end, letter) => at(end)?.looks[at(end)!.letters.indexOf(letter)] ?? "unknown",
      feed: this.feed(id),
      mayStart: this.#mayStart(element),
      hasNeutral: (end) => at(end)?.letters.includes("N") ?? false,
      isTurned: this.#isTurned(element),
      word: this.#word,
    };
  }

  /** Whether what ends a cable has that at its `to` and none at its `from`. */
  #isTurned(element: CircuitElement): boolean {
    if (!("from" in element) || deviceOf(element.kind).endsCable !== true) return false;
    return this.#hasCable(element.to) && !this.#hasCable(element.from);
  }

  #hasCable(point: string): boolean {
    return this.#elementsAt(point).some((it) =>
      isCable(complete(savedElement(this.document.system.elements, it)!)),
    );
  }

  /** Whether nothing feeds a customer who may have a machine that nobody drew. */
  #mayStart(element: CircuitElement): boolean {
    if (!isLoad(element) || !couldFeed(element, settingsOf(this.document).assumeGenerators)) return false;
    const looks = lettersOf(element.phases).map((letter) => this.looks.at(element.at, letter));
    return looks.every((it) => it === "isolated" || it === "grounded" || it === "induced");
  }

  /** The states at an element's own ends, the way of the feed and whether a machine may start, as one comparable text. */
  #statesAround(id: ElementId, element: CircuitElement): string {
    const { looks, feed } = this;
    if ("at" in element) return `${looks.textAt(element.at)}${this.#mayStart(element) ? "?" : ""}`;
    if (!("from" in element)) return "";
    let text = `${looks.textAt(element.from)}/${looks.textAt(element.to)}`;
    if ("alt" in element) text += `/${looks.textAt(element.alt)}`;
    if (this.#isTurned(element)) text += "turned";
    return feed === NO_FEED ? text : `${text}${feed(id)}`;
  }

  /** Whether a badge on a line already tells the state of the points at its ends. */
  #hasBadge(key: string): boolean {
    const id = key as ElementId;
    const element = complete(savedElement(this.document.system.elements, id)!);
    const route = this.routes.get(id);
    return route !== undefined && "from" in element && hasBadge(element, route, this.looks);
  }

  #anglesAt(point: string): readonly number[] {
    const known = anglesOf(this.routes);
    let angles = known.get(point);
    if (angles === undefined) known.set(point, (angles = this.#measuredAngles(point)));
    return angles;
  }

  /** Directions in which something already leaves a point, in degrees. */
  #measuredAngles(point: string): number[] {
    return this.#elementsAt(point).flatMap((key) => {
      const element = complete(savedElement(this.document.system.elements, key)!);
      const route = this.routes.get(key as ElementId);
      if (route === undefined) return [];
      if ("at" in element) return [angleOf(route.from, route.start)];
      if (!("from" in element)) return [];
      return [
        ...(element.from === point ? [angleOf(route.from, route.start)] : []),
        ...(element.to === point ? [angleOf(route.to!, route.end)] : []),
      ];
    });
  }
}

/** The points that an element joins, by their ends. */
const pointsOf = (element: CircuitElement) => element as unknown as Readonly<Record<End, string>>;

/** Kept beside the routes: they are the same as long as these are. */
const anglesOf = perObject((_routes: ReadonlyMap<ElementId, Route>) => new Map<string, readonly number[]>());

const angleOf = (from: Spot, to: Spot): number =>
  Math.round((Math.atan2(to.y - from.y, to.x - from.x) * 180) / Math.PI);

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
  const overall = worstOf(looks.map(([, look]) => look));
  const owner = { of: "point", id } as const;
  return lazyPiece({ owner, box: boxOf([x, y], 24), overall, spine: [x, y] }, () =>
    drawnPoint(owner, point, angles, looks, word),
  );
}

function drawnPoint(
  owner: Owner,
  point: Point,
  angles: readonly number[],
  looks: readonly (readonly [Letter, Look])[],
  word: (message: Message) => string,
): Pick<Piece, "shapes" | "notes"> {
  const { x, y } = point;
  const shapes = markOf(point);
  const taken = [...angles];
  if (point.earthOhms !== undefined) {
    const angle = freest(taken, 135);
    taken.push(angle);
    shapes.push(...rodShapes(x, y, angle));
  }
  if (point.pinned) shapes.push(...pinShapes(x, y, freest(taken, -45)));
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
  const text = badgeOfAll(looks);
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
  return { shapes, notes };
}

/** A pin that is stuck in beside the point: tidying leaves it where it is. */
function pinShapes(x: number, y: number, degrees: number): Shape[] {
  const [dx, dy] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  const along = (distance: number) => [x + dx * distance, y + dy * distance] as const;
  const [headX, headY] = along(16);
  return [
    {
      shape: "stroke",
      points: [...along(8), headX, headY],
      closed: false,
      filled: false,
      onScreenOnly: true,
    },
    { shape: "disc", x: headX, y: headY, radius: 2.5, filled: true, onScreenOnly: true },
  ];
}

function workPiece(
  id: WorkPointId,
  { x, y }: Spot,
  look: Look,
  angles: readonly number[],
  lines: readonly string[],
): Piece {
  const owner = { of: "workPoint", id } as const;
  const note: Note = {
    kind: "work",
    text: lines.join(" "),
    lines,
    shorter: lines.slice(0, 1),
    look,
    owner,
    x,
    y,
    sides: sidesAwayFrom(angles),
    gap: 24,
    reach: 0,
  };
  return { owner, shapes: [], notes: [note], box: boxOf([x, y], 40), overall: look, spine: [x, y] };
}

function isSameFlag({ notes: [one] }: Piece, { notes: [other] }: Piece): boolean {
  return (
    one!.text === other!.text &&
    one!.x === other!.x &&
    one!.y === other!.y &&
    one!.sides.join() === other!.sides.join()
  );
}

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

const TOWARD = AROUND.map(([dx, dy]) => (Math.atan2(dy, dx) * 180) / Math.PI);

/** Directions around a point, those with nothing near them first. */
function sidesAwayFrom(angles: readonly number[]): readonly (readonly [number, number])[] {
  const rooms = TOWARD.map((own) => {
    const nearest = Math.min(
      80,
      ...angles.map((angle) => Math.abs(((((own - angle) % 360) + 540) % 360) - 180)),
    );
    return Math.floor(nearest / 20);
  });
  return AROUND.map((side, at) => ({ side, room: rooms[at]! }))
    .sort((a, b) => b.room - a.room)
    .map(({ side }) => side);
}

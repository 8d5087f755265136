import { Konva } from "konva/lib/Global.js";
import { Layer } from "konva/lib/Layer.js";
import { Shape } from "konva/lib/Shape.js";
import {
  type Box,
  boxOf,
  isAfar,
  type NoteSizes,
  type Owner,
  type Piece,
  pieceFor,
  type PlacedNote,
  placeNotes,
  type Scene,
} from "../../core";
import { type Camera, contains, COVERED, fitted, type Size, viewOf, zoomedAt } from "./camera";
import {
  paintGrounds,
  paintNotes,
  paintRings,
  paintScene,
  piecesWithin,
  squaresOf,
  STROKES_REACH,
} from "./paint";
import type { Painting } from "./stale";
import type * as Further from "./further";
import type { Motion } from "./motion";
import type { BoardView } from "./view";
import { firstLook, sizesAt, wholeWithNotes } from "./whole";

/** The canvas as its component has it: what it shows, and where it looks. */
export interface Board {
  readonly camera: Camera;
  readonly size: Size;
  show(view: BoardView): void;
  moveCamera(camera: Camera): void;
  zoom(factor: number, screenX?: number, screenY?: number): void;
  /** shows the whole drawing */
  fit(): void;
  /** shows the whole drawing where it stays readable, else as much of it as does, around a thing */
  begin(around: Owner | undefined): void;
  /** moves as little as needed to bring a box into view */
  reveal(box: Box): void;
  /** brings a whole box into view, zooming out where it does not fit */
  revealAll(box: Box): void;
  marquee(box: Box | undefined): void;
  destroy(): void;
}

Konva.autoDrawEnabled = false;

/** Above this many pieces labels are placed again only when the zoom has settled. */
const MANY_PIECES = 800;
const SETTLED_MS = 120;
/** What the board says of itself. */
interface Tells {
  camera(camera: Camera): void;
  /** once the hands rest: whether anything of the drawing is in view */
  sight(isInSight: boolean): void;
}

/**
 * Two Konva layers with one shape each: the drawing, and what lies over it. It knows no gestures, so that it needs no
 * stage, which is a tenth of what is fetched for the first picture.
 */
export function createBoard(host: HTMLDivElement, tell: Tells): Board {
  const base = new Layer({ listening: false, clearBeforeDraw: false });
  const over = new Layer({ listening: false });
  const layers = [base, over];
  const canvases = layers.map((it) => it.getNativeCanvasElement());
  for (const { style } of canvases) style.transformOrigin = "0 0";
  host.append(...canvases);
  const resized = (): Size => {
    const [width, height] = [host.clientWidth || 1, host.clientHeight || 1];
    // The ratio of the screen is another once the page is zoomed, or shown on another screen.
    for (const { canvas } of layers) {
      canvas.pixelRatio = devicePixelRatio;
      canvas.setSize(width, height);
    }
    return { width, height };
  };
  let camera: Camera = { x: 0, y: 0, scale: 1 };
  let size = resized();
  let view: BoardView | undefined;
  let placed: readonly PlacedNote[] = [];
  let placedFor: { scene: Scene; scale: number; sizes: NoteSizes; within: Box } | undefined;
  /** notes stand where they stood before an edit */
  let areRough = false;
  let settling: ReturnType<typeof setTimeout> | undefined;
  let looking: ReturnType<typeof setTimeout> | undefined;
  let marqueeBox: Box | undefined;
  /** what it begins around */
  let begun: Owner | undefined;
  /** it begins once it has something to show, and a size: a drawing that is not shown has none */
  let isAwaited = true;
  /** where it looked then, so that it is known whether hands looked elsewhere since */
  let first: Camera | undefined;
  let painted: Painting | undefined;
  /** when, as performance.now() tells it */
  let paintedAt = 0;
  let further: typeof Further | undefined;
  let motion: Motion | undefined;

  /** The layer's own canvas, in the drawing's units: paths compiled once are painted on it as they are. */
  const native = (layer: Layer, { x, y, scale } = camera) => {
    const it = layer.getNativeCanvasElement().getContext("2d")!;
    it.translate(x, y);
    it.scale(scale, scale);
    return it;
  };
  base.add(
    new Shape({
      sceneFunc: () => {
        if (view === undefined) return;
        const at = further?.pixelByPixel(painted, camera) ?? camera;
        const now = { view, placed, camera: at, size };
        const it = native(base, at);
        const stale = further?.staleParts(painted, now, it) ?? [viewOf(at, size)];
        painted = now;
        paintedAt = performance.now();
        for (const { style } of canvases) style.transform = "";
        for (const part of stale) paintPart(it, now, part);
      },
    }),
  );
  over.add(
    new Shape({
      sceneFunc: () => {
        if (view === undefined) return;
        const it = native(over);
        motion?.paint(it, camera.scale);
        further?.paintOver(it, view, camera.scale, marqueeBox);
      },
    }),
  );

  function paintPart(context: CanvasRenderingContext2D, { view, placed, camera }: Painting, part: Box) {
    const { scene, palette, sizes } = view;
    const { left, top, right, bottom } = part;
    context.save();
    context.beginPath();
    context.rect(left, top, right - left, bottom - top);
    context.clip();
    context.clearRect(left, top, right - left, bottom - top);
    const near = boxOf([left, top, right, bottom], STROKES_REACH / camera.scale);
    paintGrounds(context, scene, palette, camera.scale, near);
    if (motion?.holdsLit !== true) further?.paintLit(context, view, camera.scale);
    const isFewFromAfar = isLaid(scene) && !hasMany(scene) && isAfar(scene, camera.scale);
    const shown = (isFewFromAfar ? further?.overviewOf(scene, camera.scale) : undefined) ?? scene;
    paintRings(context, placed, palette, camera.scale);
    paintScene(context, shown, palette, camera.scale, near);
    paintNotes(context, placed, palette, sizesAt(sizes, scene, camera.scale), camera.scale, near);
    context.restore();
  }

  function placeAgain(force = false) {
    if (view === undefined) return;
    const { scene, sizes } = view;
    const { scale } = camera;
    const box = viewOf(camera, size);
    const same =
      placedFor !== undefined &&
      placedFor.scene === scene &&
      placedFor.sizes === sizes &&
      Math.abs(Math.log(placedFor.scale / scale)) < 0.02 &&
      contains(placedFor.within, box);
    if (same && !force) return;
    const many = hasMany(scene);
    const margin = many ? (box.right - box.left) / 3 : Infinity;
    const within = {
      left: box.left - margin,
      top: box.top - margin,
      right: box.right + margin,
      bottom: box.bottom + margin,
    };
    const afar = isAfar(scene, scale);
    const overview = afar && isLaid(scene) ? further?.overviewOf(scene, scale) : undefined;
    const labelled = overview ?? (many ? near(scene, afar, within) : scene);
    const free = { ...box, bottom: box.bottom - COVERED / scale };
    placed = placeNotes(labelled, scale, sizesAt(sizes, scene, scale), within, free);
    placedFor = { scene, scale, sizes, within };
    areRough = false;
  }

  /** Of a large drawing notes are not placed within the frame of an edit; those in view say at once what holds now. */
  function renewPlaced() {
    if (view === undefined || placedFor === undefined || !hasMany(view.scene)) return;
    const renewed = further?.renewedPlaces(placed, placedFor, view);
    if (renewed === undefined) return;
    placed = renewed;
    placedFor = { ...placedFor, scene: view.scene };
    areRough = true;
  }

  function redraw({ andOver = true } = {}) {
    renewPlaced();
    if (view !== undefined && hasMany(view.scene) && placedFor?.scene === view.scene) {
      clearTimeout(settling);
      settling = setTimeout(() => {
        placeAgain(areRough);
        base.batchDraw();
      }, SETTLED_MS);
    } else placeAgain();
    base.batchDraw();
    if (andOver) over.batchDraw();
    clearTimeout(looking);
    looking = setTimeout(
      () => view && tell.sight(further?.isInSight(view.scene, viewOf(camera, size)) ?? true),
      SETTLED_MS,
    );
  }

  /** Whether what is painted of a large drawing does for a moment, stretched as the camera zooms. */
  function stretch(): boolean {
    if (painted === undefined || painted.view !== view || !hasMany(view.scene)) return false;
    const as = further?.stretchedAs(painted.camera, camera, performance.now() - paintedAt);
    if (as === undefined) return false;
    for (const { style } of canvases) style.transform = as;
    clearTimeout(settling);
    settling = setTimeout(redraw, SETTLED_MS);
    return true;
  }

  function moveCamera(next: Camera) {
    camera = next;
    if (!stretch()) redraw();
    tell.camera(camera);
  }

  const look = (next: Camera | undefined) => next !== undefined && next !== camera && moveCamera(next);

  function fit(look = wholeWithNotes) {
    const bounds = view?.scene.bounds;
    if (view === undefined || bounds === undefined || size.width <= 1) return;
    const { scene, sizes } = view;
    const spine = begun && pieceFor(scene, begun)?.spine;
    moveCamera(hasMany(scene) ? fitted(bounds, size) : look(scene, bounds, size, sizes, spine));
  }

  function begin(around: Owner | undefined = begun) {
    begun = around;
    isAwaited = size.width <= 1;
    fit(firstLook);
    first = camera;
  }

  /** Of a large drawing nothing moves. */
  function move(was: BoardView, is: BoardView) {
    const next = hasMany(is.scene) ? undefined : further?.motionBetween(was, is, drawMotion);
    // The states that an edit leads to come a little after it: what runs outward goes on over them.
    const isElsewhere = !isSameDrawing(was.scene, is.scene) || !isSameLie(was.scene, is.scene);
    if (next !== undefined || isElsewhere || was.lit !== is.lit) motion = next;
  }

  function drawMotion(it: Motion, isOver: boolean): boolean {
    if (it !== motion) return false;
    over.batchDraw();
    if (isOver) {
      motion = undefined;
      if (it.holdsLit) paintAnew();
    }
    return true;
  }

  const observer = new ResizeObserver(() => {
    const before = size;
    size = resized();
    if (view !== undefined && (isAwaited || (camera === first && view.selection.length === 0)))
      return begin();
    // What was in the middle stays in the middle.
    moveCamera({
      ...camera,
      x: camera.x + (size.width - before.width) / 2,
      y: camera.y + (size.height - before.height) / 2,
    });
  });
  observer.observe(host);
  const paintAnew = () => {
    painted = undefined;
    placeAgain(true);
    base.batchDraw();
    over.batchDraw();
  };
  void document.fonts?.ready.then(paintAnew);
  base.getNativeCanvasElement().addEventListener("contextrestored", paintAnew);
  // Without it nothing moves, nothing is shown selected, and from afar there are lines alone.
  import("./further").then(
    (it) => {
      further = it;
      if (view !== undefined && (view.lit.length > 0 || isAfar(view.scene, camera.scale))) paintAnew();
      else over.batchDraw();
    },
    () => undefined,
  );

  return {
    get camera() {
      return camera;
    },
    get size() {
      return size;
    },
    show(next) {
      const was = view;
      view = next;
      if (was !== undefined) move(was, next);
      const isRelaid =
        was !== undefined &&
        !next.isTraced &&
        !isAwaited &&
        isSameDrawing(was.scene, next.scene) &&
        !isSameLie(was.scene, next.scene);
      const wasWhole = was?.scene.bounds !== undefined && contains(viewOf(camera, size), was.scene.bounds);
      // Of two scenes within one frame only the second is painted, from what was found of the first.
      squaresOf(next.scene);
      if (isAwaited) begin();
      else if (isRelaid && (wasWhole || camera === first || was.scene.way !== next.scene.way)) begin();
      else if (isRelaid) camera = further?.keepingMiddle(camera, size, was.scene, next.scene) ?? camera;
      redraw({ andOver: was === undefined || further?.isSameOver(was, next) !== true });
    },
    moveCamera,
    zoom: (factor, x = size.width / 2, y = size.height / 2) => moveCamera(zoomedAt(camera, factor, x, y)),
    fit: () => fit(),
    begin,
    reveal: (box) => look(further?.revealing(camera, size, box)),
    revealAll: (box) => look(further?.revealingAll(camera, size, box)),
    marquee(box) {
      marqueeBox = box;
      over.batchDraw();
    },
    destroy() {
      clearTimeout(settling);
      clearTimeout(looking);
      observer.disconnect();
      for (const it of layers) it.destroy();
    },
  };
}

/** Whether two scenes show the same things, laid out this way and that. */
const isSameDrawing = (one: Scene, other: Scene): boolean =>
  one.way !== undefined && other.way !== undefined && one.points.size === other.points.size;

const isSameLie = (one: Scene, other: Scene): boolean =>
  one.way === other.way && one.text === other.text && one.wide === other.wide && one.isLow === other.isLow;

const isLaid = ({ plates }: Scene): boolean => plates.length > 0;

/** What of a large drawing is labelled: from afar its work points, and no labels that nobody could read. */
const near = (scene: Scene, afar: boolean, within: Box): Pick<Scene, "pieces"> => ({
  pieces: afar ? flagsOf(scene) : piecesWithin(scene, within),
});

const flagsOf = ({ works }: Scene): Piece[] => [...works.values()];

const hasMany = ({ elements, points }: Scene): boolean => elements.size + points.size > MANY_PIECES;

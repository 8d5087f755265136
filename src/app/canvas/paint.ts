import {
  alongOf,
  type Box,
  changeOf,
  type ElementId,
  frameOf,
  isAfar,
  linesIn,
  type Located,
  type Look,
  type NoteSizes,
  outlinesOf,
  overlaps,
  type Owner,
  ownerKey,
  type Palette,
  type Piece,
  pieceFor,
  type PlacedNote,
  QUIET_WIDTH,
  type Scene,
  type SceneChange,
  type Shape,
  ringAt,
  ringStrokesOf,
  spotsAlong,
  strokesOf,
  TYPEFACE,
  unionOf,
  widthFactor,
  WORST_FIRST,
  isFlag,
} from "../../core";

/** Lowest first: what is dangerous lies on top. */
const ORDER: readonly Look[] = [...WORST_FIRST].reverse();

/** What lies within one square of the drawing, compiled into as few paths as there are ways to stroke them. */
interface Tile {
  readonly grounds: Path2D;
  readonly strands: ReadonlyMap<Look, Path2D>;
  readonly inkLines: Path2D;
  readonly quietLines: Path2D;
  readonly dashedLines: Path2D;
  readonly paperFilled: Path2D;
  readonly inkFilled: Path2D;
  readonly hotLines: Path2D;
  readonly hotFilled: Path2D;
  readonly inscriptions: readonly Extract<Shape, { shape: "inscription" }>[];
  readonly along: readonly Extract<Shape, { shape: "strand" }>[];
}

/** The things of one square, drawn and compiled when they are first in view: from afar only by their spines. */
class Square {
  readonly things: readonly Located[];
  readonly box: Box;
  readonly #draw: () => readonly Piece[];
  readonly #overallAt: (index: number) => Look;
  #pieces: readonly Piece[] | undefined;
  #tile: Tile | undefined;
  readonly #spinesOn = new Map<number, ReadonlyMap<Look, Path2D>>();

  private constructor(
    things: readonly Located[],
    box: Box,
    draw: () => readonly Piece[],
    overallAt: (index: number) => Look,
  ) {
    this.things = things;
    this.box = box;
    this.#draw = draw;
    this.#overallAt = overallAt;
  }

  static with(pieces: readonly Piece[]): Square {
    const box = unionOf(pieces.map((it) => it.box))!;
    return new Square(
      pieces,
      box,
      () => pieces,
      (index) => pieces[index]!.overall,
    );
  }

  /** The square with the same things, as they look in another scene. */
  in(scene: Scene, overallOf: (id: ElementId) => Look): Square {
    const { things, box } = this;
    return new Square(
      things,
      box,
      () => things.map(({ owner }) => pieceFor(scene, owner)!),
      (index) => overallOf(things[index]!.owner.id as ElementId),
    );
  }

  get pieces(): readonly Piece[] {
    return (this.#pieces ??= this.#draw());
  }

  get tile(): Tile {
    return (this.#tile ??= compile(this.pieces));
  }

  spinesAt(scale: number): ReadonlyMap<Look, Path2D> {
    const grid = gridAt(scale);
    let spines = this.#spinesOn.get(grid);
    if (spines === undefined)
      this.#spinesOn.set(grid, (spines = compileSpines(this.things, this.#overallAt, grid)));
    return spines;
  }
}

/** How far strokes, arrows and a lit path reach beyond the box of their piece [screen px]. */
export const STROKES_REACH = 24;

const TILE = 450;

const squares = new WeakMap<Scene, ReadonlyMap<string, Square>>();

/**
 * The pieces of a scene by square. Squares that nothing came to or went from are those of the scene before, where this
 * was asked for too.
 */
export function squaresOf(scene: Scene): ReadonlyMap<string, Square> {
  const known = squares.get(scene);
  if (known !== undefined) return known;
  const change = changeOf(scene);
  const before = change === undefined ? undefined : squares.get(change.before);
  const fresh = before === undefined ? gathered(scene.pieces) : changed(before, scene, change!);
  squares.set(scene, fresh);
  return fresh;
}

function squareOf({ box: { left, right, top, bottom } }: Piece): string {
  return `${Math.floor((left + right) / 2 / TILE)} ${Math.floor((top + bottom) / 2 / TILE)}`;
}

function bySquare(pieces: readonly Piece[]): Map<string, Piece[]> {
  const lists = new Map<string, Piece[]>();
  for (const piece of pieces) {
    const key = squareOf(piece);
    const list = lists.get(key);
    if (list === undefined) lists.set(key, [piece]);
    else list.push(piece);
  }
  return lists;
}

const gathered = (pieces: readonly Piece[]): ReadonlyMap<string, Square> =>
  new Map([...bySquare(pieces)].map(([key, list]) => [key, Square.with(list)]));

function changed(
  before: ReadonlyMap<string, Square>,
  scene: Scene,
  change: SceneChange,
): ReadonlyMap<string, Square> {
  if (change.of === "looks")
    return new Map([...before].map(([key, square]) => [key, square.in(scene, change.overallOf)]));
  const { gone, come } = change;
  const after = new Map(before);
  const left = new Set(gone);
  const added = bySquare(come);
  for (const key of new Set([...bySquare(gone).keys(), ...added.keys()])) {
    const stayed = (before.get(key)?.pieces ?? []).filter((it) => !left.has(it));
    const pieces = [...stayed, ...(added.get(key) ?? [])];
    if (pieces.length === 0) after.delete(key);
    else after.set(key, Square.with(pieces));
  }
  return after;
}

function squaresWithin(scene: Scene, part: Box): Square[] {
  return [...squaresOf(scene).values()].filter(({ box }) => overlaps(box, part));
}

/** The pieces in and about a part of the drawing, in the drawing's order; the others of a large one stay undrawn. */
export function piecesWithin(scene: Scene, part: Box): Piece[] {
  const near = new Set(
    squaresWithin(scene, part).flatMap(({ things }) => things.map(({ owner }) => ownerKey(owner))),
  );
  const drawn = (of: Owner["of"], map: ReadonlyMap<string, Piece>) =>
    [...map.keys()].flatMap((id) => (near.has(ownerKey({ of, id } as Owner)) ? map.get(id)! : []));
  return [
    ...scene.plates.filter(({ box }) => overlaps(box, part)),
    ...drawn("element", scene.elements),
    ...drawn("point", scene.points),
    ...drawn("workPoint", scene.works),
  ];
}

const pathOf = (paths: Map<Look, Path2D>, look: Look): Path2D => {
  let path = paths.get(look);
  if (path === undefined) paths.set(look, (path = new Path2D()));
  return path;
};

/** About a pixel in units of the drawing, the same over a doubling of the scale: finer than a pixel nothing is stroked. */
const gridAt = (scale: number): number => 2 ** -Math.ceil(Math.log2(scale));

/**
 * Elements as one line each, by their worst look; what stays on one structure is in its mark. From so far that thousands are
 * less than a pixel long each, those of one look that come to lie on each other are one stroke: no look leaves its place.
 */
function compileSpines(
  things: readonly Located[],
  overallAt: (index: number) => Look,
  grid: number,
): ReadonlyMap<Look, Path2D> {
  const spines = new Map<Look, Path2D>();
  const known = new Set<string>();
  things.forEach(({ owner, spine, within }, index) => {
    if (owner.of !== "element" || within === true) return;
    const look = overallAt(index);
    const points = onGrid(spine, grid);
    const key = `${look} ${points.join()}`;
    if (known.has(key)) return;
    known.add(key);
    trace(pathOf(spines, look), points);
  });
  return spines;
}

/**
 * A line whose ends and corners lie on a grid, without the corners that lie less than a pixel or two off the straight way; a
 * dot where all of it is shorter.
 */
function onGrid(points: readonly number[], grid: number): number[] {
  const near = (value: number) => Math.round(value / grid) * grid;
  const [x, y] = [near(points[0]!), near(points[1]!)];
  const laid = [x, y];
  for (let k = 2; k + 1 < points.length; k += 2) {
    const [toX, toY] = [near(points[k]!), near(points[k + 1]!)];
    const isEnd = k + 3 >= points.length;
    if (isEnd ? laid.length > 2 || toX !== x || toY !== y : turnsAt(points, k, laid, grid))
      laid.push(toX, toY);
  }
  return laid.length > 2 ? laid : [x - grid / 2, y, x + grid / 2, y];
}

/** Whether a line would lie elsewhere without a corner of it: off the straight way from the last one that stays to its end. */
function turnsAt(points: readonly number[], k: number, laid: readonly number[], grid: number): boolean {
  const [x, y] = [laid.at(-2)!, laid.at(-1)!];
  const [alongX, alongY] = [points.at(-2)! - x, points.at(-1)! - y];
  const [aX, aY] = [points[k]! - x, points[k + 1]! - y];
  const length = Math.hypot(alongX, alongY);
  const along = length === 0 ? 0 : (aX * alongX + aY * alongY) / length;
  const off = length === 0 ? Math.hypot(aX, aY) : Math.abs(aX * alongY - aY * alongX) / length;
  return off >= grid || along < -grid || along > length + grid;
}

function compile(pieces: readonly Piece[]): Tile {
  const strands = new Map<Look, Path2D>();
  const [grounds, inkLines, quietLines, dashedLines, paperFilled, inkFilled, hotLines, hotFilled] = [
    new Path2D(),
    new Path2D(),
    new Path2D(),
    new Path2D(),
    new Path2D(),
    new Path2D(),
    new Path2D(),
    new Path2D(),
  ];
  const inscriptions: Extract<Shape, { shape: "inscription" }>[] = [];
  const along: Extract<Shape, { shape: "strand" }>[] = [];
  const fillOf = ({ filled, isHot }: { filled: boolean; isHot?: boolean }): Path2D =>
    !filled ? paperFilled : isHot ? hotFilled : inkFilled;
  for (const { shapes } of pieces) {
    for (const shape of shapes)
      switch (shape.shape) {
        case "strand":
          trace(pathOf(strands, shape.look), shape.points);
          if (alongOf(shape.look) !== undefined) along.push(shape);
          break;
        case "stroke":
          trace(
            shape.closed
              ? fillOf(shape)
              : shape.dashed
                ? dashedLines
                : shape.isQuiet
                  ? quietLines
                  : shape.isHot
                    ? hotLines
                    : inkLines,
            shape.points,
            shape.closed,
          );
          break;
        case "disc": {
          const path = fillOf(shape);
          path.moveTo(shape.x + shape.radius, shape.y);
          path.arc(shape.x, shape.y, shape.radius, 0, 7);
          break;
        }
        case "ground": {
          const { left, top, right, bottom } = shape.box;
          grounds.roundRect(left, top, right - left, bottom - top, 10);
          break;
        }
        case "inscription":
          inscriptions.push(shape);
      }
  }
  return {
    grounds,
    strands,
    inkLines,
    quietLines,
    dashedLines,
    paperFilled,
    inkFilled,
    hotLines,
    hotFilled,
    inscriptions,
    along,
  };
}

/** Paints the quiet grounds of poles, on which all else is painted. */
export function paintGrounds(
  context: CanvasRenderingContext2D,
  scene: Scene,
  palette: Palette,
  scale: number,
  part: Box,
) {
  if (isAfar(scene, scale) || scene.plates.length === 0) return;
  context.fillStyle = palette.plate;
  context.strokeStyle = palette.plateEdge;
  context.lineWidth = 1.2 / scale;
  for (const { tile } of squaresWithin(scene, part)) {
    context.fill(tile.grounds);
    context.stroke(tile.grounds);
  }
}

/** Paints conductors, symbols and points in a part of the drawing. The context is in its units. */
export function paintScene(
  context: CanvasRenderingContext2D,
  scene: Scene,
  palette: Palette,
  scale: number,
  part: Box,
) {
  context.lineJoin = "round";
  context.lineCap = "butt";
  const inView = squaresWithin(scene, part);
  if (isAfar(scene, scale))
    return strokeLooks(
      context,
      inView.map((it) => it.spinesAt(scale)),
      palette,
      scale,
      widthFactor(scale),
    );
  const factor = widthFactor(scale, scene.text);
  const tiles = inView.map((it) => it.tile);
  strokeLooks(
    context,
    tiles.map((it) => it.strands),
    palette,
    scale,
    factor,
  );
  paintMarks(context, tiles, palette, scale, factor);
}

function strokeLooks(
  context: CanvasRenderingContext2D,
  paths: readonly ReadonlyMap<Look, Path2D>[],
  palette: Palette,
  scale: number,
  factor: number,
) {
  for (const look of ORDER)
    for (const byLook of paths) {
      const path = byLook.get(look);
      if (path !== undefined) strokeLook(context, look, path, palette, scale, factor);
    }
}

function strokeLook(
  context: CanvasRenderingContext2D,
  look: Look,
  path: Path2D,
  palette: Palette,
  scale: number,
  factor: number,
) {
  for (const { colour, width, dash } of strokesOf(look)) {
    context.strokeStyle = palette[colour];
    context.lineWidth = (width * factor) / scale;
    context.setLineDash(dash.map((it) => (it * factor) / scale));
    context.stroke(path);
  }
  context.setLineDash([]);
}

function trace(path: CanvasPath, points: readonly number[], closed = false) {
  path.moveTo(points[0]!, points[1]!);
  for (let k = 2; k + 1 < points.length; k += 2) path.lineTo(points[k]!, points[k + 1]!);
  if (closed) path.closePath();
}

function paintMarks(
  context: CanvasRenderingContext2D,
  tiles: readonly Tile[],
  palette: Palette,
  scale: number,
  factor: number,
) {
  paintAlong(
    context,
    tiles.flatMap((it) => it.along),
    palette,
    scale,
    factor,
  );
  context.lineWidth = (QUIET_WIDTH * factor) / scale;
  context.strokeStyle = palette.isolated;
  for (const { quietLines } of tiles) context.stroke(quietLines);
  context.lineWidth = (2.5 * factor) / scale;
  context.strokeStyle = palette.ink;
  context.fillStyle = palette.paper;
  for (const { paperFilled } of tiles) {
    context.fill(paperFilled);
    context.stroke(paperFilled);
  }
  for (const { inkLines } of tiles) context.stroke(inkLines);
  context.setLineDash([4 / scale, 4 / scale]);
  for (const { dashedLines } of tiles) context.stroke(dashedLines);
  context.setLineDash([]);
  context.fillStyle = palette.ink;
  for (const { inkFilled } of tiles) {
    context.fill(inkFilled);
    context.stroke(inkFilled);
  }
  context.fillStyle = context.strokeStyle = palette.hot;
  for (const { hotLines, hotFilled } of tiles) {
    context.stroke(hotLines);
    context.fill(hotFilled);
    context.stroke(hotFilled);
  }
  context.fillStyle = palette.ink;
  context.textAlign = "center";
  context.textBaseline = "middle";
  for (const { inscriptions } of tiles)
    for (const { x, y, text, size } of inscriptions) {
      if (size * scale < 6) continue;
      context.font = `700 ${size}px ${TYPEFACE}`;
      context.fillText(text, x, y + size * 0.06);
    }
}

function paintAlong(
  context: CanvasRenderingContext2D,
  strands: readonly Extract<Shape, { shape: "strand" }>[],
  palette: Palette,
  scale: number,
  factor: number,
) {
  const size = factor / scale;
  const arrows = new Path2D();
  const crosses = new Path2D();
  for (const { points, look, feed } of strands) {
    const { every, mark } = alongOf(look)!;
    if (mark === "arrow" && feed === 0) continue;
    for (const { x, y, dx, dy } of spotsAlong(points, every / scale)) {
      const at = (forward: number, aside: number): [number, number] => [
        x + (dx * forward - dy * aside) * size,
        y + (dy * forward + dx * aside) * size,
      ];
      if (mark === "arrow")
        trace(arrows, [...at(9 * feed, 0), ...at(-5 * feed, 8), ...at(-5 * feed, -8)], true);
      else {
        trace(crosses, [...at(-6, -6), ...at(6, 6)]);
        trace(crosses, [...at(-6, 6), ...at(6, -6)]);
      }
    }
  }
  context.fillStyle = palette.hot;
  context.strokeStyle = palette.paper;
  context.lineWidth = 1.5 * size;
  context.fill(arrows);
  context.stroke(arrows);
  context.strokeStyle = palette.ink;
  context.lineWidth = 2.5 * size;
  context.stroke(crosses);
}

/** Paints the rings around work places: under the lines and symbols there, so that they hide none. */
export function paintRings(
  context: CanvasRenderingContext2D,
  placed: readonly PlacedNote[],
  palette: Palette,
  scale: number,
) {
  for (const { note } of placed)
    if (isFlag(note)) {
      const { x, y } = note.ring ?? note;
      const radius = ringAt(note, scale);
      for (const { colour, width, dash, inset } of ringStrokesOf(note.look)) {
        context.strokeStyle = palette[colour];
        context.lineWidth = width / scale;
        context.setLineDash(dash.map((it) => it / scale));
        context.beginPath();
        context.arc(x, y, (radius - inset) / scale, 0, 2 * Math.PI);
        context.stroke();
      }
    }
  context.setLineDash([]);
}

/** Paints labels, badges and flags of a part of the drawing, each of screen size. */
export function paintNotes(
  context: CanvasRenderingContext2D,
  placed: readonly PlacedNote[],
  palette: Palette,
  sizes: NoteSizes,
  scale: number,
  part: Box,
) {
  context.textAlign = "center";
  context.textBaseline = "middle";
  for (const it of placed) {
    const { note, x, y, width, height } = it;
    const [halfWidth, halfHeight] = [width / 2 / scale, height / 2 / scale];
    const box = { left: x - halfWidth, right: x + halfWidth, top: y - halfHeight, bottom: y + halfHeight };
    if (!overlaps(box, part)) continue;
    const { fill, edge, ink, dash, radius } = frameOf(note.kind, note.look, palette);
    context.beginPath();
    const outlines = outlinesOf(it, scale);
    for (const points of outlines) trace(context, points, true);
    if (outlines.length === 0)
      context.roundRect(
        box.left,
        box.top,
        halfWidth * 2,
        halfHeight * 2,
        Math.min(radius / scale, halfHeight),
      );
    if (fill !== undefined) {
      context.fillStyle = fill;
      context.fill();
    }
    if (edge !== undefined) {
      context.strokeStyle = edge;
      context.lineWidth = 1.5 / scale;
      context.setLineDash(dash.map((it) => it / scale));
      context.stroke();
      context.setLineDash([]);
    }
    context.fillStyle = ink;
    for (const line of linesIn(it, sizes, palette, scale)) {
      context.textAlign = line.anchor === "start" ? "left" : "center";
      context.font = `${line.weight} ${line.size}px ${TYPEFACE}`;
      context.fillText(line.text, line.x, line.y + line.size * 0.05);
    }
  }
}

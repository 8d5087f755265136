import {
  changeOf,
  ownerKey,
  type Palette,
  type Piece,
  type Scene,
  type Shape,
  type Strand,
  strokesOf,
  widthFactor,
} from "../../core";
import type { BoardView } from "./view";

/** What moves over the drawing for a moment, to show what came of what. */
export interface Motion {
  /** the lit path draws itself: until it has, it is not painted whole */
  readonly holdsLit: boolean;
  paint(context: CanvasRenderingContext2D, scale: number): void;
}

/** Nobody waits for a motion: it is over before the next press. */
export const MOTION_MS = 240;

/**
 * What moves between two views: a blade swings, what changes its state changes outward from what was switched, a path that
 * is lit draws itself from its source. Nothing where motion is not wanted.
 *
 * @param frame asked for each picture; `false` ends the motion early
 */
export function motionBetween(
  was: BoardView,
  is: BoardView,
  frame: (motion: Motion, isOver: boolean) => boolean,
): Motion | undefined {
  if (matchMedia("(prefers-reduced-motion: reduce)").matches) return undefined;
  const path = pathDrawn(was, is);
  const paint = path ?? statesRunning(was, is);
  if (paint === undefined) return undefined;
  const start = performance.now();
  const motion: Motion = {
    holdsLit: path !== undefined,
    paint: (context, scale) => paint(context, scale, Math.min(1, (performance.now() - start) / MOTION_MS)),
  };
  const next = () => {
    const isOver = performance.now() - start >= MOTION_MS;
    if (frame(motion, isOver) && !isOver) requestAnimationFrame(next);
  };
  requestAnimationFrame(next);
  return motion;
}

type Paint = (context: CanvasRenderingContext2D, scale: number, progress: number) => void;

/** A path that is lit now and of which nothing was: an outline that grows along it, so that the states on it stay readable. */
function pathDrawn(was: BoardView, { scene, lit, palette }: BoardView): Paint | undefined {
  if (was.lit.some((it) => lit.includes(it))) return undefined;
  const drawn = lit.flatMap((id) => scene.elements.get(id) ?? []);
  if (drawn.length === 0) return undefined;
  const path = inOneRow(drawn.map(({ spine }) => spine));
  const whole = path.reduce((sum, it) => sum + lengthOf(it), 0);
  return (context, scale, progress) => {
    context.save();
    context.lineJoin = "round";
    for (const [width, how] of [
      [18, "source-over"],
      [11, "destination-out"],
    ] as const) {
      context.globalCompositeOperation = how;
      context.strokeStyle = palette.accent;
      context.lineWidth = width / scale;
      let left = whole * progress;
      for (const spine of path) {
        if (left <= 0) break;
        stroke(context, partOf(spine, 0, left));
        left -= lengthOf(spine);
      }
    }
    context.restore();
  };
}

/** Each stretch turned so that it begins where the one before ended. */
function inOneRow(spines: readonly (readonly number[])[]): readonly (readonly number[])[] {
  let end: readonly [number, number] | undefined;
  return spines.map((spine, nth) => {
    const next = spines[nth + 1];
    const isTurned =
      end === undefined
        ? next !== undefined && nearest(headOf(spine), next) < nearest(tailOf(spine), next)
        : distance(tailOf(spine), end) < distance(headOf(spine), end);
    const turned = isTurned ? reversed(spine) : spine;
    end = tailOf(turned);
    return turned;
  });
}

/** The states of what changed, outward from what was switched, whose blades swing meanwhile. */
function statesRunning(was: BoardView, is: BoardView): Paint | undefined {
  if (was.scene === is.scene || changeOf(is.scene)?.before !== was.scene || was.palette !== is.palette)
    return undefined;
  const changed = changedPieces(was.scene, is.scene);
  const switched = changed.filter(([before, after]) => isSwung(before, after));
  if (switched.length === 0) return undefined;
  const from = switched.map(([, { spine }]) => middleOf(spine));
  const away = (spot: XY) => Math.min(...from.map((it) => distance(it, spot)));
  const reach = Math.max(
    1,
    ...changed.flatMap(([, { spine }]) => [away(headOf(spine)), away(tailOf(spine))]),
  );
  const under = groundUnder(is.scene, is.palette);
  return (context, scale, progress) => {
    const factor = widthFactor(scale, is.scene.text);
    const front = reach * progress;
    for (const [before] of changed)
      for (const shape of before.shapes) if (shape.shape === "strand") paintAhead(context, shape, front);
    for (const [before, after] of switched) paintSwing(context, before, after, progress);

    function paintAhead(context: CanvasRenderingContext2D, strand: Strand, front: number) {
      const isOutward = away(headOf(strand.points)) <= away(tailOf(strand.points));
      const points = isOutward ? strand.points : reversed(strand.points);
      const begun = away(headOf(points));
      const part = partOf(points, Math.max(0, front - begun), Infinity);
      if (part.length < 4) return;
      context.lineCap = "butt";
      context.strokeStyle = under(middleOf(part));
      context.lineWidth = (WIDEST * factor) / scale;
      stroke(context, part);
      for (const { colour, width, dash } of strokesOf(strand.look)) {
        context.strokeStyle = is.palette[colour];
        context.lineWidth = (width * factor) / scale;
        context.setLineDash(dash.map((it) => (it * factor) / scale));
        stroke(context, part);
      }
      context.setLineDash([]);
    }

    function paintSwing(context: CanvasRenderingContext2D, before: Piece, after: Piece, progress: number) {
      const [old, now] = [symbolOf(before), symbolOf(after)];
      context.lineWidth = (2.5 * factor) / scale;
      context.lineJoin = "round";
      now.forEach((shape, nth) => {
        const other = old[nth]!;
        if (shape.shape !== "stroke" || other.shape !== "stroke" || isSame(shape, other)) return;
        const at = shape.points.map((it, k) => other.points[k]! + (it - other.points[k]!) * progress);
        // What stands at its end already is covered while it swings there.
        context.strokeStyle = context.fillStyle = under(middleOf(shape.points));
        context.lineWidth = (4 * factor) / scale;
        stroke(context, shape.points, shape.closed);
        if (shape.closed) context.fill();
        context.lineWidth = (2.5 * factor) / scale;
        context.strokeStyle = is.palette.ink;
        context.fillStyle = shape.filled ? is.palette.ink : is.palette.paper;
        stroke(context, at, shape.closed, shape.closed);
      });
    }
  };
}

/** No state is drawn wider [px]. */
const WIDEST = 9;

/** Pieces that look otherwise, each with what it was. */
function changedPieces(was: Scene, is: Scene): readonly (readonly [Piece, Piece])[] {
  return [...is.elements].flatMap(([id, after]): (readonly [Piece, Piece])[] => {
    const before = was.elements.get(id);
    return before === undefined || before === after || ownerKey(before.owner) !== ownerKey(after.owner)
      ? []
      : [[before, after]];
  });
}

const symbolOf = ({ shapes }: Piece): readonly Shape[] => shapes.filter(({ shape }) => shape !== "strand");

/** Whether a blade stands otherwise: the same strokes in other places. */
function isSwung(before: Piece, after: Piece): boolean {
  const [old, now] = [symbolOf(before), symbolOf(after)];
  const isAlike =
    old.length === now.length &&
    old.every((it, nth) => {
      const other = now[nth]!;
      return (
        it.shape === other.shape &&
        (it.shape !== "stroke" || other.shape !== "stroke" || it.points.length === other.points.length)
      );
    });
  return isAlike && old.some((it, nth) => !isSame(it, now[nth]!));
}

const isSame = (one: Shape, other: Shape): boolean =>
  one.shape !== "stroke" || other.shape !== "stroke" || one.points.join() === other.points.join();

/** What lies under the drawing at a spot: a plate or bare paper. */
const groundUnder =
  ({ plates }: Scene, palette: Palette) =>
  ([x, y]: XY): string =>
    plates.some(
      ({ shapes, box }) =>
        shapes.length > 0 && x > box.left && x < box.right && y > box.top && y < box.bottom,
    )
      ? palette.plate
      : palette.paper;

type XY = readonly [number, number];

const headOf = (points: readonly number[]): XY => [points[0]!, points[1]!];
const tailOf = (points: readonly number[]): XY => [points.at(-2)!, points.at(-1)!];
const middleOf = (points: readonly number[]): XY => {
  const [[x, y], [toX, toY]] = [headOf(points), tailOf(points)];
  return [(x + toX) / 2, (y + toY) / 2];
};
const distance = ([x, y]: XY, [toX, toY]: XY): number => Math.hypot(toX - x, toY - y);
const nearest = (spot: XY, points: readonly number[]): number =>
  Math.min(distance(spot, headOf(points)), distance(spot, tailOf(points)));

function reversed(points: readonly number[]): readonly number[] {
  const turned: number[] = [];
  for (let k = points.length - 2; k >= 0; k -= 2) turned.push(points[k]!, points[k + 1]!);
  return turned;
}

function lengthOf(points: readonly number[]): number {
  let length = 0;
  for (let k = 2; k + 1 < points.length; k += 2)
    length += Math.hypot(points[k]! - points[k - 2]!, points[k + 1]! - points[k - 1]!);
  return length;
}

/** The stretch of a way between two lengths along it; nothing where it ends before. */
function partOf(points: readonly number[], from: number, to: number): readonly number[] {
  const part: number[] = [];
  let passed = 0;
  for (let k = 2; k + 1 < points.length; k += 2) {
    const [x, y, dx, dy] = [
      points[k - 2]!,
      points[k - 1]!,
      points[k]! - points[k - 2]!,
      points[k + 1]! - points[k - 1]!,
    ];
    const length = Math.hypot(dx, dy);
    const [begin, end] = [Math.max(0, from - passed), Math.min(length, to - passed)];
    if (length > 0 && begin < end) {
      if (part.length === 0) part.push(x + (dx * begin) / length, y + (dy * begin) / length);
      part.push(x + (dx * end) / length, y + (dy * end) / length);
    }
    passed += length;
  }
  return part;
}

function stroke(
  context: CanvasRenderingContext2D,
  points: readonly number[],
  closed = false,
  filled = false,
) {
  context.beginPath();
  context.moveTo(points[0]!, points[1]!);
  for (let k = 2; k + 1 < points.length; k += 2) context.lineTo(points[k]!, points[k + 1]!);
  if (closed) context.closePath();
  if (filled) context.fill();
  context.stroke();
}

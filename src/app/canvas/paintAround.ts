import { type Box, breadthOf, type Owner, type Piece, pieceFor } from "../../core";
import type { BoardView } from "./view";

/** A lit path is an outline around it, so that the states on it stay readable: accent first, paper inside. */
export function paintLit(
  context: CanvasRenderingContext2D,
  { scene, lit, palette }: BoardView,
  scale: number,
) {
  context.lineJoin = "round";
  context.lineCap = "round";
  for (const [colour, lessPx] of [
    [palette.accent, 0],
    [palette.paper, 7],
  ] as const)
    for (const id of lit) {
      const piece = scene.elements.get(id);
      if (piece === undefined) continue;
      context.strokeStyle = colour;
      context.lineWidth = Math.max(18 / scale, breadthOf(piece)) - lessPx / scale;
      context.beginPath();
      tracePath(context, piece.spine);
      context.stroke();
    }
  context.lineCap = "butt";
}

/** What lies over the drawing: a view's own, lines around what is selected and what the keyboard is on, the marquee. */
export function paintOver(
  context: CanvasRenderingContext2D,
  { scene, selection, focus, joiningFrom, palette, overlay }: BoardView,
  scale: number,
  marquee: Box | undefined,
) {
  overlay?.(context, palette, scale);
  const around = (owner: Owner, line: LineStyle) => {
    const piece = pieceFor(scene, owner);
    if (piece !== undefined) outline(context, piece, line, scale);
  };
  const { accent, paper } = palette;
  for (const owner of selection) around(owner, { colour: accent, widthPx: 3, margin: 10 });
  if (joiningFrom !== undefined)
    around(joiningFrom, { colour: accent, widthPx: 3, margin: 12, isDashed: true });
  if (focus !== undefined) {
    around(focus, { colour: paper, widthPx: 7, margin: 14 });
    around(focus, { colour: accent, widthPx: 3, margin: 14 });
  }
  if (marquee === undefined) return;
  const { left, top, right, bottom } = marquee;
  begin(context, { colour: accent, widthPx: 2, margin: 0, isDashed: true }, scale);
  context.strokeRect(left, top, right - left, bottom - top);
  context.setLineDash([]);
}

/** A line around a thing. */
interface LineStyle {
  readonly colour: string;
  /** [screen px] */
  readonly widthPx: number;
  /** how far from the thing it runs, in units of the drawing; never nearer than a little more of the screen's pixels */
  readonly margin: number;
  readonly isDashed?: boolean;
}

function begin(context: CanvasRenderingContext2D, { colour, widthPx, isDashed }: LineStyle, scale: number) {
  context.strokeStyle = colour;
  context.lineWidth = widthPx / scale;
  context.setLineDash(isDashed === true ? [6 / scale, 4 / scale] : []);
}

/** A ring around a point, a frame along an element or around a structure. */
function outline(
  context: CanvasRenderingContext2D,
  { owner, box, spine }: Piece,
  line: LineStyle,
  scale: number,
) {
  const gap = Math.max(line.margin, (line.margin + 4) / scale);
  begin(context, line, scale);
  context.beginPath();
  if (owner.of === "structure") {
    const { left, top, right, bottom } = box;
    const margin = gap - 8 / scale;
    context.roundRect(left - margin, top - margin, right - left + 2 * margin, bottom - top + 2 * margin, gap);
  } else if (spine.length === 2) context.arc(spine[0]!, spine[1]!, gap, 0, 7);
  else traceFrame(context, spine, gap);
  context.stroke();
  context.setLineDash([]);
}

function traceFrame(context: CanvasRenderingContext2D, spine: readonly number[], gap: number) {
  const [x1, y1, x2, y2] = middleOf(spine);
  const length = Math.hypot(x2 - x1, y2 - y1);
  const half = Math.max(gap, 16);
  context.save();
  context.translate((x1 + x2) / 2, (y1 + y2) / 2);
  context.rotate(Math.atan2(y2 - y1, x2 - x1));
  context.roundRect(-length / 2, -half - 2, length, 2 * half + 4, gap / 2);
  context.restore();
}

/** The straight part that the symbol stands on: all of a straight spine, the second part of one that bends. */
const middleOf = (spine: readonly number[]): readonly [number, number, number, number] =>
  spine.length >= 8
    ? [spine[2]!, spine[3]!, spine[4]!, spine[5]!]
    : [spine[0]!, spine[1]!, spine.at(-2)!, spine.at(-1)!];

function tracePath(context: CanvasRenderingContext2D, points: readonly number[]) {
  context.moveTo(points[0]!, points[1]!);
  for (let k = 2; k + 1 < points.length; k += 2) context.lineTo(points[k]!, points[k + 1]!);
}

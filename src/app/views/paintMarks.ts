import { type ViewMark, MARGIN_OUTLINES, type MarginName, type Palette, TYPEFACE } from "../../core";
import { t, watts } from "../words/words";

const outlines = new Map<MarginName, Path2D>();

function outlineOf(margin: MarginName): Path2D {
  const known = outlines.get(margin);
  if (known !== undefined) return known;
  const fresh = new Path2D(MARGIN_OUTLINES[margin]);
  outlines.set(margin, fresh);
  return fresh;
}

/** Paints marks at the size of the screen, on a context that is in units of the drawing. The first of two stays. */
export function paintMarks(
  context: CanvasRenderingContext2D,
  marks: readonly ViewMark[],
  palette: Palette,
  scale: number,
): void {
  const taken: { x: number; y: number; reach: number }[] = [];
  for (const mark of marks) {
    const reach = mark.mark === "power" ? 30 : mark.mark === "step" ? 0 : 12;
    const isTaken = taken.some(
      (it) => Math.hypot(it.x - mark.x, it.y - mark.y) * scale < Math.max(it.reach, reach),
    );
    if (isTaken) continue;
    taken.push({ x: mark.x, y: mark.y, reach });
    context.save();
    context.translate(mark.x, mark.y);
    context.scale(1 / scale, 1 / scale);
    context.textAlign = "center";
    context.textBaseline = "middle";
    context.lineJoin = "round";
    if (mark.mark === "margin") paintMargin(context, mark.margin, palette);
    else if (mark.mark === "step") paintStep(context, mark.n, mark.isHere, palette);
    else paintPower(context, mark, palette);
    context.restore();
  }
}

/** Fill and ink of each margin. The shapes tell them apart; the colours only help. */
export const marginColours = (
  margin: MarginName,
  palette: Palette,
): { readonly fill: string; readonly ink: string; readonly dash: readonly number[] } =>
  ({
    "0": { fill: palette.hot, ink: palette.paper, dash: [] },
    "1": { fill: "#FF8200", ink: "#111111", dash: [] },
    "2": { fill: "#FFD100", ink: "#111111", dash: [] },
    "3": { fill: palette.paper, ink: palette.ink, dash: [] },
    none: { fill: palette.paper, ink: palette.ink, dash: [4, 3] },
  })[margin];

function paintMargin(context: CanvasRenderingContext2D, margin: MarginName, palette: Palette) {
  const { fill, ink, dash } = marginColours(margin, palette);
  context.translate(-12, -12);
  const outline = outlineOf(margin);
  context.strokeStyle = palette.paper;
  context.lineWidth = 6;
  context.stroke(outline);
  context.fillStyle = fill;
  context.fill(outline);
  context.strokeStyle = palette.ink;
  context.lineWidth = 2;
  context.setLineDash([...dash]);
  context.stroke(outline);
  context.setLineDash([]);
  context.fillStyle = ink;
  context.font = `700 ${margin === "none" ? 13 : 16}px ${TYPEFACE}`;
  context.fillText(
    margin === "none" ? t("margins.badge") : margin,
    12,
    margin === "1" ? 15.5 : margin === "none" ? 12.5 : 13,
  );
}

function paintStep(context: CanvasRenderingContext2D, n: number, isHere: boolean, palette: Palette) {
  context.beginPath();
  context.arc(0, 0, isHere ? 16 : 11, 0, 7);
  context.fillStyle = isHere ? palette.accent : palette.paper;
  context.fill();
  context.lineWidth = isHere ? 4 : 2;
  context.strokeStyle = isHere ? palette.ink : palette.accent;
  context.stroke();
  context.fillStyle = isHere ? palette.paper : palette.ink;
  context.font = `700 ${isHere ? 16 : 13}px ${TYPEFACE}`;
  context.fillText(String(n), 0, 1);
}

/** An arrow beside its device, as long on the screen at any zoom, with its power at its tail. */
function paintPower(
  context: CanvasRenderingContext2D,
  { dx, dy, watts: power }: ViewMark & { mark: "power" },
  palette: Palette,
) {
  const half = 20;
  // Beside the symbol: the words of the device are mostly on the other side.
  context.translate(-Math.abs(dy) * 30, Math.abs(dx) * 30);
  for (const [colour, width] of [
    [palette.paper, 9],
    [palette.ink, 4],
  ] as const) {
    context.strokeStyle = colour;
    context.lineWidth = width;
    context.beginPath();
    context.moveTo(-dx * half, -dy * half);
    context.lineTo(dx * half, dy * half);
    context.moveTo(dx * half - dx * 10 - dy * 8, dy * half - dy * 10 + dx * 8);
    context.lineTo(dx * half, dy * half);
    context.lineTo(dx * half - dx * 10 + dy * 8, dy * half - dy * 10 - dx * 8);
    context.stroke();
  }
  const text = watts(Math.abs(power));
  context.font = `700 14px ${TYPEFACE}`;
  const isFlat = Math.abs(dx) > Math.abs(dy);
  context.textAlign = isFlat ? "center" : "right";
  context.strokeStyle = palette.paper;
  context.lineWidth = 5;
  const [x, y] = isFlat ? [0, 18] : [-13, 0];
  context.strokeText(text, x, y);
  context.fillStyle = palette.ink;
  context.fillText(text, x, y);
}

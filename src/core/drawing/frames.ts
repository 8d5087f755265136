import { HUNG_WIDTH, LINE, type NoteSizes, type PlacedNote } from "./notes";
import type { Palette } from "./palettes";
import { type Look, isFlag, isHung, isLabel, isTitle } from "./shapes";

/** How a note is framed. */
export interface Frame {
  /** nothing where what lies below shows through */
  readonly fill: string | undefined;
  readonly edge: string | undefined;
  readonly ink: string;
  readonly dash: readonly number[];
  readonly radius: number;
  readonly weight: number;
}

/** The frame of a note: badges by state as the legend shows them, labels on bare paper. */
export function frameOf(kind: PlacedNote["note"]["kind"], look: Look, palette: Palette): Frame {
  switch (kind) {
    case "work":
      return frame(palette.accent, undefined, palette.paper, { radius: 3 });
    case "open":
      return frame(palette.paper, palette.ink, palette.ink);
    case "tag":
      return frame(palette.ink, palette.paper, palette.paper);
    case "letter":
      return frame(palette.paper, undefined, palette.ink, { radius: 6 });
    case "count":
      return frame(palette.paper, undefined, palette.ink);
    case "mark":
      return { ...stateFrame(look, palette), radius: 7 };
    case "badge":
      return look === "grounded"
        ? frame(palette.grounded, undefined, palette.paper, { radius: 8 })
        : stateFrame(look, palette);
    case "title":
      return frame(undefined, undefined, palette.ink);
    default:
      return frame(undefined, undefined, palette.ink, { weight: 500 });
  }
}

/** How a state is framed, by which shape, line and colour tell it. */
function stateFrame(look: Look, palette: Palette): Frame {
  switch (look) {
    case "induced":
      return frame(palette.paper, palette.hot, palette.hot);
    case "isolated":
      return frame(palette.paper, palette.isolated, palette.ink, { dash: [3, 2] });
    case "grounded":
      return frame(palette.paper, palette.grounded, palette.grounded, { radius: 8 });
    case "unknown":
      return frame(palette.band, palette.bandInk, palette.bandInk);
    case "faulted":
      return frame(palette.hot, palette.ink, palette.paper);
    case "neutral":
    case "ink":
      return frame(palette.paper, palette.ink, palette.ink);
    default:
      return frame(palette.hot, undefined, palette.paper);
  }
}

/**
 * What hangs on a thing is told by its outlines, x and y in turn: a tag with the hole for its string, the cross of a block.
 * Any other note has none but its frame.
 *
 * @param scale as of `linesIn`
 */
export function outlinesOf({ note, x, y, width, height }: PlacedNote, scale = 1): readonly number[][] {
  if (!isHung(note)) return [];
  const half = height / 2 / scale;
  return note.text.split(" ").flatMap((sign, nth) => {
    const left = x - width / 2 / scale + nth * HUNG_WIDTH * half;
    return OUTLINES[sign]!.map((points) => points.map((it, k) => (k % 2 === 0 ? left : y) + it * half));
  });
}

/** In halves of their height, from the left edge and the middle; a hole goes round against its tag. */
const OUTLINES: Readonly<Record<string, readonly (readonly number[])[]>> = {
  T: [
    [0, 0, 0.8, -1, 2.5, -1, 2.5, 1, 0.8, 1],
    [0.4, 0, 0.6, 0.2, 0.8, 0, 0.6, -0.2],
  ],
  X: [
    [
      0.4, -0.45, 0.85, -0.9, 1.3, -0.45, 1.75, -0.9, 2.2, -0.45, 1.75, 0, 2.2, 0.45, 1.75, 0.9, 1.3, 0.45,
      0.85, 0.9, 0.4, 0.45, 0.85, 0,
    ],
  ],
};

/** One line of a note as it is written. */
export interface WrittenLine {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly size: number;
  readonly weight: number;
  readonly anchor: "start" | "middle";
}

/**
 * The lines of a note, each about its own middle or from its own left edge.
 *
 * @param scale units of the drawing are so many screen pixels: places are in units, sizes too
 */
export function linesIn(
  { note, lines: kept, x, y, width, height }: PlacedNote,
  sizes: NoteSizes,
  palette: Palette,
  scale = 1,
): readonly WrittenLine[] {
  const { weight } = frameOf(note.kind, note.look, palette);
  const size = sizeOfLetters(note, sizes) / scale;
  if (isHung(note))
    return note.text.startsWith("T")
      ? [{ text: "T", x: x - (width - height * 1.7) / 2 / scale, y, size, weight, anchor: "middle" }]
      : [];
  const lines = kept ?? note.lines ?? [note.text];
  const isFromLeft = isFlag(note) || isTitle(note) || (lines.length > 1 && (note.sides[0]?.[0] ?? 0) > 0.9);
  const left = x - width / 2 / scale + (isFlag(note) ? 9 : 2) / scale;
  return lines.map((text, nth) => ({
    text,
    x: isFromLeft ? left : x,
    y: y + (nth - (lines.length - 1) / 2) * size * LINE,
    size,
    weight: note.lines === undefined || isTitle(note) ? weight : nth === 0 ? 700 : 500,
    anchor: isFromLeft ? "start" : "middle",
  }));
}

function sizeOfLetters(note: PlacedNote["note"], { label, small }: NoteSizes): number {
  if (isTitle(note)) return label + 2;
  return isLabel(note) || isFlag(note) ? label : small;
}

const frame = (
  fill: string | undefined,
  edge: string | undefined,
  ink: string,
  rest: Partial<Frame> = {},
): Frame => ({
  fill,
  edge,
  ink,
  dash: [],
  radius: 2,
  weight: 700,
  ...rest,
});

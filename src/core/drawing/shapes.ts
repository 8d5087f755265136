import type { Spot } from "../document";
import type { ConductorState } from "../hazard";
import type { Letter, Owner } from "../terms";

export type { Spot };

/** How a stroke looks, by what it means; a palette turns it into colours, `strokesOf` into widths and dashes. */
export type Look = ConductorState | "unknown" | "ink";

/** A box in units of the drawing. */
export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** One conductor's stroke. Widths and dashes are of the screen and stay under zoom. */
export interface Strand {
  readonly shape: "strand";
  readonly points: readonly number[];
  readonly letter: Letter;
  readonly look: Look;
  /** whether the feed runs along the points, against them, or is not known */
  readonly feed: 1 | -1 | 0;
}

/** A stroke of a symbol. */
export interface Stroke {
  readonly shape: "stroke";
  readonly points: readonly number[];
  readonly closed: boolean;
  readonly filled: boolean;
  /** dashed strokes tie the blades of a gang together */
  readonly dashed?: boolean;
  /** bare metal that is live, in the colour of live lines */
  readonly isHot?: boolean;
  /** thin and grey: what always stands there, and tells nothing of how things stand now */
  readonly isQuiet?: boolean;
  /** says how the drawing is worked on, not what is drawn: a picture or a sheet leaves it out */
  readonly onScreenOnly?: boolean;
}

/** A disc or a ring, in units of the drawing. */
export interface Disc {
  readonly shape: "disc";
  readonly x: number;
  readonly y: number;
  readonly radius: number;
  readonly filled: boolean;
  /** bare metal that is live, in the colour of live lines */
  readonly isHot?: boolean;
  readonly onScreenOnly?: boolean;
}

/** Letters inside a symbol: they scale with it and stand upright. */
export interface Inscription {
  readonly shape: "inscription";
  readonly x: number;
  readonly y: number;
  readonly text: string;
  /** height of the letters, in units of the drawing */
  readonly size: number;
}

/** The quiet ground of a pole, a pad or a vault, on which all that is there is drawn. */
export interface Ground {
  readonly shape: "ground";
  readonly box: Box;
}

/** What a scene is drawn of. */
export type Shape = Strand | Stroke | Disc | Inscription | Ground;

/** What a note says, which decides its frame and who gives way where two would overlap (first in this list stays). */
export const NOTE_KINDS = [
  "title",
  "mark",
  "open",
  "tag",
  "badge",
  "work",
  "count",
  "letter",
  "pointLabel",
  "elementLabel",
] as const;

/** What a note tells; the important kinds find their place first. */
export type NoteKind = (typeof NOTE_KINDS)[number];

/** A note at a place: of screen size whatever the zoom, moved aside or left out where there is no room. */
export interface Note {
  readonly kind: NoteKind;
  readonly text: string;
  readonly look: Look;
  readonly owner: Owner;
  readonly x: number;
  readonly y: number;
  /** directions in which it may stand from (x, y), as steps of its own size plus `gap`; [0, 0] is right on it */
  readonly sides: readonly (readonly [number, number])[];
  /** free space between (x, y) and the note [screen px] */
  readonly gap: number;
  /** free space between (x, y) and the note that grows with the zoom [units] */
  readonly reach: number;
  /** so much lower than (x, y) is the place about which it stands [screen px where labels have 14, and as they grow] */
  readonly drop?: number;
  /** its text line by line, the first one in bold letters; one line where left out */
  readonly lines?: readonly string[];
  /** other ways to break its text into lines, the better one first */
  readonly otherwise?: readonly (readonly string[])[];
  /** it stands right after how its thing stands, as one with that */
  readonly follows?: boolean;
  /** the lines that do where there is no room for all of them */
  readonly shorter?: readonly string[];
  /** where the ring around a work place stands, if not at (x, y) */
  readonly ring?: Spot & {
    /** length of the symbols about it */
    readonly symbol?: number;
  };
}

/** Everything that is drawn for one thing of the document. */
export interface Piece {
  readonly owner: Owner;
  readonly shapes: readonly Shape[];
  readonly notes: readonly Note[];
  readonly box: Box;
  /** the look that wins when the piece is too small to show its conductors one by one */
  readonly overall: Look;
  /** where a touch counts as a touch of this thing: a polyline, or a single spot */
  readonly spine: readonly number[];
  /** nothing leads on from it to another structure: from afar it is left out */
  readonly within?: boolean;
  /** another piece is drawn for it: it has its place alone */
  readonly isUnseen?: boolean;
}

/** Where a thing stands on the drawing, however it looks. */
export type Located = Pick<Piece, "owner" | "box" | "spine" | "within">;

/** Room across a piece that its conductors side by side need [units]. */
export const breadthOf = ({ shapes }: Piece): number => {
  const letters = new Set(shapes.flatMap((it) => (it.shape === "strand" ? [it.letter] : [])));
  return 20 + 10 * letters.size;
};

/** The box around points, x and y in turn, with a margin on all sides; turned inside out where there are none. */
export const boxOf = (points: readonly number[], margin: number): Box => {
  let left = Infinity;
  let top = Infinity;
  let right = -Infinity;
  let bottom = -Infinity;
  for (let k = 0; k + 1 < points.length; k += 2) {
    left = Math.min(left, points[k]!);
    right = Math.max(right, points[k]!);
    top = Math.min(top, points[k + 1]!);
    bottom = Math.max(bottom, points[k + 1]!);
  }
  return { left: left - margin, top: top - margin, right: right + margin, bottom: bottom + margin };
};

/** Distance from a spot to a polyline. */
export function distanceTo(spine: readonly number[], x: number, y: number): number {
  if (spine.length === 2) return Math.hypot(x - spine[0]!, y - spine[1]!);
  let nearest = Infinity;
  for (let k = 0; k + 3 < spine.length; k += 2) {
    const [ax, ay, bx, by] = [spine[k]!, spine[k + 1]!, spine[k + 2]!, spine[k + 3]!];
    const square = (bx - ax) ** 2 + (by - ay) ** 2;
    const t =
      square === 0 ? 0 : Math.max(0, Math.min(1, ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / square));
    nearest = Math.min(nearest, Math.hypot(x - ax - t * (bx - ax), y - ay - t * (by - ay)));
  }
  return nearest;
}

/** The box around boxes; nothing where there are none. */
export const unionOf = (boxes: readonly Box[]): Box | undefined =>
  boxes.length === 0
    ? undefined
    : boxes.reduce((all, box) => ({
        left: Math.min(all.left, box.left),
        top: Math.min(all.top, box.top),
        right: Math.max(all.right, box.right),
        bottom: Math.max(all.bottom, box.bottom),
      }));

/** What notes must not cover: the strokes of symbols and points. */
export function solidBoxes(shapes: readonly Shape[], margin: number): Box[] {
  return shapes.flatMap((shape) => {
    if (shape.shape === "stroke") return [boxOf(shape.points, margin)];
    if (shape.shape !== "disc") return [];
    return [boxOf([shape.x, shape.y], shape.radius + margin)];
  });
}

/** Where the symbol of a piece stands; nothing for a conductor. */
export const symbolBoxOf = ({ shapes }: Pick<Piece, "shapes">): Box | undefined =>
  unionOf(solidBoxes(shapes, 0));

/** Whether two boxes have some area in common. */
export const overlaps = (a: Box, b: Box): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

/** What is asked of a note by its kind. */
type OfNoteKind = Pick<Note, "kind">;

/** Whether a note tells that something is open or tagged. */
export const tellsStanding = ({ kind }: Pick<Note, "kind">): boolean => kind === "open" || kind === "tag";

/** Whether it is the flag at a work point. */
export const isFlag = ({ kind }: OfNoteKind): boolean => kind === "work";

/** Whether it is the name of a plate. */
export const isTitle = ({ kind }: OfNoteKind): boolean => kind === "title";

/** Whether it is what hangs on a thing: a tag, a block. */
export const isHung = ({ kind }: OfNoteKind): boolean => kind === "tag";

/** Whether it is what a point or an element is called. */
export const isLabel = ({ kind }: OfNoteKind): boolean => kind === "pointLabel" || kind === "elementLabel";

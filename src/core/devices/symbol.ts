/** One stroke or letter of a device's symbol, in units of the drawing; x along the element, y across it. */
export type Mark = Drawn & {
  /** it is metal of the conductor at this end, and live where that is */
  readonly end?: "from" | "to";
};

type Drawn =
  | {
      readonly mark: "line";
      readonly points: readonly number[];
      readonly closed?: boolean;
      readonly filled?: boolean;
      /** stands upright whichever way the element runs, x to the right and y down */
      readonly upright?: boolean;
    }
  | {
      readonly mark: "circle";
      readonly x: number;
      readonly y: number;
      readonly radius: number;
      readonly filled?: boolean;
    }
  | {
      readonly mark: "arc";
      readonly x: number;
      readonly y: number;
      readonly radius: number;
      readonly fromDegrees: number;
      readonly toDegrees: number;
    }
  | {
      readonly mark: "letters";
      readonly x: number;
      readonly y: number;
      readonly text: string;
      /** stands there whichever way the element runs, x to the right and y down */
      readonly upright?: boolean;
    };

/** How far a symbol reaches from its middle toward either end: its conductors run up to there [units]. */
export const SYMBOL_REACH = 20;

/** A stroke through points: x and y in turn, in units of the drawing. */
export const line = (...points: number[]): Extract<Drawn, { mark: "line" }> => ({ mark: "line", points });

/** A closed stroke through points: x and y in turn, in units of the drawing. */
export const outline = (...points: number[]): Extract<Drawn, { mark: "line" }> => ({
  mark: "line",
  points,
  closed: true,
});

/** A filled shape: x and y of its corners in turn, in units of the drawing. */
export const filled = (...points: number[]): Mark => ({ mark: "line", points, closed: true, filled: true });

/** A ring, in units of the drawing. */
export const circle = (x: number, y: number, radius: number): Mark => ({ mark: "circle", x, y, radius });

/** A filled disc, in units of the drawing. */
export const dot = (x: number, y: number, radius: number): Mark => ({
  mark: "circle",
  x,
  y,
  radius,
  filled: true,
});

/** A part of a ring, in units of the drawing, between two angles clockwise from the right [degrees]. */
export const arc = (x: number, y: number, radius: number, fromDegrees: number, toDegrees: number): Mark => ({
  mark: "arc",
  x,
  y,
  radius,
  fromDegrees,
  toDegrees,
});

/** Letters with their middle at a spot, in units of the drawing. */
export const inscribed = (x: number, y: number, text: string): Mark => ({ mark: "letters", x, y, text });

/** A circle through which what lies below it shows. */
export const ring = (x: number, y: number, radius: number): Mark => arc(x, y, radius, 0, 360);

/** A hinged blade from (x, y), `degrees` away from the line, as long as the gap it closes. */
export function blade(x: number, length: number, degrees: number, y = 0): Mark {
  const angle = (-degrees * Math.PI) / 180;
  return line(x, y, x + length * Math.cos(angle), y + length * Math.sin(angle));
}

/** A fuse barrel on a blade hinged at (x, 0), `degrees` away from the line: IEC 60617's fuse, a blown one without its link. */
export function barrel(x: number, length: number, degrees: number, isBlown = false): Mark[] {
  const angle = (-degrees * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const at = (along: number, across: number): [number, number] => [
    x + along * cos - across * sin,
    along * sin + across * cos,
  ];
  const [near, far] = [length * 0.1, length * 0.95];
  const middle = (near + far) / 2;
  return [
    line(x, 0, ...at(near, 0)),
    outline(...at(near, -6), ...at(far, -6), ...at(far, 6), ...at(near, 6)),
    ...(isBlown
      ? [line(...at(middle - 9, -9), ...at(middle + 9, 9)), line(...at(middle - 9, 9), ...at(middle + 9, -9))]
      : [line(...at(near, 0), ...at(far, 0))]),
  ];
}

/** The earth mark: three bars of falling length across the element, from x on. */
export const earthMark = (x: number): Mark[] => [
  line(x, -12, x, 12),
  line(x + 6, -8, x + 6, 8),
  line(x + 12, -4, x + 12, 4),
];

/** A house with its roof, about the middle of the symbol. */
export const house = (): Mark[] => [
  { ...outline(-13, -3, 13, -3, 13, 16, -13, 16), upright: true },
  { ...outline(-18, -2, 0, -17, 18, -2), upright: true },
];

/** A works: a box with a saw-tooth roof in it. */
export const works = (): Mark[] => [
  { ...outline(-17, -17, 17, -17, 17, 17, -17, 17), upright: true },
  { ...line(-12, -1, -6, -12, 0, -1, 6, -12, 12, -1), upright: true },
];

/** In a house or a works that is dead: a machine may stand there, and nobody has ruled it out. */
export const maybeMachine = (): Mark => ({ mark: "letters", x: 0, y: 7, text: "G?", upright: true });

/** Marks that are metal of the conductor at an end. */
export const metalAt = (end: "from" | "to", ...marks: Mark[]): Mark[] => marks.map((it) => ({ ...it, end }));

/** A mark of an element that stands the other way round: what was at its `from` is at its `to`. */
export function turned(mark: Mark): Mark {
  const ended: Mark = mark.end === undefined ? mark : { ...mark, end: mark.end === "from" ? "to" : "from" };
  if ("upright" in ended && ended.upright === true) return ended;
  if (ended.mark === "line")
    return { ...ended, points: ended.points.map((it, nth) => (nth % 2 === 0 ? -it : it)) };
  if (ended.mark === "arc")
    return {
      ...ended,
      x: -ended.x,
      fromDegrees: 180 - ended.fromDegrees,
      toDegrees: 180 - ended.toDegrees,
    };
  return { ...ended, x: -ended.x };
}

/** A mark as it is on the other side of the way on which its element runs. */
export function mirrored(mark: Mark): Mark {
  if ("upright" in mark && mark.upright === true) return mark;
  if (mark.mark === "line")
    return { ...mark, points: mark.points.map((it, nth) => (nth % 2 === 0 ? it : -it)) };
  if (mark.mark === "arc")
    return { ...mark, y: -mark.y, fromDegrees: -mark.fromDegrees, toDegrees: -mark.toDegrees };
  return { ...mark, y: -mark.y };
}

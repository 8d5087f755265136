import { type CircuitElement, type End, letterAt, type Mark, symbolOf, turned } from "../devices";
import { isHot } from "../hazard";
import type { Letter, Message, Owner } from "../terms";
import { type Route, spotOf } from "./routes";
import type { Look, Note, NoteKind, Piece, Shape, Spot } from "./shapes";

/** What a piece asks about the rest of the drawing. */
export interface Surroundings {
  /** the look of a conductor at one of the element's own ends */
  look(end: End, letter: Letter): Look;
  /** which way the feed runs: 1 from `from` to `to` */
  readonly feed: 1 | -1 | 0;
  /** conductors of the point at this end */
  letters(end: End): readonly Letter[];
  /** whether it is dead at a customer's who may have a machine that nobody drew */
  readonly mayStart: boolean;
  /** whether the point at this end has a neutral */
  hasNeutral(end: End): boolean;
  /** whether a cable comes to its `to` alone: what ends a cable is drawn on that side of it */
  readonly isTurned: boolean;
  /** spells the few words that stand on a drawing */
  word(message: Message): string;
}

/** What is drawn of a piece. */
export type DrawnPiece = Pick<Piece, "shapes" | "notes">;

/** Draws the shapes and notes of one element on its route. */
export class Pen {
  readonly shapes: Shape[] = [];
  readonly notes: Note[] = [];
  readonly across: Spot;
  readonly owner: Owner;
  readonly route: Route;

  constructor(owner: Owner, route: Route) {
    this.owner = owner;
    this.route = route;
    this.across = spotOf(-route.along.y, route.along.x);
  }

  /** A spot beside another: so far along the body, so far across it. */
  beside(spot: Spot, along: number, across: number): Spot {
    const { x, y } = this.route.along;
    return spotOf(spot.x + x * along + this.across.x * across, spot.y + y * along + this.across.y * across);
  }

  strand(letter: Letter, look: Look, feed: 1 | -1 | 0, ...spots: Spot[]) {
    this.shapes.push({ shape: "strand", points: flat(spots), letter, look, feed });
  }

  symbol(marks: readonly Mark[], centre: Spot, scale: number) {
    for (const mark of marks) this.shapes.push(this.shapeOf(mark, centre, scale));
  }

  /** One pole of a device. What of its bare metal is live has the colour of live lines: a contact that looks dead is touched. */
  pole(element: CircuitElement, letter: Letter, around: Surroundings, centre: Spot, scale: number) {
    const marks = symbolOf(element);
    for (const mark of around.isTurned ? marks.map(turned) : marks) {
      const isLive =
        mark.end !== undefined &&
        isHotLook(around.look(mark.end, mark.end === "to" ? letterAt(element, "to", letter) : letter));
      this.shapes.push(this.shapeOf(mark, centre, scale, isLive));
    }
  }

  shapeOf(mark: Mark, centre: Spot, scale: number, isLive = false): Shape {
    const hot = isLive ? { isHot: true } : {};
    const at = (x: number, y: number) =>
      "upright" in mark && mark.upright === true
        ? spotOf(centre.x + x * scale, centre.y + y * scale)
        : this.beside(centre, x * scale, y * scale);
    switch (mark.mark) {
      case "line": {
        const spots = [];
        for (let k = 0; k + 1 < mark.points.length; k += 2)
          spots.push(at(mark.points[k]!, mark.points[k + 1]!));
        return {
          shape: "stroke",
          points: flat(spots),
          closed: mark.closed ?? false,
          filled: mark.filled ?? false,
          ...hot,
        };
      }
      case "circle":
        return {
          shape: "disc",
          ...at(mark.x, mark.y),
          radius: mark.radius * scale,
          filled: mark.filled ?? false,
          ...hot,
        };
      case "arc": {
        const steps = Math.ceil(Math.abs(mark.toDegrees - mark.fromDegrees) / 15);
        const spots = Array.from({ length: steps + 1 }, (_, step) => {
          const angle =
            ((mark.fromDegrees + ((mark.toDegrees - mark.fromDegrees) * step) / steps) * Math.PI) / 180;
          return at(mark.x + mark.radius * Math.cos(angle), mark.y + mark.radius * Math.sin(angle));
        });
        return { shape: "stroke", points: flat(spots), closed: false, filled: false, ...hot };
      }
      case "letters":
        return { shape: "inscription", ...at(mark.x, mark.y), text: mark.text, size: 13 * scale };
    }
  }

  note(
    kind: NoteKind,
    text: string,
    look: Look,
    at: Spot,
    place: Partial<Pick<Note, "sides" | "gap" | "reach" | "lines" | "shorter" | "drop" | "follows">> = {},
  ) {
    if (text === "") return;
    this.notes.push({
      kind,
      text,
      look,
      owner: this.owner,
      ...at,
      sides: [[0, 0]],
      gap: 0,
      reach: 0,
      ...place,
    });
  }

  /** Across the body on which side a third end stands: 1 where there is none. */
  get thirdSide(): 1 | -1 {
    const { alt, centre } = this.route;
    if (alt === undefined) return 1;
    const across = (alt.x - centre.x) * this.across.x + (alt.y - centre.y) * this.across.y;
    return across < 0 ? -1 : 1;
  }

  /** The two sides of the body, the one away from the neutral first, and then its ends. */
  sides(): (readonly [number, number])[] {
    const { x, y } = this.across;
    return [
      [-x, -y],
      [x, y],
      [-x + this.route.along.x, -y + this.route.along.y],
      [-x - this.route.along.x, -y - this.route.along.y],
    ];
  }

  get drawn(): DrawnPiece {
    return { shapes: this.shapes, notes: this.notes };
  }
}

/** Whether what looks so may hold volts. */
export const isHotLook = (look: Look): boolean => look !== "ink" && isHot(look);

/** Spots as a line has them: each with its two numbers in a row. */
export const flat = (spots: readonly Spot[]): number[] => spots.flatMap(({ x, y }) => [x, y]);

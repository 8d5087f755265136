import {
  type ConductorId,
  type ElementId,
  inARow,
  type Letter,
  type Message,
  partsOfConductor,
  type PointId,
  say,
} from "../terms";
import { worstOf } from "./palettes";
import type { Scene } from "./scene";
import type { Look, Note, Piece } from "./shapes";

/** What stands on a drawing beside a thing and is no part of it: a reading, the letter of an answer. */
export interface Noted {
  readonly text: string | Message;
  readonly look: Look;
}

/** What a detector said at a conductor. */
export interface Measured {
  /** as a person is told them [V] */
  readonly volts: number;
  readonly look: Look;
}

/** A scene with a note at some of its things, whatever else is said of them. */
export function withNoted(
  scene: Scene,
  noted: ReadonlyMap<PointId | ElementId, Noted>,
  word: (message: Message) => string,
): Scene {
  if (noted.size === 0) return scene;
  const [points, elements] = [new Map(scene.points), new Map(scene.elements)];
  for (const [id, { text, look }] of noted) {
    const things: Map<string, Piece> = points.has(id as PointId) ? points : elements;
    const piece = things.get(id);
    const note = { text: typeof text === "string" ? text : word(text), look };
    if (piece !== undefined) things.set(id, { ...piece, notes: [noteAt(piece, note), ...piece.notes] });
  }
  // A plate has its first point for an owner, too: a piece is told by what it is, not by whose it is.
  const renewed = new Map<Piece, Piece>();
  for (const [id, piece] of scene.points) renewed.set(piece, points.get(id)!);
  for (const [id, piece] of scene.elements) renewed.set(piece, elements.get(id)!);
  const pieces = scene.pieces.map((it) => renewed.get(it) ?? it);
  return { ...scene, points, elements, pieces };
}

/** What is noted of readings: one note a place. */
export function notesOfMeasured(measured: ReadonlyMap<ConductorId, Measured>): Map<PointId, Noted> {
  const at = new Map<PointId, (readonly [Letter, Measured])[]>();
  for (const [id, it] of measured) {
    const { point, letter } = partsOfConductor(id);
    at.set(point, [...(at.get(point) ?? []), [letter, it]]);
  }
  return new Map(
    [...at].map(([point, told]) => {
      const list = inARow(told.map(([letter, { volts }]) => say("drawing.measuredAt", { letter, volts })));
      return [
        point,
        { text: say("drawing.measured", { list }), look: worstOf(told.map(([, it]) => it.look)) },
      ];
    }),
  );
}

const ROUND = [
  [0, -1],
  [0, 1],
  [1, -1],
  [-1, -1],
  [1, 1],
  [-1, 1],
  [1, 0],
  [-1, 0],
] as const;

const noteAt = ({ owner, box }: Piece, { text, look }: { text: string; look: Look }): Note => ({
  kind: "badge",
  text,
  look,
  owner,
  x: (box.left + box.right) / 2,
  y: (box.top + box.bottom) / 2,
  sides: ROUND,
  gap: 6,
  reach: 10,
});

import {
  type ConductorId,
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

/** What a detector said at a conductor. */
export interface Measured {
  /** as a person is told them [V] */
  readonly volts: number;
  readonly look: Look;
}

type Told = readonly [Letter, Measured];

/** A scene in which each place where something was measured says what, whatever else is said of it. */
export function withMeasured(
  scene: Scene,
  measured: ReadonlyMap<ConductorId, Measured>,
  word: (message: Message) => string,
): Scene {
  const at = new Map<PointId, Told[]>();
  for (const [id, it] of measured) {
    const { point, letter } = partsOfConductor(id);
    at.set(point, [...(at.get(point) ?? []), [letter, it]]);
  }
  if (at.size === 0) return scene;
  const points = new Map(scene.points);
  for (const [point, told] of at) {
    const piece = points.get(point);
    if (piece !== undefined)
      points.set(point, { ...piece, notes: [noteOf(piece, told, word), ...piece.notes] });
  }
  const pieces = scene.pieces.map((it) => (it.owner.of === "point" ? (points.get(it.owner.id) ?? it) : it));
  return { ...scene, points, pieces };
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

function noteOf(
  { owner, spine: [x = 0, y = 0] }: Piece,
  told: readonly Told[],
  word: (message: Message) => string,
): Note {
  const list = inARow(told.map(([letter, { volts }]) => say("drawing.measuredAt", { letter, volts })));
  return {
    kind: "badge",
    text: word(say("drawing.measured", { list })),
    look: worstOf(told.map(([, { look }]) => look)),
    owner,
    x,
    y,
    sides: ROUND,
    gap: 6,
    reach: 10,
  };
}

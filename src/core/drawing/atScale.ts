import type { Scene } from "./scene";
import type { Box, Note, Piece, Shape } from "./shapes";

/** A scene drawn smaller or larger, its notes and lines at their own size: what a zoomed canvas shows. */
export function atScale(scene: Scene, scale: number): Scene {
  const pieces = scene.pieces.map((it) => pieceAt(it, scale));
  const of = new Map(scene.pieces.map((it, index) => [it, pieces[index]!]));
  const changed = <Key>(map: ReadonlyMap<Key, Piece>): Map<Key, Piece> =>
    new Map([...map].map(([key, it]) => [key, of.get(it) ?? pieceAt(it, scale)]));
  return {
    ...scene,
    pieces,
    elements: changed(scene.elements),
    points: changed(scene.points),
    works: changed(scene.works),
    plates: scene.plates.map((it) => ({ ...it, ...pieceAt(it, scale) })),
    bounds:
      scene.bounds === undefined
        ? undefined
        : {
            left: scene.bounds.left * scale,
            top: scene.bounds.top * scale,
            right: scene.bounds.right * scale,
            bottom: scene.bounds.bottom * scale,
          },
  };
}

function pieceAt(piece: Piece, scale: number): Piece {
  return {
    ...piece,
    shapes: piece.shapes.map((it) => shapeAt(it, scale)),
    notes: piece.notes.map((it) => ({
      ...it,
      x: it.x * scale,
      y: it.y * scale,
      reach: it.reach * scale,
      ...(it.ring === undefined ? {} : { ring: ringOf(it.ring, scale) }),
    })),
    box: boxAt(piece.box, scale),
    spine: piece.spine.map((it) => it * scale),
  };
}

const ringOf = ({ x, y, symbol }: NonNullable<Note["ring"]>, scale: number) => ({
  x: x * scale,
  y: y * scale,
  ...(symbol === undefined ? {} : { symbol: symbol * scale }),
});

/** A box with all its sides multiplied by a scale. */
export const boxAt = ({ left, top, right, bottom }: Box, scale: number): Box => ({
  left: left * scale,
  top: top * scale,
  right: right * scale,
  bottom: bottom * scale,
});

function shapeAt(shape: Shape, scale: number): Shape {
  switch (shape.shape) {
    case "strand":
    case "stroke":
      return { ...shape, points: shape.points.map((it) => it * scale) };
    case "ground":
      return { ...shape, box: boxAt(shape.box, scale) };
    case "disc":
      return { ...shape, x: shape.x * scale, y: shape.y * scale, radius: shape.radius * scale };
    case "inscription":
      return { ...shape, x: shape.x * scale, y: shape.y * scale, size: shape.size * scale };
  }
}

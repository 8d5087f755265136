import { ownerKey } from "../terms";
import { type NoteSizes, type PlacedNote, sizeOf } from "./notes";
import { pieceFor, type Scene, type SceneChange } from "./scene";
import type { Note } from "./shapes";

/**
 * The notes where they stood, after a change of their drawing: each says at once what holds now, and what has no place
 * yet is left out until all are placed again.
 */
export function renewedNotes(
  placed: readonly PlacedNote[],
  scene: Scene,
  change: SceneChange,
  sizes: NoteSizes,
): readonly PlacedNote[] {
  const nameOf = ({ kind, owner, x, y }: Note) => `${kind} ${ownerKey(owner)} ${x} ${y}`;
  const owners = new Set(placed.map(({ note }) => note.owner));
  // A note's owner is the very object that its piece has, and only the few that changed need be found by name.
  const left = change.of === "looks" ? owners : new Set(change.gone.map(({ owner }) => owner));
  const come = change.of === "looks" ? [...owners].flatMap((it) => pieceFor(scene, it) ?? []) : change.come;
  const shown = new Set(placed.flatMap(({ note }) => (left.has(note.owner) ? [ownerKey(note.owner)] : [])));
  const now = new Map<string, Note>();
  for (const piece of come)
    if (shown.has(ownerKey(piece.owner))) for (const note of piece.notes) now.set(nameOf(note), note);
  return placed.flatMap((it): PlacedNote[] => {
    if (!left.has(it.note.owner)) return [it];
    const note = now.get(nameOf(it.note));
    return note === undefined ? [] : [{ ...it, note, ...sizeOf(note, sizes) }];
  });
}

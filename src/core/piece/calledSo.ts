import { nameIn, type StillhotDocument, structuresOf } from "../document";
import type { Message, PointId } from "../terms";
import { placeOf } from "./cutAround";

/** What a name means: its id, and the points that it stands for. */
export interface Called {
  readonly id: string;
  readonly points: readonly PointId[];
}

/**
 * What is called so: an id as it stands, or else a name as a person says it, whatever its case, spaces and punctuation.
 * Where nothing has just this name, whatever has all of its words. What stands on a structure that was found is not told
 * beside it.
 *
 * @param spelled a name in the words of whoever asks
 */
export function calledSo(
  document: StillhotDocument,
  asked: string,
  spelled: (name: string | Message) => string,
): readonly Called[] {
  const { system } = document;
  const byId = placeOf(system, asked);
  if (byId.length > 0) return [{ id: asked, points: byId }];
  const named = namesOf(document, spelled);
  const wanted = folded(asked);
  const exact = named.filter(({ name }) => name === wanted);
  const words = wanted.split(" ");
  const found =
    exact.length > 0
      ? exact
      : named.filter(({ name }) => words.every((it) => it !== "" && name.split(" ").includes(it)));
  return largest(found);
}

interface Named extends Called {
  readonly name: string;
}

function namesOf(document: StillhotDocument, spelled: (name: string | Message) => string): Named[] {
  const { system } = document;
  const things = [...Object.keys(system.points), ...Object.keys(system.elements)];
  return [
    ...[...structuresOf(system).values()].map(({ id, label, points }) => ({
      id,
      points,
      name: folded(label),
    })),
    ...things.map((id) => ({
      id,
      points: placeOf(system, id),
      name: folded(spelled(nameIn(document, id))),
    })),
  ].filter(({ name, points }) => name !== "" && points.length > 0);
}

/** Without those whose points are all among another one's that was found too. */
const largest = (found: readonly Named[]): Called[] =>
  found
    .filter(
      (it, k) =>
        !found.some(
          (other, m) =>
            m !== k &&
            (other.points.length > it.points.length || (other.points.length === it.points.length && m < k)) &&
            it.points.every((point) => other.points.includes(point)),
        ),
    )
    .map(({ id, points }) => ({ id, points }));

const folded = (name: string): string =>
  name
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, " ")
    .trim();

import { isBeside } from "../../devices";
import { refuse, type Refusal, say } from "../../terms";
import { objectionTo } from "../check";
import { completePoint } from "../complete";
import { conductorsOf } from "../conductors";
import { endPointsOf } from "../elementsAt";
import { hopsFrom, hopsFromSource } from "../hops";
import { naturalOrder } from "../naturalOrder";
import { isUnreadable } from "../problem";
import { readDocument } from "../read";
import type { SavedElement, SavedPoint, StillhotDocument, System } from "../types";
import { writeDocument } from "../write";
import { type Edit, nameOf, pointOf, together, withKeys } from "./change";
import type { Spot } from "../types";
import { copyOf, type Fragment, paste } from "./paste";
import type { Things } from "./removeThings";
import type { LetterTurn } from "./letterTurn";
import { turnOnto, withTurnedLetters } from "./turnLetters";

/** A piece of a drawing under a name of its own, with the point by which it joins a point of another one. */
export interface Stamp {
  readonly name: string;
  readonly piece: Fragment;
  readonly join: string;
}

/** A stamp as it is kept: the piece is a whole file, so that the reader of files judges it. */
export interface WrittenStamp {
  readonly join: string;
  readonly text: string;
}

/** Letters that the name of an arrangement may have. */
export const MOST_STAMP_NAME = 80;

/**
 * What is selected, as a stamp. What was seen on one pole is not seen on the next one, and a pin holds one place only: so
 * neither goes with it. Refused where it would not hold together, or has nothing to join by.
 *
 * @param join the point to join by; the one nearest the source where it is left out
 */
export function stampOf(
  document: StillhotDocument,
  things: Things,
  name: string,
  join?: string,
): Stamp | Refusal {
  const piece = pieceOf(document, things);
  const [nearest] = joinsOf(document, piece);
  const at = join ?? nearest;
  const isJoined = Object.values(piece.elements).some((it) => endPointsOf(it).length > 1);
  if (at === undefined || !isJoined) return refuse(say("stamp.nothing"));
  if (!Object.hasOwn(piece.points, at)) return refuse(say("stamp.noJoin"));
  const stamp = { name, piece, join: at };
  return refusalOf(stamp) ?? stamp;
}

/** The points by which a piece of a drawing could be joined, nearest the source first. */
export function joinsOf(document: StillhotDocument, { points }: Pick<Fragment, "points">): string[] {
  const hops = hopsFromSource(document.system);
  const far = (id: string) => hops.get(id) ?? Infinity;
  return Object.keys(points).sort(
    (one, other) => (far(one) === far(other) ? 0 : far(one) - far(other)) || naturalOrder(one, other),
  );
}

/** What a stamp needs at the point that it joins: its phases there. */
export const stampPhases = ({ piece, join }: Stamp): string =>
  (conductorsOf(systemOf(piece)).get(join) ?? []).filter((it) => it !== "N").join("");

/** How the letters of a stamp turn to fit phases that are there; nothing where they do not fit. */
const fitOf = (stamp: Stamp, phases: string): LetterTurn | undefined => turnOnto(stampPhases(stamp), phases);

/**
 * Puts a stamp where its joining point becomes a point of the drawing. Ids are new, and a label that the drawing has
 * already is counted on.
 *
 * @param phases  letters of the point that it may use: its own are named onto them
 * @param degrees by which it is turned, clockwise
 */
export const placeStamp =
  (stamp: Stamp, at: string, { phases, degrees = 0 }: { phases: string; degrees?: number }): Edit =>
  (before) => {
    const target = pointOf(before, at);
    if (target === undefined) return refuse(say("edit.noPoint", { id: at }));
    const fit = fitOf(stamp, phases);
    if (fit === undefined)
      return refuse(say("stamp.unfit", { name: stamp.name, phases: stampPhases(stamp) }));
    const { x, y } = completePoint(target);
    const piece = turned(stamp, { x, y }, degrees, fit);
    return together(say("stamp.placed", { name: stamp.name }), [
      paste(piece, { x: 0, y: 0 }, new Map([[stamp.join, at]])),
    ])(before);
  };

/** An arrangement as it is kept: a drawing of its own, and the point that it is joined by. */
export const writeStamp = (stamp: Stamp): WrittenStamp => ({
  join: stamp.join,
  text: writeDocument(alone(stamp)),
});

/** A stamp from what was kept, which may be anything: it is judged as any file is. */
export function readStamp({
  join,
  text,
}: {
  readonly join: unknown;
  readonly text: unknown;
}): Stamp | Refusal {
  if (typeof text !== "string" || typeof join !== "string") return refuse(say("stamp.unreadable"));
  const read = readDocument(text);
  if (isUnreadable(read)) return refuse(say("stamp.unreadable"));
  const { title, system } = read.document;
  const { structures, points, elements } = system as Fragment;
  const piece = { ...(structures === undefined ? {} : { structures }), points, elements };
  const stamp = { name: title.slice(0, MOST_STAMP_NAME), piece, join };
  return Object.hasOwn(points, join) && refusalOf(stamp) === undefined
    ? stamp
    : refuse(say("stamp.unreadable"));
}

/** Why a piece is no stamp: it does not hold together, or would not read back. */
function refusalOf(stamp: Stamp): Refusal | undefined {
  const lost = apart(stamp);
  if (lost !== undefined) return refuse(say("stamp.apart", { name: nameOf(lost, stamp.piece.points[lost]) }));
  const objection = objectionTo(alone(stamp));
  return objection === undefined ? undefined : refuse(say("stamp.alone", { problem: objection }));
}

/** A point that nothing in the piece joins to its joining point. */
function apart({ piece, join }: Stamp): string | undefined {
  const reached = hopsFrom(systemOf(piece), [join]);
  return Object.keys(piece.points).find((id) => !reached.has(id));
}

/** With the points of its one-ended elements too, and without a circuit beside a span that stays behind. */
function pieceOf(document: StillhotDocument, things: Things): Fragment {
  const { structures = {}, points, elements } = copyOf(document, things);
  const kept = Object.entries(elements).filter(
    ([, it]) => !isBeside(it) || Object.hasOwn(elements, String(it["span"])),
  );
  const ends = kept.flatMap(([, it]) => endPointsOf(it));
  const all = { ...points, ...Object.fromEntries(ends.map((id) => [id, pointOf(document, id)!])) };
  const standing = ({ on }: SavedPoint | SavedElement) =>
    typeof on === "string" && Object.hasOwn(structures, on) ? on : undefined;
  return {
    ...(Object.keys(structures).length === 0
      ? {}
      : {
          structures: mapped(structures, (it) =>
            withKeys(it, { evidence: undefined, seenOn: undefined, x: undefined, y: undefined }),
          ),
        }),
    points: mapped(all, (it) => withKeys(it, { evidence: undefined, pinned: undefined, on: standing(it) })),
    elements: mapped(Object.fromEntries(kept), (it) =>
      withKeys(it, { evidence: undefined, ...("on" in it ? { on: standing(it) } : {}) }),
    ),
  };
}

function turned({ piece, join }: Stamp, to: Spot, degrees: number, fit: LetterTurn): Fragment {
  const from = completePoint(piece.points[join]!);
  const [cos, sin] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  return {
    ...piece,
    points: mapped(piece.points, (point) => {
      const { x, y } = completePoint(point);
      const [dx, dy] = [x - from.x, y - from.y];
      return withKeys(point, {
        x: Math.round(to.x + dx * cos - dy * sin),
        y: Math.round(to.y + dx * sin + dy * cos),
      });
    }),
    elements: mapped(piece.elements, (it) => withTurnedLetters(it, fit)),
  };
}

/** The piece as a drawing that has nothing else. */
const alone = ({ name, piece }: Stamp): StillhotDocument => ({
  format: "stillhot",
  formatVersion: 1,
  title: name,
  system: systemOf(piece),
});

const systemOf = ({ structures, points, elements }: Fragment): System => ({
  frequencyHz: 60,
  ...(structures === undefined ? {} : { structures }),
  points,
  elements,
});

const mapped = <Saved>(
  map: Readonly<Record<string, Saved>>,
  each: (it: Saved, id: string) => Saved,
): Record<string, Saved> => Object.fromEntries(Object.entries(map).map(([id, it]) => [id, each(it, id)]));

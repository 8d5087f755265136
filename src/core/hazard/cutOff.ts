import { isConductor, isLine, lengthOf, standsAbreast } from "../devices";
import {
  type Edit,
  complete,
  edits,
  elementsAt,
  endPointsOf,
  nameIn,
  pointName,
  type SavedElement,
  type System,
} from "../document";
import { circuitOf, feedNotDrawn } from "../network";
import {
  type ConductorId,
  type ElementId,
  type Message,
  partsOfConductor,
  type PointId,
  say,
} from "../terms";

/** What an edit has cut off from every source, with no open device between, and what would join it again. */
export interface CutOff {
  readonly conductors: readonly ConductorId[];
  /** what joins it again: the one clamp or span that is missing, or one in place of all that has gone; absent where none would do */
  readonly bridge: Bridge | undefined;
}

/** What puts back a connection that an edit took away: how it is called, and the edit that makes it. */
export interface Bridge {
  readonly label: Message;
  readonly edit: Edit;
}

/**
 * What some source could reach before an edit, and none after it: nothing drawn makes it dead, so it is not known and
 * counts as live.
 */
export function cutOffBy(before: System, after: System): CutOff | undefined {
  const was = circuitOf(before);
  const now = circuitOf(after);
  const wasUnfed = feedNotDrawn(was);
  const isUnfed = feedNotDrawn(now);
  const conductors = now.conductorIds.filter((id, node) => {
    const old = was.nodeOf.get(id);
    return isUnfed[node] === 1 && old !== undefined && wasUnfed[old] === 0;
  });
  if (conductors.length === 0) return undefined;
  const unfed = new Set(conductors);
  const lettersAt = (isFed: boolean) => {
    const letters = new Map<string, string>();
    now.conductorIds.forEach((id, node) => {
      const { point, letter } = partsOfConductor(id);
      const counts = isFed ? isUnfed[node] === 0 && letter !== "N" : unfed.has(id);
      if (counts) letters.set(point, (letters.get(point) ?? "") + letter);
    });
    return letters;
  };
  return { conductors, bridge: bridgeOver(before, after, lettersAt(true), lettersAt(false)) };
}

/** A way over what has gone: the elements, from a point that is fed to one that is cut off. */
interface BridgeWay {
  readonly from: PointId;
  readonly to: PointId;
  readonly over: readonly ElementId[];
}

function bridgeOver(
  before: System,
  after: System,
  fed: ReadonlyMap<string, string>,
  cut: ReadonlyMap<string, string>,
): Bridge | undefined {
  const way = wayOver(before, after, fed, cut);
  if (way === undefined) return undefined;
  const records = way.over.map((id) => (before.elements as Record<string, SavedElement>)[id]!);
  const [only] = records;
  if (records.length === 1)
    return {
      label: say("edit.putBack", { name: nameIn({ system: before }, way.over[0]!) }),
      edit: edits.putBack(way.over[0]!, only!),
    };
  // One conductor takes the place of several; no conductor takes that of a transformer.
  if (!records.map(complete).every((it) => isConductor(it) || standsAbreast(it))) return undefined;
  const base = records.find(isLine) ?? only!;
  const phases = [...fed.get(way.from)!].filter((it) => cut.get(way.to)!.includes(it)).join("");
  if (phases === "") return undefined;
  const lengthM = records.reduce((sum, it) => sum + lengthOf(complete(it)), 0);
  const { label: _, open: _open, parted: _parted, phases: _phases, ...keys } = base;
  const ends = { from: way.from, to: way.to };
  return {
    label: say("edit.joinOver", {
      kind: say(`kind.${base.kind}`),
      from: pointName({ system: after }, way.from),
      to: pointName({ system: after }, way.to),
    }),
    edit: edits.addElement(base.kind, ends, {
      ...keys,
      ...ends,
      phases,
      ...(isLine(base) ? { lengthM } : {}),
    }),
  };
}

/** The shortest way over what has gone, through points that have gone with it. */
function wayOver(
  before: System,
  after: System,
  fed: ReadonlyMap<string, string>,
  cut: ReadonlyMap<string, string>,
): BridgeWay | undefined {
  const at = elementsAt(before);
  let ways: BridgeWay[] = [...fed.keys()].map((from) => ({
    from: from as PointId,
    to: from as PointId,
    over: [],
  }));
  const seen = new Set<string>(fed.keys());
  while (ways.length > 0) {
    const farther: BridgeWay[] = [];
    for (const { from, to, over } of ways)
      for (const id of at.get(to) ?? []) {
        if (Object.hasOwn(after.elements, id)) continue;
        for (const next of endPointsOf((before.elements as Record<string, SavedElement>)[id])) {
          if (seen.has(next)) continue;
          const way = { from, to: next as PointId, over: [...over, id as ElementId] };
          if (cut.has(next)) return way;
          seen.add(next);
          if (!Object.hasOwn(after.points, next)) farther.push(way);
        }
      }
    ways = farther;
  }
  return undefined;
}

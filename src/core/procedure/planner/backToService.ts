import type { StillhotDocument, System } from "../../document";
import { circuitOf, reachGraphOf, REACH, reachOf, standingOf } from "../../network";
import { notToBeEnergized } from "../job/inService";
import {
  closingMoves,
  customersDark,
  fedOutward,
  type Move,
  openingMoves,
  systemMoved,
  wholes,
} from "./closing";
import { afterWork, goalOf, isOff, offPart } from "./ending";
import { type Opening, openingsIn } from "./openings";
import { isInRing } from "./rings";
import { withWholeBanks } from "./wholeBanks";
import { nodesOfFeeder } from "./ways";

/**
 * Every move from the work, done, to the line in service: things closed from what is live outward, ties opened before two
 * supplies would meet, and a customer's machine that runs by itself stopped before the line comes to it. What would put
 * volts on something broken, or on a ground set that was found on, stays open; no machine is started.
 *
 * @param ready the drawing as it stands while the work is done, without tags and grounds
 * @param inParts keys of what closes last, so that no link picks up everything at once
 * @param rings whether a ring of one source may be closed before its open point opens again
 */
export function backToService(
  document: StillhotDocument,
  ready: System,
  inParts: ReadonlySet<string>,
  rings: Rings = "opened before it closes",
): readonly Move[] {
  const start = afterWork(document, ready);
  const goal = goalOf(document);
  const toClose = openingsIn(document, goal)
    .all.filter(({ moves }) => moves !== "machine")
    .flatMap((it) => offPart(start, it) ?? []);
  const ties = openingsIn(document, start).all.flatMap((it) => offPart(goal, it) ?? []);
  const plain = closedOutward(document, start, [], toClose, inParts, rings);
  const machines = plain.onMachine.length === 0 ? [] : machinesAlone(document, start);
  if (ties.length + machines.length === 0) return plain.moves;
  const changed = closedOutward(document, start, [...ties, ...machines], toClose, inParts, rings);
  // A tie stays closed where what it feeds has no other supply.
  return customersDark(circuitOf(changed.after), []) > customersDark(circuitOf(plain.after), [])
    ? plain.moves
    : changed.moves;
}

type Rings = "opened before it closes" | "closed before it opens";

interface Closed {
  readonly moves: readonly Move[];
  readonly after: System;
  readonly onMachine: readonly Opening[];
}

/** What can be closed once some ties and machines are off; these go off as late as two supplies would meet. */
function closedOutward(
  document: StillhotDocument,
  start: System,
  toGoOff: readonly Opening[],
  toClose: readonly Opening[],
  inParts: ReadonlySet<string>,
  rings: Rings,
): Closed {
  const off = openingMoves(document, start, toGoOff);
  const parted = afterAll(document, start, off);
  const circuit = circuitOf(parted);
  const notToBe = notToBeEnergized(document.system, parted).flatMap((id) => circuit.nodeOf.get(id) ?? []);
  const dropped = off.map(({ opening }) => opening).filter((it) => !toGoOff.includes(it));
  const { taken, onMachine } = fedOutward(
    circuit,
    wholes([...toClose, ...dropped]),
    notToBe,
    "rings of one source",
  );
  const closing = withWholeBanks(document, parted, closingMoves(document, parted, taken, inParts));
  const fed = afterAll(document, parted, closing);
  const moves = inTime(
    document,
    start,
    toGoOff,
    [...closing, ...closingMoves(document, fed, onDeadPart(document, fed, toClose))],
    rings,
  );
  return { moves, after: afterAll(document, start, moves), onMachine };
}

const afterAll = (document: StillhotDocument, start: System, moves: readonly Move[]): System =>
  moves.length === 0 ? start : systemMoved(document, moves.at(-1)!);

/** Moves on the drawing as it really stands: what is to go off goes off before the first closing that would join supplies. */
function inTime(
  document: StillhotDocument,
  start: System,
  toGoOff: readonly Opening[],
  closing: readonly Move[],
  rings: Rings,
): Move[] {
  const moves: Move[] = [];
  let system = start;
  const make = (move: Move): void => {
    moves.push({ ...move, before: system });
    system = systemMoved(document, moves.at(-1)!);
  };
  let isOffYet = toGoOff.length === 0;
  const goOff = (): void => {
    if (!isOffYet) for (const it of openingMoves(document, system, toGoOff)) make(it);
    isOffYet = true;
  };
  for (const move of closing) {
    const isRing = rings === "closed before it opens" && isInRing(system, move.opening);
    if (move.way === "on" && !isRing && meetsSupply(system, move.opening)) goOff();
    make(move);
  }
  goOff();
  return moves;
}

/** Whether both sides of an open thing are live, or one of them by a machine alone. */
export function meetsSupply(system: System, { edges }: Opening): boolean {
  const circuit = circuitOf(system);
  const { from, to } = reachGraphOf(circuit);
  const { how } = reachOf(circuit, standingOf(circuit), { groundsLifted: true });
  return edges.some((edge) => {
    const sides = [how[from[edge]!]!, how[to[edge]!]!];
    return sides.every((it) => it !== 0) || sides.some((it) => it !== 0 && (it & REACH.forward) === 0);
  });
}

/** Machines that run where no utility reaches. */
function machinesAlone(document: StillhotDocument, system: System): Opening[] {
  const circuit = circuitOf(system);
  const { how } = reachOf(circuit, standingOf(circuit), { groundsLifted: true });
  return openingsIn(document, system).all.filter(
    ({ moves, element }) =>
      moves === "machine" &&
      nodesOfFeeder(circuit, element).every((node) => (how[node]! & REACH.forward) === 0),
  );
}

/** What the crew itself opened in a part that stays dark is closed as well: no supply hangs on it. */
function onDeadPart(document: StillhotDocument, system: System, toClose: readonly Opening[]): Opening[] {
  const circuit = circuitOf(system);
  const { from, to } = reachGraphOf(circuit);
  const { how } = reachOf(circuit, standingOf(circuit), { groundsLifted: true });
  return toClose.filter(
    (it) =>
      isOff(system, it) &&
      !isOff(document.system, it) &&
      it.edges.every((edge) => how[from[edge]!] === 0 && how[to[edge]!] === 0),
  );
}

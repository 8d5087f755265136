import { handlingOf, hangs, hasPositions } from "../../devices";
import { complete, jobOf, type SavedElement, type StillhotDocument, type System } from "../../document";
import { type Circuit, type Reach, reachGraphOf, REACH, reachOf, sourceOf, standingOf } from "../../network";
import type { ElementId } from "../../terms";
import { canOpenInOrder, orderOpenings, systemWithout } from "./breaking";
import { droppersOf, feedersOf, nextBeyond } from "./nextBeyond";
import { documentOn, type Opening } from "./openings";
import { mayBeLoadRated } from "../effects/breaking";
import { toolFor } from "../job/tools";
import { customersOutOf, edgesWith } from "./ways";

/** One move of a thing in its turn. */
export interface Move {
  readonly way: "off" | "on";
  readonly opening: Opening;
  readonly tool: string | undefined;
  /** how the drawing stands before it */
  readonly before: System;
}

/** What of some open things can be closed one after the other. */
export interface Fed {
  /** in the order in which supply comes to them */
  readonly taken: readonly Opening[];
  /** what would put volts on something that nothing may feed */
  readonly refused: readonly Opening[];
  /** what would join two supplies */
  readonly parallel: readonly Opening[];
  /** what would bring the line to a customer's machine that runs by itself, out of step */
  readonly onMachine: readonly Opening[];
}

/** Poles of one thing as one: what is fed on one phase alone is not fed. */
export function wholes(openings: readonly Opening[]): Opening[] {
  const byElement = new Map<ElementId, Opening>();
  for (const it of openings) {
    const known = byElement.get(it.element);
    if (known === undefined) byElement.set(it.element, it);
    else
      byElement.set(it.element, {
        ...known,
        phases: known.phases + it.phases,
        key: `${known.key}${it.phases}`,
        poles: known.poles + it.poles,
        edges: [...known.edges, ...it.edges],
        edgesByPhase: [...known.edgesByPhase, ...it.edgesByPhase],
      });
  }
  return [...byElement.values()];
}

/**
 * Closes from what is live outward: one side fed, the other dark, and nothing that is held comes to life.
 *
 * @param held nodes that nothing may feed
 * @param rings whether what one source feeds on both sides may close, as it stands in service
 */
export function fedOutward(
  circuit: Circuit,
  open: readonly Opening[],
  held: readonly number[],
  rings: "no rings" | "rings of one source",
): Fed {
  const { from, to } = reachGraphOf(circuit);
  const { emfOn } = standingOf(circuit);
  const machinesOn = emfOn.map((on, k) => (circuit.emfs[k]!.part.role === "utility" ? 0 : on));
  const edgeOn = standingOf(circuit).edgeOn.slice();
  const reach = (on: Uint8Array): Reach => reachOf(circuit, { edgeOn, emfOn: on }, { groundsLifted: true });
  let all = reach(emfOn);
  let { how } = all;
  let byMachine = reach(machinesOn).how;
  const dead = held.filter((node) => how[node] === 0);
  const left = new Set(open);
  const taken: Opening[] = [];
  const refused: Opening[] = [];
  const isFed = (node: number): boolean => (how[node]! & REACH.forward) !== 0;
  const isOneSource = (a: number, b: number): boolean =>
    rings === "rings of one source" && sourceOf(circuit, all, a) === sourceOf(circuit, all, b);
  const joinsSupplies = ({ edges }: Opening): boolean =>
    edges.some((edge) => {
      const [a, b] = [from[edge]!, to[edge]!];
      return isFed(a) && isFed(b) && !isOneSource(a, b);
    });
  const isOnMachine = ({ edges }: Opening): boolean =>
    edges.some((edge) => [from[edge]!, to[edge]!].some((node) => !isFed(node) && byMachine[node] !== 0));
  for (let grew = true; grew;) {
    grew = false;
    for (const opening of left) {
      const isReached = opening.edges.some((edge) => isFed(from[edge]!) || isFed(to[edge]!));
      if (!isReached || joinsSupplies(opening) || isOnMachine(opening)) continue;
      for (const edge of opening.edges) edgeOn[edge] = 1;
      const next = reach(emfOn);
      left.delete(opening);
      if (dead.some((node) => next.how[node] !== 0)) {
        for (const edge of opening.edges) edgeOn[edge] = 0;
        refused.push(opening);
        continue;
      }
      all = next;
      how = next.how;
      byMachine = reach(machinesOn).how;
      taken.push(opening);
      grew = true;
    }
  }
  const rest = [...left];
  return {
    taken,
    refused,
    parallel: rest.filter(joinsSupplies),
    onMachine: rest.filter(
      (it) => isOnMachine(it) && it.edges.some((edge) => isFed(from[edge]!) || isFed(to[edge]!)),
    ),
  };
}

/** Customers without supply with some open things closed. */
export const customersDark = (circuit: Circuit, closed: readonly Opening[]): number =>
  customersOutOf(circuit, edgesWith(circuit, [], closed)).count;

/**
 * Closings in the order in which they are told where that can be, else in one in which none picks up more than it may break:
 * the other way round than they would be opened. What has load beyond it that it may not pick up waits for what is beyond to
 * be opened.
 *
 * @param last keys of what closes last, as far as it may
 */
export function closingMoves(
  document: StillhotDocument,
  before: System,
  told: readonly Opening[],
  last: ReadonlySet<string> = new Set(),
): readonly Move[] {
  // What hangs on the line, a capacitor bank, comes back on all of its phases once all that feeds it is closed.
  const closed = [...told.filter((it) => !hangs(it)), ...told.filter(hangs)];
  const end = closed.reduce((system, it) => systemWith(document, system, it), before);
  if (last.size === 0 && canOpenInOrder(documentOn(document, end), [...closed].reverse()))
    return inTurn(document, before, "on", closed);
  const { order, stuck } = orderOpenings(documentOn(document, end), closed, last);
  const after = documentOn(document, end);
  for (const next of [
    stuck.flatMap(({ element }) => nextBeyond(after, element)),
    // With nothing beyond a blade that could keep the load off, what feeds it does, for as long as the closing takes. A clamp
    // stays on instead: one goes up the line.
    stuck.filter((it) => isBlade(end, it)).flatMap((it) => feedersOf(after, it)),
  ]) {
    const droppers = unique(next).filter((it) => closed.every(({ element }) => element !== it.element));
    if (droppers.length === 0) continue;
    const off = openingMoves(document, before, droppers);
    const dropped = systemMoved(document, off.at(-1)!);
    return [...off, ...closingMoves(document, dropped, [...closed, ...droppers], last)];
  }
  return inTurn(document, before, "on", [...order.map(({ opening }) => opening).reverse(), ...stuck]);
}

/** Whether the file of a thing may say what load it makes and breaks. */
const isBlade = ({ elements }: System, { element }: Opening): boolean =>
  mayBeLoadRated(complete(elements[element]!));

const unique = (openings: readonly Opening[]): Opening[] => [...new Set(openings)];

/**
 * Openings in an order in which each breaks no more than it may. Where something may not break what it feeds, what drops
 * that load is opened too, and first.
 */
export function openingMoves(
  document: StillhotDocument,
  before: System,
  opened: readonly Opening[],
): readonly Move[] {
  const now = documentOn(document, before);
  const { order, stuck } = orderOpenings(now, opened);
  const droppers = stuck
    .flatMap((it) => droppersOf(now, it))
    .filter((it) => opened.every(({ element }) => element !== it.element));
  if (droppers.length > 0) {
    const helped = orderOpenings(now, [...droppers, ...opened], new Set(droppers.map(({ key }) => key)));
    if (helped.stuck.length === 0)
      return inTurn(
        document,
        before,
        "off",
        helped.order.map(({ opening }) => opening),
      );
  }
  return inTurn(document, before, "off", [...order.map(({ opening }) => opening), ...stuck]);
}

/** Whether something that stands closed can be opened with nothing breaking more than it may. */
export const canGoOffAgain = (document: StillhotDocument, system: System, opening: Opening): boolean =>
  canOpenInOrder(
    documentOn(document, system),
    openingMoves(document, system, [opening]).map((move) => move.opening),
  );

function inTurn(
  document: StillhotDocument,
  from: System,
  way: Move["way"],
  openings: readonly Opening[],
): Move[] {
  return inThisOrder(
    document,
    from,
    openings.map((opening) => ({ way, opening })),
  );
}

/** Moves one after the other, each with its tool and with how the drawing stands before it. */
export function inThisOrder(
  document: StillhotDocument,
  from: System,
  moves: readonly Pick<Move, "way" | "opening">[],
): Move[] {
  let before = from;
  return moves.map(({ way, opening }) => {
    const element = complete(before.elements[opening.element]!);
    // What cut a lead does not join it again.
    const isJoined = way === "on" && handlingOf(element)?.on === "join";
    const tool = isJoined ? undefined : toolFor(element, jobOf(document).tools, way === "off");
    const move: Move = { way, opening, before, tool };
    before = systemMoved(document, move);
    return move;
  });
}

/** The drawing after a move. */
export const systemMoved = (document: StillhotDocument, { way, opening, before }: Move): System =>
  way === "off" ? systemWithout(before, opening) : systemWith(document, before, opening);

/** The drawing with a thing closed: its link renewed, its barrel in, its block off. A transfer switch goes back as found. */
export function systemWith(
  document: StillhotDocument,
  system: System,
  { element: id, phases }: Opening,
): System {
  const record = system.elements[id]!;
  const found = document.system.elements[id];
  const keys = hasPositions(record)
    ? { position: found?.["position"] ?? "utility" }
    : {
        ...without(record, "open", phases),
        ...without(record, "cut", phases),
        ...without(record, "blown", phases),
        ...without(record, "removed", phases),
        ...(record["blocked"] === true ? { blocked: false } : {}),
      };
  return { ...system, elements: { ...system.elements, [id]: { ...record, ...keys } } };
}

function without(record: SavedElement, key: string, phases: string): Readonly<Record<string, string>> {
  const letters = (complete(record) as unknown as Readonly<Record<string, unknown>>)[key];
  if (typeof letters !== "string" || letters === "") return {};
  return { [key]: [...letters].filter((it) => !phases.includes(it)).join("") };
}

/** Whether a thing is open when all is normal. */
export const isNormallyOpen = (system: System, id: ElementId): boolean =>
  (complete(system.elements[id]!) as { normallyOpen?: boolean }).normallyOpen === true;

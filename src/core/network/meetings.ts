import { perObject } from "../document";
import type { Circuit } from "./circuit";
import { edgesAround } from "./flood";
import { groupsAsDrawn, type StepGroup } from "./inStep";
import { isPhase } from "./phaseIslands";
import { EDGE, reachGraphOf } from "./reach";
import { standingOf } from "./running";

/** Where a closed thing or a span joins two conductors that hang on two feeds. */
export interface Meeting {
  /** the edge of the graph of reach that joins them */
  readonly edge: number;
  /** whether nothing keeps the two feeds in step */
  readonly isOutOfStep: boolean;
}

/** Where the feeds of a circuit meet. */
export interface Meetings {
  readonly joined: readonly Meeting[];
  /** indices of transformers whose low side others hold already; whether nothing keeps those in step with it */
  readonly inParallel: ReadonlyMap<number, { readonly isOutOfStep: boolean }>;
}

/** How late an edge is walked: lines first, then what is closed, then what is closed and normally open. */
const LATE = { line: 0, closed: 1, normallyOpen: 2 } as const;

/**
 * Every phase conductor that a utility's supply reaches forward is given one feed, the one that comes to it first: a leg of a
 * source, or the low side of a transformer all of whose primary is fed. What else joins two of them is where feeds meet.
 * Lines are walked before what can be opened, so that they meet in what can be opened wherever there is such a thing.
 */
export const meetingsOf: (circuit: Circuit) => Meetings = perObject((circuit: Circuit) => {
  const graph = reachGraphOf(circuit);
  const late = latenessOf(circuit);
  const unitsAt = unitsByPrimary(circuit);
  /** the node at which the feed of each node begins; −1 where none has come */
  const feedOf = new Int32Array(circuit.nodeCount).fill(-1);
  const groupOf = new Map<number, StepGroup>();
  const entered = new Set<number>();
  const inParallel = new Map<number, { readonly isOutOfStep: boolean }>();
  const joined = new Map<number, Meeting>();
  const ahead: { readonly edge: number; readonly to: number; readonly feed: number }[][] = [[], [], []];

  const arrive = (node: number, feed: number) => {
    feedOf[node] = feed;
    for (const edge of edgesAround(graph, node)) {
      if (graph.kind[edge] !== EDGE.metallic || graph.on[edge] === 0) continue;
      const to = graph.from[edge] === node ? graph.to[edge]! : graph.from[edge]!;
      if (isPhase(circuit, to)) ahead[late(edge)]!.push({ edge, to, feed });
    }
    for (const unit of unitsAt.get(node) ?? []) goThrough(unit, groupOf.get(feed)!);
  };
  const goThrough = (unit: number, group: StepGroup) => {
    const { element } = circuit.units[unit]!;
    const { primary, low } = terminalsOf(circuit, unit);
    if (primary.some((node) => feedOf[node] === -1)) return;
    if (!entered.has(element) && low.every((node) => feedOf[node] !== -1))
      inParallel.set(element, {
        isOutOfStep: low.some((node) => groupOf.get(feedOf[node]!) !== group),
      });
    entered.add(element);
    for (const node of low) {
      if (feedOf[node] !== -1) continue;
      groupOf.set(node, group);
      arrive(node, node);
    }
  };

  const { emfOn } = standingOf(circuit);
  const { ofEmf } = groupsAsDrawn(circuit);
  const legs = circuit.emfs.flatMap(({ part, legs: nodes }, emf) =>
    part.role === "utility" && emfOn[emf] === 1
      ? nodes.map((node) => ({ node, group: ofEmf.get(emf)! }))
      : [],
  );
  for (const { node, group } of legs) {
    feedOf[node] = node;
    groupOf.set(node, group);
  }
  for (const { node } of legs) arrive(node, node);
  const at = ahead.map(() => 0);
  for (;;) {
    const which = ahead.findIndex((list, nth) => at[nth]! < list.length);
    if (which === -1) return { joined: [...joined.values()], inParallel };
    const { edge, to, feed } = ahead[which]![at[which]!++]!;
    if (feedOf[to] === -1) arrive(to, feed);
    else if (feedOf[to] !== feed)
      joined.set(edge, { edge, isOutOfStep: groupOf.get(feedOf[to]!) !== groupOf.get(feed) });
  }
});

function latenessOf(circuit: Circuit): (edge: number) => number {
  const { element, edgeOfJoin } = reachGraphOf(circuit);
  const opens = new Set(edgeOfJoin);
  const isNormallyOpen = (index: number): boolean =>
    (circuit.system.elements[circuit.elementIds[index]!] as { normallyOpen?: boolean }).normallyOpen === true;
  return (edge) =>
    !opens.has(edge) ? LATE.line : isNormallyOpen(element[edge]!) ? LATE.normallyOpen : LATE.closed;
}

/** The phase conductors on both sides of a transformer unit. */
function terminalsOf(circuit: Circuit, unit: number): { readonly primary: number[]; readonly low: number[] } {
  const { part, windings } = circuit.units[unit]!;
  const among = (of: typeof windings): number[] => [
    ...new Set(of.flat().filter((node) => node < circuit.conductorCount && isPhase(circuit, node))),
  ];
  return {
    primary: among(windings.slice(0, part.primary.length)),
    low: among(windings.slice(part.primary.length)),
  };
}

function unitsByPrimary(circuit: Circuit): ReadonlyMap<number, readonly number[]> {
  const units = new Map<number, number[]>();
  circuit.units.forEach((_, unit) => {
    for (const node of terminalsOf(circuit, unit).primary) {
      const known = units.get(node);
      if (known === undefined) units.set(node, [unit]);
      else known.push(unit);
    }
  });
  return units;
}

import { complete, perObject, type StillhotDocument } from "../../document";
import { type Circuit, circuitOf, EARTH, reachGraphOf, standingOf } from "../../network";
import { type ElementId, type PointId } from "../../terms";
import { compareRanks, orderOpenings, type OpeningOrder } from "./breaking";
import { walkThrough } from "./distance";
import { type Opening, openingsOf } from "./openings";
import {
  type CustomersOut,
  customersOutOf,
  edgesTaken,
  type Separation,
  type Strictness,
  type Way,
  wayBetween,
} from "./ways";

/** What a set of openings has to bring about. */
export interface Demand {
  readonly start: PointId;
  readonly separations: readonly Separation[];
  readonly strictness: Strictness;
  /** keys of openings that are in every set */
  readonly forced: readonly string[];
  /** elements that are not to be operated */
  readonly forbidden: ReadonlySet<string>;
  /** keys of openings that come first, as far as they may */
  readonly first: ReadonlySet<string>;
}

/** A set of openings that brings it about, and what it costs. */
export interface Choice {
  readonly openings: readonly Opening[];
  readonly order: OpeningOrder;
  readonly customers: CustomersOut;
}

/** Why nothing did: ways without anything on them that opens, and things that nothing lets break their current. */
export interface DeadEnds {
  readonly ways: Way[];
  readonly stuck: Opening[];
}

interface Candidate {
  readonly openings: readonly Opening[];
  readonly key: string;
  /** customers, operations, walking: compared in this order */
  readonly cost: readonly number[];
  readonly customers: CustomersOut;
}

/** Sets looked at before the search gives up: a hundred devices take a few dozen. */
const MOST_SETS = 3000;

/**
 * Sets of openings that leave no way, cheapest first: fewest customers out, then fewest operations, then least walking.
 * Every set is grown along a way that it leaves, by each thing on it that opens, or along the load of something that
 * could not break its current: so every minimal set is found, and none that holds a cheaper one is told.
 */
export function* choices(document: StillhotDocument, demand: Demand, deadEnds: DeadEnds): Generator<Choice> {
  const circuit = circuitOf(document.system);
  const taken = edgesTaken(circuit, demand.strictness);
  const all = openingsOf(document);
  const forced = all.all.filter(({ key }) => demand.forced.includes(key));
  const heap = [candidateOf(document, circuit, demand, forced)];
  const known = new Set(heap.map(({ key }) => key));
  const found: Candidate[] = [];
  for (let looked = 0; heap.length > 0 && looked < MOST_SETS; looked++) {
    const at = pop(heap);
    if (found.some((it) => it.openings.every((opening) => at.openings.includes(opening)))) continue;
    const more = growth(document, circuit, taken, demand, at, deadEnds);
    if ("stuck" in more) {
      found.push(at);
      yield { openings: at.openings, order: more, customers: at.customers };
      continue;
    }
    for (const opening of more) {
      const grown = [...at.openings, opening].sort((a, b) => (a.key < b.key ? -1 : 1));
      const key = keyOf(grown);
      if (known.has(key)) continue;
      known.add(key);
      push(heap, candidateOf(document, circuit, demand, grown));
    }
  }
}

const keyOf = (openings: readonly Opening[]): string => openings.map(({ key }) => key).join(" ");

function candidateOf(
  document: StillhotDocument,
  circuit: Circuit,
  { start }: Demand,
  openings: readonly Opening[],
): Candidate {
  const customers = customersOutOf(circuit, openings);
  const operations = openings.reduce(
    (sum, { trouble, automatic, poles }) => sum + 2 * poles + trouble + (automatic ? 1 : 0),
    0,
  );
  const walk = walkThrough(
    document.system,
    start,
    openings.map(({ at }) => at),
  );
  return { openings, key: keyOf(openings), customers, cost: [customers.count, operations, walk] };
}

/** What a set lacks: things of which one more has to open; or the order in which it can be opened, where it lacks nothing. */
function growth(
  document: StillhotDocument,
  circuit: Circuit,
  taken: Uint8Array,
  demand: Demand,
  { openings }: Candidate,
  deadEnds: DeadEnds,
): readonly Opening[] | OpeningOrder {
  const edgeOn = taken.slice();
  for (const { edges, visibleGap } of openings)
    if (visibleGap || !demand.strictness.visibleGaps) for (const edge of edges) edgeOn[edge] = 0;
  const stopped = new Set(openings.filter(({ moves }) => moves === "machine").map(({ element }) => element));
  for (const separation of demand.separations) {
    const way = wayBetween(circuit, edgeOn, separation, stopped);
    if (way === undefined) continue;
    const { byGenerator } = openingsOf(document);
    const generator = byGenerator.get(way.source);
    const onWay = [...openingsAlong(document, way, demand), ...(generator === undefined ? [] : [generator])]
      .filter(({ visibleGap }) => visibleGap || !demand.strictness.visibleGaps)
      .filter((it) => !openings.includes(it));
    if (onWay.length === 0) deadEnds.ways.push(way);
    return onWay;
  }
  const order = orderRemembered(document, openings, demand.first);
  const [stuck] = order.stuck;
  if (stuck === undefined) return order;
  const droppers = droppersFor(document, circuit, stuck, openings, demand);
  if (droppers.length === 0) deadEnds.stuck.push(stuck);
  return droppers;
}

const orders = perObject((_document: StillhotDocument) => new Map<string, OpeningOrder>());

function orderRemembered(
  document: StillhotDocument,
  openings: readonly Opening[],
  first: ReadonlySet<string>,
): OpeningOrder {
  const known = orders(document);
  const key = `${keyOf(openings)} | ${[...first].sort().join(" ")}`;
  let order = known.get(key);
  if (order === undefined) known.set(key, (order = orderOpenings(document, openings, first)));
  return order;
}

function openingsAlong(document: StillhotDocument, { edges }: Way, { forbidden }: Demand): Opening[] {
  const { byEdge } = openingsOf(document);
  const along = edges.flatMap((edge) => byEdge.get(edge) ?? []);
  return [...new Set(along)].filter(({ element }) => !forbidden.has(element));
}

/** What breaks no load itself takes none off anything else. */
const DROPS_NOTHING: readonly string[] = ["clamp", "lead", "regulator"];

/** Things that take the current off one that may not break it: on the way to a load that it feeds, or to its supply. */
function droppersFor(
  document: StillhotDocument,
  circuit: Circuit,
  stuck: Opening,
  openings: readonly Opening[],
  demand: Demand,
): Opening[] {
  const graph = reachGraphOf(circuit);
  const edgeOn = standingOf(circuit).edgeOn.slice();
  for (const { edges } of openings) for (const edge of edges) edgeOn[edge] = 0;
  const supplies = circuit.emfs.flatMap(({ element, part, legs, star }) =>
    part.on ? [{ element: circuit.elementIds[element]!, nodes: [...legs, star] }] : [],
  );
  const found = new Set<Opening>();
  for (const side of [graph.from, graph.to]) {
    const targets = stuck.edges.map((edge) => side[edge]!);
    for (const sources of [supplies, loadsOf(circuit)]) {
      const way = wayBetween(circuit, edgeOn, { targets, sources }, new Set());
      if (way === undefined) continue;
      for (const opening of openingsAlong(document, way, demand)) found.add(opening);
    }
  }
  return [...found].filter((it) => !openings.includes(it) && !DROPS_NOTHING.includes(it.kind));
}

const loadsOf = perObject((circuit: Circuit): Separation["sources"] =>
  circuit.elementIds.flatMap((id, index): { element: ElementId; nodes: number[] }[] => {
    const it = complete(circuit.system.elements[id]!);
    const draws = (it.kind === "load" && (it.kw !== 0 || it.kvar !== 0)) || it.kind === "capacitor";
    if (!draws) return [];
    const nodes = circuit.branches
      .filter(({ element }) => element === index)
      .flatMap(({ from, to }) => [from, to].filter((node) => node !== EARTH));
    return [{ element: id, nodes }];
  }),
);

// A binary heap: the cheapest set on top; of equal ones the one whose key comes first, so that a plan never wavers.

const isBefore = (a: Candidate, b: Candidate): boolean =>
  (compareRanks(a.cost, b.cost) || (a.key < b.key ? -1 : 1)) < 0;

function push(heap: Candidate[], it: Candidate): void {
  heap.push(it);
  for (let at = heap.length - 1; at > 0;) {
    const up = (at - 1) >> 1;
    if (!isBefore(heap[at]!, heap[up]!)) break;
    [heap[at], heap[up]] = [heap[up]!, heap[at]!];
    at = up;
  }
}

function pop(heap: Candidate[]): Candidate {
  const top = heap[0]!;
  const last = heap.pop()!;
  if (heap.length === 0) return top;
  heap[0] = last;
  for (let at = 0; ;) {
    let least = at;
    for (const down of [2 * at + 1, 2 * at + 2])
      if (down < heap.length && isBefore(heap[down]!, heap[least]!)) least = down;
    if (least === at) return top;
    [heap[at], heap[least]] = [heap[least]!, heap[at]!];
    at = least;
  }
}

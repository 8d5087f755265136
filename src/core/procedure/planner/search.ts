import { MOST_SETS } from "../tolerances";
import { droppedBy } from "../../devices";
import { complete, perObject, type StillhotDocument, type System } from "../../document";
import { type Circuit, circuitOf, EARTH, reachGraphOf } from "../../network";
import { type ElementId, type PointId } from "../../terms";
import { compareRanks, orderOpenings, type OpeningOrder } from "./breaking";
import { customersDark } from "./closing";
import { liveWithinReach } from "./withinReach";
import { walkThrough } from "./distance";
import { droppersOf } from "./nextBeyond";
import { type Opening, openingsOf } from "./openings";
import { type Restored, restored } from "./restored";
import {
  type CustomersOut,
  customersOutOf,
  edgesTaken,
  edgesWith,
  type Separation,
  type Strictness,
  type SupplyPath,
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
  /** open things that feed the rest from another side while the work goes on */
  readonly ties: readonly Opening[];
}

/** A set of openings that brings it about, what feeds the rest meanwhile, and what it costs. */
export interface Choice {
  readonly openings: readonly Opening[];
  readonly order: OpeningOrder;
  readonly restored: Restored;
  /** the drawing with all of it done */
  readonly ready: System;
  /** customers without supply while the work goes on */
  readonly customers: CustomersOut;
  /** whether nothing live is within reach of what is changed */
  readonly isApart: boolean;
  /** no set with these openings can leave fewer customers out */
  readonly least: number;
  /**
   * Customers without supply while work goes on, at the worst before it, live conductors within reach of what is changed,
   * operations, walking: compared in this order.
   */
  readonly cost: readonly number[];
}

/** Why nothing did: ways without anything on them that opens, and things that nothing lets break their current. */
export interface DeadEnds {
  readonly ways: SupplyPath[];
  readonly stuck: Opening[];
}

interface Candidate {
  readonly openings: readonly Opening[];
  /** those among them that only take load off others: they may close again before the work */
  readonly droppers: ReadonlySet<Opening>;
  readonly key: string;
  /** customers at the least, customers at the worst before the work, operations, walking: compared in this order */
  readonly cost: readonly number[];
  /** by which the next set is taken */
  readonly rank: readonly number[];
}

/** The order in which sets are looked at, of their cost. */
type Ranking = (cost: readonly number[]) => readonly number[];

/**
 * Sets of openings that leave no way, cheapest first: fewest customers out while work goes on, then at the worst before it,
 * then fewest operations, then least walking.
 * Every set is grown along a way that it leaves, by each thing on it that opens, or along the load of something that
 * could not break its current: so every minimal set is found, and none that holds a cheaper one is told. Where too many
 * things stand side by side for that, those of few operations are sought before those that leave few customers out.
 */
export function* choices(
  document: StillhotDocument,
  demand: Demand,
  deadEnds: DeadEnds,
  mostSets = MOST_SETS,
): Generator<Choice> {
  const customersFirst: Ranking = (cost) => cost;
  const operationsFirst: Ranking = ([customers, worst, operations, walk]) => [
    operations!,
    customers!,
    worst!,
    walk!,
  ];
  const outcome = yield* grownSets(document, demand, deadEnds, mostSets, customersFirst);
  if (outcome === "too many") yield* grownSets(document, demand, deadEnds, mostSets, operationsFirst);
}

/** Sets in the order of a ranking; whether there were too many to find any. */
function* grownSets(
  document: StillhotDocument,
  demand: Demand,
  deadEnds: DeadEnds,
  mostSets: number,
  ranking: Ranking,
): Generator<Choice, "too many" | "told"> {
  const circuit = circuitOf(document.system);
  const taken = edgesTaken(circuit, demand.strictness);
  for (const { edges } of demand.ties) for (const edge of edges) taken[edge] = 1;
  const forced = openingsOf(document).all.filter(({ key }) => demand.forced.includes(key));
  const priced = (openings: readonly Opening[], droppers: ReadonlySet<Opening>): Candidate =>
    candidateOf(document, circuit, taken, demand, openings, droppers, ranking);
  const heap = [priced(forced, new Set())];
  const known = new Set(heap.map(({ key }) => key));
  const found: Candidate[] = [];
  for (let looked = 0; heap.length > 0 && looked < mostSets; looked++) {
    const at = pop(heap);
    if (found.some((it) => it.openings.every((opening) => at.openings.includes(opening)))) continue;
    const more = growth(document, circuit, taken, demand, at, deadEnds);
    if ("order" in more) {
      found.push(at);
      yield choiceOf(document, demand, at, more.order);
      continue;
    }
    for (const opening of more.lacks) {
      const grown = [...at.openings, opening].sort((a, b) => (a.key < b.key ? -1 : 1));
      const key = keyOf(grown);
      if (known.has(key)) continue;
      known.add(key);
      const droppers = more.drops ? new Set([...at.droppers, opening]) : at.droppers;
      push(heap, priced(grown, droppers));
    }
  }
  return found.length === 0 && heap.length > 0 ? "too many" : "told";
}

const keyOf = (openings: readonly Opening[]): string => openings.map(({ key }) => key).join(" ");

function candidateOf(
  document: StillhotDocument,
  circuit: Circuit,
  taken: Uint8Array,
  demand: Demand,
  openings: readonly Opening[],
  droppers: ReadonlySet<Opening>,
  ranking: Ranking,
): Candidate {
  const { start, ties } = demand;
  const stay = openings.filter((it) => !droppers.has(it));
  const customers = customersOutOf(circuit, edgesWith(circuit, stay, ties)).count;
  const worst =
    droppers.size === 0 ? customers : customersOutOf(circuit, edgesWith(circuit, openings, ties)).count;
  const walk = walkThrough(
    document.system,
    start,
    openings.map(({ at }) => at),
  );
  const operations = operationsOf(openings);
  const wanting = operationsWanting(document, circuit, taken, demand, openings);
  return {
    openings,
    droppers,
    key: keyOf(openings),
    cost: [customers, worst, operations, walk],
    rank: ranking([customers, worst, operations + wanting, walk]),
  };
}

const operationsOf = (openings: readonly Opening[]): number =>
  openings.reduce((sum, { trouble, automatic, poles }) => sum + 2 * poles + trouble + (automatic ? 1 : 0), 0);

/**
 * Operations that a set lacks at the least: of ways that have nothing that opens in common each wants an opening of its
 * own. Without it every pair of poles along a line is looked at before the first three.
 */
function operationsWanting(
  document: StillhotDocument,
  circuit: Circuit,
  taken: Uint8Array,
  demand: Demand,
  openings: readonly Opening[],
): number {
  let wanting = 0;
  let opened = openings;
  for (;;) {
    const way = wayLeft(circuit, taken, demand, opened);
    const along = way === undefined ? [] : openingsOn(document, way, demand, opened);
    if (along.length === 0) return wanting;
    wanting += Math.min(...along.map((it) => operationsOf([it])));
    opened = [...opened, ...along];
  }
}

/** The first way that these openings leave, if any. */
function wayLeft(
  circuit: Circuit,
  taken: Uint8Array,
  { separations, strictness }: Demand,
  openings: readonly Opening[],
): SupplyPath | undefined {
  const edgeOn = taken.slice();
  for (const { edges, visibleGap } of openings)
    if (visibleGap || !strictness.visibleGaps) for (const edge of edges) edgeOn[edge] = 0;
  const stopped = stoppedBy(openings);
  for (const separation of separations) {
    const way = wayBetween(circuit, edgeOn, separation, stopped);
    if (way !== undefined) return way;
  }
  return undefined;
}

/** What more could open a way, the machine that it comes from among them. */
function openingsOn(
  document: StillhotDocument,
  way: SupplyPath,
  demand: Demand,
  opened: readonly Opening[],
): Opening[] {
  const generator = openingsOf(document).byGenerator.get(way.source);
  return [...openingsAlong(document, way, demand), ...(generator === undefined ? [] : [generator])]
    .filter(({ visibleGap }) => visibleGap || !demand.strictness.visibleGaps)
    .filter((it) => !opened.includes(it));
}

const stoppedBy = (openings: readonly Opening[]): ReadonlySet<ElementId> =>
  new Set(openings.filter(({ moves }) => moves === "machine").map(({ element }) => element));

/** A set with what can be fed again while it stands open, and its price. */
function choiceOf(
  document: StillhotDocument,
  { separations }: Demand,
  { openings, cost: [least, , operations, walk] }: Candidate,
  order: OpeningOrder,
): Choice {
  const back = restored(
    document,
    order.after,
    separations.flatMap(({ targets }) => targets),
  );
  const ready = circuitOf(back.after);
  const customers = customersOutOf(ready, edgesWith(ready, []));
  const within = liveWithinReach(document, back.after);
  return {
    openings,
    order,
    restored: back,
    ready: back.after,
    customers,
    isApart: within === 0,
    least: least!,
    cost: [
      customers.count,
      customersDark(circuitOf(order.after), []),
      within,
      operations! + operationsOf(back.moves.map(({ opening }) => opening)),
      walk!,
    ],
  };
}

/** Things of which one more has to open, be it only to take load off another; or the order, where nothing lacks. */
type Growth =
  | { readonly lacks: readonly Opening[]; readonly drops: boolean }
  | { readonly order: OpeningOrder };

function growth(
  document: StillhotDocument,
  circuit: Circuit,
  taken: Uint8Array,
  demand: Demand,
  { openings }: Candidate,
  deadEnds: DeadEnds,
): Growth {
  const way = wayLeft(circuit, taken, demand, openings);
  if (way !== undefined) {
    const lacks = openingsOn(document, way, demand, openings);
    if (lacks.length === 0) deadEnds.ways.push(way);
    return { lacks, drops: false };
  }
  const order = orderRemembered(document, openings, demand.first);
  const [stuck] = order.stuck;
  if (stuck === undefined) return { order };
  const lacks = droppersFor(document, circuit, stuck, order, openings, demand);
  if (lacks.length === 0) deadEnds.stuck.push(stuck);
  return { lacks, drops: true };
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

function openingsAlong(document: StillhotDocument, { edges }: SupplyPath, { forbidden }: Demand): Opening[] {
  const { byEdge } = openingsOf(document);
  const along = edges.flatMap((edge) => byEdge.get(edge) ?? []);
  return [...new Set(along)].filter(({ element }) => !forbidden.has(element));
}

/**
 * Things that take the current off one that may not break it: on the way to a load that it feeds, or to its supply. What is
 * stuck beside it is closed still, and carries the same current.
 */
function droppersFor(
  document: StillhotDocument,
  circuit: Circuit,
  stuck: Opening,
  { order }: OpeningOrder,
  openings: readonly Opening[],
  demand: Demand,
): Opening[] {
  const graph = reachGraphOf(circuit);
  const edgeOn = edgesWith(circuit, [...order.map(({ opening }) => opening), stuck]);
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
  const onTheWay = [...found].filter((it) => !openings.includes(it) && droppedBy(it) !== "nothing");
  // Where every load is off already, what is left is the current that a bank or a length of line draws by itself.
  return onTheWay.length > 0
    ? onTheWay
    : droppersOf(document, stuck).filter((it) => !openings.includes(it) && !demand.forbidden.has(it.element));
}

const loadsOf = perObject((circuit: Circuit): Separation["sources"] =>
  circuit.elementIds.flatMap((id, index): { element: ElementId; nodes: number[] }[] => {
    const it = complete(circuit.system.elements[id]!);
    if (!("kvar" in it) || (it.kvar === 0 && !("kw" in it && it.kw !== 0))) return [];
    const nodes = circuit.branches
      .filter(({ element }) => element === index)
      .flatMap(({ from, to }) => [from, to].filter((node) => node !== EARTH));
    return [{ element: id, nodes }];
  }),
);

// A binary heap: the cheapest set on top; of equal ones the one whose key comes first, so that a plan never wavers.

const isBefore = (a: Candidate, b: Candidate): boolean =>
  (compareRanks(a.rank, b.rank) || (a.key < b.key ? -1 : 1)) < 0;

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

import { isTransformer } from "../../devices";
import { MOST_LOOPS, MOST_PLACES_TRIED, MOST_ROUNDS, MOST_TURNS } from "../tolerances";
import { complete, completePoint, type Edit, edits, type StillhotDocument } from "../../document";
import { refuse, say } from "../../terms";
import type { Spot } from "../shapes";
import { type TidyBranch, type Forest, forestOf, isJoint, jointOf } from "./branches";
import { mainLineOf, type Spreading, spreadOut } from "./spread";
import { type StraightLine, tangleOf } from "./tangle";

/** Lays the drawing out anew; what is pinned stays where it is, and nothing is joined otherwise than before. */
export const tidy: Edit = (before) => {
  const places = tidyPlaces(before);
  if (Object.keys(places).length === 0) return refuse(say("tidy.nothing"));
  const change = edits.together(say("edit.tidy"), [edits.placePoints(places)])(before);
  return "refused" in change ? refuse(say("edit.isTidy")) : change;
};

/** Where every point goes that is not pinned. */
function tidyPlaces(document: StillhotDocument): Readonly<Record<string, Spot>> {
  const table = new Table(document);
  for (const root of table.forest.roots) table.lay(root);
  return Object.fromEntries([...table.places].filter(([id]) => !isJoint(id) && !table.isPinned(id)));
}

const GRID = 20;
const ISLANDS_APART = 160;

const RIGHT: Spot = { x: 1, y: 0 };
const DOWN: Spot = { x: 0, y: 1 };
const LEFT: Spot = { x: -1, y: 0 };
const UP: Spot = { x: 0, y: -1 };
const WAYS = [RIGHT, DOWN, UP, LEFT];
/** How much further off what hangs on a root may begin, where there is no room nearer. */
const STARTS = [0, 100, 200, 400];

/** The drawing while it is laid out, one tree after another. */
class Table {
  readonly forest: Forest;
  readonly places = new Map<string, Spot>();
  readonly #now: Spots;
  readonly #pinned: ReadonlySet<string>;
  readonly #laid: StraightLine[] = [];

  constructor(document: StillhotDocument) {
    this.forest = forestOf(document);
    this.#pinned = new Set(
      Object.entries(document.system.points).flatMap(([id, it]) => (completePoint(it).pinned ? [id] : [])),
    );
    this.#now = placesNow(document);
    for (const id of this.#pinned) this.places.set(id, this.#now.get(id)!);
  }

  readonly isPinned = (id: string): boolean => this.#pinned.has(id);

  /** Lays one tree, and then, from each pinned point in it, what hangs on that. */
  lay(root: TidyBranch) {
    const branches = allOf(root);
    const isFirst = root === this.forest.roots[0];
    const mayMove = !isFirst && !branches.some(({ id }) => this.isPinned(id));
    const parts = branches.filter((it) => it === root || this.isPinned(it.id));
    for (const part of parts) this.#layPart(part, mayMove);
  }

  #layPart(part: TidyBranch, mayMove: boolean) {
    const branches = allOf(part, this.isPinned);
    const byId = new Map(branches.map((it) => [it.id, it]));
    const held = branches.flatMap((it) => it.onward).filter(({ id }) => this.isPinned(id));
    const stretches = [...branches.slice(1), ...held].map((it) => it.by!);
    const ties = this.forest.ties.filter(({ a, b }) => byId.has(a) && byId.has(b));
    const own: TidyPart = { part, byId, stretches, ties, mayMove };
    const isTried = this.#pinned.size > 0 || (ties.length > 0 && branches.length <= MOST_PLACES_TRIED);
    const spots = isTried ? this.#onTheirSides(own) : this.#spread(own, this.#straightOn(own), this.#now);
    for (const [id, spot] of spots) this.places.set(id, spot);
    this.#laid.push(...stretches);
  }

  /**
   * Taps stay on the sides that they are on, unless more would lie across itself for it than where they may go anywhere.
   * What comes out is what it would come out as again: a drawing is tidied once.
   */
  #onTheirSides(own: TidyPart): Spots {
    const drawn = this.#settled(own, this.#now);
    if (drawn !== undefined && this.#tangleIn(own, drawn) === 0) return drawn;
    const free = this.#laidOut(own, new Map());
    const least = this.#tangleIn(own, free);
    const isNoWorse = (it: Spots | undefined) => it !== undefined && this.#tangleIn(own, it) <= least;
    return [drawn, this.#settled(own, free)].find(isNoWorse) ?? free;
  }

  /** Laid out with taps on the sides that they have, until that changes nothing; nothing where it always does. */
  #settled(own: TidyPart, now: Spots): Spots | undefined {
    let last = this.#laidOut(own, now);
    for (let round = 0; round < MOST_ROUNDS; round++) {
      const next = this.#laidOut(own, last);
      if ([...next].every(([id, { x, y }]) => last.get(id)!.x === x && last.get(id)!.y === y)) return next;
      last = next;
    }
    return undefined;
  }

  /** The best that can be done with taps on the sides that they are on now. */
  #laidOut(own: TidyPart, now: Spots): Spots {
    const { byId, stretches, ties } = own;
    const spread = (it: TidyTry) => this.#spread(own, it, now);
    let way = this.#straightOn(own);
    if (this.#pinned.size > 0)
      way = best(
        this.#waysOn(own, now).flatMap((along) => STARTS.map((start) => ({ ...way, along, start }))),
        (it, most) => this.#tangle(spread(it), stretches, { points: [...byId.keys()], most }),
      );
    if (ties.length <= MOST_LOOPS)
      for (const tie of ties)
        way = best(
          [way, ...between(byId, tie).map((turn) => ({ ...way, turns: new Set([...way.turns, turn]) }))],
          (it, most) => this.#tangle(spread(it), ties, { beside: stretches, most }),
        );
    return spread(way);
  }

  #spread({ part, mayMove }: TidyPart, { along, start, turns }: TidyTry, now: Spots): Spots {
    const at = (id: string) => now.get(id) ?? NOWHERE;
    const relative = spreadOut(part, { along, start, turns, isHeld: this.isPinned, now: at });
    return shifted(relative, mayMove ? this.#below(relative) : this.#originOf(part.id));
  }

  readonly #straightOn = ({ part }: TidyPart): TidyTry => ({
    along: this.#onwardFrom(part),
    start: 0,
    turns: new Set(),
  });

  /** Ways in which the line may run on, as near as can be to how it runs now; where that says nothing, straight on. */
  #waysOn(own: TidyPart, now: Spots): Spot[] {
    const { along } = this.#straightOn(own);
    const main = mainLineOf(
      own.part.onward.filter(({ id }) => !this.isPinned(id)),
      own.part,
    );
    const [from, to] = [now.get(own.part.id), now.get(main?.id ?? "")];
    const [dx, dy] = from === undefined || to === undefined ? [0, 0] : [to.x - from.x, to.y - from.y];
    return [along, ...WAYS.filter((it) => it !== along)].sort(
      (one, other) => (other.x - one.x) * dx + (other.y - one.y) * dy,
    );
  }

  /** Stretches of a part lie across each other only where something is pinned: it has room for all but its ties. */
  #tangleIn({ byId, stretches, ties }: TidyPart, spots: Spots): number {
    const points = [...byId.keys()];
    const ofTies = this.#tangle(spots, ties, { beside: stretches });
    return this.#pinned.size === 0 ? ofTies : ofTies + this.#tangle(spots, stretches, { points });
  }

  #tangle(
    spots: Spots,
    fresh: readonly StraightLine[],
    {
      points = [],
      beside = [],
      most = Infinity,
    }: { points?: readonly string[]; beside?: readonly StraightLine[]; most?: number },
  ): number {
    const places = new Map([...this.places, ...spots]);
    return tangleOf(fresh, [...this.#laid, ...beside], points, places, most);
  }

  /** A pinned point stays; the root of a tree goes onto the grid where it stands. */
  #originOf(id: string): Spot {
    const { x, y } = this.#now.get(id) ?? NOWHERE;
    return this.isPinned(id) ? { x, y } : { x: onGrid(x), y: onGrid(y) };
  }

  /** Below all that has its place. */
  #below(relative: ReadonlyMap<string, Spot>): Spot {
    const placed = [...this.places.values()];
    const left = Math.min(...placed.map(({ x }) => x));
    const bottom = Math.max(...placed.map(({ y }) => y));
    const own = [...relative.values()];
    return {
      x: onGrid(left - Math.min(...own.map(({ x }) => x))),
      y: onGrid(bottom + ISLANDS_APART - Math.min(...own.map(({ y }) => y))),
    };
  }

  /** On from where the line comes, square to the axes. */
  #onwardFrom({ id, parent }: TidyBranch): Spot {
    const from = parent === undefined ? undefined : this.places.get(parent.id);
    if (from === undefined) return RIGHT;
    const { x, y } = this.#originOf(id);
    const [dx, dy] = [x - from.x, y - from.y];
    if (Math.abs(dx) >= Math.abs(dy)) return dx < 0 ? LEFT : RIGHT;
    return dy < 0 ? UP : DOWN;
  }
}

const NOWHERE: Spot = { x: 0, y: 0 };

type Spots = ReadonlyMap<string, Spot>;

/** What is laid out at once: a root or a pinned point, and what hangs on it up to the next pinned ones. */
interface TidyPart {
  readonly part: TidyBranch;
  readonly byId: ReadonlyMap<string, TidyBranch>;
  readonly stretches: readonly StraightLine[];
  readonly ties: readonly StraightLine[];
  /** it is put below all else, wherever it stands now */
  readonly mayMove: boolean;
}

/** One way of laying out a part. */
type TidyTry = Pick<Spreading, "along" | "start" | "turns">;

/** The first one with the least tangle. */
function best(items: readonly TidyTry[], tangleOf: (item: TidyTry, most: number) => number): TidyTry {
  let least = Infinity;
  let [found] = items as [TidyTry];
  for (const it of items) {
    const tangle = tangleOf(it, least);
    if (tangle < least) [least, found] = [tangle, it];
    if (tangle === 0) break;
  }
  return found;
}

/** A branch and all behind it, up to what is held. */
function allOf(branch: TidyBranch, isHeld: (id: string) => boolean = () => false): TidyBranch[] {
  const all = [branch];
  for (let next = 0; next < all.length; next++)
    all.push(...all[next]!.onward.filter(({ id }) => !isHeld(id)));
  return all;
}

/** Spots through which the tree runs from one end of a tie to the other. */
function between(own: ReadonlyMap<string, TidyBranch>, { a, b }: StraightLine): string[] {
  const pathTo = (id: string): string[] => {
    const path: string[] = [];
    for (let it = own.get(id); it !== undefined; it = own.get(it.parent?.id ?? "")) path.push(it.id);
    return path;
  };
  const [one, other] = [pathTo(a), pathTo(b)];
  const onBoth = new Set(other);
  const shared = new Set(one.filter((id) => onBoth.has(id)).slice(1));
  return [...one, ...other].filter((id) => id !== a && id !== b && !shared.has(id)).slice(0, MOST_TURNS);
}

/** Where everything stands as drawn, the middle of a transfer switch halfway between the utility and the customer. */
function placesNow({ system }: StillhotDocument): Spots {
  const places = new Map<string, Spot>();
  for (const [id, saved] of Object.entries(system.points)) {
    const { x, y } = completePoint(saved);
    places.set(id, { x, y });
  }
  for (const [id, saved] of Object.entries(system.elements)) {
    const element = complete(saved);
    if (!("alt" in element) || isTransformer(element)) continue;
    const [from, to] = [places.get(element.from)!, places.get(element.to)!];
    places.set(jointOf(id), { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 });
  }
  return places;
}

const shifted = (spots: Spots, by: Spot): Spots =>
  new Map([...spots].map(([id, { x, y }]) => [id, { x: x + by.x, y: y + by.y }]));

const onGrid = (value: number): number => Math.round(value / GRID) * GRID + 0;

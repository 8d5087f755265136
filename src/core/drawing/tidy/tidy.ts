import { type Command, completePoint, edits, type StillhotDocument } from "../../document";
import { refuse, say } from "../../terms";
import type { Spot } from "../shapes";
import { type Branch, type Forest, forestOf, isJoint } from "./branches";
import { type Spreading, spreadOut } from "./spread";
import { type Stretch, tangleOf } from "./tangle";

/** Lays the drawing out anew; what is pinned stays where it is, and nothing is joined otherwise than before. */
export const tidy: Command = (before) => {
  const places = tidyPlaces(before);
  if (Object.keys(places).length === 0) return refuse(say("edit.nothingToTidy"));
  const change = edits.together(say("edit.tidy"), [edits.placePoints(places)])(before);
  return "refused" in change ? refuse(say("edit.isTidy")) : change;
};

/** Where every point goes that is not pinned. */
export function tidyPlaces(document: StillhotDocument): Readonly<Record<string, Spot>> {
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
/** Loops beyond this many are drawn as they come. */
const MOST_TIES = 30;
/** How many places of a loop are tried as the one where its line turns. */
const MOST_TURNS = 12;

/** The drawing while it is laid out, one tree after another. */
class Table {
  readonly forest: Forest;
  readonly places = new Map<string, Spot>();
  readonly #now: ReadonlyMap<string, Spot>;
  readonly #pinned: ReadonlySet<string>;
  readonly #laid: Stretch[] = [];

  constructor(document: StillhotDocument) {
    this.forest = forestOf(document);
    const points = Object.entries(document.system.points).map(
      ([id, saved]) => [id, completePoint(saved as never)] as const,
    );
    this.#pinned = new Set(points.filter(([, it]) => it.pinned).map(([id]) => id));
    this.#now = new Map(points.map(([id, { x, y }]) => [id, { x, y }]));
    for (const id of this.#pinned) this.places.set(id, this.#now.get(id)!);
  }

  readonly isPinned = (id: string): boolean => this.#pinned.has(id);

  /** Lays one tree, and then, from each pinned point in it, what hangs on that. */
  lay(root: Branch) {
    const branches = allOf(root);
    const isFirst = root === this.forest.roots[0];
    const mayMove = !isFirst && !branches.some(({ id }) => this.isPinned(id));
    const parts = branches.filter((it) => it === root || this.isPinned(it.id));
    for (const part of parts) this.#layPart(part, mayMove);
  }

  #layPart(part: Branch, mayMove: boolean) {
    const own = allOf(part, this.isPinned);
    const byId = new Map(own.map((it) => [it.id, it]));
    const held = own.flatMap((it) => it.onward).filter(({ id }) => this.isPinned(id));
    const stretches = [...own.slice(1), ...held].map((it) => it.by!);
    const ties = this.forest.ties.filter(({ a, b }) => byId.has(a) && byId.has(b));
    // Which side a tap is on now says nothing where several ways are tried: the second time it would be another side.
    const isTried = ties.length > 0 || this.#pinned.size > 0;
    const laidOut = ({ along, start, turns }: Attempt) => {
      const relative = spreadOut(part, {
        along,
        start,
        turns,
        isHeld: this.isPinned,
        now: isTried ? () => NOWHERE : (id) => this.#nowOf(id),
      });
      return shifted(relative, mayMove ? this.#below(relative) : this.#originOf(part.id));
    };
    let way: Attempt = { along: this.#onwardFrom(part), start: 0, turns: new Set() };
    if (this.#pinned.size > 0)
      way = best(
        [...WAYS]
          .sort((one, other) => Number(other === way.along) - Number(one === way.along))
          .flatMap((along) => STARTS.map((start) => ({ ...way, along, start }))),
        (it, most) => this.#tangle(laidOut(it), stretches, { points: [...byId.keys()], most }),
      );
    if (ties.length <= MOST_TIES)
      for (const tie of ties)
        way = best(
          [way, ...between(byId, tie).map((turn) => ({ ...way, turns: new Set([...way.turns, turn]) }))],
          (it, most) => this.#tangle(laidOut(it), ties, { beside: stretches, most }),
        );
    for (const [id, spot] of laidOut(way)) this.places.set(id, spot);
    this.#laid.push(...stretches);
  }

  #tangle(
    spots: ReadonlyMap<string, Spot>,
    fresh: readonly Stretch[],
    {
      points = [],
      beside = [],
      most,
    }: { points?: readonly string[]; beside?: readonly Stretch[]; most: number },
  ): number {
    const places = new Map([...this.places, ...spots]);
    return tangleOf(fresh, [...this.#laid, ...beside], points, places, most);
  }

  #nowOf(id: string): Spot {
    return this.#now.get(id) ?? NOWHERE;
  }

  /** A pinned point stays; the root of a tree goes onto the grid where it stands. */
  #originOf(id: string): Spot {
    const { x, y } = this.#nowOf(id);
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
  #onwardFrom({ id, parent }: Branch): Spot {
    const from = parent === undefined ? undefined : this.places.get(parent.id);
    if (from === undefined) return RIGHT;
    const { x, y } = this.#originOf(id);
    const [dx, dy] = [x - from.x, y - from.y];
    if (Math.abs(dx) >= Math.abs(dy)) return dx < 0 ? LEFT : RIGHT;
    return dy < 0 ? UP : DOWN;
  }
}

const NOWHERE: Spot = { x: 0, y: 0 };

/** One way of laying out a part. */
type Attempt = Pick<Spreading, "along" | "start" | "turns">;

/** The first one with the least tangle. */
function best(items: readonly Attempt[], tangleOf: (item: Attempt, most: number) => number): Attempt {
  let least = Infinity;
  let [found] = items as [Attempt];
  for (const it of items) {
    const tangle = tangleOf(it, least);
    if (tangle < least) [least, found] = [tangle, it];
    if (tangle === 0) break;
  }
  return found;
}

/** A branch and all behind it, up to what is held. */
function allOf(branch: Branch, isHeld: (id: string) => boolean = () => false): Branch[] {
  const all = [branch];
  for (let next = 0; next < all.length; next++)
    all.push(...all[next]!.onward.filter(({ id }) => !isHeld(id)));
  return all;
}

/** Places through which the tree runs from one end of a tie to the other. */
function between(own: ReadonlyMap<string, Branch>, { a, b }: Stretch): string[] {
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

const shifted = (spots: ReadonlyMap<string, Spot>, by: Spot): ReadonlyMap<string, Spot> =>
  new Map([...spots].map(([id, { x, y }]) => [id, { x: x + by.x, y: y + by.y }]));

const onGrid = (value: number): number => Math.round(value / GRID) * GRID + 0;

import { type CircuitElement, isConductor } from "../../devices";
import {
  besideOthers,
  complete,
  conductorsOf,
  elementsAt,
  savedElement,
  structuresOf,
  type System,
  isStation,
} from "../../document";
import { type ElementId, lettersOf, type PointId, type StructureId } from "../../terms";
import {
  clearOfLetter,
  FLAG_ROOM,
  leastTitleWidth,
  STATE_AND_LETTER,
  symbolSizeAt,
  titleLines,
} from "../labels";
import { widthOf } from "../widths";
import { type Box, type Spot } from "../shapes";
import {
  endsOfElement,
  HEAD_OVER_LINE,
  Inside,
  isAbreast,
  isBank,
  isLegs,
  LEGS_APART,
  LINE_APART,
  NEUTRAL_APART,
  type OnPlate,
  type Rooms,
  type Exit,
  spotIn,
  spreadOf,
  type Stand,
  type Uv,
  type Way,
} from "./inside";
import { crowdOn } from "./crowd";
import { devicesOn, type TreeBranch, type PlateGroup, type Tree, treeOf } from "./tree";

/** A point as it is laid out. */
export interface LaidPoint extends Spot {
  /** the way in which its conductors run through it, a unit vector */
  readonly axis: Spot;
  /** its conductors stand as far apart as the symbols on them */
  readonly isAbreast: boolean;
  /** the point by which the current comes here */
  readonly parent: string | undefined;
}

/** The way of an element on the picture; its symbol stands about `centre`, on a straight stretch. */
export interface LaidLeg {
  readonly path: readonly Spot[];
  readonly centre: Spot;
  /** it stays on its plate, and nothing behind it leaves that */
  readonly isWithin: boolean;
}

/** A pole, a pad, a vault or a station with what is on it. */
export interface Plate extends PlateGroup {
  readonly box: Box;
  readonly points: readonly PointId[];
  /** how far its line and what stands at it reach from its edge, where the line runs down */
  readonly beside: number;
  /** how many devices its one mark stands for, where it has more on it than anybody could make out */
  readonly crowd: number | undefined;
}

/** A whole drawing, laid out by the program. */
export interface Layout {
  readonly way: Way;
  readonly text: number;
  readonly wide: number;
  readonly isLow: boolean;
  readonly points: ReadonlyMap<string, LaidPoint>;
  readonly legs: ReadonlyMap<ElementId, LaidLeg>;
  readonly plates: readonly Plate[];
  /** the plate of each point that is one of a crowd */
  readonly crowded: ReadonlyMap<string, Plate>;
}

const PAD = 12;
/** Between two plates. */
const GAP = 18;
/** From the edge of a plate, where its number stands, to the line. */
const HEAD = { across: HEAD_OVER_LINE, down: 32 };
/** The line that a plate's number takes, and the height of its letters [px]. */
const TITLE = 36;
const TITLE_SIZE = 16;
const TITLE_LINE = 19.2;
/** A number is never left out, in whatever type: it has more room than its letters take. */
const TITLE_SPARE = 1.4;
/** A driven rod beside the number. */
const ROD = 24;
/** Beside the line of a plate there is room for the ring around a work place. */
const SIDE = 38;
/**
 * Where the line runs down, a flag stands beside the number, is so long, and takes so much more height than that: for all of
 * what is to be done, or, with letters so large beside the symbols that all else gives way too, for a part of that [px].
 */
const FLAG_WIDTH = 310;
const FLAG_BESIDE = { all: 48, least: 28, leastFrom: 3 };
/** The ring around a work place, from its middle [px]. */
const RING = 22;
/** From one ring to another, with the state of the line between them [px]. */
const RINGS_APART = 104;
/** A line beside or under another circuit, with the states of both on it [px]. */
const BESIDE_ANOTHER = 130;
const BYPASSED = 200;
/** Room for the two ends of a parted conductor, or for phases that go over to where others lie. */
const BREAK = 40;
/** So many places beside the others are tried for a line that closes a loop. */
const MOST_ASIDE = 8;
const TREES_APART = 60;

const flagBeside = (text: number): number =>
  text < FLAG_BESIDE.leastFrom ? FLAG_BESIDE.all : FLAG_BESIDE.least;

/**
 * Lays a drawing out: plates in the order in which the current comes to them, the line through them straight, what hangs on
 * it square to it, side lines below the line that they leave.
 *
 * @param worked points at which work is done: over their plates is room for a flag
 */
export function layOut(system: System, rooms: Rooms, worked: ReadonlySet<string>): Layout {
  const tree = treeOf(system);
  const table = new Table(system, rooms, worked, tree);
  let end = 0;
  for (const root of tree.roots) {
    if (table.isLaid(root)) continue;
    const block = table.block(root);
    table.place(block, 0, end - block.top);
    end += block.bottom - block.top + TREES_APART;
  }
  // What closes a loop runs past where they end.
  table.endAlike();
  for (const id of tree.ties) table.tie(id);
  for (const id of table.ties) table.tie(id);
  table.takePlaces();
  return table.layout();
}

/** A plate and all that is laid out behind it, about the point where the line comes in. */
interface Block {
  readonly group: PlateGroup;
  readonly inside: OnPlate;
  /** the plate itself */
  readonly plate: {
    readonly left: number;
    readonly right: number;
    readonly top: number;
    readonly bottom: number;
  };
  /** the plate and all behind it */
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  /** lines that the tree does not follow and that have one of their ends here */
  readonly tied: readonly ElementId[];
  readonly next: readonly {
    readonly block: Block;
    readonly u: number;
    readonly v: number;
    readonly exit: Exit;
    readonly path: readonly Uv[];
    /** where its symbol, a break or a swap of phases stands on it */
    readonly centre: Uv;
  }[];
}

class Table {
  readonly #system: System;
  readonly #rooms: Rooms;
  readonly #worked: ReadonlySet<string>;
  readonly #tree: Tree;
  /** points from which a line that the tree does not follow leads to another plate */
  readonly #tied = new Map<string, ElementId>();
  /** crowds that have their plate */
  readonly #gathered = new Set<PlateGroup>();
  /** lines that come to a crowd which has its plate already */
  readonly ties: ElementId[] = [];
  readonly #stands = new Map<string, Stand>();
  readonly #legs = new Map<ElementId, { path: readonly Uv[]; centre: Uv; isWithin: boolean }>();
  readonly #plates: {
    group: PlateGroup;
    left: number;
    right: number;
    top: number;
    bottom: number;
    points: string[];
  }[] = [];

  constructor(system: System, rooms: Rooms, worked: ReadonlySet<string>, tree: Tree) {
    this.#system = system;
    this.#rooms = rooms;
    this.#worked = worked;
    this.#tree = tree;
    for (const id of tree.ties) {
      const ends = endsOfElement(this.#elementOf(id));
      if (new Set(ends.map((it) => tree.branches.get(it)!.plate)).size > 1)
        for (const end of ends) this.#tied.set(end, id);
    }
  }

  /** Whether a place is one of a crowd that has its plate. */
  isLaid = ({ plate }: TreeBranch): boolean => this.#gathered.has(plate);

  /** Blocks are made from the far ends inward: a line may be longer than calls can be deep. */
  block(root: TreeBranch): Block {
    const blocks = new Map<TreeBranch, Block>();
    const stack: { branch: TreeBranch; inside?: OnPlate }[] = [{ branch: root }];
    for (let top; (top = stack.at(-1)) !== undefined;) {
      if (top.inside === undefined) {
        top.inside = this.#inside(top.branch);
        for (const { child } of top.inside.exits) stack.push({ branch: child });
        continue;
      }
      stack.pop();
      blocks.set(top.branch, this.#arranged(top.branch, top.inside, blocks));
    }
    return blocks.get(root)!;
  }

  #inside(entry: TreeBranch): OnPlate {
    const on = this.#tree.crowds.get(entry.plate);
    if (on !== undefined) this.#gathered.add(entry.plate);
    const inside = on === undefined ? this.#laidOn(entry) : crowdOn(on, entry, this.#rooms);
    if (this.#gathered.size === 0) return inside;
    const again = inside.exits.filter(({ child }) => this.isLaid(child));
    this.ties.push(...again.map(({ child }) => child.by!));
    return again.length === 0
      ? inside
      : { ...inside, exits: inside.exits.filter((it) => !again.includes(it)) };
  }

  #laidOn(entry: TreeBranch): Inside {
    const inside = new Inside(this.#system, this.#rooms, entry, this.#worked, this.#tied);
    for (const id of this.#tiesOn(inside)) {
      const [from, to] = endsOfElement(this.#elementOf(id));
      inside.tie(id, from!, to!);
    }
    return inside;
  }

  /** Elements between two places of one plate along which the tree does not run. */
  #tiesOn({ stands, legs }: OnPlate): readonly ElementId[] {
    const drawn = new Set(legs.map(({ id }) => id));
    const found = new Set<ElementId>();
    for (const id of this.#elementsAt(stands.keys())) {
      const element = this.#elementOf(id);
      if (drawn.has(id) || !("from" in element)) continue;
      if (stands.has(element.from) && stands.has(element.to)) found.add(id);
    }
    return [...found];
  }

  *#elementsAt(points: Iterable<string>): Iterable<ElementId> {
    const at = elementsAt(this.#system);
    for (const point of points) yield* (at.get(point) ?? []) as ElementId[];
  }

  #arranged(entry: TreeBranch, inside: OnPlate, blocks: ReadonlyMap<TreeBranch, Block>): Block {
    const { way, text } = this.#rooms;
    const hasFlag = [...inside.stands.keys()].some((it) => this.#worked.has(it));
    const head =
      way === "across"
        ? inside.left
        : Math.min(inside.left, 0) - (HEAD.down + (hasFlag ? flagBeside(text) : 0)) * text;
    const plate = {
      left: head,
      right: Math.max(inside.right + PAD, way === "across" ? this.#titleWidth(entry.plate) + head : 0),
      top:
        way === "across"
          ? Math.min(0, inside.top) -
            this.#overLine(entry, inside) -
            (TITLE + (this.#titleLines(entry.plate).length - 1) * TITLE_LINE) * text -
            (hasFlag ? RING * (text - 1) : 0)
          : -this.#side + Math.min(0, inside.top),
      bottom: Math.max(
        inside.bottom + PAD,
        way === "across" ? SIDE : this.#titleWidth(entry.plate) + this.#side,
        hasFlag && way === "down" ? FLAG_WIDTH * text + this.#titleWidth(entry.plate) : 0,
      ),
    };
    const exits = [...inside.exits].sort(
      (a, b) => a.v - b.v || sizeOf(blocks.get(a.child)!) - sizeOf(blocks.get(b.child)!),
    );
    return way === "across"
      ? this.#beside(entry, inside, plate, exits, blocks, hasFlag)
      : this.#below(entry, inside, plate, exits, blocks);
  }

  /** What is behind a plate stands to its right, one side line below the other. */
  #beside(
    { plate: group }: TreeBranch,
    inside: OnPlate,
    plate: Block["plate"],
    exits: readonly Exit[],
    blocks: ReadonlyMap<TreeBranch, Block>,
    hasFlag: boolean,
  ): Block {
    const next: Block["next"][number][] = [];
    let [right, top, bottom] = [
      plate.right,
      plate.top - (hasFlag ? FLAG_ROOM * this.#rooms.text : 0),
      plate.bottom,
    ];
    let below = -Infinity;
    const tied = this.#tiedAt(inside);
    // The first one goes straight on; of the others the lowest turns down first, after what closes a loop.
    const lanes = this.#lanes(exits.slice(1).reverse(), plate.right + GAP / 2 + this.#roomOf(tied));
    exits.forEach((exit, nth) => {
      const block = blocks.get(exit.child)!;
      // What closes a loop comes back between the two rows.
      const between = this.#roomOf(closing(tied, block.tied));
      const edge = lanes.end + GAP / 2 + this.#breakOf(exit.child.by!);
      const u = Math.max(edge - block.plate.left, exit.u + this.#leastSpan(exit));
      const v = Math.max(exit.v, below + GAP + between - block.top);
      const turn = lanes.turns[exits.length - 1 - nth] ?? 0;
      const path = v === exit.v ? [exit, { u, v }] : [exit, { u: turn, v: exit.v }, { u: turn, v }, { u, v }];
      next.push({ block, u, v, ...this.#led(exit, path, exits, lanes.end, u + block.plate.left) });
      below = v + block.bottom;
      right = Math.max(right, u + block.right);
      top = Math.min(top, v + block.top);
      bottom = Math.max(bottom, below);
    });
    return { group, inside, plate, left: plate.left, right, top, bottom, tied, next };
  }

  /** What is behind a plate stands under it, short side lines first, and the longer ones run past these. */
  #below(
    { plate: group }: TreeBranch,
    inside: OnPlate,
    plate: Block["plate"],
    exits: readonly Exit[],
    blocks: ReadonlyMap<TreeBranch, Block>,
  ): Block {
    const next: Block["next"][number][] = [];
    const blockOf = ({ child }: Exit) => blocks.get(child)!;
    // Lines would cross: of these the outermost is straight on, and what is nearer the line turns before it. A lone plate
    // at the end of the line comes first all the same: the line past all the others would take too much of a phone.
    const isEnd = (exit: Exit) => exit.v === 0 && blockOf(exit).next.length === 0;
    const inOrder = [...exits].sort(
      (a, b) => Number(isEnd(b)) - Number(isEnd(a)) || b.v - a.v || sizeOf(blockOf(a)) - sizeOf(blockOf(b)),
    );
    let [right, top, bottom] = [plate.right, plate.top, plate.bottom];
    const isStraight = inOrder[0]?.v === 0;
    const turning = isStraight ? inOrder.slice(1) : inOrder;
    const lanes = this.#lanes(turning.toReversed(), plate.right + GAP / 2);
    const turns = lanes.turns.toReversed();
    let edge = lanes.end - GAP / 2;
    let passed = plate.top;
    inOrder.forEach((exit, nth) => {
      const block = blockOf(exit);
      // Straight on it keeps the places of all that runs through its ends.
      const reach = nth > 0 || exit.v !== 0 ? [] : [exit.from, exit.child.id].map((it) => this.#reachAt(it));
      const half = Math.max(
        this.#halfOf(exit.child.by!),
        ...reach.map((it) => it * symbolSizeAt(this.#rooms.text)),
      );
      // What comes back to its plate from beside others comes between these and the plate, and no higher; its neutral and
      // what else is lower runs beside the number.
      const above = GAP + this.#breakOf(exit.child.by!) + (nth === 0 ? 0 : this.#outermostOf(exit.child.by!));
      const u = Math.max(edge + above - block.left, exit.u + this.#leastSpan(exit));
      const turn = turns[isStraight ? nth - 1 : nth] ?? 0;
      const lane = passed - half;
      const back = u + block.plate.left - GAP / 2;
      const path =
        nth === 0
          ? exit.v === 0
            ? [exit, { u, v: 0 }]
            : [exit, { u: turn, v: exit.v }, { u: turn, v: 0 }, { u, v: 0 }]
          : [
              exit,
              { u: turn, v: exit.v },
              { u: turn, v: lane },
              { u: back, v: lane },
              { u: back, v: 0 },
              { u, v: 0 },
            ];
      next.push({ block, u, v: 0, ...this.#led(exit, path, exits, lanes.end, u + block.plate.left) });
      edge = u + block.right;
      right = Math.max(right, edge);
      passed = Math.min(nth === 0 ? Math.min(passed, -half) : lane - half, block.top);
      top = Math.min(top, passed);
      bottom = Math.max(bottom, block.bottom);
    });
    return { group, inside, plate, left: plate.left, right, top, bottom, tied: [], next };
  }

  #tiedAt({ stands }: OnPlate): ElementId[] {
    return [...stands.keys()].flatMap((it) => this.#tied.get(it) ?? []);
  }

  #roomOf(lines: readonly ElementId[]): number {
    return lines.reduce((sum, id) => sum + 2 * this.#halfOf(id), 0);
  }

  /**
   * The way of a line to its next plate and where its middle is.
   *
   * @param before from where on it is clear of its own plate and of what turns beside that
   * @param behind the edge of the next plate
   */
  #led(
    exit: Exit,
    given: readonly Uv[],
    exits: readonly Exit[],
    before: number,
    behind: number,
  ): Pick<Block["next"][number], "exit" | "path" | "centre"> {
    const path = given.map(({ u, v }) => ({ u, v }));
    // Where another line leaves from the same place, the first stretch is that one's too.
    const isShared = exits.some((it) => it !== exit && it.from === exit.from);
    if (this.#breakOf(exit.child.by!) === 0)
      return { exit, path, centre: middleOf(isShared && path.length > 2 ? path.slice(1) : path) };
    // On a plate its ends would lie on what hangs there.
    const [start, end] = [path[0]!, path.at(-1)!];
    const clear = [
      ...(path.length === 2 ? [{ u: before, v: start.v }] : path.slice(1, -1)),
      { u: behind, v: end.v },
    ];
    return { exit, path, centre: middleOf(clear) };
  }

  /** How long a line is at least: its letters stand beside its state, and rings around its two ends apart. */
  #leastSpan({ from, child }: Exit): number {
    const { text } = this.#rooms;
    const element = this.#elementOf(child.by!);
    const hasLetters = "phases" in element && lettersOf(element.phases).length > 1 && !isLegs(element.phases);
    const letters = hasLetters ? 2 * (clearOfLetter(text) + STATE_AND_LETTER * text) : 0;
    const hasAnother = besideOthers(this.#system).some(
      (id) => (savedElement(this.#system.elements, id) as { span?: string }).span === child.by,
    );
    const another = hasAnother ? BESIDE_ANOTHER * text : 0;
    return Math.max(
      letters,
      another,
      this.#worked.has(from) && this.#worked.has(child.id) ? RINGS_APART * text : 0,
    );
  }

  /** Where lines that leave a plate turn, side by side, each with room for all its conductors. */
  #lanes(exits: readonly Exit[], from: number): { readonly turns: readonly number[]; readonly end: number } {
    let end = from;
    const turns = exits.map(({ child }) => {
      const half = this.#halfOf(child.by!);
      const turn = end + half;
      end = turn + half;
      return turn;
    });
    return { turns, end };
  }

  #elementOf(id: string): CircuitElement {
    return complete(savedElement(this.#system.elements, id)!);
  }

  /** From the middle of a line to the middle between it and another line beside it. */
  #halfOf(id: ElementId): number {
    const element = this.#elementOf(id);
    const hasNeutral = "neutral" in element && element.neutral && !isLegs(element.phases);
    const beyond = hasNeutral ? NEUTRAL_APART : LINE_APART / 2;
    return this.#outermostOf(id) + beyond * symbolSizeAt(this.#rooms.text);
  }

  /** A parted conductor is seen to be so between two plates, and swapped phases too: on one of them its far end may lie on what hangs there. */
  #breakOf(id: ElementId): number {
    const element = this.#elementOf(id);
    const isParted = "parted" in element && element.parted !== "";
    const isSwapped = isConductor(element) && element.toPhases !== "";
    return isParted || isSwapped ? BREAK * symbolSizeAt(this.#rooms.text) : 0;
  }

  /** From the middle of a line to the outermost of its phases. */
  #outermostOf(id: ElementId): number {
    const element = this.#elementOf(id);
    const { length } = "phases" in element ? lettersOf(element.phases) : "A";
    return ((length - 1) / 2) * LINE_APART * symbolSizeAt(this.#rooms.text);
  }

  /** From the line of a plate, which may have more conductors at its other end or behind a device, to what is written over it. */
  #overLine({ parent }: TreeBranch, { stands, exits }: OnPlate): number {
    const onLine = [...stands].filter(([, { v }]) => v === 0).map(([point]) => point);
    const beyond = exits.filter(({ v }) => v === 0).map(({ child }) => child.id);
    const along = [...onLine, ...beyond, ...(parent === undefined ? [] : [parent.id])];
    const reach = Math.max(...along.map((point) => this.#reachAt(point)));
    return Math.max(HEAD.across, 8 + (reach + 4) * symbolSizeAt(this.#rooms.text));
  }

  #reachAt(point: string): number {
    const letters = conductorsOf(this.#system).get(point) ?? [];
    const phases = letters.filter((it) => it !== "N");
    if (isLegs(phases.join(""))) return LEGS_APART / 2;
    return ((phases.length - 1) / 2) * LINE_APART + (phases.length < letters.length ? NEUTRAL_APART : 0);
  }

  /** From the line of a plate to its side: the neutral of a line of one phase runs on the plate too. */
  get #side(): number {
    return Math.max(SIDE, (NEUTRAL_APART + 9) * symbolSizeAt(this.#rooms.text));
  }

  #titleLines(group: PlateGroup): readonly string[] {
    const { way, text } = this.#rooms;
    const lines = titleLines(group, isStation(group), way, text);
    return lines.length === 0 ? [""] : lines;
  }

  #titleWidth = (group: PlateGroup): number => {
    const { text } = this.#rooms;
    const written = Math.max(...this.#titleLines(group).map((it) => widthOf(it, TITLE_SIZE)));
    const whole = 12 + ROD * symbolSizeAt(text) + (12 + written * TITLE_SPARE) * text;
    return isStation(group) ? whole : Math.max(whole, leastTitleWidth(group.number, text));
  };

  place(root: Block, u0: number, v0: number) {
    const stack = [{ block: root, u: u0, v: v0 }];
    for (let at; (at = stack.pop()) !== undefined;) {
      const { block, u, v } = at;
      const moved = (it: Uv): Uv => ({ u: it.u + u, v: it.v + v });
      for (const [id, stand] of block.inside.stands) this.#stands.set(id, { ...stand, ...moved(stand) });
      for (const { id, path, centre, leadsOn } of block.inside.legs)
        this.#legs.set(id, { path: path.map(moved), centre: moved(centre), isWithin: leadsOn !== true });
      const { left, right, top, bottom } = block.plate;
      this.#plates.push({
        group: block.group,
        left: left + u,
        right: right + u,
        top: top + v,
        bottom: bottom + v,
        points: [...block.inside.stands.keys()],
      });
      for (const { block: behind, u: along, v: across, exit, path, centre } of block.next) {
        this.#legs.set(exit.child.by!, { path: path.map(moved), centre: moved(centre), isWithin: false });
        stack.push({ block: behind, u: u + along, v: v + across });
      }
    }
  }

  /** An element between two plates that are joined already: the clearest of a few ways. */
  tie(id: ElementId) {
    if (this.#legs.has(id)) return;
    const [from, to] = endsOfElement(this.#elementOf(id));
    const [a, b] = [this.#stands.get(from!), this.#stands.get(to!)];
    if (a === undefined || b === undefined || (a.u === b.u && a.v === b.v)) return;
    const path = this.#clearest(id, this.#waysBetween(from!, to!, this.#halfOf(id)), new Set([from!, to!]));
    this.#legs.set(id, { path, centre: middleOf(path), isWithin: false });
  }

  /** Plates that a person placed go there, and what runs between plates is led anew. */
  takePlaces() {
    const structures = structuresOf(this.#system);
    const { way } = this.#rooms;
    const shifts = new Map<string, Uv>();
    for (const plate of this.#plates) {
      const structure = structures.get(plate.group.id as StructureId);
      if (structure === undefined || structure.isDerived) continue;
      const { x, y } = structure;
      if (x === undefined && y === undefined) continue;
      const to = way === "across" ? { u: x ?? 0, v: y ?? 0 } : { u: y ?? 0, v: x ?? 0 };
      const by = { u: to.u - plate.left, v: to.v - plate.top };
      plate.left += by.u;
      plate.right += by.u;
      plate.top += by.v;
      plate.bottom += by.v;
      for (const point of plate.points) shifts.set(point, by);
    }
    if (shifts.size === 0) return;
    const none = { u: 0, v: 0 };
    const moved = (it: Uv, by: Uv): Uv => ({ u: it.u + by.u, v: it.v + by.v });
    for (const [id, stand] of this.#stands)
      this.#stands.set(id, { ...stand, ...moved(stand, shifts.get(id) ?? none) });
    const led: ElementId[] = [];
    for (const [id, { path, centre, isWithin }] of this.#legs) {
      const ends = endsOfElement(this.#elementOf(id));
      const bys = new Set(ends.map((it) => shifts.get(it) ?? none));
      const [by] = bys;
      if (bys.size > 1) led.push(id);
      else
        this.#legs.set(id, { path: path.map((it) => moved(it, by!)), centre: moved(centre, by!), isWithin });
    }
    for (const id of led) this.#legs.delete(id);
    for (const id of led) this.tie(id);
  }

  #plateOf(point: string) {
    return this.#plates.find(({ points }) => points.includes(point))!;
  }

  *#waysBetween(from: string, to: string, half: number): Iterable<readonly Uv[]> {
    const [a, b] = [this.#stands.get(from)!, this.#stands.get(to)!];
    const isForward = a.u <= b.u;
    const [one, other] = isForward ? [a, b] : [b, a];
    const turned = (path: readonly Uv[]) => (isForward ? path : [...path].reverse());
    const [before, after] = [this.#plateOf(isForward ? from : to), this.#plateOf(isForward ? to : from)];
    if (one.v === other.v) yield turned([one, other]);
    const right = Math.max(before.right, after.right) + GAP;
    const bottom = Math.max(...this.#plates.map((it) => it.bottom)) + GAP;
    const farRight = Math.max(...this.#plates.map((it) => it.right)) + GAP;
    for (const u of [after.left - GAP / 2, before.right + GAP / 2])
      yield turned([one, { u, v: one.v }, { u, v: other.v }, other]);
    for (const u of [right, farRight]) yield turned([one, { u, v: one.v }, { u, v: other.v }, other]);
    const edges = [before.right + GAP / 2 + half, before.right + GAP / 2];
    const far = after.right + GAP / 2;
    const [upper, lower] = before.top < after.top ? [before, after] : [after, before];
    const between = upper.bottom < lower.top ? [lower.top - GAP / 2 - half, lower.top - GAP / 2] : [];
    // Half of what is between two rows: at the edge of the lower one it would run through its numbers.
    const under = Math.max(before.bottom, after.bottom) + GAP / 2;
    for (const v of [...between, under + half, under, bottom])
      for (const end of [far, after.left - GAP / 2])
        for (const edge of edges)
          yield turned([
            one,
            { u: edge, v: one.v },
            { u: edge, v },
            { u: end, v },
            { u: end, v: other.v },
            other,
          ]);
    // Where other lines turn there, beside these.
    for (let nth = 1; nth <= MOST_ASIDE; nth++)
      for (const u of [after.left - GAP / 2 - nth * half, before.right + GAP / 2 + nth * half])
        yield turned([one, { u, v: one.v }, { u, v: other.v }, other]);
  }

  #clearest(id: ElementId, ways: Iterable<readonly Uv[]>, ends: ReadonlySet<string>): readonly Uv[] {
    const half = this.#halfOf(id);
    const own = new Set([...ends].map((it) => this.#plateOf(it)));
    const size = symbolSizeAt(this.#rooms.text);
    const others = [...this.#legs].flatMap(([other, { path }]) => {
      const element = this.#elementOf(other);
      const points = endsOfElement(element);
      // Where one ends and the other begins, outer conductors reach further; not where they are joined.
      const isJoined = points.some((it) => ends.has(it));
      const hanging = spreadOf(element, this.#rooms.text) + (LINE_APART / 2) * size;
      return stretchesOf(path).map((stretch) => {
        const axis = stretch[0].v === stretch[1].v ? "u" : "v";
        const through = points.filter((it) => this.#stands.get(it)!.axis === axis);
        const along = Math.max(0, ...through.map((it) => this.#reachAt(it))) * size;
        const apart = half + Math.max(this.#halfOf(other), along, axis === "v" ? hanging : 0);
        return { stretch, apart, beyond: isJoined ? 0 : -apart };
      });
    });
    let best: readonly Uv[] = [];
    let least = Infinity;
    for (const way of ways) {
      let tangle = lengthOf(way) / 1e5;
      for (const plate of this.#plates)
        if (!own.has(plate)) for (const stretch of stretchesOf(way)) if (meets(stretch, plate)) tangle += 3;
      for (const { stretch, apart, beyond } of others)
        for (const one of stretchesOf(way))
          tangle += liesBeside(one, stretch, apart, beyond) ? ON_ANOTHER : crossing(one, stretch);
      if (tangle < least) [least, best] = [tangle, way];
      if (tangle < 1) break;
    }
    return best;
  }

  /** Whether something stands at a point conductor by conductor; behind the units of a bank these come together. */
  #standAbreast(point: string): boolean {
    for (const id of this.#elementsAt([point])) {
      const element = this.#elementOf(id);
      if (isAbreast(element) && !(isBank(element) && (element as { to: string }).to === point)) return true;
    }
    return false;
  }

  /** Plates one below the other end alike, as the lines of a list do. */
  endAlike() {
    if (this.#rooms.way === "across") return;
    const bottom = Math.max(...this.#plates.map((it) => it.bottom));
    for (const plate of this.#plates)
      if (plate.bottom < bottom && plate.top > -2 * this.#side - BYPASSED) plate.bottom = bottom;
  }

  layout(): Layout {
    const { way } = this.#rooms;
    const { branches, crowds } = this.#tree;
    this.endAlike();
    const spot = (it: Uv) => spotIn(way, it);
    const plates = this.#plates.map(({ group, left, right, top, bottom, points }): Plate => {
      const [a, b] = [spot({ u: left, v: top }), spot({ u: right, v: bottom })];
      const on = crowds.get(group);
      return {
        ...group,
        points: points as PointId[],
        beside: this.#stands.get(points[0]!)!.v - top + 26,
        box: { left: a.x, top: a.y, right: b.x, bottom: b.y },
        crowd: on === undefined ? undefined : devicesOn(on),
      };
    });
    const crowded = plates
      .filter(({ crowd }) => crowd !== undefined)
      .flatMap((it) => it.points.map((id) => [id, it] as const));
    return {
      way,
      text: this.#rooms.text,
      wide: this.#rooms.wide,
      isLow: this.#rooms.isLow,
      points: new Map(
        [...this.#stands].map(([id, { u, v, axis }]) => [
          id,
          {
            ...spot({ u, v }),
            parent: branches.get(id)!.parent?.id,
            axis: spot(axis === "u" ? { u: 1, v: 0 } : { u: 0, v: 1 }),
            isAbreast: axis === "v" && this.#standAbreast(id),
          },
        ]),
      ),
      legs: new Map(
        [...this.#legs].map(([id, { path, centre, isWithin }]) => [
          id,
          { path: path.map(spot), centre: spot(centre), isWithin },
        ]),
      ),
      plates,
      crowded: new Map(crowded),
    };
  }
}

/** Which of the lines that had one end before have their other one among those that come; the others wait on. */
function closing(waiting: ElementId[], come: readonly ElementId[]): readonly ElementId[] {
  if (come.length === 0) return [];
  const closed = come.filter((it) => waiting.includes(it));
  const open = [...waiting, ...come].filter((it) => !closed.includes(it));
  waiting.splice(0, Infinity, ...open);
  return closed;
}

const sizeOf = ({ right, left, bottom, top }: Block): number => (right - left) * (bottom - top);

/** The middle of the longest stretch. */
function middleOf(path: readonly Uv[]): Uv {
  let [longest, middle] = [-1, path[0]!];
  for (const [a, b] of stretchesOf(path)) {
    const length = Math.abs(b.u - a.u) + Math.abs(b.v - a.v);
    if (length > longest) [longest, middle] = [length, { u: (a.u + b.u) / 2, v: (a.v + b.v) / 2 }];
  }
  return middle;
}

type UvLine = readonly [Uv, Uv];

const stretchesOf = (path: readonly Uv[]): UvLine[] => path.slice(1).map((it, k) => [path[k]!, it]);

const lengthOf = (path: readonly Uv[]): number =>
  stretchesOf(path).reduce((sum, [a, b]) => sum + Math.abs(b.u - a.u) + Math.abs(b.v - a.v), 0);

const meets = ([a, b]: UvLine, { left, right, top, bottom }: Block["plate"]): boolean =>
  Math.min(a.u, b.u) < right &&
  Math.max(a.u, b.u) > left &&
  Math.min(a.v, b.v) < bottom &&
  Math.max(a.v, b.v) > top;

/** A stretch that lies on another is worse than so many crossings: they would be read as one line. */
const ON_ANOTHER = 1000;

/** Whether two stretches that are level or upright run side by side so near that their conductors lie on each other. */
function liesBeside([a, b]: UvLine, [c, d]: UvLine, apart: number, beyond: number): boolean {
  const isLevel = a.v === b.v;
  if (isLevel !== (c.v === d.v)) return false;
  const [along, beside] = isLevel ? (["u", "v"] as const) : (["v", "u"] as const);
  const shared =
    Math.min(Math.max(a[along], b[along]), Math.max(c[along], d[along])) -
    Math.max(Math.min(a[along], b[along]), Math.min(c[along], d[along]));
  return shared > beyond && Math.abs(a[beside] - c[beside]) < apart;
}

/** Whether two stretches that are level or upright cross. */
function crossing([a, b]: UvLine, [c, d]: UvLine): number {
  const [left, right] = [
    Math.max(Math.min(a.u, b.u), Math.min(c.u, d.u)),
    Math.min(Math.max(a.u, b.u), Math.max(c.u, d.u)),
  ];
  const [top, bottom] = [
    Math.max(Math.min(a.v, b.v), Math.min(c.v, d.v)),
    Math.min(Math.max(a.v, b.v), Math.max(c.v, d.v)),
  ];
  if (left > right || top > bottom) return 0;
  const isAtAnEnd = [a, b].some((one) => [c, d].some((other) => one.u === other.u && one.v === other.v));
  return isAtAnEnd ? 0 : 1;
}

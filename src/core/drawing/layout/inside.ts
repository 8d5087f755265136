import {
  type CircuitElement,
  deviceOf,
  isConductor,
  isCustomers,
  isLine,
  isLoad,
  isSupply,
  isTransformer,
  standsAbreast,
  standsInLine,
} from "../../devices";
import { complete, conductorsOf, type System } from "../../document";
import { type ElementId, lettersOf } from "../../terms";
import type { Spot } from "../shapes";
import { isNamed, isTightAt, symbolSizeAt } from "../labels";
import type { TreeBranch } from "./tree";

/** Which way the line runs on the picture; what hangs on it runs square to that. */
export type Way = "across" | "down";

/** Room that symbols and what is written at them need; `u` runs along the line, `v` along what hangs on it. */
export interface Rooms {
  readonly way: Way;
  /** how large what is written stands beside the symbols: 1 where a unit of the drawing is a pixel of its letters */
  readonly text: number;
  /** how much more room it has than it needs */
  readonly wide: number;
  /** no line is kept for it under symbols */
  readonly isLow: boolean;
  /** width of the longest line that is written at an element [units] */
  label(id: ElementId): number;
}

/** Where a point stands, and along which of the two ways its conductors run through it. */
export interface Stand {
  readonly u: number;
  readonly v: number;
  readonly axis: "u" | "v";
}

/** The way of an element from its first point on; its symbol stands in the middle of the last stretch but `lead`. */
export interface Leg {
  readonly id: ElementId;
  /** the point that it starts from, and the one that it leads to */
  readonly from: string;
  readonly to: string | undefined;
  readonly path: readonly Uv[];
  readonly centre: Uv;
  /** a line to another plate leaves somewhere behind it */
  readonly leadsOn?: boolean;
}

/** A spot along the line and square to it, in units of the drawing. */
export interface Uv {
  readonly u: number;
  readonly v: number;
}

/** Where a line leaves a plate for the next one. */
export interface Exit extends Uv {
  readonly from: string;
  readonly child: TreeBranch;
}

/** Room for a symbol along its conductor [units]. */
export const SYMBOL_LENGTH = 40;
/** From a point to the symbol of what hangs there, and from the line: the ring around a work place fits between. */
const LEAD = 14;
const LEAD_FROM_LINE = 30;
const LEAD_TO_LINE = 26;
/** From the outermost conductor of a line to a symbol, or to another line, under it: a bridge over it has room. */
const UNDER_LINE = 8;
/** Conductors of what hangs on a line stand so far apart that each has a symbol of its own. */
export const HANGING_APART = 40;
/** How much wider than closed stands an open blade that is not the only one of its device. */
const SWING = 12;
/** Two lines of a label [px]. */
const TWO_LINES = 40;
/** From the middle of a symbol to a badge under what is written at it [px]. */
const UNDER_LABEL = 33;
/** Room before a symbol: where the line runs down, for a badge [px]. */
const BEFORE = { across: 28, down: 32, tight: 27 };
/** From the outermost phase of a device in the line to beyond the neutral that passes it, and what is clear there in any case. */
const NEUTRAL_PAST = 34;
const LEAST_SIDE = 38;
/** From the middle of a symbol to its widest side. */
const HALF_ACROSS = 18;
/** From a transfer switch to its third end; where symbols are large, so many lines of the one clear of those of the other. */
const THIRD_END = 110;
const LINES_TO_THIRD = 2.5;
/** Between all else on a plate and the line of a third end [px]. */
const UNDER_OTHERS = 30;
/** Conductors of a line side by side. */
export const LINE_APART = 14;
/** The two legs of a service side by side. */
export const LEGS_APART = 10;
/** From the outermost of them to the neutral. */
export const NEUTRAL_APART = 13;
/** Over the line of a plate so much is clear in any case. */
export const HEAD_OVER_LINE = 40;
/** From the ends of what hangs there to a way that passes under them, with room for a state between. */
const UNDER_ENDS = 24;
/** The stretch of a way around on which its symbol stands is at least so long. */
const LEAST_TIE = 60;
/** Over the line is room for a second way around a device. */
const BYPASS = 52;

/** What is on one plate, about the point where the line comes in, and how far all of it reaches. */
export interface OnPlate {
  readonly stands: ReadonlyMap<string, Stand>;
  readonly legs: readonly Leg[];
  readonly exits: readonly Exit[];
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** What is on one plate, laid out thing by thing. */
export class Inside implements OnPlate {
  readonly stands = new Map<string, Stand>();
  readonly legs: Leg[] = [];
  readonly exits: Exit[] = [];
  /** how far all of it reaches */
  left = 0;
  right = 0;
  top = 0;
  bottom = 0;
  readonly #system: System;
  readonly #rooms: Rooms;
  readonly #worked: ReadonlySet<string>;
  readonly #tied: ReadonlyMap<string, ElementId>;

  /** @param tied points from which a line leaves that the tree does not follow, each with that */
  constructor(
    system: System,
    rooms: Rooms,
    entry: TreeBranch,
    worked: ReadonlySet<string>,
    tied: ReadonlyMap<string, ElementId>,
  ) {
    this.#system = system;
    this.#rooms = rooms;
    this.#worked = worked;
    this.#tied = tied;
    this.left = -this.#before;
    this.#line(entry, 0);
    this.#leadUnder();
  }

  /** An element between two places of this plate that are joined already: around what stands between them. */
  tie(id: ElementId, from: string, to: string) {
    const [a, b] = [this.stands.get(from)!, this.stands.get(to)!];
    if (a.axis === "u" && b.axis === "u") {
      const v = Math.min(this.top, 0) - BYPASS;
      const reach = a.u === b.u ? BYPASS : 0;
      const path = [
        a,
        { u: a.u, v },
        { u: b.u + reach, v },
        ...(reach > 0 ? [{ u: b.u + reach, v: b.v }] : []),
        b,
      ];
      this.legs.push({ id, from, to, path, centre: { u: (a.u + b.u + reach) / 2, v } });
      this.top = v - 24 - LINE_APART * symbolSizeAt(this.#rooms.text);
      this.right = Math.max(this.right, b.u + reach + 8);
      return;
    }
    // It leaves the one further on away from the other, and comes back to that.
    const [one, other, isTurned] = a.u < b.u ? [b, a, true] : [a, b, false];
    const u = this.right + this.#before;
    const size = symbolSizeAt(this.#rooms.text);
    /** What ends beside a place at the same height would look joined to it. */
    const isPassing = (of: Stand) =>
      [...this.stands.values()].some((it) => it !== of && it.v === of.v && it.u > of.u && it.u < u);
    const v = isPassing(one) ? one.v + UNDER_ENDS * size : one.v;
    const leave = [one, ...(v === one.v ? [] : [{ u: one.u, v }]), { u, v }];
    const isUnder = isPassing(other);
    const apart = Math.abs(v - other.v);
    const low = isUnder
      ? Math.max(this.bottom + UNDER_ENDS * size, v + LEAST_TIE)
      : apart < LEAST_TIE
        ? Math.max(v, other.v) + LEAST_TIE
        : Math.max(v, other.v);
    const hasMore = this.legs.some((it) => it.from === (isTurned ? from : to));
    const back = hasMore ? other.u - this.#before : other.u;
    const comeBack = isUnder
      ? [{ u, v: low }, { u: back, v: low }, ...(hasMore ? [{ u: back, v: other.v }] : [])]
      : apart < LEAST_TIE
        ? [
            { u, v: low },
            { u: u + 28, v: low },
            { u: u + 28, v: other.v },
          ]
        : [{ u, v: other.v }];
    const path = [...leave, ...comeBack, other];
    const turned = isUnder || apart < LEAST_TIE ? low : other.v;
    this.legs.push({
      id,
      from,
      to,
      path: isTurned ? path.reverse() : path,
      centre: { u, v: (v + turned) / 2 },
    });
    this.left = Math.min(this.left, back - 10);
    this.right = u + 20 + this.#after(id);
    this.bottom = Math.max(this.bottom, low + (isUnder ? LINE_APART * size : 8));
  }

  get #before(): number {
    const { way, text } = this.#rooms;
    return way === "across"
      ? Math.max(BEFORE.across, HALF_ACROSS * symbolSizeAt(text) + 8)
      : (isTightAt(text) ? BEFORE.tight : BEFORE.down) * text;
  }

  /** From a work place to the next symbol: what is written there stands clear of the ring. */
  get #pastRing(): number {
    return Math.max(LEAD_FROM_LINE, 40 * this.#rooms.text - this.#symbol / 2);
  }

  /** Length of a symbol between its ends [units]. */
  get #symbol(): number {
    return SYMBOL_LENGTH * symbolSizeAt(this.#rooms.text);
  }

  get #twoLines(): number {
    return this.#rooms.isLow ? 0 : TWO_LINES * this.#rooms.text;
  }

  #element(id: ElementId): CircuitElement {
    return complete(this.#system.elements[id]!);
  }

  /** How far what is written at a hanging symbol reaches along the line. */
  #after(id: ElementId): number {
    const spread = this.#spread(id);
    // What ends a chain has its label under it, from a little before its symbol on.
    if (this.#rooms.way === "across" && isCustomers(this.#element(id)))
      return Math.max(24, this.#rooms.label(id) - LABEL_BEFORE * symbolSizeAt(this.#rooms.text));
    const beside = spread + this.#symbol / 2;
    if (this.#rooms.way === "down") return beside + 4 + this.#twoLines;
    // Blades abreast swing out past their own room where they stand open.
    return beside + (spread > 0 ? SWING : 0) + 10 + this.#rooms.label(id);
  }

  #spread(id: ElementId): number {
    return spreadOf(this.#element(id), this.#rooms.text);
  }

  #length(id: ElementId): number {
    const element = this.#element(id);
    const { way } = this.#rooms;
    const own = isConductor(element) ? 24 : this.#symbol;
    if (way === "down") return Math.max(own, this.#rooms.label(id) * 1.2 - 2 * LEAD + 8);
    return own;
  }

  /** A point on the line, what hangs on it, and the line through a device and on. */
  #line(branch: TreeBranch, u: number) {
    this.stands.set(branch.id, { u, v: 0, axis: "u" });
    this.right = Math.max(this.right, u + 26);
    const inside = branch.onward.filter(({ plate }) => plate === branch.plate);
    const leaving = branch.onward.filter((it) => !inside.includes(it));
    const through =
      leaving.length > 0
        ? undefined
        : (inside.find((it) => this.#isInLine(it) && hasExit(it)) ?? inside.find((it) => this.#isInLine(it)));
    for (const child of leaving) this.exits.push({ u, v: 0, from: branch.id, child });
    this.#columns(
      branch,
      inside.filter((it) => it !== through),
      { u, v: 0 },
      Math.max(
        this.#worked.has(branch.id) ? this.#pastRing : LEAD_FROM_LINE,
        this.#outermostAt(branch.id) + UNDER_LINE * symbolSizeAt(this.#rooms.text),
      ),
    );
    if (through === undefined) return;
    const label = this.#rooms.label(through.by!);
    const half = this.#rooms.way === "across" ? Math.max(this.#symbol, label) / 2 : this.#symbol / 2;
    const middle = Math.max(this.right + 10, u + 26) + half;
    const end = middle + Math.max(half + 18, this.#symbol / 2 + LEAD);
    this.legs.push({
      id: through.by!,
      from: branch.id,
      to: through.id,
      path: [
        { u, v: 0 },
        { u: end, v: 0 },
      ],
      centre: { u: middle, v: 0 },
      leadsOn: hasExit(through),
    });
    this.right = end + 6;
    this.top = Math.min(this.top, -Math.max(0, this.#over(through.by!)));
    this.bottom = Math.max(
      this.bottom,
      this.#symbol / 2 +
        (this.#rooms.way === "across" ? 8 + this.#twoLines + 22 * this.#rooms.text : 20 + label),
    );
    this.#line(through, end);
  }

  /** All that hangs on a point, the first straight on and the others beside it, what leads on to other plates last. */
  #columns(branch: TreeBranch, onward: readonly TreeBranch[], at: Uv, lead: number) {
    const chains = onward.filter((it) => !this.#isThird(it));
    // The line of a third end leaves under all the others.
    const thrown = chains.filter((it) => this.#thirdLeads(branch, it));
    const leading = [...chains.filter((it) => hasExit(it) && !thrown.includes(it)), ...thrown];
    const staying = chains.filter((it) => !leading.includes(it));
    const own = branch.hung.filter((id) => !this.#standsInLine(branch, id));
    const loads = own.filter((id) => isLoad(this.#element(id)));
    const others = own.filter((id) => !loads.includes(id));
    const columns: (() => void)[] = [
      ...loads.map((id) => () => this.#hang(branch, id, undefined, at, lead)),
      ...staying.map((it) => () => this.#hang(branch, it.by!, it, at, lead)),
      ...others.map((id) => () => this.#hang(branch, id, undefined, at, lead)),
      ...leading.map((it) => () => this.#hang(branch, it.by!, it, at, lead)),
    ];
    this.#isStraight = true;
    for (const column of columns) {
      column();
      this.#isStraight = false;
    }
  }

  #isStraight = true;

  /** One element that hangs at a point, and what is behind it. */
  #hang(branch: TreeBranch, id: ElementId, child: TreeBranch | undefined, at: Uv, lead: number) {
    const spread = this.#spread(id);
    const third = child === undefined ? undefined : thirdOf(branch, child);
    const isStraight =
      this.#isStraight && !(third !== undefined && this.#isBefore(at, this.#thirdEnd(third)));
    const u = isStraight
      ? at.u
      : (third === undefined ? 0 : this.#thirdEnd(third)) +
        Math.max(at.u, this.right + this.#before + spread - (child === undefined ? 10 : 0));
    if (isStraight) this.left = Math.min(this.left, at.u - spread - this.#before);
    const isLeading = third !== undefined && hasExit(third);
    const length = this.#length(id);
    const start = at.v + lead;
    const out = child === undefined ? 0 : this.#leadOut(id, child);
    const end = Math.max(start + length + out, at.v + this.#fromLine(branch, child));
    const to = { u, v: end };
    this.legs.push({
      id,
      from: branch.id,
      to: child?.id,
      path: [at, ...(u === at.u ? [] : [{ u, v: at.v }]), to],
      centre: { u, v: start + length / 2 },
      leadsOn: isLeading || (child !== undefined && (hasExit(child) || this.#tied.has(child.id))),
    });
    this.right = Math.max(this.right, u + this.#after(id), u + 4 + this.#symbol / 2 + spread);
    const under = this.#rooms.way === "across" && isCustomers(this.#element(id)) ? this.#twoLines : 0;
    this.bottom = Math.max(this.bottom, end + (child === undefined ? 8 + under : 8));
    if (child === undefined) return;
    this.stands.set(child.id, { ...to, axis: "v" });
    const inside = child.onward.filter(({ plate }) => plate === child.plate);
    for (const next of child.onward)
      if (!inside.includes(next)) this.exits.push({ ...to, from: child.id, child: next });
    if (third !== undefined && !isLeading) this.#third(third, { u, v: end });
    this.#columns(child, inside, to, this.#worked.has(child.id) ? this.#pastRing : LEAD);
    if (!isLeading) return;
    const low = this.bottom + this.#underOthers;
    this.bottom = low + this.#underOthers / 2;
    this.#third(third, { u, v: low });
  }

  /** What leads on from a place beside which others hang leaves under these: at their height it would run through them. */
  #leadUnder() {
    const tied = [...this.stands.keys()].filter((it) => this.#tied.has(it));
    const from = [...this.exits.map((it) => it.from), ...tied];
    const leaving = new Set(from.filter((it) => this.stands.get(it)!.axis === "v"));
    const outermostFirst = [...leaving].sort((a, b) => this.stands.get(b)!.u - this.stands.get(a)!.u);
    for (const from of outermostFirst) {
      const at = this.stands.get(from)!;
      const coming = this.legs.findIndex(({ to }) => to === from);
      const goesOn = this.legs.some((it) => it.from === from);
      if (coming === -1 || goesOn || !this.#isInTheWay(at, from)) continue;
      const v = this.bottom + this.#underOthers;
      this.bottom = v + this.#underOthers / 2;
      this.stands.set(from, { ...at, v });
      const leg = this.legs[coming]!;
      this.legs[coming] = { ...leg, path: [...leg.path.slice(0, -1), { u: at.u, v }] };
      this.exits.splice(0, Infinity, ...this.exits.map((it) => (it.from === from ? { ...it, v } : it)));
    }
  }

  /** Whether something on this plate, or another line that leaves it, lies on the way of a line that leaves from here. */
  #isInTheWay({ u, v }: Uv, from: string): boolean {
    const half = this.#underOthers / 2;
    const own = this.exits.filter((it) => it.from === from).map(({ child }) => child.by!);
    const apart = (NEUTRAL_APART + UNDER_LINE) * symbolSizeAt(this.#rooms.text);
    const reach = this.#reachOf([...own, this.#tied.get(from) ?? []].flat());
    return (
      this.legs.some(({ path }) =>
        path.some(
          (it, nth) =>
            nth > 0 &&
            Math.max(it.u, path[nth - 1]!.u) > u + 1 &&
            Math.min(it.v, path[nth - 1]!.v) < v + half &&
            Math.max(it.v, path[nth - 1]!.v) > v - half,
        ),
      ) ||
      this.exits.some(
        (it) =>
          it.from !== from &&
          Math.abs(it.v - v) < Math.max(half, reach + this.#reachOf([it.child.by!]) + apart),
      )
    );
  }

  /** How far from the line that it hangs on a place is at least from which other lines leave beside that. */
  #fromLine({ id }: TreeBranch, child: TreeBranch | undefined): number {
    const leaving = child?.onward.filter(({ plate }) => plate !== child.plate) ?? [];
    if (leaving.length === 0 || this.stands.get(id)!.axis !== "u") return 0;
    const apart = (NEUTRAL_APART + UNDER_LINE) * symbolSizeAt(this.#rooms.text);
    return this.#outermostAt(id) + this.#reachOf(leaving.map(({ by }) => by!)) + apart;
  }

  /** From the middle of lines to the outermost of their phases. */
  #reachOf(lines: readonly ElementId[]): number {
    const counts = lines.map((id) => lettersOf((this.#element(id) as { phases: string }).phases).length);
    return ((Math.max(1, ...counts) - 1) / 2) * LINE_APART * symbolSizeAt(this.#rooms.text);
  }

  /** From the middle of the line at a point to the outermost of its phases. */
  #outermostAt(point: string): number {
    const phases = (conductorsOf(this.#system).get(point) ?? []).filter((it) => it !== "N");
    return (Math.max(0, phases.length - 1) / 2) * LINE_APART * symbolSizeAt(this.#rooms.text);
  }

  /** Whether something hangs so far before a spot, no less deep than that: what stands there would lie on it. */
  #isBefore({ u, v }: Uv, far: number): boolean {
    const from = u - far - this.#before - HALF_ACROSS * symbolSizeAt(this.#rooms.text);
    return this.legs.some(({ path }) => path.some((it) => it.u > from && it.u < u - 1 && it.v > v));
  }

  /** The third end of a transfer switch, and the machine on it, stand before the way to the customer. */
  #third(third: TreeBranch, switched: Uv) {
    const beside = { u: switched.u - this.#thirdEnd(third), v: switched.v };
    this.stands.set(third.id, { ...beside, axis: "v" });
    this.left = Math.min(this.left, beside.u - this.#before);
    const inside = third.onward.filter(({ plate }) => plate === third.plate);
    for (const next of third.onward)
      if (!inside.includes(next)) this.exits.push({ ...beside, from: third.id, child: next });
    this.#columns(third, inside, beside, LEAD);
  }

  /** A line that leaves under all the others has room for its own conductors and for what is written between. */
  get #underOthers(): number {
    return 2 * LINE_APART * symbolSizeAt(this.#rooms.text) + UNDER_OTHERS * this.#rooms.text;
  }

  /** Over a device in the line stands how it stands, and what hangs on it. */
  #over(id: ElementId): number {
    const element = this.#element(id);
    if (!("open" in element)) return 0;
    const size = symbolSizeAt(this.#rooms.text);
    const phases = ((lettersOf(element.phases).length - 1) / 2) * LINE_APART * size;
    if (this.#rooms.way === "down") return phases + NEUTRAL_PAST * size - LEAST_SIDE;
    const blades = phases + this.#symbol / 2;
    return Math.max(0, blades + 40 * this.#rooms.text - HEAD_OVER_LINE + 10);
  }

  /** From a transfer switch to its third end, whose machine has its name beside the customer's. */
  #thirdEnd({ hung }: TreeBranch): number {
    const names = hung.map((it) => this.#rooms.label(it));
    const { way, text } = this.#rooms;
    const least = Math.max(THIRD_END, LINES_TO_THIRD * LINE_APART * symbolSizeAt(text));
    return way === "across" ? Math.max(least, ...names.map((it) => it + 8)) : least;
  }

  /** From a symbol to the point behind it: clear of a ring there, and of the label where a line leaves it at the label's side. */
  #leadOut(id: ElementId, child: TreeBranch): number {
    const isLeft = child.onward.some(({ plate }) => plate !== child.plate);
    const beside =
      this.#rooms.way === "down" && isLeft ? this.#rooms.label(id) / 2 - this.#length(id) / 2 + 26 : 0;
    const under =
      this.#rooms.way === "across" && isNamed(this.#element(id))
        ? UNDER_LABEL * this.#rooms.text - this.#symbol / 2
        : 0;
    return Math.max(
      this.#worked.has(child.id) ? this.#pastRing : isLeft ? LEAD_TO_LINE : LEAD,
      beside,
      under,
    );
  }

  /** A source at the end of its line stands in it, not beside. */
  #standsInLine(branch: TreeBranch, id: ElementId): boolean {
    if (!isSupply(this.#element(id)) || this.stands.get(branch.id)!.axis !== "u") return false;
    const isLast = branch.onward.length === 0;
    if (branch.parent !== undefined && !isLast) return false;
    if (
      this.legs.some((it) => it.to === undefined && isSupply(this.#element(it.id)) && it.from === branch.id)
    )
      return false;
    const { u } = this.stands.get(branch.id)!;
    const way = branch.parent === undefined ? -1 : 1;
    const end = u + way * (30 + this.#symbol);
    this.legs.push({
      id,
      from: branch.id,
      to: undefined,
      path: [
        { u, v: 0 },
        { u: end, v: 0 },
      ],
      centre: { u: u + way * (30 + this.#symbol / 2), v: 0 },
    });
    this.left = Math.min(this.left, end - 10);
    this.right = Math.max(this.right, end + 10);
    return true;
  }

  /** Whether the tree comes here by a transfer switch, and not to the end that it switches from one to the other. */
  #isThird({ id, by, parent }: TreeBranch): boolean {
    const element = by === undefined ? undefined : this.#element(by);
    if (element === undefined || !("alt" in element)) return false;
    if (parent!.onward.every((it) => it.by !== by || it.id === id)) return false;
    return id === (parent!.id === element.to ? element.alt : id === element.to ? undefined : id);
  }

  #thirdLeads(branch: TreeBranch, chain: TreeBranch): boolean {
    const third = thirdOf(branch, chain);
    return third !== undefined && hasExit(third);
  }

  #isInLine({ by }: TreeBranch): boolean {
    return by !== undefined && standsInLine(this.#element(by));
  }
}

/** The name of what ends a chain begins so far before its middle. */
export const LABEL_BEFORE = 18;

/** How far the outermost conductors of a hanging element stand beside its middle. */
export function spreadOf(element: CircuitElement, text: number): number {
  if (!("from" in element) || isLine(element) || isLegs(element.phases)) return 0;
  const apart = isAbreast(element) ? HANGING_APART : LINE_APART;
  return ((lettersOf(element.phases).length - 1) / 2) * apart * symbolSizeAt(text);
}

/** Whether each of its conductors has a symbol of its own where it hangs. */
export const isAbreast = (element: CircuitElement): boolean =>
  standsAbreast(element) || (isConductor(element) && !isLine(element)) || isBank(element);

/** Whether a transformer is drawn as several units; with three windings it stands as one. */
export const isBank = (element: CircuitElement): boolean =>
  isTransformer(element) && element.connection !== "single" && !("alt" in element);

/** Legs of a split-phase service run as one. */
export const isLegs = (phases: string): boolean => /^[12]+$/.test(phases);

/** The other place to which the element that leads to one leads too, as a transfer switch does. */
const thirdOf = (branch: TreeBranch, child: TreeBranch): TreeBranch | undefined =>
  branch.onward.find((it) => it !== child && it.by === child.by);

/** Whether a line leaves the plate somewhere behind this point. */
function hasExit(branch: TreeBranch): boolean {
  return branch.onward.some((it) => it.plate !== branch.plate || hasExit(it));
}

/** The points that an element ends at, in the order of its ends. */
export const endsOfElement = (element: CircuitElement): readonly string[] =>
  deviceOf(element.kind).ends.map((end) => (element as unknown as Record<string, string>)[end]!);

/** A spot along and square to the line as one on the drawing, for a line that runs across or down. */
export const spotIn = (way: Way, { u, v }: Uv): Spot => (way === "across" ? { x: u, y: v } : { x: v, y: u });

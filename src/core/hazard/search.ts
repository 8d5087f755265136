import { type ConductorOutcome, type Outcome } from "./outcome";
import { type DrawnUpset, rejoinsNeutral } from "./upsets";
import { MOST_STRENGTH } from "./tolerances";

/** Upsets by their index in the drawing's list, increasing. */
export type UpsetSet = readonly number[];

/** A set that is minimal in one of the ways, and what it does. */
export interface FoundSet {
  readonly set: UpsetSet;
  readonly outcome: Outcome;
}

/** The ways in which a set can be a threat; minimality is taken in each apart, so that a weak one hides no worse one. */
export const WAYS = ["energized", "fed", "induced", "exposed"] as const;
/** How a set of upsets can be a threat. */
export type ThreatWay = (typeof WAYS)[number];

/** Whether a set that does this to a conductor is a threat in a way. */
export const isBy = (way: ThreatWay, outcome: ConductorOutcome, exposureLimitVolts: number): boolean =>
  way === "exposed" ? outcome.exposureVolts >= exposureLimitVolts : outcome.live === way;

/** Every set of upsets up to the most strength, smaller sets first. */
export function* setsUpTo(upsets: readonly DrawnUpset[], most = MOST_STRENGTH): Generator<UpsetSet> {
  yield [];
  for (let size = 1; size <= most; size++) yield* setsOfSize(upsets, size, most, 0);
}

function* setsOfSize(
  upsets: readonly DrawnUpset[],
  size: number,
  most: number,
  from: number,
): Generator<UpsetSet> {
  if (size === 0) {
    yield [];
    return;
  }
  for (let index = from; index < upsets.length; index++) {
    const strength = upsets[index]!.strength;
    if (strength + (size - 1) > most) continue;
    for (const rest of setsOfSize(upsets, size - 1, most - strength, index + 1)) yield [index, ...rest];
  }
}

/** A set as sets are kept: increasing. */
export const inOrder = (set: UpsetSet): UpsetSet => [...set].sort((a, b) => a - b);

/** Indices below this make keys of three that a number holds exactly. */
const KEY_BASE = 200_000;

/** What a set is remembered by; the same for the same set. */
export function keyOf(set: UpsetSet): number | string {
  let key = 0;
  for (const index of set) {
    if (index >= KEY_BASE - 1) return set.join();
    key = key * KEY_BASE + index + 1;
  }
  return key;
}

/** Every set within a set, the empty one and the set itself among them. */
function someWithin(
  set: UpsetSet,
  is: (key: number | string, size: number, part: UpsetSet) => boolean,
): boolean {
  for (let bits = 0; bits < 1 << set.length; bits++) {
    const part: number[] = [];
    for (let at = 0; at < set.length; at++) if ((bits & (1 << at)) !== 0) part.push(set[at]!);
    if (is(keyOf(part), part.length, part)) return true;
  }
  return false;
}

/** Sets of upsets, asked whether one of them lies within another; no slower however many there are. */
export class SetsWithin {
  private readonly keys = new Set<number | string>();

  add(set: UpsetSet): void {
    this.keys.add(keyOf(set));
  }

  /** Whether one of them is within the set, or is the set itself. */
  holds(set: UpsetSet): boolean {
    return this.keys.size > 0 && someWithin(set, (key) => this.keys.has(key));
  }

  /** Whether one of them is within the set and smaller. */
  holdsSmaller(set: UpsetSet): boolean {
    return someWithin(set, (key, size) => size < set.length && this.keys.has(key));
  }
}

/** Remembers the minimal sets of each way, and which sets need no asking because a smaller one already does it. */
export class MinimalSets {
  readonly found: Record<ThreatWay, FoundSet[]> = { energized: [], fed: [], induced: [], exposed: [] };
  private readonly within: Record<ThreatWay, SetsWithin> = {
    energized: new SetsWithin(),
    fed: new SetsWithin(),
    induced: new SetsWithin(),
    exposed: new SetsWithin(),
  };
  /** sets that energize every conductor, and those that energize or feed every one, by key */
  private readonly energizing = new Set<number | string>();
  private readonly feeding = new Set<number | string>();

  constructor(private readonly upsets: readonly DrawnUpset[]) {}

  /**
   * Ways in which no smaller set is a threat yet. Where a smaller set feeds every conductor nothing is left to be induced,
   * and where one energizes every conductor nothing is left to be fed: what adds to it is reached too, unless it ties to
   * earth a neutral that the reach came through.
   */
  open(set: UpsetSet): ThreatWay[] {
    const isDone = (way: ThreatWay): boolean =>
      (way === "induced" && this.holdsOneOf(this.feeding, set)) ||
      (way === "fed" && this.holdsOneOf(this.energizing, set));
    return this.uncovered(set).filter((way) => !isDone(way));
  }

  /** Ways in which no smaller set is a threat yet, with nothing else taken for granted. */
  uncovered(set: UpsetSet): ThreatWay[] {
    return WAYS.filter((way) => !this.covers(way, set));
  }

  /** Whether no set that holds this one needs asking. */
  closes(set: UpsetSet): boolean {
    return !this.rejoinsAnyNeutral && this.open(set).length === 0;
  }

  private get rejoinsAnyNeutral(): boolean {
    return (this.anyNeutral ??= this.upsets.some(rejoinsNeutral));
  }
  private anyNeutral: boolean | undefined;

  private holdsOneOf(sets: ReadonlySet<number | string>, set: UpsetSet): boolean {
    if (sets.size === 0) return false;
    const neutrals = set.filter((index) => rejoinsNeutral(this.upsets[index]!));
    if (neutrals.length === 0) return someWithin(set, (key) => sets.has(key));
    // Every neutral that rejoins has to be among what feeds.
    const others = set.filter((index) => !neutrals.includes(index));
    return someWithin(others, (_key, _size, part) => sets.has(keyOf(inOrder([...part, ...neutrals]))));
  }

  private covers(way: ThreatWay, set: UpsetSet): boolean {
    return this.within[way].holds(set);
  }

  /** Remembers in which of the open ways a set is a threat; says whether it is one. */
  add(set: UpsetSet, outcome: Outcome, open: readonly ThreatWay[], exposureLimitVolts: number): boolean {
    const added = open.filter((way) => outcome.some((it) => isBy(way, it, exposureLimitVolts)));
    for (const way of added) {
      this.found[way].push({ set, outcome });
      this.within[way].add(set);
    }
    if (outcome.every(({ live }) => live === "energized")) this.energizing.add(keyOf(set));
    if (outcome.every(({ live }) => live === "energized" || live === "fed")) this.feeding.add(keyOf(set));
    return added.length > 0;
  }
}

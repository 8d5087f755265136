import { type ConductorOutcome, type Outcome } from "./outcome";
import { type DrawnUpset, rejoinsNeutral } from "./upsets";

/** Threats are sought up to this strength: all of them, not a sample. */
export const MOST_STRENGTH = 3;

/** Upsets by their index in the drawing's list, increasing. */
export type UpsetSet = readonly number[];

/** A set that is minimal in one of the three ways, and what it does. */
export interface FoundSet {
  readonly set: UpsetSet;
  readonly outcome: Outcome;
}

/** The three ways in which a set can be a threat; minimality is taken in each apart. */
export interface Ways {
  readonly fed: boolean;
  readonly induced: boolean;
  readonly exposed: boolean;
}

export const waysOf = (outcome: Outcome, exposureLimitVolts: number): Ways => ({
  fed: outcome.some(({ live }) => live === "fed"),
  induced: outcome.some(({ live }) => live === "induced"),
  exposed: outcome.some((it) => isExposed(it, exposureLimitVolts)),
});

export const isExposed = ({ exposureVolts }: ConductorOutcome, limit: number): boolean =>
  exposureVolts >= limit;

export const WAYS = ["fed", "induced", "exposed"] as const;
export type Way = (typeof WAYS)[number];

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

/** Whether every upset of the one is in the other; both increasing. */
export function isWithin(small: UpsetSet, large: UpsetSet): boolean {
  let at = 0;
  for (const index of large) if (small[at] === index) at++;
  return at === small.length;
}

/** Remembers the minimal sets of each way, and which sets need no asking because a smaller one already does it. */
export class MinimalSets {
  readonly found: Record<Way, FoundSet[]> = { fed: [], induced: [], exposed: [] };

  constructor(private readonly upsets: readonly DrawnUpset[]) {}

  /**
   * Ways in which no smaller set is a threat yet. Where a smaller set feeds every conductor nothing is left to be induced:
   * what adds to it is reached too, unless it ties to earth a neutral that the reach came through.
   */
  open(set: UpsetSet): Way[] {
    return WAYS.filter((way) => !this.covers(way, set) && !(way === "induced" && this.feedsAll(set)));
  }

  /** Ways in which no smaller set is a threat yet, with nothing else taken for granted. */
  uncovered(set: UpsetSet): Way[] {
    return WAYS.filter((way) => !this.covers(way, set));
  }

  private feedsAll(set: UpsetSet): boolean {
    return this.found.fed.some(
      (it) =>
        it.outcome.every(({ live }) => live === "fed") &&
        isWithin(it.set, set) &&
        !set.some((index) => !it.set.includes(index) && rejoinsNeutral(this.upsets[index]!)),
    );
  }

  private covers(way: Way, set: UpsetSet): boolean {
    return this.found[way].some((it) => isWithin(it.set, set));
  }

  add(set: UpsetSet, outcome: Outcome, open: readonly Way[], exposureLimitVolts: number): void {
    const ways = waysOf(outcome, exposureLimitVolts);
    for (const way of open) if (ways[way]) this.found[way].push({ set, outcome });
  }
}

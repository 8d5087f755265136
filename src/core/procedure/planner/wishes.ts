import type { ElementId, PointId } from "../../terms";
import { STRICTEST, type Separation, type Strictness } from "./ways";

/** What a plan has been told so far by the rules that it broke: each repair adds to it and takes nothing back. */
export interface Wishes {
  readonly strictness: Strictness;
  readonly separations: readonly Separation[];
  readonly forced: readonly string[];
  readonly forbidden: ReadonlySet<string>;
  /** what is put on again with what is beyond it open, instead of being left alone */
  readonly pickedUpBeyond: ReadonlySet<ElementId>;
  readonly first: ReadonlySet<string>;
  readonly tags: ReadonlySet<ElementId>;
  readonly blocks: ReadonlySet<ElementId>;
  readonly covers: ReadonlySet<string>;
  readonly barricades: ReadonlySet<PointId>;
  readonly secures: ReadonlySet<ElementId>;
  /** what is cut, joined or put in with its conductors live: by a method for their volts */
  readonly liveHands: ReadonlySet<ElementId>;
  /** banks whose secondary is held by open meters or mains, and not by a ground set */
  readonly heldOpen: ReadonlySet<ElementId>;
  /** further points that get a ground set */
  readonly groundsAt: readonly PointId[];
  /** points whose set goes to a rod as well: nothing else there holds the neutral that is in hand */
  readonly rodsAt: ReadonlySet<PointId>;
  /** cables of ground sets that the smallest one would not do for */
  readonly cables: ReadonlyMap<ElementId, string>;
  readonly retest: boolean;
  /** five minutes by the clock, for a capacitor that nothing shorts */
  readonly wait: boolean;
  /** the same before the rest is fed again */
  readonly waitToSupply: boolean;
}

const NONE: ReadonlySet<never> = new Set();

/** Of an order that nothing was found wrong with yet. */
export const NO_WISHES: Wishes = {
  strictness: STRICTEST,
  separations: [],
  forced: [],
  forbidden: NONE,
  pickedUpBeyond: NONE,
  first: NONE,
  tags: NONE,
  blocks: NONE,
  covers: NONE,
  barricades: NONE,
  secures: NONE,
  liveHands: NONE,
  heldOpen: NONE,
  groundsAt: [],
  rodsAt: NONE,
  cables: new Map(),
  retest: false,
  wait: false,
  waitToSupply: false,
};

type SetKey =
  | "forbidden"
  | "pickedUpBeyond"
  | "first"
  | "tags"
  | "blocks"
  | "covers"
  | "barricades"
  | "secures"
  | "liveHands"
  | "heldOpen"
  | "rodsAt";

/** The same wishes with something added; the very same object where it was there already. */
export function wish(wishes: Wishes, key: SetKey, ...items: readonly string[]): Wishes {
  const known = wishes[key] as ReadonlySet<string>;
  if (items.every((it) => known.has(it))) return wishes;
  return { ...wishes, [key]: new Set([...known, ...items].sort()) };
}

/** Wishes with more openings forced; the same object where they were forced already. */
export const alsoForced = (wishes: Wishes, keys: readonly string[]): Wishes =>
  keys.every((it) => wishes.forced.includes(it))
    ? wishes
    : { ...wishes, forced: [...new Set([...wishes.forced, ...keys])].sort() };

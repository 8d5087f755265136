import { hangsToward, isLine } from "../../devices";
import { type Spot } from "../shapes";
import { type TidyBranch, isJoint } from "./branches";

/** How a tree is to be spread out. */
export interface Spreading {
  /** where its line runs from the root, a unit vector along an axis */
  readonly along: Spot;
  /** how much further than usual the first places stand from the root */
  readonly start: number;
  /** places where the line turns aside although it could go straight on */
  readonly turns: ReadonlySet<string>;
  /** branches that stay where they are, and what hangs on them: they take no room here */
  readonly isHeld: (id: string) => boolean;
  /** where a place stands now: taps stay on the side that they are on */
  readonly now: (id: string) => Spot;
}

/** Places on the drawing keep to this spacing. */
const GRID = 20;
/** Room around a point, and between what belongs to two branches. */
const OWN = 20;
const GAP = 60;
/** How far what hangs at a point reaches from it, its symbol and its lettering. */
const HUNG = 80;
/** A slanted stretch leaves its point at no smaller angle than this slope gives. */
const SLOPE = 0.6;

/** How one branch is laid out in its own directions: `along` its line, and `aside`, where its first taps go. */
interface SpreadSeat {
  readonly branch: TidyBranch;
  readonly along: Spot;
  readonly aside: Spot;
  /** taps go to one side only, and nothing reaches back: what stands beside it is reached by slanted stretches */
  readonly isNarrow: boolean;
  main: SpreadSeat | undefined;
  /** branches side by side straight ahead, in place of a main line */
  fan: readonly SpreadSeat[];
  /** on the side of `aside`, and on the other */
  taps: readonly [readonly SpreadSeat[], readonly SpreadSeat[]];
  /** from its parent, in the parent's directions */
  ahead: number;
  across: number;
  room: Room;
}

/** What a branch and all behind it cover, from its own point. `behind` and `beside` have one value a side. */
interface Room {
  readonly ahead: number;
  readonly behind: readonly [number, number];
  readonly beside: readonly [number, number];
}

const NO_ROOM: Room = { ahead: 0, behind: [0, 0], beside: [0, 0] };

/**
 * Spreads a tree out from its root: the main line straight on, taps square to it, branches that are alike fanned out. No
 * two stretches cross, since each branch gets a rectangle of its own, and what leads to it runs through empty room.
 *
 * @returns places relative to the root's
 */
export function spreadOut(root: TidyBranch, spreading: Spreading): ReadonlyMap<string, Spot> {
  const { along } = spreading;
  // From left to right, first taps hang down.
  const aside = along.x !== 0 ? { x: 0, y: 1 } : { x: 1, y: 0 };
  const first = seat(root, along, aside, false);
  const order = [first];
  for (let next = 0; next < order.length; next++) order.push(...seated(order[next]!, spreading));
  for (const it of order.toReversed()) it.room = roomOf(it, it === first ? spreading.start : 0);
  const places = new Map<string, Spot>([[root.id, { x: 0, y: 0 }]]);
  for (const it of order) {
    const from = places.get(it.branch.id)!;
    for (const next of followers(it))
      places.set(next.branch.id, {
        x: from.x + it.along.x * next.ahead + it.aside.x * next.across,
        y: from.y + it.along.y * next.ahead + it.aside.y * next.across,
      });
  }
  return places;
}

const seat = (branch: TidyBranch, along: Spot, aside: Spot, isNarrow: boolean): SpreadSeat => ({
  branch,
  along,
  aside,
  isNarrow,
  main: undefined,
  fan: [],
  taps: [[], []],
  ahead: 0,
  across: 0,
  room: NO_ROOM,
});

const followers = ({ main, fan, taps }: SpreadSeat): SpreadSeat[] => [
  ...(main === undefined ? [] : [main]),
  ...fan,
  ...taps[0],
  ...taps[1],
];

/** Says of each branch that goes on from here whether it is the main line, one of a fan, or a tap, and to which side. */
function seated(it: SpreadSeat, { isHeld, turns, now }: Spreading): SpreadSeat[] {
  const { branch, along, aside, isNarrow } = it;
  const onward = branch.onward.filter(({ id }) => !isHeld(id));
  if (!isJoint(branch.id) && isFan(onward)) {
    it.fan = onward.map((next) => seat(next, along, aside, isNarrow));
    return followers(it);
  }
  const main = turns.has(branch.id) ? undefined : mainLineOf(onward, branch);
  if (main !== undefined) it.main = seat(main, along, aside, isNarrow);
  const sides = sidesOf(main === undefined ? onward : onward.slice(1), it, now);
  const tap = (next: TidyBranch, sign: 1 | -1, isOneOfMany: boolean) =>
    seat(next, scaled(aside, sign), along, isNarrow || isOneOfMany);
  it.taps = [
    sides[0].map((next) => tap(next, 1, sides[0].length > 1)),
    sides[1].map((next) => tap(next, -1, sides[1].length > 1)),
  ];
  return followers(it);
}

/** What goes straight on, of all that goes on from a branch: the first, unless it is a sideline. */
export const mainLineOf = ([first]: readonly TidyBranch[], from: TidyBranch): TidyBranch | undefined =>
  first === undefined || isSideline(from, first) ? undefined : first;

/** A line of fewer phases than the one that it comes from leaves it square, also where that one ends. */
function isSideline(from: TidyBranch, to: TidyBranch): boolean {
  const [before, after] = [from.by?.phases ?? "", to.by?.phases ?? ""];
  return /[ABC]/.test(after) && after.length < before.length;
}

/** Alike, and without branches of their own: the houses of one transformer, not the poles of a line. */
function isFan(onward: readonly TidyBranch[]): boolean {
  const [first] = onward;
  return (
    onward.length > 1 &&
    onward.every((it) => it.by?.kind === first!.by?.kind && isUnbranched(it)) &&
    (!isLine(first!.by) || /[12]/.test(first!.by.phases))
  );
}

function isUnbranched(branch: TidyBranch): boolean {
  let it: TidyBranch | undefined = branch;
  while (it?.onward.length === 1) it = it.onward[0];
  return it?.onward.length === 0;
}

/** A tap stays on its side, two taps get a side each, and of more all stay where they are on a side at all. */
function sidesOf(
  taps: readonly TidyBranch[],
  { branch, aside, isNarrow }: SpreadSeat,
  now: Spreading["now"],
): readonly [readonly TidyBranch[], readonly TidyBranch[]] {
  if (isNarrow) return [taps, []];
  const here = now(branch.id);
  const lean = ({ id }: TidyBranch): number => {
    const there = now(id);
    return (there.x - here.x) * aside.x + (there.y - here.y) * aside.y;
  };
  const [one, other] = taps;
  if (taps.length === 1) return lean(one!) < 0 ? [[], taps] : [taps, []];
  if (taps.length === 2) return lean(one!) < lean(other!) ? [[other!], [one!]] : [[one!], [other!]];
  const undecided = taps.filter((it) => lean(it) === 0);
  const half = new Set(undecided.slice(0, Math.ceil(undecided.length / 2)));
  const isHere = (it: TidyBranch) => lean(it) > 0 || half.has(it);
  return [taps.filter(isHere), taps.filter((it) => !isHere(it))];
}

function roomOf(it: SpreadSeat, start: number): Room {
  const own = ownRoom(it);
  return it.fan.length > 0 ? roomOfFan(it, own, start) : roomOfLine(it, own, start);
}

function roomOfFan({ fan, isNarrow }: SpreadSeat, own: Room, start: number): Room {
  const spots: number[] = [];
  fan.forEach(({ room }, index) => {
    const before = fan[index - 1]?.room;
    spots.push(
      before === undefined ? 0 : spots[index - 1]! + onGrid(before.beside[0] + GAP - OWN + room.beside[1], 2),
    );
  });
  const middle = isNarrow ? 0 : onGrid(spots.at(-1)! / 2);
  const widest = Math.max(spots.at(-1)! - middle, middle);
  const ahead =
    start +
    onGrid(
      Math.max(SLOPE * widest, ...fan.map((next) => Math.max(next.branch.length, behindOf(next) + GAP))),
    );
  fan.forEach((next, index) => {
    next.ahead = ahead;
    next.across = spots[index]! - middle;
  });
  return {
    ahead: Math.max(...fan.map((next) => ahead + next.room.ahead)),
    behind: own.behind,
    beside: [
      Math.max(own.beside[0], ...fan.map((next) => next.across + next.room.beside[0])),
      Math.max(own.beside[1], ...fan.map((next) => next.room.beside[1] - next.across)),
    ],
  };
}

function roomOfLine(it: SpreadSeat, own: Room, start: number): Room {
  const { main, taps } = it;
  const sides = [0, 1].map((side) => roomOfTaps(taps[side]!, side === 0 ? 1 : -1, own, side, start));
  if (main !== undefined) {
    main.across = 0;
    main.ahead =
      start +
      onGrid(
        Math.max(
          main.branch.length,
          ...sides.map(({ ahead }, side) =>
            ahead === undefined ? 0 : ahead + GAP + main.room.behind[side]!,
          ),
        ),
      );
  }
  const behind = (side: number) =>
    Math.max(sides[side]!.behind, (main?.room.behind[side] ?? 0) - (main?.ahead ?? 0));
  const beside = (side: number) => Math.max(sides[side]!.beside, main?.room.beside[side] ?? 0);
  return {
    ahead: Math.max(
      own.ahead,
      ...sides.map(({ ahead = 0 }) => ahead),
      main === undefined ? 0 : main.ahead + main.room.ahead,
    ),
    behind: [behind(0), behind(1)],
    beside: [beside(0), beside(1)],
  };
}

/** The taps on one side: the first one square to the line, more of them at a slant beside it. */
function roomOfTaps(taps: readonly SpreadSeat[], sign: 1 | -1, own: Room, side: number, start: number) {
  let last: SpreadSeat | undefined;
  for (const tap of taps) {
    tap.ahead =
      last === undefined ? 0 : last.ahead + onGrid(last.room.beside[0] + GAP + tap.room.beside[1], 2);
    last = tap;
  }
  const across = onGrid(
    Math.max(
      SLOPE * (last?.ahead ?? 0),
      ...taps.map((it) => Math.max(it.branch.length + start, behindOf(it) + GAP)),
    ),
  );
  for (const tap of taps) tap.across = sign * across;
  const isTaken = last !== undefined || own.beside[side]! > OWN;
  return {
    /** nothing where this side is free */
    ahead: !isTaken
      ? undefined
      : Math.max(own.ahead, last === undefined ? 0 : last.ahead + last.room.beside[0]),
    behind: Math.max(own.behind[side]!, taps[0]?.room.beside[1] ?? 0),
    beside: Math.max(own.beside[side]!, ...taps.map((it) => across + it.room.ahead)),
  };
}

const behindOf = ({ room }: SpreadSeat): number => Math.max(...room.behind);

/** What a point and what hangs at it cover; nothing hangs where the line comes from. */
function ownRoom({ branch, along, aside }: SpreadSeat): Room {
  const reach = (way: Spot): number =>
    branch.hung.some((kind) => {
      const to = hangsToward({ kind });
      return way.x * Math.cos((to * Math.PI) / 180) + way.y * Math.sin((to * Math.PI) / 180) > 0.5;
    })
      ? HUNG
      : OWN;
  const behind = branch.parent === undefined ? reach(scaled(along, -1)) : OWN;
  return { ahead: reach(along), behind: [behind, behind], beside: [reach(aside), reach(scaled(aside, -1))] };
}

const scaled = ({ x, y }: Spot, by: number): Spot => ({ x: x * by + 0, y: y * by + 0 });

const onGrid = (value: number, cells = 1): number => Math.ceil(value / (GRID * cells)) * GRID * cells;

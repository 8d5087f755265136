import {
  apartOf,
  type CircuitElement,
  deviceOf,
  isGroundSet,
  isConductor,
  isLine,
  isSupply,
  isTransformer,
  letterAt,
  lettersAtEnd,
  type Mark,
  maybeMachine,
  mirrored,
  standsAbreast,
  SYMBOL_REACH,
  symbolOf,
} from "../devices";
import { type Letter, lettersOf } from "../terms";
import { isHotLook, type Pen, type Surroundings } from "./pen";
import {
  HANGING_APART,
  isAbreast,
  isBank,
  isLegs,
  LEGS_APART,
  LINE_APART,
  NEUTRAL_APART,
} from "./layout/inside";
import { symbolSizeAt } from "./labels";
import type { LaidPath, Route } from "./routes";
import { spotOf } from "./routes";
import type { Look, Shape, Spot, Strand } from "./shapes";

/** Conductors side by side into what stands at one point: nearer, those of a small picture would touch. */
const FEET_APART = 10;
/** A dot where conductors are joined. */
export const dotAt = ({ x, y }: Spot, size: number, look: Look): Shape => ({
  shape: "disc",
  x,
  y,
  radius: DOT * Math.min(1.5, size),
  filled: true,
  isHot: isHotLook(look),
});
/** How large it is across, by half. */
export const DOT = 4;
/** A line that must cross another hops over it. */
const HOP = 5;
/** From the middle of a broken conductor to where its ends begin to hang. */
const BROKEN = 14;
/** From the middle of a line, or from a symbol, to where phases that are swapped have gone over. */
export const CROSSING = 12;

/**
 * How far a conductor stands beside the middle of its line, by the letters that run there.
 *
 * @param size how much larger than its own size all of it is drawn
 */
export function shiftOf(letter: Letter, letters: readonly Letter[], apart: number, size = 1): number {
  const phases = letters.filter((it) => it !== "N");
  const outermost = ((phases.length - 1) / 2) * apart;
  if (letter === "N") return phases.length === 0 ? 0 : outermost + NEUTRAL_APART * size;
  const nth = phases.indexOf(letter);
  return nth === -1 ? 0 : outermost - nth * apart;
}

/** How far apart conductors run through a point: as the line does, or where symbols hang on them as these do. */
export const apartAt = (hasSymbols: boolean, letters: readonly Letter[], size: number): number =>
  size *
  (letters.includes("1") || letters.includes("2") ? LEGS_APART : hasSymbols ? HANGING_APART : LINE_APART);

/** How far apart the conductors of an element run along its body. */
function apartIn(element: CircuitElement & { readonly phases: string }, { hangs, text }: LaidPath): number {
  const size = symbolSizeAt(text);
  if (isLegs(element.phases)) return LEGS_APART * size;
  if (!("from" in element)) return FEET_APART * size;
  if (!hangs || isLine(element)) return LINE_APART * size;
  return (isAbreast(element) ? HANGING_APART : LINE_APART) * size;
}

type TwoEnded = Extract<CircuitElement, { from: string }>;
type OneEnded = Extract<CircuitElement, { at: string }>;

/** A conductor's way up to the symbol and on from it. */
interface Halves {
  readonly near: readonly Spot[];
  readonly far: readonly Spot[];
  readonly centre: Spot;
}

/** Draws an element with two ends as it is laid out: each conductor square and beside the others all along. */
export function drawLaid(pen: Pen, element: TwoEnded, route: Route, around: Surroundings) {
  const path = route.laid!;
  const own = lettersOf(element.phases);
  const size = symbolSizeAt(path.text);
  const apart = apartIn(element, path);
  const isRun = isConductor(element);
  const far = [...lettersAtEnd(element, "to")].sort();
  const swap = CROSSING * size;
  const hasNeutral =
    isRun &&
    element.neutral &&
    around.hasNeutral("from") &&
    around.hasNeutral("to") &&
    !isLegs(element.phases);
  const letters: Letter[] = hasNeutral ? [...own, "N"] : [...own];
  const shift = (letter: Letter, among: readonly Letter[] = letters) => shiftOf(letter, among, apart, size);
  if (isRun) {
    const broken = apartOf(element);
    const lane = path.hangs ? shift : lineLanes(path, letters, around);
    for (const letter of letters) {
      // Where phases are swapped, each goes over in the middle to where the letter that it goes on as lies.
      const beyond = letterAt(element, "to", letter);
      const aside = beyond === letter ? lane(letter) : shift(beyond, hasNeutral ? [...far, "N"] : far);
      const gap = broken.includes(letter) ? BROKEN * size : beyond === letter ? 0 : swap;
      const { near, centre } = halvesOf(path, letter, lane(letter), around, gap);
      const { far: on } = halvesOf(path, beyond, aside, around, gap);
      const [first, last] = [around.look("from", letter), around.look("to", beyond)];
      if (broken.includes(letter)) {
        const hang = (by: number) =>
          spotOf(
            centre.x + (path.body.x * by + pen.across.x * 11) * size,
            centre.y + (path.body.y * by + pen.across.y * 11) * size,
          );
        pen.strand(letter, first, around.feed, ...near, hang(-9));
        pen.strand(beyond, last, around.feed, hang(9), ...on);
      } else if (first === last && beyond === letter)
        pen.strand(letter, first, around.feed, ...near, ...on.slice(1));
      else {
        pen.strand(letter, first, around.feed, ...near);
        pen.strand(beyond, last, around.feed, ...(beyond === letter ? [] : near.slice(-1)), ...on);
      }
    }
    return;
  }
  const byPole = standsAbreast(element);
  const isUnits = isBank(element) && path.hangs;
  const half = (deviceOf(element.kind).symbolReach ?? SYMBOL_REACH) * size;
  const reach = byPole || isUnits || isTransformer(element) ? Infinity : 16 * size;
  const kept = (by: number) => Math.max(-reach, Math.min(reach, by));
  for (const letter of own) {
    const { near, centre } = toSymbol(path, "from", letter, kept(shift(letter)), around, half);
    pen.strand(letter, around.look("from", letter), around.feed, ...near);
    if (byPole) pen.pole(poleOf(element, letter), letter, around, centre, size);
    else if (isUnits)
      pen.symbol(symbolOf({ ...element, connection: "single" } as CircuitElement), centre, size);
  }
  for (const letter of far) {
    const by = isLegs(far.join("")) ? shiftOf(letter, far, LEGS_APART * size) : shiftOf(letter, far, apart);
    const from = own.find((it) => letterAt(element, "to", it) === letter) ?? letter;
    const goesOver = byPole && from !== letter;
    const { far: on } = toSymbol(path, "to", letter, kept(by), around, goesOver ? half + 2 * swap : half);
    const [foot] = goesOver ? halvesOf(path, from, shift(from), around, half).far : [];
    pen.strand(letter, around.look("to", letter), around.feed, ...(foot === undefined ? [] : [foot]), ...on);
  }
  if (route.alt !== undefined) thirdEnd(pen, lettersAtEnd(element, "alt"), route, around);
  neutralPast(pen, element, path, around);
  if (!byPole && !isUnits) pen.symbol(towardThirdEnd(symbolOf(element), pen), route.centre, size);
  if (byPole && "gang" in element && element.gang && own.length > 1) {
    const at = (letter: Letter) => halvesOf(path, letter, shift(letter), around, 0).centre;
    const [one, other] = [at(own[0]!), at(own.at(-1)!)];
    pen.shapes.push({
      shape: "stroke",
      points: [one.x, one.y, other.x, other.y],
      closed: false,
      filled: false,
      dashed: true,
    });
  }
}

/** A symbol with its third contact on the side of its third end. */
export const towardThirdEnd = (marks: readonly Mark[], { thirdSide }: Pen): readonly Mark[] =>
  thirdSide === 1 ? marks : marks.map(mirrored);

/** Whether a neutral runs past a device: that of a line which goes on behind it. With a gap there it would look open itself. */
const hasNeutralPast = (element: TwoEnded, path: LaidPath, around: Surroundings): boolean =>
  element.neutral &&
  !isConductor(element) &&
  !("alt" in element) &&
  !path.isWithin &&
  !isLegs(element.phases) &&
  around.hasNeutral("from") &&
  around.hasNeutral("to") &&
  // Around what stands between, or from one structure to another, there is no room for it.
  (path.hangs
    ? path.spots.length <= 3 && path.ends.to?.isOnLine === false
    : path.spots.length === 2 && path.ends.from.isOnLine && path.ends.to?.isOnLine === true);

/** How far from the middle of a device in the line, whose blade may stand open, the neutral passes it; else nothing. */
export function neutralOver(element: TwoEnded, path: LaidPath, around: Surroundings): number {
  if (path.hangs || !hasNeutralPast(element, path, around)) return 0;
  const { length } = lettersOf(element.phases);
  return (((length - 1) / 2) * LINE_APART + PAST_ASIDE) * symbolSizeAt(path.text);
}
/** A neutral steps so far aside of a device in its line, and so far before and after its middle [units]. */
const PAST_ASIDE = 25;
const PAST_ALONG = 20;
const PAST_BEGIN = 30;

function neutralPast(pen: Pen, element: TwoEnded, path: LaidPath, around: Surroundings) {
  if (!hasNeutralPast(element, path, around)) return;
  const { body, centre } = path;
  const { out, size } = runningAt(path, "from", around);
  const placeAt = (end: "from" | "to") => {
    const { axis, letters, spot } = runningAt(path, end, around);
    return axis.isOnLine
      ? spot("N")
      : moved(spot("N"), body, -shiftOf("N", letters, LINE_APART * size, size));
  };
  const [first, last] = [placeAt("from"), placeAt("to")];
  /** As far across the body as one spot, and along it as another. */
  const meet = (level: Spot, along: Spot) =>
    body.y === 0 ? spotOf(along.x, level.y) : spotOf(level.x, along.y);
  const aside = (along: number, by: number) => moved(moved(centre, body, along * size), out, by);
  const over = neutralOver(element, path, around);
  const corner = meet(last, first);
  const spots = path.hangs
    ? [corner]
    : [
        meet(first, aside(-PAST_BEGIN, 0)),
        aside(-PAST_ALONG, over),
        aside(PAST_ALONG, over),
        meet(last, aside(PAST_BEGIN, 0)),
      ];
  pen.strand("N", around.look("from", "N"), around.feed, first, ...spots, last);
}

/** From a third end square to its symbol, whose side it comes in at. */
function thirdEnd(pen: Pen, own: readonly Letter[], { centre, alt, laid }: Route, around: Surroundings) {
  const isUpright = Math.abs(laid!.body.y) > 0.5;
  const side = Math.sign(isUpright ? alt!.x - centre.x : alt!.y - centre.y) || 1;
  const size = symbolSizeAt(laid!.text);
  const edge = side * 18 * size;
  for (const letter of own) {
    const by = shiftOf(letter, own, apartAt(false, own, size));
    const into = Math.max(-14 * size, Math.min(14 * size, by)) * side;
    const spots = isUpright
      ? [
          spotOf(alt!.x + by, alt!.y),
          spotOf(alt!.x + by, centre.y - into),
          spotOf(centre.x + edge, centre.y - into),
        ]
      : [
          spotOf(alt!.x, alt!.y + by),
          spotOf(centre.x - into, alt!.y + by),
          spotOf(centre.x - into, centre.y + edge),
        ];
    pen.strand(letter, around.look("alt", letter), 0, ...spots);
  }
}

/** Draws what stands at one point as it is laid out. */
export function drawLaidAt(pen: Pen, element: OneEnded, route: Route, around: Surroundings) {
  const path = route.laid!;
  const own = lettersOf(element.phases);
  const size = symbolSizeAt(path.text);
  for (const letter of own) {
    const by = isSupply(element)
      ? shiftOf(letter, own, LINE_APART * size)
      : shiftOf(letter, own, apartIn(element, path));
    const { near } = halvesOf(
      path,
      letter,
      Math.max(-14 * size, Math.min(14 * size, by)),
      around,
      (deviceOf(element.kind).symbolReach ?? SYMBOL_REACH) * size,
    );
    pen.strand(letter, around.look("at", letter), 0, ...near);
  }
  if (isSupply(element) && around.hasNeutral("at") && !isLegs(element.phases))
    starPoint(pen, path, route.centre, around);
  if (isGroundSet(element) && element.to !== "earth" && around.hasNeutral("at") && path.ends.from.isOnLine)
    tieToNeutral(pen, path, own, around);
  symbolAt(pen, element, around, size);
}

/** The symbol of a thing at one point; a customer's that is dead says that a machine may stand there. */
export function symbolAt(pen: Pen, element: OneEnded, { mayStart }: Surroundings, size: number) {
  pen.symbol([...symbolOf(element), ...(mayStart ? [maybeMachine()] : [])], pen.route.centre, size);
}

/** The neutral of a line comes out of the middle of its source. */
function starPoint(pen: Pen, path: LaidPath, centre: Spot, around: Surroundings) {
  const { at, spot } = runningAt(path, "from", around);
  const begin = spot("N");
  const beside = spotOf(centre.x + begin.x - at.x, centre.y + begin.y - at.y);
  pen.strand("N", around.look("at", "N"), 0, begin, beside, centre);
}

/** What a ground set ties to the neutral is seen to be: from the phase that is nearest to that, with a dot on both. */
function tieToNeutral(pen: Pen, path: LaidPath, own: readonly Letter[], around: Surroundings) {
  const { at, axis, out, size, by, spot, bridge } = runningAt(path, "from", around);
  const nearest = own.reduce((one, other) => (by(other) > by(one) ? other : one));
  const [x, y] = (pen.shapes[own.indexOf(nearest)] as Strand).points.slice(-2) as [number, number];
  const along = (x - at.x) * axis.way.x + (y - at.y) * axis.way.y;
  const [phase, neutral] = [moved(spot(nearest), axis.way, along), moved(spot("N"), axis.way, along)];
  const look = around.look("at", nearest);
  pen.strand("N", around.look("at", "N"), 0, spot("N"), neutral);
  pen.strand(nearest, look, 0, phase, ...bridge(nearest, phase, out, axis.way), neutral);
  pen.shapes.push(...[phase, neutral].map((it) => dotAt(it, size, look)));
}

/** The element as it stands on one phase alone. */
export function poleOf(element: TwoEnded, letter: Letter): TwoEnded {
  const only = (phases: string) => (phases.includes(letter) ? letter : "");
  return {
    ...element,
    phases: letter,
    ...("open" in element ? { open: only(element.open) } : {}),
    ...("blown" in element ? { blown: only(element.blown), removed: only(element.removed) } : {}),
  };
}

/**
 * The way of one conductor, beside the middle by `by`, with a gap of twice `half` at the symbol. Up to where it turns to
 * its symbol it stays beside the others of its line as it runs there.
 */
function halvesOf(path: LaidPath, letter: Letter, by: number, around: Surroundings, half: number): Halves {
  const { spots, bodyAt, centre } = path;
  const ways = spots.slice(1).map((it, nth) => wayOf(spots[nth]!, it));
  const side = (nth: number) => sideOf(ways[nth]!, path.hand);
  const bys = ways.map((_, nth) => besideOn(path, nth, letter, by, around));
  const corners = spots.map((spot, nth) => {
    if (nth === 0 || nth === spots.length - 1) return spot;
    const [one, other] = [side(nth - 1), side(nth)];
    const isStraight = one.x === other.x && one.y === other.y;
    const before = moved(spot, one, bys[nth - 1]!);
    return isStraight ? before : moved(before, other, bys[nth]!);
  });
  const begin = meeting(path, "from", letter, bys[0]!, ways[0]!, around);
  const finish =
    path.ends.to === undefined
      ? [moved(spots.at(-1)!, side(ways.length - 1), by)]
      : meeting(path, "to", letter, bys.at(-1)!, scaled(ways.at(-1)!, -1), around).reverse();
  const body = side(bodyAt);
  const middle = moved(centre, body, by);
  const along = ways[bodyAt]!;
  const inner = corners.slice(1, -1);
  return {
    near: [...begin, ...inner.slice(0, bodyAt), moved(middle, along, -half)],
    far: [moved(middle, along, half), ...inner.slice(bodyAt), ...finish],
    centre: middle,
  };
}

/**
 * The way of one conductor of a device, which comes to its symbol so far beside the middle. In the line of a point with more
 * conductors than it has itself each keeps its place up to the symbol: in the middle it would lie on another one.
 */
function toSymbol(
  path: LaidPath,
  end: "from" | "to",
  letter: Letter,
  by: number,
  around: Surroundings,
  half: number,
): Halves {
  const straight = halvesOf(path, letter, by, around, half);
  const isAtSymbol = end === "from" ? path.bodyAt === 0 : path.bodyAt === path.spots.length - 2;
  if (path.hangs || !isAtSymbol) return straight;
  const lane = asAt(path, end, letter, path.body, around) ?? by;
  const apart = Math.abs(lane - by);
  if (apart < 0.5) return straight;
  const { near, far } = halvesOf(path, letter, lane, around, half + apart);
  return { ...straight, near: [...near, straight.near.at(-1)!], far: [straight.far[0]!, ...far] };
}

/**
 * How far beside the middle of its longest stretch each conductor of a line runs. Where fewer go on than run through the
 * point that they come from, each keeps the place that it has there: in the middle it would lie on another one.
 */
export function lineLanes(
  path: LaidPath,
  letters: readonly Letter[],
  around: Surroundings,
): (letter: Letter) => number {
  const size = symbolSizeAt(path.text);
  const apart = LINE_APART * size;
  const meetsAt = { from: path.bodyAt === 0, to: path.bodyAt === path.spots.length - 2 };
  const ends = (["from", "to"] as const)
    .filter((end) => meetsAt[end] && around.letters(end).length > letters.length)
    .sort((one, other) => around.letters(other).length - around.letters(one).length);
  return (letter) => {
    for (const end of ends) {
      const by = asAt(path, end, letter, path.body, around);
      if (by !== undefined) return by;
    }
    return shiftOf(letter, letters, apart, size);
  };
}

/** How far beside the middle of a stretch a conductor runs that runs `by` beside that of the longest one. */
export function besideOn(
  path: LaidPath,
  nth: number,
  letter: Letter,
  by: number,
  around: Surroundings,
): number {
  const { spots, bodyAt } = path;
  if (nth === bodyAt) return by;
  const way = wayOf(spots[nth]!, spots[nth + 1]!);
  return asAt(path, nth < bodyAt ? "from" : "to", letter, way, around) ?? by;
}

/**
 * How far beside a stretch a conductor runs by what runs through a point at its end: along the line as it does there, and
 * square off what hangs there beside the others that go on from it.
 */
function asAt(
  path: LaidPath,
  end: "from" | "to",
  letter: Letter,
  way: Spot,
  around: Surroundings,
): number | undefined {
  const { ends, hand, text } = path;
  const axis = ends[end];
  const letters = around.letters(ends.isAt ? "at" : end);
  if (axis === undefined || !letters.includes(letter)) return undefined;
  const size = symbolSizeAt(text);
  const isAlong = Math.abs(axis.way.x * way.x + axis.way.y * way.y) > 0.5;
  if (!axis.isOnLine && !isAlong) return shiftOf(letter, letters, besideAt(letters) * size, size);
  if (!axis.isOnLine || !isAlong) return undefined;
  const { out, by } = runningAt(path, end, around);
  const beside = sideOf(way, hand);
  return by(letter) * (out.x * beside.x + out.y * beside.y);
}

/** Between conductors that go on square to what hangs at a point: the symbol under it begins near. */
const besideAt = (letters: readonly Letter[]): number =>
  isLegs(letters.filter((it) => it !== "N").join("")) ? LEGS_APART : FEET_APART;

/** How a conductor leaves a point: straight on along its line, or square off it, over the others. */
function meeting(
  path: LaidPath,
  end: "from" | "to",
  letter: Letter,
  by: number,
  way: Spot,
  around: Surroundings,
): Spot[] {
  const { at, axis, size, spot, bridge } = runningAt(path, end, around);
  const own = spot(letter);
  const beside = scaled(sideOf(way, end === "from" ? path.hand : -path.hand), 1);
  const isAlong = Math.abs(axis.way.x * way.x + axis.way.y * way.y) > 0.5;
  if (isAlong) {
    const target = moved(at, beside, by);
    const apartBy = Math.hypot(own.x - target.x, own.y - target.y);
    if (apartBy < 0.5) return [own];
    // A neutral that comes on the other side of its line ends there: nothing crosses the line for it.
    if (letter === "N" && (own.x - at.x) * (target.x - at.x) + (own.y - at.y) * (target.y - at.y) < 0)
      return [target];
    return [own, moved(own, way, 4), moved(target, way, 4 + Math.min(apartBy, 16 * size))];
  }
  const corner = moved(own, beside, by);
  if (letter === "N") return [corner];
  return [
    own,
    ...(by === 0 ? [] : [corner]),
    ...(axis.isOnLine ? bridge(letter, corner, way, outward(beside, by)) : []),
  ];
}

/** The conductors that run through the point at an end: where each has its place, and how one leaves over the others. */
function runningAt({ spots, ends, text }: LaidPath, end: "from" | "to", around: Surroundings) {
  const at = end === "from" ? spots[0]! : spots.at(-1)!;
  const axis = ends[end]!;
  const letters = around.letters(ends.isAt ? "at" : end);
  const size = symbolSizeAt(text);
  const apart = apartAt(axis.isAbreast, letters, size);
  const out = scaled(sideOf(axis.way, ends.hand), 1);
  const by = (letter: Letter) => shiftOf(letter, letters, apart, size);
  return {
    at,
    axis,
    letters,
    size,
    out,
    by,
    spot: (letter: Letter) => moved(at, out, by(letter)),
    /** over all that one crosses which sets out from its place in some way, on one side of that */
    bridge(letter: Letter, from: Spot, way: Spot, side: Spot): Spot[] {
      const crossed = letters
        .map((it) => (it === "N" ? 0 : (by(it) - by(letter)) * (out.x * way.x + out.y * way.y)))
        .filter((off) => off > 1);
      const [first, last] = [Math.min(...crossed), Math.max(...crossed)];
      return crossed.length === 0 ? [] : hopOver(from, way, first, last, HOP * size, side);
    },
  };
}

/** Away from the conductors that go the same way beside it: toward them a bridge would lie on the next one. */
const outward = (beside: Spot, by: number): Spot => scaled(beside, by > 0 ? 1 : -1);

/** One bridge over all that is crossed from so far on the way to so far: one for each would look like a coil. */
function hopOver(from: Spot, way: Spot, first: number, last: number, radius: number, out: Spot): Spot[] {
  return [-90, -45, 0, 0, 45, 90].map((degrees, nth) => {
    const angle = (degrees * Math.PI) / 180;
    const along = (nth < 3 ? first : last) + radius * Math.sin(angle);
    return moved(moved(from, way, along), out, radius * Math.cos(angle));
  });
}

const wayOf = (a: Spot, b: Spot): Spot => {
  const length = Math.hypot(b.x - a.x, b.y - a.y) || 1;
  return spotOf((b.x - a.x) / length, (b.y - a.y) / length);
};

/** The side of a way on which its first conductor runs. */
const sideOf = ({ x, y }: Spot, hand: number): Spot => spotOf(hand * y + 0, -hand * x + 0);

const moved = ({ x, y }: Spot, way: Spot, by: number): Spot => spotOf(x + way.x * by, y + way.y * by);

const scaled = ({ x, y }: Spot, by: number): Spot => spotOf(x * by, y * by);

import {
  apartOf,
  type CircuitElement,
  deviceOf,
  type End,
  fromThirdEnd,
  isBeside,
  isConductor,
  isCustomers,
  isLine,
  isSupply,
  letterAt,
  lettersAtEnd,
  positionOf,
  ratingOf,
  standsAbreast,
  SYMBOL_REACH,
  symbolOf,
} from "../devices";
import { type Letter, lettersOf, type ElementId, type Owner, say } from "../terms";
import { isNamed, isTightAt, STATE_AND_LETTER, symbolSizeAt, wrapped } from "./labels";
import {
  besideOn,
  CROSSING,
  drawLaid,
  drawLaidAt,
  lineLanes,
  neutralOver,
  poleOf,
  shiftOf,
  symbolAt,
  towardThirdEnd,
} from "./laid";
import { isAbreast, isLegs, LABEL_BEFORE, LINE_APART, spreadOf } from "./layout/inside";
import type { Looks } from "./looks";
import { badgeOf, badgeOfAll, worstOf } from "./palettes";
import { type DrawnPiece, flat, Pen, type Surroundings } from "./pen";
import { type Route, spotOf, SYMBOL } from "./routes";
import { boxOf, type Look, type Note, type Piece, type Spot, symbolBoxOf } from "./shapes";

/** Room between two conductors of a line, and between two blades side by side. */
const LANE = 10;
const BLADES = 17;
/** How much smaller the symbols of blades side by side are. */
const ABREAST_SCALE = 0.7;
/** From this length on, a run of line carries a badge; the next one follows after `BADGE_EVERY`. */
const BADGE_FROM = 44;
const BADGE_EVERY = 170;
/** Where something stands in the middle of a line, its state stands so far before or after that, still on the line [px]. */
const ASIDE = 16;

type TwoEnded = Extract<CircuitElement, { from: string }>;
type Nearby = Extract<CircuitElement, { kind: "nearby" }>;
type OneEnded = Extract<CircuitElement, { at: string }>;

/**
 * Everything that is drawn for one element. Its shapes and notes are made when they are asked for: of a large drawing
 * most are out of sight, or too small to show.
 *
 * @param place where an element with this route was found to lie before
 */
export function pieceOf(
  id: ElementId,
  element: CircuitElement,
  route: Route,
  around: Surroundings,
  place: Pick<Piece, "box" | "spine"> = placeOf(element, route),
): Piece {
  const owner: Owner = { of: "element", id };
  const { box, spine } = place;
  const overall = overallOf(element, (end, letter) => around.look(end, letter));
  const within = route.laid?.isWithin ?? false;
  return lazyPiece({ owner, spine, box, overall, within }, () => drawnPiece(owner, element, route, around));
}

function placeOf(element: CircuitElement, route: Route): Pick<Piece, "box" | "spine"> {
  const spine = flat(spineOf(element, route));
  return { spine, box: boxOf(spine, route.laid === undefined ? 30 : 22 * symbolSizeAt(route.laid.text)) };
}

/** A piece whose shapes and notes are made when the first of them is asked for. */
export function lazyPiece(
  { owner, spine, box, overall, within = false }: Omit<Piece, "shapes" | "notes">,
  draw: () => DrawnPiece,
): Piece {
  let drawn: DrawnPiece | undefined;
  return {
    owner,
    get shapes() {
      return (drawn ??= draw()).shapes;
    },
    get notes() {
      return (drawn ??= draw()).notes;
    },
    box,
    overall,
    spine,
    within,
  };
}

/** A badge stands along an element exactly where this is true: its points then need none. */
export function hasBadge(element: TwoEnded, route: Route, looks: Looks): boolean {
  if (!isConductor(element) || (!isLine(element) && route.laid !== undefined)) return false;
  if (bodyLength(route) < BADGE_FROM || (route.laid !== undefined && isLegs(element.phases))) return false;
  const isTold = (letter: Letter) => badgeOf(looks.at(element.from, letter)) !== "";
  const hasNeutral =
    element.neutral && [element.from, element.to].every((it) => looks.lettersAt(it).includes("N"));
  return lettersOf(element.phases).some(isTold) || (hasNeutral && isTold("N"));
}

const bodyLength = ({ start, end }: Route): number => Math.hypot(end.x - start.x, end.y - start.y);

function spineOf(element: CircuitElement, route: Route): readonly Spot[] {
  const { from, start, end, to, along, centre, laid } = route;
  // The route is that of the span beside which it runs.
  if (isBeside(element)) return nearbySpots(element, route);
  if (laid !== undefined) return laid.spots;
  if ("from" in element) return [from, start, end, to!];
  return [from, centre, spotOf(centre.x + along.x * 12, centre.y + along.y * 12)];
}

function nearbySpots({ relation }: Nearby, route: Route): readonly [Spot, Spot] {
  const { centre, along, laid } = route;
  const length = bodyLength(route);
  const size = laid === undefined ? 1 : symbolSizeAt(laid.text);
  const beside = (forward: number, across: number) =>
    spotOf(centre.x + along.x * forward - along.y * across, centre.y + along.y * forward + along.x * across);
  const [over, slant, off] = [Math.max(58, 34 * size), Math.max(14, 8 * size), 34 * size];
  return relation === "crossing"
    ? [beside(length / 4 + slant, -over), beside(length / 4 - slant, over)]
    : [beside(-length / 2, -off), beside(length / 2, -off)];
}

/** The look that wins when an element is too small to show its conductors one by one. */
export function overallOf(element: CircuitElement, lookAt: Surroundings["look"]): Look {
  if ("from" in element) return worstOf(lettersOf(element.phases).map((it) => lookAt("from", it)));
  if ("at" in element) return worstOf(lettersOf(element.phases).map((it) => lookAt("at", it)));
  return element.on ? "energized" : "isolated";
}

function drawnPiece(owner: Owner, element: CircuitElement, route: Route, around: Surroundings): DrawnPiece {
  if ("from" in element) return twoEndedPiece(owner, element, route, around);
  if ("at" in element) return oneEndedPiece(owner, element, route, around);
  return nearbyPiece(owner, element, route, around);
}

interface Lane {
  readonly letter: Letter;
  readonly across: number;
}

const lanesOf = (letters: readonly Letter[], apart: number): Lane[] =>
  letters.map((letter, k) => ({ letter, across: (k - (letters.length - 1) / 2) * apart }));

function twoEndedPiece(owner: Owner, element: TwoEnded, route: Route, around: Surroundings): DrawnPiece {
  const pen = new Pen(owner, route);
  if (route.laid !== undefined) {
    const { isByThird } = route.laid;
    const [told, about] = isByThird ? [fromThirdEnd(element), fromThere(around)] : [element, around];
    drawLaid(pen, told, route, about);
    laidNotes(pen, told, about);
    return pen.drawn;
  }
  const own = lettersOf(element.phases);
  const isRun = isConductor(element);
  const bladeByBlade = standsAbreast(element);
  const apart = bladeByBlade && own.length > 1 ? BLADES : LANE;
  const lanes = lanesOf(own, apart);
  // Where phases are swapped, each goes over to where the letter that it goes on as lies.
  const onward = lanesOf([...lettersAtEnd(element, "to")].sort(), apart);
  const beyondOf = (lane: Lane): Lane =>
    onward.find(({ letter }) => letter === letterAt(element, "to", lane.letter)) ?? lane;
  const outermost = lanes.at(-1)?.across ?? 0;
  const neutralLane: Lane = {
    letter: "N",
    across: outermost + (isRun ? 9 : bladeByBlade ? 13 : 17 - outermost),
  };
  const hasNeutral = element.neutral && around.hasNeutral("from") && around.hasNeutral("to");

  if (isRun) {
    const broken = apartOf(element);
    for (const lane of hasNeutral ? [...lanes, neutralLane] : lanes)
      run(pen, lane, beyondOf(lane), broken, around);
    runNotes(pen, lanes, onward, hasNeutral ? neutralLane : undefined, around);
  } else if (bladeByBlade) {
    for (const lane of lanes) oneBlade(pen, element, lane, beyondOf(lane), lanes.length, around);
    if ("gang" in element && element.gang && lanes.length > 1)
      pen.shapes.push({
        shape: "stroke",
        points: flat([
          pen.beside(route.centre, 0, lanes[0]!.across),
          pen.beside(route.centre, 0, lanes.at(-1)!.across),
        ]),
        closed: false,
        filled: false,
        dashed: true,
      });
    bladeLetters(pen, lanes, onward, around);
  } else {
    intoSymbol(pen, lanes, "from", around, reachOf(element));
    intoSymbol(pen, onward, "to", around, reachOf(element));
    pen.symbol(towardThirdEnd(symbolOf(element), pen), route.centre, route.scale);
    if (route.alt !== undefined) {
      const side = pen.beside(route.centre, 0, pen.thirdSide * 20 * route.scale);
      for (const letter of lettersAtEnd(element, "alt"))
        pen.strand(letter, around.look("alt", letter), 0, route.alt, side);
    }
  }
  // A neutral that is tied to earth runs past every device alike, and would only clutter: it is drawn on the spans.
  const neutralLooks = [around.look("from", "N"), around.look("to", "N")];
  if (hasNeutral && !isRun && neutralLooks.some((it) => it !== "neutral" && it !== "unknown"))
    run(pen, neutralLane, neutralLane, "", around);

  const outer = Math.abs(lanes[0]?.across ?? 0);
  const reach = (isRun ? outer + 4 : bladeByBlade && lanes.length > 1 ? outer + 11 : 14) + 4;
  positionNotes(pen, element, reach + 2, around);
  pen.note("elementLabel", labelOf(element, around), "ink", route.centre, {
    sides: pen.sides(),
    gap: 3,
    reach,
  });
  return pen.drawn;
}

/** What is asked about a thing that is told from its third end. */
function fromThere(around: Surroundings): Surroundings {
  const asked = (end: End) => (end === "from" ? "alt" : end === "alt" ? "from" : end);
  return {
    ...around,
    look: (end, letter) => around.look(asked(end), letter),
    letters: (end) => around.letters(asked(end)),
    hasNeutral: (end) => around.hasNeutral(asked(end)),
  };
}

/** One conductor of a span or a lead, in one piece or with a gap where it is broken. */
function run(pen: Pen, { letter, across }: Lane, beyond: Lane, broken: string, around: Surroundings) {
  const { from, start, end, to, centre } = pen.route;
  const near = around.look("from", letter);
  const far = around.look("to", beyond.letter);
  const feed = around.feed;
  const [first, last] = [pen.beside(start, 0, across), pen.beside(end, 0, beyond.across)];
  if (broken.includes(letter)) {
    pen.strand(
      letter,
      near,
      feed,
      from,
      first,
      pen.beside(centre, -14, across),
      pen.beside(centre, -9, across + 9),
    );
    pen.strand(
      beyond.letter,
      far,
      feed,
      pen.beside(centre, 9, beyond.across + 9),
      pen.beside(centre, 14, beyond.across),
      last,
      to!,
    );
    return;
  }
  if (near === far && letter === beyond.letter) return pen.strand(letter, near, feed, from, first, last, to!);
  const middle = pen.beside(centre, 0, (across + beyond.across) / 2);
  pen.strand(letter, near, feed, from, first, pen.beside(centre, -CROSSING, across), middle);
  pen.strand(beyond.letter, far, feed, middle, pen.beside(centre, CROSSING, beyond.across), last, to!);
}

/** The letter of a conductor, in the look that it has at an end. */
function sayLetter(
  pen: Pen,
  letter: Letter,
  end: Parameters<Surroundings["look"]>[0],
  around: Surroundings,
  at: Spot,
  ...further: Note["sides"]
) {
  pen.note("letter", letter, around.look(end, letter), at, { sides: [[0, 0], ...further] });
}

/** Letters at both ends of a run and badges along it: one for all where they agree, else one for each. */
function runNotes(
  pen: Pen,
  lanes: readonly Lane[],
  onward: readonly Lane[],
  neutral: Lane | undefined,
  around: Surroundings,
) {
  const { start, end, centre } = pen.route;
  const length = bodyLength(pen.route);
  const [all, there] = [lanes, onward].map((it) => (neutral === undefined ? it : [...it, neutral]));
  if (length >= 56)
    for (const [nth, { letter, across }] of all!.entries()) {
      // Side by side they would touch: each stands a step behind the one before it, or where there is no room every second.
      const back = 14 + 20 * (length < 48 * all!.length ? nth % 2 : nth);
      // Those that find no room at one end find it at the other.
      const other = there!.at(-1 - nth)!;
      sayLetter(pen, letter, "from", around, pen.beside(start, back, across));
      sayLetter(pen, other.letter, "to", around, pen.beside(end, -back, other.across));
    }
  if (length < BADGE_FROM) return;
  const looks = lanes.map(({ letter }) => around.look("from", letter));
  const count = Math.max(1, Math.floor(length / BADGE_EVERY));
  const neutralLook = neutral === undefined ? "neutral" : around.look("from", "N");
  for (let nth = 0; nth < count; nth++) {
    const along = ((nth + 0.5) / count - 0.5) * length;
    if (looks.every((it) => it === looks[0]))
      pen.note("badge", badgeOf(looks[0]!), looks[0]!, pen.beside(centre, along, 0));
    else
      lanes.forEach(({ letter, across }, k) => {
        const look = looks[k]!;
        const text = badgeOf(look) === "" ? "" : `${letter} ${badgeOf(look)}`;
        pen.note("badge", text, look, pen.beside(centre, along + (k - (lanes.length - 1) / 2) * 44, across));
      });
    if (neutral !== undefined && badgeOf(neutralLook) !== "")
      pen.note(
        "badge",
        `N ${badgeOf(neutralLook)}`,
        neutralLook,
        pen.beside(centre, along - 44, neutral.across),
      );
  }
}

/** One pole of a device: its own small symbol, with its conductor up to it on both sides. */
function oneBlade(
  pen: Pen,
  element: TwoEnded,
  { letter, across }: Lane,
  beyond: Lane,
  count: number,
  around: Surroundings,
) {
  const { from, start, end, to, centre } = pen.route;
  const scale = pen.route.scale * (count > 1 ? ABREAST_SCALE : 1);
  const half = reachOf(element) * scale;
  pen.strand(
    letter,
    around.look("from", letter),
    around.feed,
    from,
    pen.beside(start, 0, across),
    pen.beside(centre, -half, across),
  );
  pen.strand(
    beyond.letter,
    around.look("to", beyond.letter),
    around.feed,
    pen.beside(centre, half, across),
    pen.beside(end, 0, beyond.across),
    to!,
  );
  pen.pole(poleOf(element, letter), letter, around, pen.beside(centre, 0, across), scale);
}

function bladeLetters(pen: Pen, lanes: readonly Lane[], onward: readonly Lane[], around: Surroundings) {
  const { start, end, centre, scale } = pen.route;
  const half = (SYMBOL / 2) * scale * (lanes.length > 1 ? ABREAST_SCALE : 1);
  const room = Math.hypot(centre.x - start.x, centre.y - start.y) - half;
  if (room < 24) return;
  for (const { letter, across } of lanes) {
    sayLetter(pen, letter, "from", around, pen.beside(start, 8, across));
  }
  for (const { letter, across } of onward) sayLetter(pen, letter, "to", around, pen.beside(end, -8, across));
}

/** The conductors of one end, side by side along the body and together into the symbol. */
function intoSymbol(
  pen: Pen,
  lanes: readonly Lane[],
  end: "from" | "to",
  around: Surroundings,
  reach: number,
) {
  const { route } = pen;
  const outward = end === "from" ? -1 : 1;
  const half = reach * route.scale;
  const body = end === "from" ? route.start : route.end;
  const room = Math.hypot(route.centre.x - body.x, route.centre.y - body.y) - half;
  for (const { letter, across } of lanes) {
    const spots = [
      end === "from" ? route.from : route.to!,
      pen.beside(body, 0, across),
      ...(room > 12 ? [pen.beside(route.centre, outward * (half + 10), across)] : []),
      pen.beside(route.centre, outward * half, 0),
    ];
    pen.strand(letter, around.look(end, letter), around.feed, ...(end === "from" ? spots : spots.reverse()));
    if (room > 34) sayLetter(pen, letter, end, around, pen.beside(body, -outward * 8, across));
  }
}

function oneEndedPiece(owner: Owner, element: OneEnded, route: Route, around: Surroundings): DrawnPiece {
  const pen = new Pen(owner, route);
  if (route.laid !== undefined) {
    drawLaidAt(pen, element, route, around);
    laidNotes(pen, element, around);
    return pen.drawn;
  }
  const lanes = lanesOf(lettersOf(element.phases), 6);
  const foot = pen.beside(route.centre, -reachOf(element), 0);
  for (const { letter, across } of lanes)
    pen.strand(letter, around.look("at", letter), 0, route.from, pen.beside(route.from, 7, across), foot);
  symbolAt(pen, element, around, 1);
  positionNotes(pen, element, 18, around);
  const { along, across } = { along: route.along, across: pen.across };
  pen.note("elementLabel", labelOf(element, around), "ink", route.centre, {
    sides: [
      [along.x, along.y],
      [-across.x, -across.y],
      [across.x, across.y],
      [along.x - across.x, along.y - across.y],
      [along.x + across.x, along.y + across.y],
    ],
    gap: 3,
    reach: 17,
  });
  return pen.drawn;
}

/** Another circuit, drawn over or beside the span that it is close to. */
function nearbyPiece(owner: Owner, element: Nearby, route: Route, around: Surroundings): DrawnPiece {
  const pen = new Pen(owner, route);
  const look: Look = element.on ? "energized" : "isolated";
  const spots = nearbySpots(element, route);
  pen.strand("A", look, 0, ...spots);
  pen.note(
    "badge",
    badgeOf(look),
    look,
    spotOf((spots[0].x + spots[1].x * 2) / 3, (spots[0].y + spots[1].y * 2) / 3),
  );
  const place = { sides: [...pen.sides()], gap: 4, reach: 4 };
  if (route.laid === undefined) pen.note("elementLabel", labelOf(element, around), "ink", spots[0], place);
  // Another circuit is a hazard: what it is, is never left out.
  else
    pen.note("count", labelOf(element, around), "ink", spots[0], {
      ...place,
      lines: linesOf(element, around, true),
    });
  return pen.drawn;
}

/** What is written at an element that the program laid out: to the right of an upright body, below a level one. */
function laidNotes(pen: Pen, element: TwoEnded | OneEnded, around: Surroundings) {
  const { centre } = pen.route;
  const { body, hangs } = pen.route.laid!;
  const isUpright = Math.abs(body.y) > 0.5;
  const own = lettersOf(element.phases);
  if (isLine(element)) lineNotes(pen, element, around);
  const { text } = pen.route.laid!;
  const size = symbolSizeAt(text);
  const half = 20 * size;
  const stands = hangs && "from" in element && isAbreast(element) && !isLegs(element.phases);
  const inLine =
    isLegs(element.phases) || !("from" in element) ? 0 : ((own.length - 1) / 2) * LINE_APART * size;
  const outermost = stands ? spreadOf(element, text) : inLine;
  // An open blade, a lifted hook reach further than the symbol does in service.
  const drawn = symbolBoxOf(pen);
  const reachOn = (side: "right" | "top" | "bottom", at: number) =>
    Math.max(outermost + half, drawn === undefined ? 0 : Math.abs(drawn[side] - at));
  const over = "from" in element ? neutralOver(element, pen.route.laid!, around) : 0;
  const spread = isUpright ? reachOn("right", centre.x) : Math.max(reachOn("top", centre.y), over);
  const hung = tagsOf(element);
  const isTight = isTightAt(text);
  const lines = linesOf(element, around, isTight);
  if (stands && own.length > 1 && pen.route.laid!.ends.from?.isOnLine)
    for (const letter of own) {
      const by = shiftOf(letter, own, (2 * outermost) / (own.length - 1)) * pen.route.laid!.hand;
      const back = half + 11;
      sayLetter(
        pen,
        letter,
        "from",
        around,
        spotOf(centre.x + body.y * by - body.x * back, centre.y - body.x * by - body.y * back),
      );
    }
  const open = standsAs(element, around);
  const row = isUpright ? spotOf(centre.x + spread, centre.y) : spotOf(centre.x, centre.y - spread);
  const beside: Note["sides"] = isUpright ? [[1, 0]] : [[0, -1]];
  const drop = isUpright && isNamed(element) ? (lines.length > 1 ? 11 : 9) : 0;
  pen.note("open", open, "ink", row, { sides: beside, gap: 6, drop });
  pen.note("tag", hung, "ink", row, { sides: beside, gap: 6, drop, follows: open !== "" });
  // The name of a station stands over its source; its volts have the other side.
  const rating = ratingOf(element);
  if (isSupply(element) && rating !== undefined)
    pen.note("elementLabel", around.word(rating), "ink", centre, {
      sides: isUpright ? [[1, 0]] : [[0, 1]],
      gap: 3,
      reach: isUpright ? spread : reachOn("bottom", centre.y),
    });
  if (!isNamed(element)) return;
  const isCrowded = isUpright && (open !== "" || hung !== "");
  const written = (from: Spot, place: Partial<Pick<Note, "sides" | "gap" | "reach" | "drop">>) =>
    pen.note("elementLabel", lines.join(" "), "ink", from, {
      lines,
      shorter: wrapped(element.label, isTight),
      ...place,
    });
  if (isUpright && isCustomers(element))
    written(spotOf(centre.x - LABEL_BEFORE * size, centre.y + half), {
      sides: [[1, 0]],
      drop: lines.length > 1 ? 20 : 12,
    });
  else if (isUpright)
    written(centre, {
      sides: [[1, 0]],
      gap: 6,
      reach: spread,
      drop: isCrowded ? (lines.length > 1 ? -14 : -9) : 0,
    });
  // Under it or, where that has no room, over it; what ends a chain has nothing after it either.
  else
    written(centre, {
      sides: [[0, 1], ...(isCustomers(element) ? [[1, 0] as const] : []), [0, -1]],
      gap: 3,
      reach: reachOn("bottom", centre.y),
    });
}

/** A name in two lines at most, or in one with the rating and the doubt under it. */
function linesOf(element: CircuitElement, around: Surroundings, isTight: boolean): readonly string[] {
  const name = wrapped(element.label, isTight);
  if (name.length > 1) return name;
  const under = saidOf(element, around).join(", ");
  return under === "" ? name : [...name, under];
}

/** So far after the letter of its neighbour one stands, wherever symbols are drawn at all. */
const LETTER_STEP = 20;
const isSecond = (letter: Letter, own: readonly Letter[]): boolean =>
  letter === "N" || own.indexOf(letter) % 2 === 1;

/** From this length on a stretch of line has its letters at both ends. */
const LETTERS_FROM = 90;

/** The letters of a line at both its ends, and its state in the middle. */
function lineNotes(pen: Pen, element: Extract<TwoEnded, { kind: "span" }>, around: Surroundings) {
  const path = pen.route.laid!;
  const { spots, bodyAt, hand, clear, text } = path;
  const own = lettersOf(element.phases);
  if (isLegs(element.phases)) return;
  const hasNeutral = element.neutral && around.hasNeutral("from") && around.hasNeutral("to");
  const letters: Letter[] = hasNeutral ? [...own, "N"] : [...own];
  const lane = lineLanes(path, letters, around);
  const stretch = (nth: number) => {
    const [a, b] = [spots[nth]!, spots[nth + 1]!];
    const length = Math.hypot(b.x - a.x, b.y - a.y);
    const [x, y] = [(b.x - a.x) / (length || 1), (b.y - a.y) / (length || 1)];
    const at = (along: number, beside: number) =>
      spotOf(a.x + x * along + hand * y * beside, a.y + y * along - hand * x * beside);
    const beside = (letter: Letter) => besideOn(path, nth, letter, lane(letter), around);
    return { length, at, beside, way: [x, y] as const };
  };
  const [first, last] = [stretch(0), stretch(spots.length - 2)];
  // Neighbours would touch: every second letter stands a little after the one beside it; on a line that is too short for
  // that, before the state in its middle, the ones stand at one end and the others at the other.
  const isShort =
    spots.length === 2 &&
    letters.length > 1 &&
    first.length / 2 < Math.max(clear.from, clear.to) + (LETTER_STEP + STATE_AND_LETTER) * text;
  const there = [...lettersAtEnd(element, "to")].sort();
  for (const letter of letters) {
    const back = isSecond(letter, own) && !isShort ? LETTER_STEP * text : 0;
    if ((first.length >= LETTERS_FROM || spots.length > 2) && !(isShort && isSecond(letter, own)))
      sayLetter(
        pen,
        letter,
        "from",
        around,
        first.at(Math.min(clear.from + back, first.length / 2 + back / 2), first.beside(letter)),
        first.way,
      );
    if (last.length >= LETTERS_FROM && !(isShort && !isSecond(letter, own)))
      sayLetter(
        pen,
        there[letters.indexOf(letter)] ?? letter,
        "to",
        around,
        last.at(last.length - clear.to - back, last.beside(letter)),
        [-last.way[0], -last.way[1]],
      );
  }
  const { length, at, way } = stretch(bodyAt);
  if (length < BADGE_FROM) return;
  const middle = length / 2;
  /** In the middle of its phases. */
  const among = own.reduce((sum, it) => sum + lane(it), 0) / own.length;
  // Where a conductor is parted each side says how it stands, and the gap between them is left to be seen.
  if (element.parted !== "") {
    for (const [end, along] of [
      ["from", middle / 2],
      ["to", middle * 1.5],
    ] as const) {
      const told = own.map((letter) => [letter, around.look(end, letter)] as const);
      pen.note("badge", badgeOfAll(told), worstOf(told.map(([, look]) => look)), at(along, among));
    }
    return;
  }
  const looks = own.map((letter) => around.look("from", letter));
  if (looks.every((it) => it === looks[0]))
    pen.note("badge", badgeOf(looks[0]!), looks[0]!, at(middle, among), {
      sides: [[0, 0], way, [-way[0], -way[1]]],
      gap: ASIDE,
    });
  else
    own.forEach((letter, nth) => {
      const look = looks[nth]!;
      const badge = badgeOf(look) === "" ? "" : `${letter} ${badgeOf(look)}`;
      pen.note("badge", badge, look, at(middle + (nth - (own.length - 1) / 2) * 48 * text, lane(letter)));
    });
  const neutral = hasNeutral ? around.look("from", "N") : "neutral";
  if (badgeOf(neutral) !== "")
    pen.note("badge", `N ${badgeOf(neutral)}`, neutral, at(middle - 48 * text, lane("N")));
}

/** How a device stands where that differs from its normal position, and what hangs on it. */
function positionNotes(pen: Pen, element: CircuitElement, reach: number, around: Surroundings) {
  const { centre, along } = pen.route;
  const { across } = pen;
  const open = standsAs(element, around);
  if (open !== "")
    pen.note("open", open, "ink", centre, {
      sides: [
        [across.x, across.y],
        [-across.x, -across.y],
        [across.x + along.x, across.y + along.y],
        [across.x - along.x, across.y - along.y],
      ],
      gap: 2,
      reach: reach - 4,
    });
  const hung = tagsOf(element);
  if (hung !== "")
    pen.note("tag", hung, "ink", centre, {
      sides: [
        [-across.x - along.x, -across.y - along.y],
        [across.x + along.x, across.y + along.y],
        [-across.x, -across.y],
      ],
      gap: 2,
      reach: reach - 6,
    });
}

/** How a thing stands where that is not as it normally does, and `AB→BA` where phases go on as others. */
function standsAs(element: CircuitElement, around: Surroundings): string {
  const word = positionOf(element);
  return [
    ...(word === undefined ? [] : [around.word(word)]),
    ...("toPhases" in element && element.toPhases !== "" ? [`${element.phases}→${element.toPhases}`] : []),
  ].join(" ");
}

/** `T` where a tag hangs, `X` where it is blocked. */
const tagsOf = (element: CircuitElement): string =>
  [
    ...("tagged" in element && element.tagged ? ["T"] : []),
    ...("blocked" in element && element.blocked ? ["X"] : []),
  ].join(" ");

/** The label on the drawing: its own, and the one rating that tells it from its neighbours. */
function labelOf(element: CircuitElement, around: Surroundings): string {
  return [element.label, ...saidOf(element, around)].filter((it) => it !== "").join(" · ");
}

/** The rating that tells a thing from its neighbours, and that it was not seen. */
function saidOf(element: CircuitElement, around: Surroundings): string[] {
  const { evidence } = element;
  return [
    ratingOf(element),
    evidence === "assumed" || evidence === "told" ? say(`drawing.${evidence}`) : undefined,
  ].flatMap((it) => (it === undefined ? [] : [around.word(it)]));
}

const reachOf = ({ kind }: CircuitElement): number => deviceOf(kind).symbolReach ?? SYMBOL_REACH;

import {
  type Box,
  boxOf,
  distanceTo,
  isHung,
  isLabel,
  type Note,
  NOTE_KINDS,
  overlaps,
  solidBoxes,
  type Spot,
  symbolBoxOf,
} from "./shapes";
import type { Scene } from "./scene";
import { widthOf as ownWidthOf } from "./widths";

/** Sizes of letters on the drawing [screen px]. */
export interface NoteSizes {
  /** labels of points and elements */
  readonly label: number;
  /** badges, phase letters, tags */
  readonly small: number;
  /** how much wider than ours the letters may turn out */
  readonly widen?: number;
}
/** Letters of a laid out drawing give way a little as it grows small on a screen: so large a part of their size they are. */
export const lettersAt = (scale: number): number => Math.max(LEAST_LETTERS, Math.min(1, scale * 1.1));
const LEAST_LETTERS = 0.8;

/** Letters on the screen [px]. */
export const NOTE_SIZES: NoteSizes = { label: 14, small: 12 };

/** Letters on the screen where it is read at arm's length, with gloves on [px]. */
export const GLOVE_NOTE_SIZES: NoteSizes = { label: 18, small: 15 };

/** A note that found room: where its middle stands, in units of the drawing, and its size [screen px]. */
export interface PlacedNote {
  readonly note: Note;
  /** what is written of it where there was no room for all its lines */
  readonly lines?: readonly string[];
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** How far the ring around a work place reaches [px]: where the symbols about it are small it is so too, and hides none. */
export function ringAt({ ring }: Note, scale: number): number {
  if (ring?.symbol === undefined) return RING.most;
  return Math.max(RING.least, Math.min(RING.most, RING.ofSymbol * ring.symbol * scale));
}
const RING = { least: 15, most: 22, ofSymbol: 0.68, stroke: 4 };

/**
 * Notes too small a zoom has no room for are left out below these scales, where persons placed the points: what the
 * program lays out has room for its letters at whatever scale its symbols are drawn.
 */
const FROM_SCALE: Partial<Record<Note["kind"], number>> = {
  letter: 0.6,
  elementLabel: 0.3,
  pointLabel: 0.25,
};

/** Between how a thing stands and what hangs on it [px]. */
const BETWEEN = 2;

/** Width of a tag and of the cross of a block, in halves of their height. */
export const HUNG_WIDTH = 2.6;

/** Height of one line of a label, in heights of its letters. */
export const LINE = 1.2;

/** How much room a note takes, in the unit of `sizes`. */
export function sizeOf(note: Note, sizes: NoteSizes): { width: number; height: number } {
  const { kind, text, lines } = note;
  const widthOf = (words: string, size: number) => ownWidthOf(words, size) * (sizes.widen ?? 1);
  if (lines !== undefined && lines.length > 0 && kind !== "title") {
    const width = Math.max(...lines.map((it, nth) => widthOf(it, sizes.label) * (nth === 0 ? 1.08 : 1)));
    const inset = kind === "work" ? { across: 18, down: 12 } : { across: 4, down: 0 };
    return { width: width + inset.across, height: sizes.label * LINE * lines.length + inset.down };
  }
  switch (kind) {
    case "title":
      return {
        width: Math.max(...(lines ?? [text]).map((it) => widthOf(it, sizes.label + 2))) * 1.08 + 4,
        height: (sizes.label + 2) * LINE * (lines ?? [text]).length,
      };
    case "pointLabel":
    case "elementLabel":
      return { width: widthOf(text, sizes.label) + 4, height: sizes.label * 1.2 };
    case "mark":
      return { width: widthOf(text, sizes.small) * 1.1 + 14, height: sizes.small * 1.9 };
    case "letter":
      return { width: sizes.small, height: sizes.small * 1.15 };
    case "tag":
      return { width: sizes.small * 0.7 * HUNG_WIDTH * text.split(" ").length, height: sizes.small * 1.4 };
    case "work":
      return { width: widthOf(text, sizes.label) * 1.08 + 14, height: sizes.label * 1.6 };
    default:
      return { width: widthOf(text, sizes.small) * 1.16 + 9, height: sizes.small * 1.4 };
  }
}

/**
 * Finds a place for each note at one zoom: the important ones first, each on the first of its sides that is free.
 * A name, a letter or a number without a free side is left out; what tells a hazard always stands somewhere.
 *
 * @param within pieces outside are not labelled
 * @param screen what is in view: notes on things in view keep to it where they can
 */
export function placeNotes(
  { pieces }: Pick<Scene, "pieces">,
  scale: number,
  sizes: NoteSizes = NOTE_SIZES,
  within?: Box,
  screen?: Box,
): readonly PlacedNote[] {
  const crowd = new Crowd(CELL / scale);
  const queue: Note[][] = NOTE_KINDS.map(() => []);
  const isLaidOut = pieces.some(({ shapes }) => shapes.some(({ shape }) => shape === "ground"));
  const followers = new Map<Note, Note>();
  for (const piece of pieces) {
    if (within !== undefined && !overlaps(piece.box, within)) continue;
    const follower = piece.notes.find(({ follows }) => follows === true);
    const first = follower && piece.notes.find(({ kind }) => kind === "open");
    if (first !== undefined) followers.set(first, follower!);
    for (const note of piece.notes)
      if (note === follower) continue;
      else if (isLaidOut || scale >= (FROM_SCALE[note.kind] ?? 0))
        queue[NOTE_KINDS.indexOf(note.kind)]!.push(note);
    for (const box of solidBoxes(piece.shapes, 3 / scale)) crowd.add(box);
  }
  const placed: PlacedNote[] = [];
  const wires = new Crowd(CELL / scale);
  // What is written keeps off the edges of plates and the rings around work places; badges may lie on them.
  const [edges, rings] = [new Crowd(CELL / scale), new Crowd(CELL / scale)];
  for (const piece of pieces) {
    if (within !== undefined && !overlaps(piece.box, within)) continue;
    for (const shape of piece.shapes)
      if (shape.shape === "strand") addWire(wires, shape.points, BESIDE_LINES / scale);
      else if (shape.shape === "ground") for (const box of edgesOf(shape.box, 1 / scale)) edges.add(box);
    for (const note of piece.notes)
      if (note.ring !== undefined) {
        const across = (2 * ringAt(note, scale) + RING.stroke) / scale;
        rings.add(around(note.ring.x, note.ring.y, across, across));
      }
  }
  const symbols = pieces
    .filter(({ owner, box }) => owner.of === "element" && (within === undefined || overlaps(box, within)))
    .flatMap((piece) => {
      const box = symbolBoxOf(piece);
      return box === undefined ? [] : [{ owner: piece.owner, box }];
    });
  const symbolOf = new Map(symbols.map(({ owner, box }) => [owner, box]));
  /**
   * Whether what is written in a box would be taken for what is said of its own symbol: of two that stand as one the first
   * says whose they are.
   */
  const isAtItsOwn = (all: Box, note: Note): boolean => {
    const own = symbolOf.get(note.owner);
    if (own === undefined) return true;
    const box = followers.has(note) ? { ...all, right: all.left + sizeOf(note, sizes).width / scale } : all;
    const reach = distanceOf(own, box);
    return symbols.every((it) => it.box === own || distanceOf(it.box, box) >= reach);
  };
  const strands = pieces.flatMap(({ owner, shapes, box }) =>
    isLaidOut && (within === undefined || overlaps(box, within))
      ? shapes.flatMap((it) =>
          it.shape === "strand" && it.letter !== "N" ? [{ owner, ...it, box: boxOf(it.points, 0) }] : [],
        )
      : [],
  );
  const grounds = pieces.flatMap(({ shapes }) =>
    shapes.flatMap((it) => (it.shape === "ground" ? [it.box] : [])),
  );
  /**
   * The free spot nearest to the place of a note, or to its ring: on its plate, or so far off it. Of several as near it is
   * the first from the left, then from the top.
   * @param things what may be in the way of a box: where all that a box reaches is below it, it is no more
   * @param isOff whether nothing may stand in a box for another reason
   * @param about where it is looked for in place of the plate, and in how small steps
   */
  function freeSpotFor(
    note: Note,
    { width, height }: { width: number; height: number },
    off: number,
    things: readonly Crowd[],
    isOff: (box: Box) => boolean,
    about?: { readonly box: Box; readonly step: number },
  ) {
    const [across, down] = [width / scale, height / scale];
    const place = note.ring ?? note;
    const at = around(place.x, place.y, 0, 0);
    const plate = about?.box ?? grounds.find((it) => isWithin(at, it));
    let nearest: { readonly x: number; readonly y: number; readonly box: Box } | undefined;
    if (plate === undefined) return nearest;
    const area = around(
      (plate.left + plate.right) / 2,
      (plate.top + plate.bottom) / 2,
      plate.right - plate.left - across + off,
      plate.bottom - plate.top - down + off,
    );
    const isState = note.kind === "badge";
    const step = about?.step ?? (note.kind === "work" ? 2 : 6) / scale;
    const columns = stepsBetween(area.left, area.right, step)
      .map((x, nth) => ({ x, nth, far: Math.max(0, Math.abs(x - place.x) - across / 2) }))
      .sort((a, b) => a.far - b.far);
    const rows = stepsBetween(area.top, area.bottom, step);
    const reached = {
      left: area.left - across / 2,
      right: area.right + across / 2,
      top: area.top - down / 2,
      bottom: area.bottom + down / 2,
    };
    const inReach = things.flatMap((it) => it.touching(reached));
    let [least, leastColumn] = [Infinity, Infinity];
    for (const { x, nth, far: aside } of columns) {
      if (aside > least) break;
      const inColumn = inReach.filter(({ left, right }) => left < x + across / 2 && x - across / 2 < right);
      for (let row = 0; row < rows.length; row++) {
        const box = around(x, rows[row]!, across, down);
        const far = distanceOf(box, at);
        if (far > least || (far === least && nth >= leastColumn)) continue;
        const inTheWay = inColumn.find((it) => overlaps(it, box));
        if (inTheWay === undefined && isOff(box)) continue;
        const away = inTheWay === undefined && isState && !isBeyondReading ? farFromItsState(box, note) : 0;
        const past = rows[row]! + away * NOT_QUITE;
        if (inTheWay !== undefined)
          while (row + 1 < rows.length && rows[row + 1]! - down / 2 < inTheWay.bottom) row++;
        else if (away > 0) while (row + 1 < rows.length && rows[row + 1]! < past) row++;
        else if (isState || (about === undefined ? isWellPut(box, note) : isAtItsOwn(box, note))) {
          [least, leastColumn] = [far, nth];
          nearest = { x, y: rows[row]!, box };
        }
      }
    }
    return nearest;
  }
  /** Whether what is written at a thing stands on the plate that this stands on. */
  const isOnItsPlate = (box: Box, note: Note): boolean =>
    grounds.every((it) => !isWithin(around(note.x, note.y, 0, 0), it) || isWithin(box, it));
  /** Whether a flag is taken for one of the plate that its work place is on. */
  const isAtItsPlate = (box: Box, { x, y }: Spot): boolean => {
    const plate = grounds.find((it) => isWithin(around(x, y, 0, 0), it));
    const middle = around((box.left + box.right) / 2, (box.top + box.bottom) / 2, 0, 0);
    const far = plate === undefined ? -1 : distanceOf(plate, middle);
    return grounds.every((it) => it === plate || (!overlaps(it, box) && distanceOf(it, middle) > far));
  };
  /**
   * How far at least what tells a state has to go from here until the line that is nearest to it has that state, or is its
   * own; nothing where it is. With each step one line comes nearer by a step at most, and another goes as far away.
   */
  function farFromItsState({ left, right, top, bottom }: Box, { owner, look }: Note): number {
    const [across, down] = [(left + right) / 2, (top + bottom) / 2];
    /** How near the nearest line of its state, or of another, comes, if it comes nearer than so far. */
    const nearest = (isOfItsState: boolean, far: number): number => {
      let least = far;
      for (const it of strands)
        if (
          (it.look === look || it.owner === owner) === isOfItsState &&
          isNearerThan(least, it.box, across, down)
        )
          least = Math.min(least, distanceTo(it.points, across, down));
      return least;
    };
    const own = nearest(true, Infinity);
    if (own === Infinity) return nearest(false, own) === own ? 0 : Infinity;
    return (own - nearest(false, own)) / 2;
  }
  const isInItsState = (box: Box, note: Note): boolean => farFromItsState(box, note) === 0;
  const asked = queue.flat();
  const isInView = (box: Box): boolean => screen === undefined || isWithin(box, screen);
  const isBeyondReading = asked.filter(({ x, y }) => isInView(around(x, y, 0, 0))).length > MOST_TO_READ;
  const isWellPut = (box: Box, note: Note): boolean =>
    isBeyondReading ||
    (note.kind === "work"
      ? // A symbol of several parts is one: no flag stands between these.
        !symbols.some((it) => overlaps(it.box, box)) && isAtItsPlate(box, note.ring!)
      : AT_ITS_OWN.has(note.kind)
        ? isOnItsPlate(box, note) && isAtItsOwn(box, note)
        : note.kind === "badge"
          ? isInItsState(box, note)
          : note.kind !== "title" || isOnItsPlate(box, note));
  for (const note of asked) {
    const forms = formsOf(note, sizes);
    // All that a flag says, a little off its plate, is worth more than a part of it on that.
    const whole = note.kind === "work" ? forms.slice(0, -1) : [];
    const tries = [
      ...whole.map((form) => ({ form, off: 0 })),
      ...whole.map((form) => ({ form, off: A_LITTLE_OFF })),
      ...forms.map((form) => ({ form, off: FARTHEST_OFF })),
    ];
    const follower = followers.get(note);
    let it: PlacedNote | undefined;
    for (const [nth, { form, off }] of tries.entries()) {
      it = placeOf(form, off, follower === undefined && nth === tries.length - 1);
      if (it === undefined) continue;
      if (form !== note) it = { ...it, note, lines: form.lines! };
      break;
    }
    if (it !== undefined) placed.push(...(follower === undefined ? [it] : apart(it, follower)));
    else if (follower !== undefined) {
      // Where two have no room as one, each is put at its thing by itself.
      followers.delete(note);
      for (const alone of [note, follower]) placed.push(placeOf(alone, FARTHEST_OFF, true)!);
    }
  }
  return placed;

  /** What is in the way where a note may all but touch symbols. */
  function closeCrowd(): Crowd {
    const close = new Crowd(CELL / scale);
    for (const { shapes } of pieces) for (const box of solidBoxes(shapes, 0.5 / scale)) close.add(box);
    for (const { x, y, width, height } of placed) close.add(around(x, y, width / scale, height / scale));
    return close;
  }

  /** Two notes that found their place as one. */
  function apart(it: PlacedNote, follower: Note): readonly PlacedNote[] {
    const [first, second] = [sizeOf(it.note, sizes), sizeOf(follower, sizes)];
    const left = it.x - it.width / 2 / scale;
    return [
      { ...it, ...first, x: left + first.width / 2 / scale },
      { ...it, ...second, note: follower, x: left + (first.width + BETWEEN + second.width / 2) / scale },
    ];
  }

  function placeOf(note: Note, off: number, isLast: boolean): PlacedNote | undefined {
    const follower = followers.get(note);
    const isState = isLaidOut && note.kind === "badge";
    const { width: alone, height } = sizeOf(note, sizes);
    const width = alone + (follower === undefined ? 0 : BETWEEN + sizeOf(follower, sizes).width);
    const onTheWire = note.sides[0]![0] === 0 && note.sides[0]![1] === 0;
    // A number whose place a line has stands further along the edge of its plate, and what a ring would run through beyond that.
    const further = note.kind === "title" ? [0, 40, 80] : onTheWire ? [0, 14, 28] : [0, 14];
    // In the next line there is room for all of a number whose own line a conductor runs along; a name slides a little.
    const lower = [0, ...(SLIDES[note.kind] ?? [])].map((it) => (it * height) / scale);
    const spots = lower.flatMap((down) =>
      further.flatMap((extra) =>
        note.sides.map(([sideways, upright]) => {
          const length = Math.max(1, Math.hypot(sideways, upright));
          const away = note.reach + (note.gap + extra) / scale;
          const x = note.x + (sideways / length) * away + (corner(sideways) * width) / 2 / scale;
          const y =
            note.y +
            down +
            ((note.drop ?? 0) * sizes.label) / NOTE_SIZES.label / scale +
            (upright / length) * away +
            (corner(upright) * height) / 2 / scale;
          return { x, y, box: around(x, y, width / scale, height / scale) };
        }),
      ),
    );
    const [own] = spots;
    if (isInView(around(note.x, note.y, 0, 0))) {
      const inView = spots.filter(({ box }) => isInView(box));
      const outside = note.kind === "work" || isState ? [] : spots.filter((it) => !inView.includes(it));
      spots.splice(0, spots.length, ...inView, ...outside);
    }
    const size = { width, height };
    const inTheWay = [crowd, wires, rings, ...(off < FARTHEST_OFF ? [edges] : [])];
    const isBeside = (box: Box) => !isInView(box);
    const blocked = (box: Box) => inTheWay.some((it) => it.hits(box)) || isBeside(box);
    const isOff = (box: Box) => blocked(box) || (note.kind === "badge" && !isInItsState(box, note));
    const isOffPlate = (box: Box) => edges.hits(box) || !isOnItsPlate(box, note) || isOff(box);
    const isFree = (box: Box) => !crowd.hits(box) && (!isLaidOut || isWellPut(box, note));
    const clear =
      spots.find(
        ({ box }) =>
          isFree(box) &&
          (onTheWire || !wires.hits(box)) &&
          !rings.hits(box) &&
          !(KEEPING_OFF.has(note.kind) && edges.hits(box)) &&
          // A state beside its line stands on the plate of that where there is room near by.
          !(isState && !onTheWire && isOffPlate(box)),
      ) ??
      // What is to be done is read at its pole, and a number on its plate, wherever there is room for it.
      (isLaidOut &&
      !isBeyondReading &&
      (note.kind === "work" || note.kind === "open" || isHung(note) || (note.kind === "title" && isLast))
        ? freeSpotFor(note, size, off / scale, inTheWay, isBeside)
        : undefined);
    if (clear === undefined && !isLast) return undefined;
    /** Right about its own symbol or line, over lines and off its plate where need be: the finer it is looked, the nearer. */
    const atItsOwn = (step: number, things: readonly Crowd[] = [crowd]) => {
      const own = isState ? around(note.x, note.y, 0, 0) : symbolOf.get(note.owner);
      if (own === undefined) return undefined;
      const [x, y] = [(own.left + own.right) / 2, (own.top + own.bottom) / 2];
      const across = own.right - own.left + 2 * (width / scale + STEPS_FROM_OWN * step);
      const down = own.bottom - own.top + 2 * (height / scale + STEPS_FROM_OWN * step);
      return freeSpotFor(note, size, 0, isState ? [...things, rings] : things, () => false, {
        box: around(x, y, across, down),
        step,
      });
    };
    const elsewhere = () =>
      (isState ? roundAbout(note, size, scale, isOffPlate, NEAR) : undefined) ??
      (note.kind === "count" || note.kind === "work" || isState
        ? roundAbout(note, size, scale, isOff)
        : undefined) ??
      (isState ? atItsOwn(2 / scale) : undefined) ??
      (givesWay(note)
        ? undefined
        : (spots.find(({ box }) => isFree(box)) ??
          roundAbout(note, size, scale, (box) => !isFree(box)) ??
          freeSpotFor(note, size, 0, [crowd], () => false) ??
          atItsOwn(2 / scale) ??
          atItsOwn(0.5 / scale) ??
          (isState ? undefined : atItsOwn(0.5 / scale, [closeCrowd()])) ??
          roundAbout(note, size, scale, (box) => crowd.hits(box)) ??
          own));
    const atOnce = () => (givesWay(note) ? undefined : (spots.find(({ box }) => isFree(box)) ?? own));
    const usual = clear ?? (isBeyondReading ? atOnce() : elsewhere());
    /** What says how a device stands lies over a line only where no room near its symbol is free of lines. */
    const beside = () =>
      usual !== undefined &&
      isLaidOut &&
      !isBeyondReading &&
      (note.kind === "open" || isHung(note)) &&
      wires.hits(
        around(usual.x, usual.y, (width - 2 * BESIDE_LINES) / scale, (height - 2 * BESIDE_LINES) / scale),
      )
        ? atItsOwn(5 / scale, [crowd, wires])
        : undefined;
    const free = beside() ?? usual;
    if (free === undefined) return undefined;
    crowd.add(free.box);
    return { note, x: free.x, y: free.y, width, height };
  }
}

/** The ways to write a note, the fullest first: one alone where it has no other. */
function formsOf(note: Note, sizes: NoteSizes): readonly Note[] {
  const { lines, otherwise = [], shorter = lines } = note;
  const others = [...otherwise, ...(shorter === undefined ? [] : [shorter])];
  return [
    note,
    ...others.filter((it) => it.join() !== lines?.join()).map((it) => writtenAs(note, it, sizes)),
  ];
}

function writtenAs(note: Note, lines: readonly string[], sizes: NoteSizes): Note {
  const written = { ...note, lines, text: lines.join(" ") };
  // What has a line less stands as near to its symbol.
  const lost = (sizeOf(note, sizes).height - sizeOf(written, sizes).height) / 2;
  return (note.drop ?? 0) > 0
    ? { ...written, drop: note.drop! - (lost * NOTE_SIZES.label) / sizes.label }
    : written;
}

/** How many of its heights a note stands lower or higher where it has no room at its own. */
const SLIDES: Partial<Record<Note["kind"], readonly number[]>> = { title: [1], elementLabel: [-0.25, 0.25] };

/** So much further off the middle of its plate than on that a flag may stand, on both sides together: at last over its edge [px]. */
const A_LITTLE_OFF = 160;
const FARTHEST_OFF = 480;

/** What is written stands so far from the middle of a line [px]. */
const BESIDE_LINES = 3;

/** What of a way that was worked out is certain, however it was rounded. */
const NOT_QUITE = 0.999;

/** So many steps from its own symbol room is looked for at last. */
const STEPS_FROM_OWN = 40;

/** Of more notes in view nobody makes out which is whose: each stands at one of its own places, a free one where there is one. */
const MOST_TO_READ = 2000;

/** So many steps of 14 px away from its own place room is looked for; for a state on its own plate first, so near. */
const FARTHEST = 16;
const NEAR = 4;

/** Somewhere around a note's own place, the nearest first: what tells a hazard is never left out. */
function roundAbout(
  { x, y }: Note,
  { width, height }: { width: number; height: number },
  scale: number,
  isBlocked: (box: Box) => boolean,
  farthest = FARTHEST,
) {
  const [across, down] = [width / scale, height / scale];
  for (let far = 1; far <= farthest; far++)
    for (let nth = 0; nth < 16; nth++) {
      const angle = (nth * Math.PI) / 8;
      const spot = {
        x: x + Math.cos(angle) * (across / 2 + (far * 14) / scale),
        y: y + Math.sin(angle) * (down / 2 + (far * 14) / scale),
      };
      const box = around(spot.x, spot.y, across, down);
      if (!isBlocked(box)) return { ...spot, box };
    }
  return undefined;
}

/** What stands nearer to its own symbol than to any other, on the plate of that. */
const AT_ITS_OWN: ReadonlySet<Note["kind"]> = new Set(["elementLabel", "open", "tag"]);

/** What does not lie on the edge of a plate, or on the ring around a work place. */
const KEEPING_OFF: ReadonlySet<Note["kind"]> = new Set([
  "pointLabel",
  "elementLabel",
  "title",
  "count",
  "work",
]);

/** Whether it is left out where it has no room, and comes with a tap or from nearer. */
const givesWay = (note: Note): boolean => isLabel(note) || note.kind === "letter" || note.kind === "mark";

const isWithin = (inner: Box, outer: Box): boolean =>
  inner.left >= outer.left &&
  inner.right <= outer.right &&
  inner.top >= outer.top &&
  inner.bottom <= outer.bottom;

/** By how much of its own half a note steps aside: wholly in any direction but straight across it. */
const corner = (side: number): number => Math.max(-1, Math.min(1, side * 1.5));

const around = (x: number, y: number, width: number, height: number): Box => ({
  left: x - width / 2,
  right: x + width / 2,
  top: y - height / 2,
  bottom: y + height / 2,
});

/** How far two boxes are apart: nothing where they touch. */
export const distanceOf = (a: Box, b: Box): number =>
  Math.hypot(
    Math.max(0, a.left - b.right, b.left - a.right),
    Math.max(0, a.top - b.bottom, b.top - a.bottom),
  );

/** Whether a spot lies nearer to a box than so far. */
function isNearerThan(far: number, { left, top, right, bottom }: Box, x: number, y: number): boolean {
  const [across, down] = [Math.max(0, left - x, x - right), Math.max(0, top - y, y - bottom)];
  return across * across + down * down < far * far;
}

/** The four edges of a box, each as a box of its own. */
const edgesOf = ({ left, top, right, bottom }: Box, half: number): Box[] => [
  { left: left - half, right: left + half, top, bottom },
  { left: right - half, right: right + half, top, bottom },
  { left, right, top: top - half, bottom: top + half },
  { left, right, top: bottom - half, bottom: bottom + half },
];

function addWire(wires: Crowd, points: readonly number[], half: number) {
  for (let k = 0; k + 3 < points.length; k += 2) {
    const [x, y, dx, dy] = [
      points[k]!,
      points[k + 1]!,
      points[k + 2]! - points[k]!,
      points[k + 3]! - points[k + 1]!,
    ];
    if (dx === 0 || dy === 0) {
      wires.add(boxOf([x, y, x + dx, y + dy], half));
      continue;
    }
    const steps = Math.max(1, Math.ceil(Math.hypot(dx, dy) / (half * 1.3)));
    for (let step = 0; step <= steps; step++) {
      const [cx, cy] = [x + (dx * step) / steps, y + (dy * step) / steps];
      wires.add({ left: cx - half, right: cx + half, top: cy - half, bottom: cy + half });
    }
  }
}

/** From one place to before another in equal steps. */
function stepsBetween(first: number, end: number, step: number): number[] {
  const steps: number[] = [];
  for (let at = first; at < end; at += step) steps.push(at);
  return steps;
}

/** Boxes in a grid of cells, to ask quickly whether another box touches any. */
class Crowd {
  readonly #cells = new Map<number, Box[]>();
  readonly #cell: number;

  constructor(cell: number) {
    this.#cell = cell;
  }

  add(box: Box) {
    const { firstX, lastX, firstY, lastY } = this.#reachOf(box);
    for (let x = firstX; x <= lastX; x++)
      for (let y = firstY; y <= lastY; y++) {
        const key = keyOf(x, y);
        const list = this.#cells.get(key);
        if (list === undefined) this.#cells.set(key, [box]);
        else list.push(box);
      }
  }

  hits(box: Box): boolean {
    const { firstX, lastX, firstY, lastY } = this.#reachOf(box);
    for (let x = firstX; x <= lastX; x++)
      for (let y = firstY; y <= lastY; y++) {
        const list = this.#cells.get(keyOf(x, y));
        if (list === undefined) continue;
        for (const it of list) if (overlaps(it, box)) return true;
      }
    return false;
  }

  /** All boxes that a box touches. */
  touching(box: Box): readonly Box[] {
    const { firstX, lastX, firstY, lastY } = this.#reachOf(box);
    const found = new Set<Box>();
    for (let x = firstX; x <= lastX; x++)
      for (let y = firstY; y <= lastY; y++)
        for (const it of this.#cells.get(keyOf(x, y)) ?? []) if (overlaps(it, box)) found.add(it);
    return [...found];
  }

  #reachOf({ left, top, right, bottom }: Box) {
    return {
      firstX: Math.floor(left / this.#cell),
      lastX: Math.floor(right / this.#cell),
      firstY: Math.floor(top / this.#cell),
      lastY: Math.floor(bottom / this.#cell),
    };
  }
}

/** A small whole number for a cell, which a map finds quickest. Two cells that share one only make a list longer. */
const keyOf = (x: number, y: number): number => (Math.imul(x, 40503) + y) & 0x3fffffff;

/** About as high as two lines of a label [px]: with larger cells a crowded picture is looked through box by box. */
const CELL = 24;

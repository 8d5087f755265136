import { completePoint, conductorsOf, savedPoint, type System, isStation } from "../document";
import {
  type Letter,
  type Message,
  type Owner,
  type PointId,
  say,
  type StructureId,
  type WorkPointId,
} from "../terms";
import { countedOn, wordsOf } from "./counted";
import { isTightAt, leastTitleWidth, symbolSizeAt, titleLines } from "./labels";
import { apartAt, DOT, dotAt, shiftOf } from "./laid";
import { LINE_APART, SYMBOL_LENGTH, type Way } from "./layout/inside";
import type { LaidPoint, Layout, Plate } from "./layout/layout";
import { worstOf } from "./palettes";
import { lazyPiece } from "./pieces";
import { widthOf } from "./widths";
import { spotOf } from "./routes";
import { boxOf, type Look, type Note, type Piece, type Shape, type Spot } from "./shapes";

/** How far a plate's number stands from its corner [px]. */
const INSET = { x: 10, y: 12 };
/** Half the height of a line of a title [px]. */
const HALF_LINE = 9.6;
/** From the top of a plate to the middle of a flag of one line beside its number [px]. */
const BESIDE_NUMBER = 17.6;
/** Half the height of a line of a flag [px]. */
const HALF_FLAG_LINE = 8.4;
const TITLE_SIZE = 16;
/** From the edge of a plate to the far side of the rod in its corner, with a little room before it. */
const ROD = 29;
const TITLE_SPARE = 1.25;
/** From a line to the mark of a crowd beside it, and from there to what is written under that [px]. */
const BESIDE_LINE = 6;
const UNDER_MARK = 26;

/** The ground of a plate, which says for which one it is. */
export interface PlatePiece extends Piece {
  readonly plate: Plate;
}

/** The ground of a plate with its number, and the mark of a driven rod where it has one. */
export function platePiece(
  plate: Plate,
  overall: Look,
  system: System,
  layout: Layout,
  isWorked: boolean,
  word: (message: Message) => string,
): PlatePiece {
  const { way, text } = layout;
  const { box, title, short, number, points, crowd } = plate;
  const owner: Owner = { of: "structure", id: plate.id as StructureId };
  // Where the line runs down, a number stands beside it.
  const beside = way === "down" ? plate.beside : 0;
  const atStation = isStation(plate);
  const size = symbolSizeAt(text);
  // Of a narrow plate its name has the room.
  const isWide = way === "down" || box.right - box.left > leastTitleWidth(short, text) + ROD * size;
  const hasRod =
    !atStation &&
    isWide &&
    points.some((id) => completePoint(savedPoint(system.points, id)!).earthOhms !== undefined);
  // A number with what is told of it besides is written whole where there is room for it.
  const isLong = (!atStation || way === "down") && !(isWorked && isTightAt(text));
  const lines = isLong ? [title] : titleLines(plate, atStation, way, text);
  const note: Note = {
    kind: "title",
    text: title,
    look: "ink",
    owner,
    x: box.left + beside,
    y: box.top,
    lines,
    shorter: lines.length > 1 ? lines : [lines[0] === short ? number : short],
    drop: INSET.y + (lines.length - 1) * HALF_LINE,
    // Over and before a station is nothing: where its line would run through its name, that gives way to there.
    sides: atStation
      ? [
          [1, 0],
          [0.3, 0],
          [1, -1],
          [0.3, -1],
        ]
      : [[1, 0]],
    gap: INSET.x,
    reach: 0,
  };
  const shapes: Shape[] = [
    ...(atStation ? [] : [{ shape: "ground", box } as const]),
    ...(hasRod
      ? rodShapes(
          box.right - 16 * size,
          way === "down" ? box.bottom - 28 * size : box.top + 4 * size,
          90,
          size,
        )
      : []),
  ];
  const titles = title === "" ? [] : [note];
  if (crowd === undefined)
    return {
      plate,
      owner,
      shapes,
      notes: titles,
      box,
      overall,
      spine: [box.left + INSET.x, box.top + INSET.y],
    };
  // What comes first is chosen by a touch: a crowd is touched by its mark.
  const at = layout.points.get(points[0]!)!;
  return {
    plate,
    owner,
    shapes,
    notes: [...titles, ...crowdNotes(layout, plate, crowd, { look: overall, owner, system, word })],
    box,
    overall,
    spine: [at.x, at.y],
  };
}

/** The one mark of all that is on a plate, by its worst state, and with it what is open, tagged and grounded there. */
function crowdNotes(
  { way, text, points }: Layout,
  plate: Plate,
  count: number,
  { look, owner, system, word }: CrowdSurroundings,
): Note[] {
  const [entry = ""] = plate.points;
  const { x, y } = points.get(entry)!;
  const phases = (conductorsOf(system).get(entry) ?? []).filter((it) => it !== "N");
  const size = symbolSizeAt(text);
  const side: Note["sides"][number] = way === "across" ? [0, 1] : [1, 0];
  const place = {
    x,
    y,
    look,
    owner,
    sides: [side],
    reach: (((phases.length - 1) / 2) * LINE_APART + DOT) * size,
  };
  const under = wordsOf(countedOn(system, plate), word);
  const mark: Note = {
    ...place,
    kind: "mark",
    text: word(say("drawing.countDevices", { count })),
    gap: BESIDE_LINE,
  };
  if (under === "") return [mark];
  const below = way === "across" ? { gap: BESIDE_LINE + UNDER_MARK } : { gap: BESIDE_LINE, drop: UNDER_MARK };
  return [mark, { ...place, kind: "count", text: under, ...below }];
}

interface CrowdSurroundings extends Pick<Note, "look" | "owner"> {
  readonly system: System;
  word(message: Message): string;
}

/** What is drawn by the mark of a crowd, at that. */
export function unseenPiece(owner: Owner, { x, y }: Spot, overall: Look): Piece {
  return {
    owner,
    shapes: [],
    notes: [],
    box: boxOf([x, y], 1),
    overall,
    spine: [x, y],
    within: true,
    isUnseen: true,
  };
}

/**
 * A rod on a short tail that leads so from a spot: a stake through the surface of the earth. It is thin, and has not the
 * shape of a ground set: four earth marks in the corners of poles were taken for grounds.
 */
export function rodShapes(x: number, y: number, degrees: number, size = 1): Shape[] {
  const angle = (degrees * Math.PI) / 180;
  const [dx, dy] = [Math.cos(angle) * size, Math.sin(angle) * size];
  const at = (along: number, aside: number) => [x + dx * along - dy * aside, y + dy * along + dx * aside];
  return [
    [...at(0, 0), ...at(7, 0)],
    [...at(7, 6), ...at(7, -6)],
    [...at(7, 2.5), ...at(20, 0), ...at(7, -2.5)],
  ].map((points) => ({ shape: "stroke", points, closed: false, filled: false, isQuiet: true }));
}

/** A point: a dot on each conductor from which something hangs, or at which a device ends. */
export function laidPointPiece(
  id: PointId,
  at: LaidPoint,
  { way, text }: { readonly way: Way; readonly text: number },
  looks: readonly (readonly [Letter, Look])[],
  badge: string,
  marked: readonly Letter[],
): Piece {
  const owner: Owner = { of: "point", id };
  const { x, y, axis } = at;
  const overall = worstOf(looks.map(([, look]) => look));
  return lazyPiece({ owner, box: boxOf([x, y], 16), overall, spine: [x, y] }, () => {
    const letters = looks.map(([letter]) => letter);
    const hand = way === "across" ? 1 : -1;
    const isOnLine = (axis.x === 1) === (way === "across");
    const size = symbolSizeAt(text);
    const apart = apartAt(at.isAbreast, letters, size);
    const [outX, outY] = [hand * axis.y, -hand * axis.x];
    const shapes: Shape[] = marked
      .filter((it) => it !== "N" && it !== "1" && it !== "2")
      .map((letter) => {
        const by = shiftOf(letter, letters, apart, size);
        const look = looks.find(([it]) => it === letter)![1];
        return dotAt(spotOf(x + outX * by, y + outY * by), size, look);
      });
    const before: Note["sides"][number] = way === "across" ? [-1, 0] : [0, -1];
    const after: Note["sides"][number] = way === "across" ? [1, 0] : [0, 1];
    const note: Note = {
      kind: "badge",
      text: badge,
      look: overall,
      owner,
      x,
      y,
      sides: isOnLine
        ? [
            [0, -1],
            [0.7, -0.7],
            [-0.7, -0.7],
            [0, 1],
          ]
        : way === "across"
          ? [after, before]
          : [before, after],
      gap: 6,
      reach: 6 + (isOnLine ? ((letters.length - 1) / 2) * apart : letters.includes("1") ? 6 * size : 0),
    };
    return { shapes, notes: badge === "" ? [] : [note] };
  });
}

/** The ring around a work place, by the worst state of what is worked on, and the flag over its plate. */
export function laidWorkPiece(
  id: WorkPointId,
  { x, y }: { x: number; y: number },
  look: Look,
  { box, beside, short }: Plate,
  { way, text }: { readonly way: Way; readonly text: number },
  ways: readonly (readonly string[])[],
): Piece {
  const owner: Owner = { of: "workPoint", id };
  const [place, ...told] = ways[0]!;
  // Beside the number of a plate there is more room along it than down.
  const [first, ...others] = way === "down" && told.length > 1 ? [[place!, told.join(" ")], ...ways] : ways;
  const note: Note = {
    kind: "work",
    text: first!.join(" "),
    lines: first!,
    otherwise: others,
    shorter: [place!],
    look,
    owner,
    ring: { x, y, symbol: SYMBOL_LENGTH * symbolSizeAt(text) },
    ...(way === "across"
      ? {
          x,
          y: box.top,
          gap: 6,
          sides: [
            [0.4, -1],
            [0, -1],
            [-0.4, -1],
            [1, -1],
          ],
        }
      : {
          x: box.left + beside,
          y: box.top,
          drop: BESIDE_NUMBER + (first!.length - 1) * HALF_FLAG_LINE,
          gap: 2 * INSET.x + widthOf(short, TITLE_SIZE) * TITLE_SPARE,
          sides: [[1, 0]],
        }),
    reach: 0,
  };
  return { owner, shapes: [], notes: [note], box: boxOf([x, y], 24), overall: look, spine: [x, y] };
}

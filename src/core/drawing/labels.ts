import { type CircuitElement, deviceOf, isAtCustomer, isConductor, isSupply } from "../devices";
import { asHeard, byLabel, perObject } from "../document";
import { widthOf } from "./widths";

/** Longest line that a name keeps to before it is broken in two: on a wide picture, and where room is scarce. */
const ONE_LINE = 15;
const ONE_TIGHT_LINE = 8;
/** Size of letters for which the program lays out [px]. */
const SIZE = 14;

/** Longest line of what is to be done, on a flag. */
const ONE_FLAG_LINE = 30;

/** Over the drawing, or over the plate of a work place, so much is kept for a flag of three lines [px]. */
export const FLAG_ROOM = 60;

/** A name in one line or two about as long as each other, never cut. */
export const wrapped = (name: string, isTight = false): readonly string[] =>
  inLines(name, name.length > (isTight ? ONE_TIGHT_LINE : ONE_LINE) ? 2 : 1);

/**
 * What is to be done, in one line, two and three of a flag, as far as these are short enough; in no way where it is longer,
 * since a flag that is cut tells less than none.
 */
export const onFlag = (told: string): readonly (readonly string[])[] =>
  [1, 2, 3]
    .map((most) => inLines(told, most))
    .filter((lines) => lines.length > 0 && lines.every((it) => it.length <= ONE_FLAG_LINE));

/** The place on a flag where there is no room for it in one line. */
export const narrowed = (place: string): readonly string[] => inLines(place, 2);

/** Whole words in so many lines at most, which are no longer than that takes. */
function inLines(told: string, most: number): readonly string[] {
  for (let longest = 1; ; longest++) {
    const lines = told.match(new RegExp(`\\S[^]{0,${longest - 1}}(?= |$)|\\S+`, "g")) ?? [];
    if (lines.length <= most) return lines;
  }
}

/** Whether the name stands beside the symbol; where the symbol says it all, it comes with a tap. */
export const isNamed = (element: CircuitElement): boolean =>
  !isConductor(element) && !isAtCustomer(element) && !isSupply(element);

/** From letters so much larger beside their symbols on, room is kept for names alone; ratings come with a tap. */
export const isTightAt = (text: number): boolean => text > 1.3;

/** How much larger symbols are drawn than where a unit of the drawing is a pixel of its letters: they stay readable as it shrinks. */
export const symbolSizeAt = (text: number): number => 1 + SYMBOLS_GROW * Math.max(0, text - 1);
const SYMBOLS_GROW = 1;

/** Width of what is written at an element [px]: asked again and again while a layout is looked for. */
export const labelWidthOf = (element: CircuitElement, isTight = false): number =>
  (isTight ? tightWidthOf : wideWidthOf)(element);

const tightWidthOf = perObject((element: CircuitElement) => measured(element, true));
const wideWidthOf = perObject((element: CircuitElement) => measured(element, false));

function measured(element: CircuitElement, isTight: boolean): number {
  if (!isNamed(element) || !("label" in element)) return 20;
  const lines = wrapped(element.label, isTight);
  if (isTight) return Math.max(20, ...lines.map((it) => widthOf(it, SIZE) * 1.1)) + 4;
  const doubt = element.evidence === "assumed" ? 62 : element.evidence === "told" ? 36 : 0;
  const rating = lines.length > 1 ? 0 : (deviceOf(element.kind).ratingWidth ?? 0) + doubt;
  return Math.max(20, rating, ...lines.map((it) => widthOf(it, SIZE) * 1.12)) + 4;
}

/** What is written of a plate where there is room, where there is less, and from afar. */
export interface Titles {
  readonly title: string;
  readonly short: string;
  readonly number: string;
}

/**
 * The shorter a title is written, the less may be left of it by which it is told from another one: of "Pole 32, main line" the
 * number alone, but of "Pole 7" and "Pad 7" all. What two plates of one picture would have in common neither goes by.
 */
export function titlesOf(titles: readonly string[]): Titles[] {
  const [shorts, numbers] = [shortened(titles, shortTitle), shortened(titles, numberOf)];
  return titles.map((title, nth) => ({ title, short: shorts[nth]!, number: numbers[nth]! }));
}

/** Each title as it is shortened where nothing else is, as the ear takes it, and else whole. */
function shortened(titles: readonly string[], shorten: (title: string) => string): string[] {
  const shorter = titles.map(shorten);
  const heard = byLabel(shorter.map((it, nth) => [`${nth}`, it]));
  return shorter.map((it, nth) => (heard.get(asHeard(it))?.length === 1 ? it : titles[nth]!));
}

/** A title without what is told of it besides. */
const shortTitle = (title: string): string => title.split(",")[0]!;

/** Of "Pole 32, main line" the number alone; a name without a number whole. */
function numberOf(title: string): string {
  const short = shortTitle(title);
  return /^\S+\s+(\S*\d\S*)$/.exec(short)?.[1] ?? short;
}

/** From a point to the middle of a letter on its line [units]: clear of what stands there, however small all of it is drawn. */
export const clearOfLetter = (text: number): number => Math.max(34, 24 * text);

/** From the middle of a state on a line to that of a letter before it [units for a letter's pixel of one]. */
export const STATE_AND_LETTER = 24;

/** How wide a plate is on which words have room between its edges, however small symbols are drawn [units]. */
export const leastTitleWidth = (words: string, text: number): number =>
  (EDGES + widthOf(words, NUMBER_SIZE) * AT_LEAST) * text;
const EDGES = 32;
const NUMBER_SIZE = 16;
/** Letters give way less than symbols do: beside the smallest that are drawn they take so much more room. */
const AT_LEAST = 1.73;

/** What is written on a plate; a station has no plate, and a long name of one stands in two lines over its source. */
export function titleLines(
  { title, short }: Titles,
  isStation: boolean,
  way: "across" | "down",
  text: number,
): readonly string[] {
  if (isStation && way === "across") return wrapped(title);
  return [isTightAt(text) ? short : title];
}

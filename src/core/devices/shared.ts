import {
  type Json,
  type JsonObject,
  lettersOf,
  type Letter,
  type Message,
  type MessageKey,
  type Phase,
  say,
} from "../terms";
import type {
  Breaks,
  BreakSettings,
  DeviceDoubt,
  DeviceNumber,
  DeviceUpset,
  OpeningMechanism,
} from "./define";
import type { End, Join } from "./parts";

interface TwoEnds {
  readonly phases: string;
  readonly neutral: boolean;
  readonly toPhases?: string;
}

/** The letter that a phase of an element goes on as at its far end. */
export const letterBeyond = (
  { phases, toPhases = "" }: Pick<TwoEnds, "phases" | "toPhases">,
  letter: Letter,
): Letter => (toPhases[phases.indexOf(letter)] as Letter | undefined) ?? letter;

/** A two-ended element brings its phases to both ends, and the neutral that it joins. */
export const bringsBothEnds = (it: TwoEnds): (readonly [End, Letter])[] =>
  (["from", "to"] as const).flatMap((end) =>
    [...lettersOf(it.phases), ...(it.neutral ? ["N" as const] : [])].map(
      (letter) => [end, end === "to" ? letterBeyond(it, letter) : letter] as const,
    ),
  );

/** The letters of an element that may put its phases on others, at one of its ends. */
export const lettersAtBothEnds = (it: TwoEnds, end: End): readonly Letter[] =>
  lettersOf(it.phases ?? "").map((letter) => (end === "to" ? letterBeyond(it, letter) : letter));

/** The phases that a one-ended element hangs on must be there. */
export const needsItsPhases = ({ phases }: { phases: string }) =>
  lettersOf(phases).map((letter) => ({ end: "at" as const, letter, key: "phases" }));

/** Keys that may be off together, between so many times what they are; nothing where there is nothing to be off. */
export function offBy(values: JsonObject, least: number, most: number): DeviceNumber[] {
  const times = (factor: number): JsonObject =>
    Object.fromEntries(Object.entries(values).map(([key, value]) => [key, scaled(value, factor)]));
  const [asDrawn, low, high] = [times(1), times(least), times(most)];
  return JSON.stringify(low) === JSON.stringify(asDrawn) && JSON.stringify(high) === JSON.stringify(asDrawn)
    ? []
    : [{ low, high }];
}

const scaled = (value: Json | undefined, factor: number): Json =>
  typeof value === "number"
    ? value * factor
    : Array.isArray(value)
      ? value.map((it) => scaled(it, factor))
      : (value ?? null);

/** Resistance to earth may be half or twice what was measured once, in another season (common practice, no source). */
export const ROD_OFF_BY = [0.5, 2] as const;

/** Joins each phase of the two ends, but those that are open, and the neutral through. */
export function joinsThrough(it: TwoEnds, open: string, openNeutral = false): Join[] {
  const joins: Join[] = lettersOf(it.phases).map((letter) => ({
    ...join(letter, !open.includes(letter)),
    to: `to/${letterBeyond(it, letter)}`,
  }));
  return it.neutral ? [...joins, join("N", !openNeutral)] : joins;
}

/** Two ends of a device as one conductor on a letter, where it is closed. */
export const join = (letter: Letter, closed: boolean, from: End = "from", to: End = "to"): Join => ({
  part: "join",
  from: `${from}/${letter}`,
  to: `${to}/${letter}`,
  letter,
  closed,
});

const without = (phases: string, phase: string): string =>
  [...phases].filter((it) => !phase.includes(it)).join("");

/** The phases out of `own` that any of these keys names. */
export const union = (own: string, ...named: string[]): string =>
  [...own].filter((phase) => named.some((it) => it.includes(phase))).join("");

interface Openable {
  readonly phases: string;
  readonly open: string;
  readonly tagged: boolean;
  readonly blocked: boolean;
}

/** How most things open: by the key `open`, phase by phase, and by nobody else's hand. */
export const plainOpening = <E extends Openable = Openable>(
  differences: Partial<OpeningMechanism<E>> = {},
): OpeningMechanism<E> => ({
  openPhases: ({ open }) => open,
  gang: () => false,
  automatic: () => false,
  visibleGap: () => true,
  blocked: ({ blocked }) => blocked,
  closing: ({ open }, phases) => ({ open: without(open, phases) }),
  ...differences,
});

/** Nothing on it and nothing in hand breaks load: the company's limit for that, if it has one. */
export const breaksBare = (_element: unknown, _tool: string, settings: BreakSettings): Breaks => ({
  amps: settings.openWithoutLoadBreakAmps,
  basis: "bare",
});

/** Made to break its own load, whatever that is; the drawing has no figure for it. */
export const breaksItsLoad = (): Breaks => ({ amps: Infinity, basis: "made-for-load" });

/**
 * The rating on its plate. None, or zero, is no rating at all: what a company lets a bare cutout break is no rule for it,
 * and it breaks charging and exciting current only (29 CFR 1910.269(l)(12)).
 */
export const breaksRated = (amps: number, { clampBreakAmps }: BreakSettings): Breaks =>
  amps > 0 ? { amps, basis: "rated" } : { amps: clampBreakAmps, basis: "unrated" };

/** The phases that are left where some are taken away. */
export const removePhases = without;

/** The closings of an open device that nobody on the crew does: one a phase, or one for the gang. */
export function closingUpsets<E extends Openable>(element: E, opening: OpeningMechanism<E>): DeviceUpset[] {
  const open = opening.openPhases(element);
  if (open === "") return [];
  const groups = opening.gang(element) ? [element.phases] : [...open];
  return groups.map((phases) => {
    const blocked = [...phases].every((phase) => opening.blocked(element, phase));
    const byItself = opening.automatic(element) && !blocked;
    return {
      kind: byItself ? ("reclose" as const) : ("close" as const),
      ...(opening.gang(element) ? {} : { phase: phases as Phase }),
      strength: byItself || !element.tagged ? 1 : blocked ? 3 : 2,
      change: opening.closing(element, phases),
    };
  });
}

/**
 * A thing that opens and stands the other way: as a whole where it stands alike on all phases, and each phase by itself
 * where each has its own handle.
 */
export function positionsDoubted<E extends Openable>(
  element: E,
  opening: OpeningMechanism<E>,
): DeviceDoubt[] {
  const { phases, open } = element;
  const isOpen = opening.openPhases(element);
  const otherWay = (asked: string): DeviceDoubt => ({
    doubt: "other-position",
    ...(asked === phases ? {} : { phases: asked }),
    instead: (isOpen.includes(asked)
      ? opening.closing(element, asked)
      : { open: union(phases, open, asked) }) as JsonObject,
  });
  const each = opening.gang(element) || phases.length === 1 ? [] : [...phases];
  return [...(isOpen === "" || isOpen === phases ? [phases] : []), ...each].map(otherWay);
}

/** What follows from how a thing with two ends opens: what it brings and joins, how it could close, how else it could stand. */
export const opensBy = <E extends Openable>(opening: OpeningMechanism<E>) => ({
  brings: bringsBothEnds,
  parts: (it: E & TwoEnds) => joinsThrough(it, opening.openPhases(it)),
  opening,
  upsets: (it: E) => closingUpsets(it, opening),
  doubts: (it: E & TwoEnds) => [...swapDoubted(it.toPhases), ...positionsDoubted(it, opening)],
});

/** Phases that are drawn to go on as others may go straight on. */
export const swapDoubted = (toPhases = ""): DeviceDoubt[] =>
  toPhases === "" ? [] : [{ doubt: "swapped-phases", instead: { toPhases: null } }];

/** Whether the neutral that comes through a thing is not there. */
export const neutralDoubted = (neutral: boolean, key: "parted" | "cut", parted: string): DeviceDoubt[] =>
  neutral && !parted.includes("N") ? [{ doubt: "open-neutral", instead: { [key]: `${parted}N` } }] : [];

/** A word for some phases of a thing, which are named where they are not all of it. */
export const onPhases = (key: MessageKey, { phases: own }: { phases: string }, phases: string): Message =>
  say(key, { phases: own.length === 1 || phases === own ? "" : ` ${phases}` });

/** The position of a thing that opens, in words, where it is open or normally so; `word` is what its kind calls open. */
export function openPosition(
  it: { readonly phases: string; readonly open: string; readonly normallyOpen: boolean },
  word: MessageKey = "drawing.open",
): Message | undefined {
  if (it.normallyOpen)
    return it.open === "" ? say("drawing.normallyOpenClosed") : onPhases("drawing.normallyOpen", it, it.open);
  return it.open === "" ? undefined : onPhases(word, it, it.open);
}

/** Pairs of phases that a delta hangs between: all three, or the one pair that two letters make. */
export function deltaPairs(phases: string): (readonly [Phase, Phase])[] {
  const own = lettersOf(phases);
  if (own.length === 3)
    return [
      [own[0]!, own[1]!],
      [own[1]!, own[2]!],
      [own[2]!, own[0]!],
    ];
  return own.length === 2 ? [[own[0]!, own[1]!]] : [];
}

/** Volts from one phase to the neutral: half of leg to leg on a split secondary, line to line over √3 elsewhere. */
export const voltsToNeutral = (phases: string, lineToLineVolts: number): number =>
  isSplit(phases) ? lineToLineVolts / 2 : lineToLineVolts / Math.sqrt(3);

/** Whether these are legs of a split-phase secondary. */
export const isSplit = (phases: string): boolean => /[12]/.test(phases);

/** Phase angle of a letter in normal rotation; legs 1 and 2 stand opposite. */
export const normalAngleDegrees = (letter: Phase): number =>
  ({ A: 0, B: -120, C: 120, "1": 0, "2": 180 })[letter];

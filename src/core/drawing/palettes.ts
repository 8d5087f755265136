import { symbolSizeAt } from "./labels";
import type { Letter } from "../terms";
import type { Look } from "./shapes";

/** The colours of a theme. No colour carries a fact alone: every look has a line pattern and a badge too. */
export interface Palette {
  readonly paper: string;
  readonly ink: string;
  /** live by any way: energized, backfed, induced, faulted */
  readonly hot: string;
  readonly isolated: string;
  readonly grounded: string;
  readonly neutral: string;
  /** selection, focus, a lit path */
  readonly accent: string;
  /** band under what is not known, with `bandInk` on it */
  readonly band: string;
  readonly bandInk: string;
  /** the quiet ground of a pole, and its edge */
  readonly plate: string;
  readonly plateEdge: string;
}

/** For a bright screen, a dark one, and for black and white print. */
export type PaletteName = "sun" | "night" | "paper";

/** Colours of each palette. Hazard is told by line and letter as well: no colour tells anything alone. */
export const PALETTES: Readonly<Record<PaletteName, Palette>> = {
  sun: {
    paper: "#FFFFFF",
    ink: "#111111",
    hot: "#990000",
    isolated: "#636363",
    grounded: "#00113E",
    neutral: "#111111",
    accent: "#0067AD",
    band: "#FFD100",
    bandInk: "#111111",
    plate: "#F1F3F5",
    plateEdge: "#C9CED6",
  },
  night: {
    paper: "#0C1116",
    ink: "#F2F4F5",
    hot: "#FF7A1F",
    isolated: "#8C8C8C",
    grounded: "#E4F5FB",
    neutral: "#F2F4F5",
    accent: "#1AA2EB",
    band: "#FFD100",
    bandInk: "#111111",
    plate: "#182029",
    plateEdge: "#3A4653",
  },
  paper: {
    paper: "#FFFFFF",
    ink: "#000000",
    hot: "#000000",
    isolated: "#555555",
    grounded: "#000000",
    neutral: "#000000",
    accent: "#000000",
    band: "#DDDDDD",
    bandInk: "#000000",
    plate: "#FFFFFF",
    plateEdge: "#000000",
  },
};

/** One pass of the pen over a strand. */
export interface Pass {
  readonly colour: keyof Palette;
  /** [screen px] */
  readonly width: number;
  /** [screen px] */
  readonly dash: readonly number[];
}

const pass = (colour: keyof Palette, width: number, ...dash: number[]): Pass => ({ colour, width, dash });

const PASSES: Readonly<Record<Look, readonly Pass[]>> = {
  energized: [pass("hot", 5)],
  backfed: [pass("hot", 5, 20, 6)],
  induced: [pass("hot", 4, 12, 5, 2, 5)],
  faulted: [pass("ink", 9), pass("hot", 4)],
  isolated: [pass("isolated", 3, 7, 7)],
  grounded: [pass("grounded", 8), pass("paper", 3)],
  neutral: [pass("neutral", 2)],
  unknown: [pass("bandInk", 12), pass("band", 10), pass("bandInk", 4, 4, 9)],
  ink: [pass("ink", 2.5)],
};

/** Of what only stands there [screen px]. */
export const QUIET_WIDTH = 1.5;

/** Widths stay those of the screen under zoom, and only give way where the lines would run together. */
export const widthFactor = (scale: number, text = 1): number =>
  Math.min(1, Math.max(0.45, scale * symbolSizeAt(text) * 1.15));

/** How a look is stroked, lowest pass first. */
export const strokesOf = (look: Look): readonly Pass[] => PASSES[look];

/** What stands along a strand, and how often [screen px]. */
export const alongOf = (
  look: Look,
): { readonly every: number; readonly mark: "arrow" | "cross" } | undefined =>
  look === "backfed"
    ? { every: 96, mark: "arrow" }
    : look === "faulted"
      ? { every: 60, mark: "cross" }
      : undefined;

/** One circle of a ring around a work place. */
export interface RingPass extends Pass {
  /** how far within the ring it lies [screen px] */
  readonly inset: number;
}

/**
 * A ring around a work place, by the state of what is worked on: two circles where that is grounded, dashes where it is
 * isolated, and teeth inward where it may be live or nobody knows.
 */
export function ringStrokesOf(look: Look): readonly RingPass[] {
  const whole = { ...pass("accent", 3), inset: 0 };
  if (look === "isolated") return [{ ...whole, dash: [6, 4] }];
  if (look === "grounded") return [0, 4.5].map((inset) => ({ ...whole, width: 2, inset }));
  if (look === "neutral" || look === "ink") return [whole];
  return [{ colour: "hot", width: 6, dash: [2.5, 5.5], inset: 4 }, whole];
}

/** The letters of a state's badge; a neutral and plain ink have none. */
export const badgeOf = (look: Look): string =>
  ({
    energized: "E",
    backfed: "BF",
    induced: "IND",
    faulted: "FLT",
    isolated: "ISO",
    grounded: "GND",
    unknown: "?",
    neutral: "",
    ink: "",
  })[look];

/** `ISO` where all phases agree, else `A ISO · B E`; neutrals tied to earth are left out. */
export function badgeOfAll(looks: readonly (readonly [Letter, Look])[]): string {
  const told = looks.filter(([, look]) => badgeOf(look) !== "");
  if (told.length === 0) return "";
  if (told.every(([, look]) => look === told[0]![1])) return badgeOf(told[0]![1]);
  return told.map(([letter, look]) => `${letter} ${badgeOf(look)}`).join(" · ");
}

/** Worst first: where one stroke or word must stand for several conductors, the first of these wins. */
export const WORST_FIRST: readonly Look[] = [
  "faulted",
  "energized",
  "backfed",
  "induced",
  "unknown",
  "isolated",
  "grounded",
  "neutral",
  "ink",
];

/** The look that is shown where several meet: the worst of them. */
export const worstOf = (looks: readonly Look[]): Look =>
  WORST_FIRST.find((it) => looks.includes(it)) ?? "ink";

/** Evenly spread spots along a polyline, with the direction there; one in the middle of a short one, none on a stub. */
export function spotsAlong(
  points: readonly number[],
  every: number,
): { readonly x: number; readonly y: number; readonly dx: number; readonly dy: number }[] {
  const spots = [];
  let total = 0;
  for (let k = 0; k + 3 < points.length; k += 2)
    total += Math.hypot(points[k + 2]! - points[k]!, points[k + 3]! - points[k + 1]!);
  if (total < every * 0.4) return [];
  let left = Math.min(every, total) / 2;
  for (let k = 0; k + 3 < points.length; k += 2) {
    const x = points[k]!;
    const y = points[k + 1]!;
    const length = Math.hypot(points[k + 2]! - x, points[k + 3]! - y);
    if (length === 0) continue;
    const dx = (points[k + 2]! - x) / length;
    const dy = (points[k + 3]! - y) / length;
    for (; left <= length; left += every) spots.push({ x: x + dx * left, y: y + dy * left, dx, dy });
    left -= length;
  }
  return spots;
}

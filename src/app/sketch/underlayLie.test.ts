import { expect, test } from "vitest";
import { PALETTES } from "../../core";
import { DIMMED } from "./underlayDimmed";
import { lieInView, movedLie, readLie, stretchedLie, type UnderlayLie } from "./underlayLie";

const LIE: UnderlayLie = { x: 100, y: 50, breadth: 400, turn: 0 };

test("a picture that was just chosen lies whole in the middle of what is shown", () => {
  const camera = { x: -50, y: 20, scale: 2 };
  const size = { width: 360, height: 500 };
  for (const picture of [
    { width: 4000, height: 3000 },
    { width: 300, height: 3000 },
  ]) {
    const { x, y, breadth, turn } = lieInView(camera, size, picture);
    expect([x * 2 - 50, y * 2 + 20, turn]).toEqual([180, 250, 0]);
    expect(breadth * 2).toBeLessThan(360);
    expect((breadth * 2 * picture.height) / picture.width).toBeLessThan(500);
  }
});

test("what lies under two fingers stays under them, however they size and turn it", () => {
  const about = { x: 300, y: 50 };
  expect(stretchedLie(LIE, 2, 0, about)).toEqual({ x: -100, y: 50, breadth: 800, turn: 0 });
  const { x, y, turn } = stretchedLie(LIE, 1, 90, about);
  expect([Math.round(x), Math.round(y), turn]).toEqual([300, -150, 90]);
  const back = stretchedLie(stretchedLie(LIE, 2, 30, about), 0.5, -30, about);
  for (const key of ["x", "y", "breadth"] as const) expect(back[key]).toBeCloseTo(LIE[key]);
  expect(back.turn).toBeCloseTo(0);
});

test("no hand makes a picture so small or so large that it is lost", () => {
  expect(stretchedLie(LIE, 1e-9, 0).breadth).toBe(10);
  expect(stretchedLie(LIE, 1e9, 0).breadth).toBe(200_000);
  expect(movedLie(LIE, { x: 5, y: -5 })).toEqual({ ...LIE, x: 105, y: 45 });
});

test.each([
  ["as it was kept", LIE, LIE],
  ["nothing", undefined, undefined],
  ["a word", "left", undefined],
  ["no number", { ...LIE, x: NaN }, undefined],
  ["no breadth", { ...LIE, breadth: 0 }, undefined],
  ["something left out", { x: 1, y: 2, breadth: 400 }, undefined],
])("a lie that was kept is judged: %s", (_what, kept, read) => {
  expect(readLie(kept)).toEqual(read);
});

/** The contrast that graphics and large letters need [WCAG 2.2, 1.4.11], and that of letters [1.4.3]. */
const [LINES, LETTERS] = [3, 4.5];

test.each(["sun", "night"] as const)(
  "over the darkest and the lightest spot of a picture every line and letter still stands out (%s)",
  (name) => {
    const palette = PALETTES[name];
    const worst = ["#000000", "#FFFFFF"].map((it) => mixed(palette.paper, it, DIMMED[name]));
    const least = (colour: string) => Math.min(...worst.map((it) => contrast(colour, it)));
    for (const line of ["hot", "isolated", "grounded", "neutral", "accent"] as const)
      expect([line, least(palette[line]) >= LINES]).toEqual([line, true]);
    expect(least(palette.ink)).toBeGreaterThan(LETTERS);
  },
);

const channels = (colour: string): number[] =>
  [1, 3, 5].map((at) => Number.parseInt(colour.slice(at, at + 2), 16));

const mixed = (under: string, over: string, share: number): number[] =>
  channels(under).map((it, nth) => it * (1 - share) + channels(over)[nth]! * share);

/** Relative luminance, as WCAG 2.2 defines it. */
function luminance(colour: readonly number[]): number {
  const [red = 0, green = 0, blue = 0] = colour.map((it) => {
    const share = it / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

function contrast(colour: string, ground: readonly number[]): number {
  const [one, other] = [luminance(channels(colour)), luminance(ground)];
  return (Math.max(one, other) + 0.05) / (Math.min(one, other) + 0.05);
}

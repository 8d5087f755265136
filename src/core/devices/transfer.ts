import { lettersOf, say } from "../terms";
import { choice, flag, pointRef, structureRef } from "./fields";
import { common, defineDevice } from "./define";
import { join } from "./shared";
import { dot, line, type Mark, outline } from "./symbol";
import type { End } from "./parts";

const ENDS: readonly End[] = ["from", "alt", "to"];

const POSITIONS = ["utility", "generator", "off"] as const;

/** A customer's transfer switch: utility on `from`, own supply on `alt`. A faulty one joins all three. */
export const transfer = defineDevice({
  kind: "transfer",
  prefix: "ts",
  ends: ENDS,
  fields: {
    ...common,
    from: pointRef(),
    alt: pointRef(),
    to: pointRef(),
    neutral: flag(true),
    on: structureRef(),
    position: choice(POSITIONS, "utility"),
    bridged: flag(false),
    tagged: flag(false),
    blocked: flag(false),
  },
  brings: ({ phases, neutral }) =>
    ENDS.flatMap((end) =>
      [...lettersOf(phases), ...(neutral ? ["N" as const] : [])].map((it) => [end, it] as const),
    ),
  parts: ({ phases, neutral, position, bridged }) => [
    ...lettersOf(phases).flatMap((letter) => [
      join(letter, bridged || position === "utility", "from", "to"),
      join(letter, bridged || position === "generator", "alt", "to"),
    ]),
    ...(neutral ? [join("N", true, "from", "to"), join("N", true, "alt", "to")] : []),
  ],
  upsets: (it) => (it.bridged ? [] : [{ kind: "transfer", strength: 1, change: { bridged: true } }]),
  doubts: ({ position, bridged }) => [
    ...POSITIONS.filter((it) => it !== position).map((it) => ({
      doubt: "other-position" as const,
      instead: { position: it },
    })),
    // What stands by starts by itself as soon as the line is dead.
    ...(bridged
      ? []
      : [{ doubt: "machine" as const, instead: { bridged: true }, runningAt: "alt" as const }]),
  ],
  handling: {
    off: "set-position",
    on: "set-position",
    moves: "position",
    tools: [],
    trouble: 3,
    canGoOff: ({ position, bridged, blocked }) => position !== "off" && !bridged && !blocked,
  },
  position: ({ bridged }) => (bridged ? say("drawing.bridged") : undefined),
  fromThirdEnd: ({ from, alt, position, ...rest }) => ({
    ...rest,
    from: alt,
    alt: from,
    position: position === "off" ? "off" : position === "utility" ? "generator" : "utility",
  }),
  // The blade stands on the contact of the end that it is thrown to, or clear of both. All phases throw together.
  symbol: ({ phases, position, bridged }) => [
    outline(-18, -18, 18, -18, 18, 18, -18, 18),
    line(-20, 0, -11, 0),
    dot(-11, 0, 3),
    dot(0, 12, 3),
    line(0, 12, 0, 20),
    ...(bridged || position === "utility" ? ganged(-11, 0, phases.length) : []),
    ...(bridged || position === "generator" ? ganged(0, 12, phases.length) : []),
    ...(bridged || position !== "off" ? [] : ganged(-5.3, -13.5, phases.length)),
    dot(12, 0, 3),
    line(12, 0, 20, 0),
  ],
});

/**
 * A blade hinged at (12, 0) up to a spot. It stands for as many as are moved together as it has short strokes across it, as
 * IEC 60617 tells how many conductors one line stands for (S00002); one alone has none.
 */
function ganged(x: number, y: number, count: number): Mark[] {
  const length = Math.hypot(12 - x, y);
  const [dx, dy] = [(x - 12) / length, y / length];
  const strokes = Array.from({ length: count > 1 ? count : 0 }, (_, nth) => {
    const along = length / 2 + (nth - (count - 1) / 2) * 5.5;
    const at = (forward: number, aside: number): [number, number] => [
      12 + dx * (along + forward) - dy * aside,
      dy * (along + forward) + dx * aside,
    ];
    return line(...at(-2, -6), ...at(2, 6));
  });
  return [line(12, 0, x, y), ...strokes];
}

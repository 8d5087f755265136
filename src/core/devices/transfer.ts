import { lettersOf, say } from "../terms";
import { choice, flag, pointRef, structureRef } from "./fields";
import { common, defineDevice } from "./define";
import { join } from "./shared";
import { blade, dot, line, outline } from "./symbol";
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
  // The blade stands on the contact of the end that it is thrown to, or clear of both.
  symbol: ({ position, bridged }) => [
    outline(-18, -18, 18, -18, 18, 18, -18, 18),
    line(-20, 0, -11, 0),
    dot(-11, 0, 3),
    dot(0, 12, 3),
    line(0, 12, 0, 20),
    ...(bridged || position === "utility" ? [line(-11, 0, 12, 0)] : []),
    ...(bridged || position === "generator" ? [line(0, 12, 12, 0)] : []),
    ...(bridged || position !== "off" ? [] : [blade(12, -22, -38)]),
    dot(12, 0, 3),
    line(12, 0, 20, 0),
  ],
});

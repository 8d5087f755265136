import { type Letter, lettersOf } from "../terms";
import { choice, flag, pointRef } from "./fields";
import { common, defineDevice } from "./define";
import { join } from "./shared";
import { blade, dot, line, outline } from "./symbol";
import type { End } from "./parts";

const ENDS: readonly End[] = ["from", "alt", "to"];

/** A customer's transfer switch: utility on `from`, own supply on `alt`. A faulty one joins all three. */
export const transfer = defineDevice({
  kind: "transfer",
  ends: ENDS,
  fields: {
    ...common,
    from: pointRef(),
    alt: pointRef(),
    to: pointRef(),
    neutral: flag(true),
    position: choice(["utility", "generator", "off"], "utility"),
    bridged: flag(false),
    tagged: flag(false),
    blocked: flag(false),
  },
  brings: ({ phases, neutral }) =>
    ENDS.flatMap((end) =>
      [...lettersOf(phases), ...(neutral ? ["N" as const] : [])].map((it) => [end, it as Letter] as const),
    ),
  parts: ({ phases, neutral, position, bridged }) => [
    ...lettersOf(phases).flatMap((letter) => [
      join(letter, bridged || position === "utility", "from", "to"),
      join(letter, bridged || position === "generator", "alt", "to"),
    ]),
    ...(neutral ? [join("N", true, "from", "to"), join("N", true, "alt", "to")] : []),
  ],
  upsets: (it) => (it.bridged ? [] : [{ kind: "transfer", strength: 1, change: { bridged: true } }]),
  symbol: ({ position }) => [
    outline(-14, -14, 14, -14, 14, 14, -14, 14),
    line(-20, 0, -8, 0),
    dot(-8, 0, 2),
    dot(0, 10, 2),
    line(0, 10, 0, 20),
    position === "utility"
      ? line(-8, 0, 10, 0)
      : position === "generator"
        ? line(0, 10, 10, 0)
        : blade(10, -16, -32),
    dot(10, 0, 2),
    line(10, 0, 20, 0),
  ],
});

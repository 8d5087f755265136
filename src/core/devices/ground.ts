import { DEFAULT_CABLE } from "../reference";
import { type Json, lettersOf } from "../terms";
import { amount, choice, type FieldContext, flag, optionalChoice, text } from "./fields";
import { defineDevice, oneEnd } from "./define";
import type { Branch, Node } from "./parts";
import { needsItsPhases, offBy, ROD_OFF_BY } from "./shared";
import { earthMark, line, outline } from "./symbol";

/** Sizes of copper grounding cable in the published table (ASTM F855), by the code that a file writes. */
export const GROUNDING_CABLES = ["2", "1/0", "2/0", "3/0", "4/0", "250", "350"] as const;

/** Sizes below the table, which a file may name so that the rule on size can speak. */
const SMALL_CABLES = ["8", "6", "4"] as const;

const CABLES = [...SMALL_CABLES, ...GROUNDING_CABLES] as const;

/** The next size under one; none under the thinnest. */
const thinnerThan = (cable: string): string[] =>
  CABLES.slice(
    0,
    CABLES.findIndex((it) => it === cable),
  ).slice(-1);

/** The size of a grounding cable; large ones may carry their unit. */
export function cableSize() {
  const plain = optionalChoice([...GROUNDING_CABLES, ...SMALL_CABLES]);
  const withUnit: Readonly<Record<string, Json>> = { "250 kcmil": "250", "350 kcmil": "350" };
  return {
    ...plain,
    schema: { enum: [...GROUNDING_CABLES, ...SMALL_CABLES, ...Object.keys(withUnit)] },
    read: (value: Json, context: FieldContext) =>
      plain.read(typeof value === "string" ? (withUnit[value] ?? value) : value, context),
  };
}

/** A temporary protective ground set: jumpers from phases to the neutral, to a rod of its own, or to both. */
export const ground = defineDevice({
  kind: "ground",
  role: "ground-set",
  prefix: "g",
  ends: ["at"],
  fields: {
    ...oneEnd,
    to: choice(["neutral", "earth", "both"], "neutral"),
    ohms: amount("Ω", 0.001, { above: 0 }),
    earthOhms: amount("Ω", 25, { above: 0 }),
    cable: cableSize(),
    poleBond: flag(true),
    tagged: flag(false),
    /** whose set it is: a crew or a person; nothing is the crew of the job */
    by: text(),
  },
  shorts: ({ phases }) => phases,
  brings: () => [],
  needs: (it) => [
    ...needsItsPhases(it),
    ...(it.to === "earth" ? [] : [{ end: "at" as const, letter: "N" as const, key: "to" }]),
  ],
  parts: ({ phases, to, ohms, earthOhms }) => {
    const bar: Node = to === "earth" ? "inner/bar" : "at/N";
    const jumper = (from: Node, onto: Node, letter: Branch["letter"], jumperOhms: number): Branch => ({
      part: "branch",
      role: "ground",
      from,
      to: onto,
      letter,
      siemens: [1 / jumperOhms, 0],
    });
    return [
      ...lettersOf(phases).map((letter) => jumper(`at/${letter}`, bar, letter, ohms)),
      ...(to === "neutral" ? [] : [jumper(bar, "earth", "N", earthOhms)]),
    ];
  },
  numbers: ({ to, earthOhms }) => (to === "neutral" ? [] : offBy({ earthOhms }, ...ROD_OFF_BY)),
  doubts: ({ poleBond, cable }) => [
    ...(poleBond ? [{ doubt: "no-pole-bond", instead: { poleBond: false } } as const] : []),
    ...thinnerThan(cable ?? DEFAULT_CABLE).map((it) => ({
      doubt: "thin-ground" as const,
      instead: { cable: it },
    })),
  ],
  hangsClear: true,
  symbol: () => [line(-20, 0, 4, 0), outline(-16, -5, -7, -5, -7, 5, -16, 5), ...earthMark(4)],
});

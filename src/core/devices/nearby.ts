import { type Complex, complex, type Letter, say } from "../terms";
import { amount, choice, elementRef, flag, internal, neededAmount, optionalAmount, text } from "./fields";
import { elementFields, defineDevice, EVIDENCE, problem } from "./define";
import type { End, Part } from "./parts";
import { offBy } from "./shared";
import { line } from "./symbol";

/** Impedance behind which a live circuit touches a span: the file format's own figure. */
const CONTACT_OHMS: Complex = [0.05, 0.5];

/** Another circuit close to a span: it couples into it alongside, and it could touch. */
export const nearby = defineDevice({
  kind: "nearby",
  role: "beside",
  prefix: "n",
  startsWith: { relation: "crossing", kvLL: 12.47 },
  ends: [],
  fields: {
    label: text(),
    evidence: choice(EVIDENCE, "map"),
    ...elementFields,
    span: elementRef(),
    relation: choice(["crossing", "underbuild", "parallel"], "crossing", true),
    kvLL: neededAmount("kV"),
    spacingM: optionalAmount("m", { above: 0 }),
    lengthM: optionalAmount("m", { above: 0 }),
    amps: amount("A", 0),
    on: flag(true),
    /** touching now: what the upset does; never written to a file */
    touching: internal(flag(false)),
  },
  check: ({ relation, spacingM }) =>
    relation !== "crossing" && spacingM === undefined ? [problem("spacingM", say("read.missing"))] : [],
  brings: () => [],
  parts: (it, place): Part[] => {
    const span = place.span ?? { letters: [], lettersBeyond: [], parted: [] };
    const volts: Complex = complex.polar((it.kvLL * 1000) / Math.sqrt(3), 0);
    const contact = (end: End, letter: Letter): Part => ({
      part: "emf",
      role: "contact",
      on: it.on && it.touching,
      legs: [{ node: `${end}/${letter}`, letter, volts }],
      star: "earth",
      inStep: "never",
      ohms: [[CONTACT_OHMS]],
    });
    return [
      ...span.letters
        .filter((letter) => letter !== "N")
        .flatMap((letter, at) =>
          span.parted.includes(letter)
            ? [contact("from", letter), contact("to", span.lettersBeyond[at]!)]
            : [contact("from", letter)],
        ),
      ...(it.on && it.relation !== "crossing" && it.spacingM !== undefined
        ? [
            {
              part: "alongside" as const,
              relation: it.relation,
              volts: (it.kvLL * 1000) / Math.sqrt(3),
              amps: it.amps,
              spacingM: it.spacingM,
              lengthM: it.lengthM,
            },
          ]
        : []),
    ];
  },
  upsets: (it) =>
    it.on && !it.touching ? [{ kind: "contact", strength: 1, change: { touching: true } }] : [],
  // Nobody has measured how near it runs, and its current is another every hour; common practice, no source.
  numbers: ({ spacingM, lengthM, amps }) => [
    ...(spacingM === undefined ? [] : offBy({ spacingM }, 0.8, 1.25)),
    ...(lengthM === undefined ? [] : offBy({ lengthM }, 0.9, 1.1)),
    ...offBy({ amps }, 0.5, 2),
  ],
  doubts: ({ on }) => (on ? [] : [{ doubt: "other-position", instead: { on: true } }]),
  rating: ({ relation, kvLL }) => say(`drawing.${relation}`, { kv: kvLL }),
  symbol: () => [line(-20, -6, 20, -6), line(-20, 0, 20, 0), line(-20, 6, 20, 6)],
});

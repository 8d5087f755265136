import { type JsonObject, type Letter, lettersOf, say } from "../terms";
import { amount, choice, matrix, otherLetters, phases, text } from "./fields";
import { defineDevice, problem, THIS, twoEnds } from "./define";
import {
  bringsBothEnds,
  isSplit,
  letterBeyond,
  neutralDoubted,
  offBy,
  removePhases,
  ROD_OFF_BY,
  swapDoubted,
} from "./shared";
import { line } from "./symbol";

/** What crosses a line is taken for a line of the same system, or of the commonest one where nothing says [V]. */
const COMMON_VOLTS = 12_470;

const circuitOver = (lineToLineVolts: number): JsonObject => ({
  kind: "nearby",
  span: THIS,
  relation: "crossing",
  kvLL: (lineToLineVolts || COMMON_VOLTS) / 1000,
});

/** A span of line or cable. What is parted keeps half of its capacitance at each end. */
export const span = defineDevice({
  kind: "span",
  role: "line",
  prefix: "sp",
  ends: ["from", "to"],
  fields: {
    ...twoEnds,
    lengthM: amount("m", 50, { above: 0, max: 1e6 }),
    construction: choice(["overhead", "cable", "secondary"], "overhead"),
    conductor: text(),
    neutralConductor: text(),
    parted: phases({ withNeutral: true }),
    /** letters that its phases go on as at `to`: a transposition, or phases that are rolled */
    toPhases: otherLetters(),
    zOhmsPerKm: matrix("complex"),
    bMicroSPerKm: matrix("real"),
    /** driven rods along the neutral; four a mile on a multi-grounded line (NESC 96C, from memory) */
    rodsPerKm: amount("", 0, { min: 0, max: 100 }),
    rodOhms: amount("Ω", 25, { above: 0, max: 1e6 }),
  },
  check: (it) => {
    const size = it.phases.length + (it.neutral ? 1 : 0);
    const ofSize = (rows: readonly unknown[] | undefined) => rows === undefined || rows.length === size;
    return [
      ...(ofSize(it.zOhmsPerKm) ? [] : [problem("zOhmsPerKm", say("read.matrixSize", { size }))]),
      ...(ofSize(it.bMicroSPerKm) ? [] : [problem("bMicroSPerKm", say("read.matrixSize", { size }))]),
      ...(it.parted.includes("N") && !it.neutral ? [problem("parted", say("read.noNeutral"))] : []),
    ];
  },
  brings: bringsBothEnds,
  apartKey: "parted",
  parts: (it) => [
    {
      part: "stretch",
      letters: it.neutral ? [...lettersOf(it.phases), "N"] : lettersOf(it.phases),
      ...(it.toPhases === ""
        ? {}
        : {
            lettersBeyond: [
              ...lettersOf(it.phases).map((letter) => letterBeyond(it, letter)),
              ...(it.neutral ? (["N"] as const) : []),
            ],
          }),
      parted: [...it.parted] as Letter[],
      lengthM: it.lengthM,
      construction: it.construction,
      conductor: it.conductor,
      neutralConductor: it.neutralConductor,
      zOhmsPerKm: it.zOhmsPerKm,
      bMicroSPerKm: it.bMicroSPerKm,
      rodSiemens: it.neutral ? (it.rodsPerKm * it.lengthM) / 1000 / it.rodOhms / 2 : 0,
    },
  ],
  upsets: (it) =>
    [...it.parted].map((phase) => ({
      kind: "rejoin",
      phase: phase as Letter,
      strength: 1,
      change: { parted: removePhases(it.parted, phase) },
    })),
  doubts: ({ phases, construction, neutral, parted, rodsPerKm, toPhases }, { nominalVolts }) => [
    ...swapDoubted(toPhases),
    ...neutralDoubted(neutral, "parted", parted),
    ...(neutral && rodsPerKm > 0 ? [{ doubt: "no-rod", instead: { rodsPerKm: 0 } } as const] : []),
    ...(construction === "overhead" && !isSplit(phases)
      ? [{ doubt: "crossing", beside: [circuitOver(nominalVolts("from"))] } as const]
      : []),
    { doubt: "no-span", isGone: true },
  ],
  // Lengths are paced, or measured on a map; common practice, no source.
  numbers: ({ lengthM, rodsPerKm, rodOhms }) => [
    ...offBy({ lengthM }, 0.9, 1.1),
    ...(rodsPerKm > 0 ? offBy({ rodOhms }, ...ROD_OFF_BY) : []),
  ],
  // A line that is cut parts like a lead.
  breaks: (_it, _tool, settings) => ({ amps: settings.clampBreakAmps, basis: "lead" }),
  position: ({ parted }) => (parted === "" ? undefined : say("drawing.parted", { phases: parted })),
  rating: ({ construction }) => (construction === "cable" ? say("drawing.cable") : undefined),
  symbol: ({ parted }) =>
    parted === "" ? [line(-20, 0, 20, 0)] : [line(-20, 0, -5, 0, -2, 8), line(20, 0, 5, 0, 2, 8)],
});

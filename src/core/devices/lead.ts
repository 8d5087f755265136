import { type Letter, say } from "../terms";
import { otherLetters, phases } from "./fields";
import { defineDevice, twoEnds } from "./define";
import { bringsBothEnds, joinsThrough, neutralDoubted, removePhases, swapDoubted, union } from "./shared";
import { line } from "./symbol";

/** A short permanent connection. It can be cut, and a cut lead can touch again. */
export const lead = defineDevice({
  kind: "lead",
  prefix: "l",
  ends: ["from", "to"],
  fields: { ...twoEnds, cut: phases({ withNeutral: true }), toPhases: otherLetters() },
  brings: bringsBothEnds,
  apartKey: "cut",
  parts: (it) => joinsThrough(it, it.cut, it.cut.includes("N")),
  upsets: (it) =>
    [...it.cut].map((phase) => ({
      kind: "rejoin",
      phase: phase as Letter,
      strength: 2,
      change: { cut: removePhases(it.cut, phase) },
    })),
  doubts: ({ phases, cut, neutral, toPhases }) => [
    ...swapDoubted(toPhases),
    ...(union(phases, cut) === ""
      ? []
      : [{ doubt: "other-position", instead: { cut: removePhases(cut, phases) } } as const]),
    ...neutralDoubted(neutral, "cut", cut),
  ],
  // Cutters part a conductor at the same gap as a clamp lifted off it: the same limit.
  breaks: (_it, _tool, settings) => ({ amps: settings.clampBreakAmps, basis: "lead" }),
  handling: { off: "cut", on: "join", moves: "phases", tools: ["lead-cutters"], trouble: 6 },
  drops: "nothing",
  standsInLine: true,
  position: ({ cut }) => (cut === "" ? undefined : say("drawing.cut", { phases: cut })),
  symbol: ({ cut }) =>
    cut === ""
      ? [line(-20, 0, 20, 0)]
      : [line(-20, 0, -8, 0), line(-11, -8, -5, 8), line(5, -8, 11, 8), line(8, 0, 20, 0)],
});

import { lettersOf, say } from "../terms";
import { amount, choice } from "./fields";
import { defineDevice, oneEnd, problem } from "./define";
import type { Branch, Node } from "./parts";
import { deltaPairs, needsItsPhases } from "./shared";
import { line } from "./symbol";

/** Something that shorts conductors: a tree, a wire down, a failed bushing. */
export const fault = defineDevice({
  kind: "fault",
  role: "fault",
  prefix: "f",
  ends: ["at"],
  fields: {
    ...oneEnd,
    to: choice(["neutral", "earth", "phases"], "neutral"),
    ohms: amount("Ω", 0.01, { above: 0 }),
  },
  check: ({ to, phases }) =>
    to === "phases" && phases.length < 2 ? [problem("to", say("read.faultOnePhase"))] : [],
  shorts: ({ phases }) => phases,
  brings: () => [],
  needs: (it) => [
    ...needsItsPhases(it),
    ...(it.to === "neutral" ? [{ end: "at" as const, letter: "N" as const, key: "to" }] : []),
  ],
  parts: ({ phases, to, ohms }): Branch[] => {
    const short = (from: Node, onto: Node, letter: Branch["letter"]): Branch => ({
      part: "branch",
      role: "fault",
      from,
      to: onto,
      letter,
      siemens: [1 / ohms, 0],
    });
    return to === "phases"
      ? deltaPairs(phases).map(([from, onto]) => short(`at/${from}`, `at/${onto}`, from))
      : lettersOf(phases).map((letter) => short(`at/${letter}`, to === "earth" ? "earth" : "at/N", letter));
  },
  hangsToward: 135,
  hangsClear: true,
  symbol: () => [line(-20, 0, -8, 0), line(-8, 0, 3, -12, -1, 2, 14, -4, 1, 18)],
});

import { lettersOf, say } from "../terms";
import { choice, flag, neededAmount } from "./fields";
import { BY_HANDLE, defineDevice, oneEnd, opener } from "./define";
import { deltaHasPairs, legsOf } from "./load";
import type { Node } from "./parts";
import { breaksItsLoad, needsItsPhases, offBy, openPosition, plainOpening, positionsDoubted } from "./shared";
import { arc, line } from "./symbol";

/** A capacitor bank. It holds its charge after it is opened, and couples the conductors that it hangs between. */
export const capacitor = defineDevice({
  kind: "capacitor",
  prefix: "cap",
  startsWith: { kvar: 300, kvLL: 12.47 },
  ends: ["at"],
  fields: {
    ...oneEnd,
    ...opener,
    kvar: neededAmount("kvar"),
    kvLL: neededAmount("kV"),
    connection: choice(["wye", "delta"], "wye"),
    charged: flag(false),
  },
  check: deltaHasPairs,
  brings: ({ connection }) => (connection === "wye" ? [["at", "N"]] : []),
  needs: needsItsPhases,
  parts: (it) => {
    const legs = legsOf(it, it.kvLL * 1000);
    const inner = (letter: string): Node => (letter === "N" ? "at/N" : `inner/${letter}`);
    return [
      ...lettersOf(it.phases).map((letter) => ({
        part: "join" as const,
        from: `at/${letter}` as Node,
        to: inner(letter),
        letter,
        closed: !it.open.includes(letter),
      })),
      ...legs.map(({ from, to, volts }) => ({
        part: "branch" as const,
        role: "capacitor" as const,
        from: inner(from),
        to: inner(to),
        letter: from,
        siemens: [0, (it.kvar * 1000) / legs.length / (volts * volts)] as const,
      })),
    ];
  },
  // IEEE Std 18: never less than its rating, at most a tenth more (from memory).
  numbers: ({ kvar }) => offBy({ kvar }, 1, 1.1),
  doubts: (it) => positionsDoubted(it, plainOpening()),
  // Switched by its own device, whose rating is not drawn; the rule on discharge speaks of what stays behind.
  breaks: breaksItsLoad,
  handling: BY_HANDLE,
  drops: "load",
  position: openPosition,
  rating: ({ kvar }) => say("drawing.kvar", { kvar }),
  ratingWidth: 58,
  symbol: ({ open }) => [
    line(-20, 0, open === "" ? -4 : -13, 0),
    line(-4, -13, -4, 13),
    arc(19, 0, 15, 125, 235),
    line(4, 0, 18, 0),
  ],
});

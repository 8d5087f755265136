import { lettersOf, type Phase } from "../terms";
import { flag, taps } from "./fields";
import { BY_HANDLE, defineDevice, opener, twoEnds } from "./define";
import {
  breaksRated,
  bringsBothEnds,
  closingUpsets,
  join,
  openPosition,
  plainOpening,
  positionsDoubted,
} from "./shared";
import type { Join } from "./parts";
import { blade, circle, line } from "./symbol";

/** Volts of one tap step: 32 steps over ±10 % (5/8 %), as in the IEEE test feeders. */
const STEP = 0.00625;

interface Regulators {
  readonly phases: string;
  readonly open: string;
  readonly bypassed: boolean;
  readonly tagged: boolean;
  readonly blocked: boolean;
}

const opening = plainOpening<Regulators>({ openPhases: ({ open, bypassed }) => (bypassed ? "" : open) });

/** Step-voltage regulators, one a phase: an ideal ratio on the volts between the phase and the neutral. */
export const regulator = defineDevice({
  kind: "regulator",
  prefix: "vr",
  ends: ["from", "to"],
  fields: { ...twoEnds, ...opener, taps: taps(), bypassed: flag(false) },
  brings: bringsBothEnds,
  parts: (it, place): Join[] => [
    ...lettersOf(it.phases).map((letter: Phase): Join => ({
      ...join(letter, it.bypassed || !it.open.includes(letter)),
      ratio: it.bypassed ? 1 : 1 + STEP * (it.taps[letter] ?? 0),
      common: place.hasNeutral("from") ? "from/N" : "earth",
    })),
    ...(it.neutral ? [join("N", true)] : []),
  ],
  opening,
  upsets: (it) => closingUpsets(it, opening),
  doubts: (it) => positionsDoubted(it, opening),
  // A regulator is bypassed before it is switched out; its own switches break no load.
  breaks: (_it, _tool, settings) => breaksRated(0, settings),
  handling: { ...BY_HANDLE, trouble: 3, canGoOff: ({ bypassed }) => !bypassed },
  drops: "nothing",
  standsInLine: true,
  position: openPosition,
  symbolReach: 13,
  // Switched out it stands smaller behind a gap.
  symbol: (it) =>
    opening.openPhases(it) === ""
      ? [circle(0, 0, 13), line(-14, 14, 14, -14), line(6, -14, 14, -14, 14, -6)]
      : [
          circle(4, 0, 9),
          line(-6, 10, 14, -10),
          line(8, -10, 14, -10, 14, -4),
          line(-13, -6, -13, 6),
          blade(-5, -9, -45),
        ],
});

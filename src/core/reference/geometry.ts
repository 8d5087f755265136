import type { Letter } from "../terms";

/** Metres across and up. */
export type ConductorPosition = readonly [acrossM: number, upM: number];

/** Where conductors hang when nothing else is known: the file format's own default positions. */
const OVERHEAD: Readonly<Record<Letter, ConductorPosition>> = {
  A: [-1.12, 10.2],
  B: [0, 10.5],
  C: [1.12, 10.2],
  "1": [0.09, 7.6],
  "2": [-0.09, 7.6],
  N: [0.1, 8.4],
};

/** Distance between the cables of a three-phase run [m]. */
export const CABLE_SPACING_M = 0.15;

/** Positions of a span's conductors; a single phase hangs at B's place. */
export function positionsOf(letters: readonly Letter[]): ConductorPosition[] {
  const primaries = letters.filter((it) => "ABC".includes(it));
  return letters.map((letter) =>
    primaries.length === 1 && letter === primaries[0] ? OVERHEAD.B : OVERHEAD[letter],
  );
}

import { highAsymmetry, rows } from "../../../shared/reference/grounding-cable.json";

/** X/R above which the high-asymmetry ratings apply. Source: note text of ASTM F855 (`grounding-cable.json`). */
const HIGH_ASYMMETRY = 1.8;
const CYCLES_PER_SECOND = 60;

/** What a ground set is taken for whose cable nobody has noted: the smallest that the table has. */
export const DEFAULT_CABLE = "2";

/** Sizes below the table, and their cross-section beside that of No. 2 [1]. Source: ASTM B258, circular mils of AWG sizes. */
const SMALLER: Readonly<Record<string, number>> = {
  "4": 41740 / 66360,
  "6": 26240 / 66360,
  "8": 16510 / 66360,
};

const row = (cable: string) => rows.find((it) => it.cableSizeAwgCopper.split(" ")[0] === cable);
const highRow = (cable: string) =>
  highAsymmetry.rows.find((it) => it.cableSizeAwgCopper.split(" ")[0] === cable);

/**
 * What a grounding cable withstands for a time and stays reusable [A]: constant I²t from the 30-cycle rating, the
 * 15-cycle rating flat below 15 cycles (of 60 Hz). Above X/R 1.8 the high-asymmetry rating at 15 cycles holds too,
 * again with constant I²t, and the lower of the two counts. A cable under No. 2 withstands what No. 2 does in the ratio
 * of their cross-sections. Undefined for a size that nobody knows.
 * Source: ASTM F855 ratings as reprinted, `shared/reference/grounding-cable.json`.
 */
export function withstandAmps(cable: string, seconds: number, xOverR = 0): number | undefined {
  const share = SMALLER[cable];
  if (share !== undefined) return share * withstandAmps(DEFAULT_CABLE, seconds, xOverR)!;
  const rating = row(cable);
  if (rating === undefined) return undefined;
  const cycles = seconds * CYCLES_PER_SECOND;
  const flat = 1000 * rating.withstandKa15Cycles;
  const plain =
    cycles <= 15 ? flat : Math.min(flat, 1000 * rating.withstandKa30Cycles * Math.sqrt(30 / cycles));
  if (xOverR <= HIGH_ASYMMETRY) return plain;
  const high = highRow(cable)!;
  return Math.min(
    plain,
    1000 * high.ratedSymmetricalKa * Math.min(1, Math.sqrt(high.durationCycles / cycles)),
  );
}

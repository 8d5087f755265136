import table from "../../../shared/reference/grounding-cable.json";

/** X/R above which the high-asymmetry ratings apply. Source: note text of ASTM F855 (`grounding-cable.json`). */
const HIGH_ASYMMETRY = 1.8;
const CYCLES_PER_SECOND = 60;

const row = (cable: string) => table.rows.find((it) => it.cableSizeAwgCopper.split(" ")[0] === cable);
const highRow = (cable: string) =>
  table.highAsymmetry.rows.find((it) => it.cableSizeAwgCopper.split(" ")[0] === cable);

/**
 * What a grounding cable withstands for a time and stays reusable [A]: constant I²t from the 30-cycle rating, the
 * 15-cycle rating flat below 15 cycles (of 60 Hz). Above X/R 1.8 the high-asymmetry rating at 15 cycles holds too,
 * again with constant I²t, and the lower of the two counts. Undefined for a size that the table does not have.
 * Source: ASTM F855 ratings as reprinted, `shared/reference/grounding-cable.json`.
 */
export function withstandAmps(cable: string, seconds: number, xOverR = 0): number | undefined {
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

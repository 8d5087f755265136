import { CABLE_SPACING_M, CONCENTRIC_CABLE } from "../reference";
import { complex, type Complex } from "../terms";
import { earthReturnOhmsPerKm, EPSILON_0 } from "./carson";
import { fillMatrix, invert, kronReduce } from "./matrix";

/**
 * Series impedances of concentric-neutral cables side by side [Ω/km]: the phases, then their concentric neutrals bonded
 * together as one, or (without a neutral in the drawing) bonded to earth and eliminated.
 *
 * @see Kersting, Distribution System Modeling and Analysis, section 4.2.1 (from memory): strand circle as a conductor of
 *      GMR (GMRs·k·R^(k−1))^(1/k), the strand circle's radius between a phase and its own neutral
 */
export function cableOhmsPerKm(phaseCount: number, withNeutral: boolean, frequencyHz: number): Complex[][] {
  const { conductor, strandCount, strandCircleM, strandOhmsPerKm, strandGmrM } = CONCENTRIC_CABLE;
  const concentricGmrM = (strandGmrM * strandCount * strandCircleM ** (strandCount - 1)) ** (1 / strandCount);
  const betweenCables = (a: number, b: number) => Math.abs(a - b) * CABLE_SPACING_M;
  const primitive = fillMatrix(2 * phaseCount, 2 * phaseCount, (row, column) => {
    const [a, b] = [row % phaseCount, column % phaseCount];
    if (row === column)
      return row < phaseCount
        ? earthReturnOhmsPerKm(conductor.gmrM, conductor.ohmsPerKm, frequencyHz)
        : earthReturnOhmsPerKm(concentricGmrM, strandOhmsPerKm / strandCount, frequencyHz);
    return earthReturnOhmsPerKm(a === b ? strandCircleM : betweenCables(a, b), 0, frequencyHz);
  });
  const phases = Array.from({ length: phaseCount }, (_, index) => index);
  return withNeutral ? bondNeutrals(primitive, phaseCount) : kronReduce(primitive, phases);
}

/** Concentric neutrals bonded at both ends stand at the same volts: their admittances add. */
function bondNeutrals(primitive: Complex[][], phaseCount: number): Complex[][] {
  const siemens = invert(primitive);
  const bonded = (index: number) => Math.min(index, phaseCount);
  const sums = fillMatrix(phaseCount + 1, phaseCount + 1, () => complex.zero);
  siemens.forEach((row, i) =>
    row.forEach((it, j) => {
      sums[bonded(i)]![bonded(j)] = complex.add(sums[bonded(i)]![bonded(j)]!, it);
    }),
  );
  return invert(sums);
}

/**
 * Capacitance of each cable from its phase to its concentric neutral, 2πε/ln(b/a) [F/km]; to earth where no neutral is drawn.
 * @see `shared/reference/conductors.json`, cableCapacitanceExample
 */
export function cableFaradPerKm(phaseCount: number, withNeutral: boolean): number[][] {
  const { conductor, insulationOuterRadiusM, relativePermittivity } = CONCENTRIC_CABLE;
  const own =
    (2000 * Math.PI * EPSILON_0 * relativePermittivity) /
    Math.log(insulationOuterRadiusM / conductor.radiusM);
  const size = phaseCount + (withNeutral ? 1 : 0);
  return Array.from({ length: size }, (_, row) =>
    Array.from({ length: size }, (_unused, column) => {
      if (row === column) return row < phaseCount ? own : own * phaseCount;
      return row === phaseCount || column === phaseCount ? -own : 0;
    }),
  );
}

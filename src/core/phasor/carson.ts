import type { ConductorPosition } from "../reference";
import type { Complex } from "../terms";
import { fillMatrix, invert } from "./matrix";

/** Resistivity of the earth assumed under every line [Ω·m]. */
export const EARTH_OHM_METRES = 100;
const FEET_PER_METRE = 1 / 0.3048;
const KM_PER_MILE = 1.609344;
/** Permittivity of air [F/m]. */
export const EPSILON_0 = 8.8541878128e-12;

/** A conductor of a line, whatever it is made of. */
export interface LineConductor {
  readonly ohmsPerKm: number;
  readonly gmrM: number;
  readonly radiusM: number;
  readonly position: ConductorPosition;
}

const distanceM = (a: ConductorPosition, b: ConductorPosition): number =>
  Math.hypot(a[0] - b[0], a[1] - b[1]);

/**
 * Impedance of a loop through earth by the modified Carson equations.
 *
 * @param separationM distance between the two conductors, or the GMR of the one [m]
 * @param ohmsPerKm   the conductor's own resistance, 0 for a mutual term [Ω/km]
 * @returns series impedance [Ω/km]
 * @see Carson 1926; Kersting, Distribution System Modeling and Analysis, equations 4.41 and 4.42 (numbers from memory);
 *      at 60 Hz and 100 Ω·m: 0.09530 + j0.12134 (ln(1/D) + 7.93402) Ω/mile with D in feet
 */
export function earthReturnOhmsPerKm(separationM: number, ohmsPerKm: number, frequencyHz: number): Complex {
  const earth = 0.00158836 * frequencyHz;
  const logs =
    Math.log(1 / (separationM * FEET_PER_METRE)) + 7.6786 + 0.5 * Math.log(EARTH_OHM_METRES / frequencyHz);
  return [ohmsPerKm + earth / KM_PER_MILE, (0.00202237 * frequencyHz * logs) / KM_PER_MILE];
}

/** Primitive series impedances of conductors on one line [Ω/km]. */
export const primitiveOhmsPerKm = (conductors: readonly LineConductor[], frequencyHz: number): Complex[][] =>
  fillMatrix(conductors.length, conductors.length, (row, column) => {
    const own = conductors[row]!;
    return row === column
      ? earthReturnOhmsPerKm(own.gmrM, own.ohmsPerKm, frequencyHz)
      : earthReturnOhmsPerKm(distanceM(own.position, conductors[column]!.position), 0, frequencyHz);
  });

/**
 * Maxwell's capacitance matrix of parallel conductors over earth: the inverse of the potential coefficients
 * ln(S/D)/(2πε₀), S to the image, D to the other conductor or the radius.
 *
 * @returns capacitance, positive on the diagonal and negative off it [F/km]
 * @see Kersting, Distribution System Modeling and Analysis, section 5.1 (from memory)
 */
export function capacitanceFaradPerKm(
  conductors: readonly Omit<LineConductor, "ohmsPerKm" | "gmrM">[],
): number[][] {
  const potential = fillMatrix(conductors.length, conductors.length, (row, column) => {
    const own = conductors[row]!;
    const other = conductors[column]!;
    const image: ConductorPosition = [other.position[0], -other.position[1]];
    const apart = row === column ? own.radiusM : distanceM(own.position, other.position);
    return [Math.log(distanceM(own.position, image) / apart) / (2 * Math.PI * EPSILON_0), 0];
  });
  return invert(potential).map((row) => row.map(([faradPerMetre]) => faradPerMetre * 1000));
}

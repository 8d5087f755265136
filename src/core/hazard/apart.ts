import { complex, type Complex } from "../terms";
import { LEAST_SUPPLY_VOLTS, MOST_APART, MOST_DEGREES } from "./tolerances";

/** Volts to earth of a conductor, and their angle. */
export interface VoltsToEarth {
  readonly volts: number;
  readonly angleDeg: number;
}

const phasor = ({ volts, angleDeg }: VoltsToEarth): Complex => complex.polar(volts, angleDeg);

/** Volts between two conductors [V]. */
export function voltsApart(one: VoltsToEarth, other: VoltsToEarth): number {
  const volts = complex.magnitude(complex.subtract(phasor(one), phasor(other)));
  // Where the equations cannot be solved volts are infinite, and their difference counts as over every limit.
  return Number.isNaN(volts) ? Infinity : volts;
}

/** Angle between two conductors, 0 to 180 [°]. */
export const degreesApart = (one: VoltsToEarth, other: VoltsToEarth): number =>
  Math.abs(((one.angleDeg - other.angleDeg + 540) % 360) - 180);

const areTwoVoltages = (one: VoltsToEarth, other: VoltsToEarth): boolean =>
  Math.min(one.volts, other.volts) < (1 - MOST_APART) * Math.max(one.volts, other.volts);

/** Whether two live conductors stand too far apart, in angle or in volts, to be joined. */
export const standApart = (one: VoltsToEarth, other: VoltsToEarth): boolean =>
  (degreesApart(one, other) > MOST_DEGREES || areTwoVoltages(one, other)) &&
  voltsApart(one, other) > LEAST_SUPPLY_VOLTS;

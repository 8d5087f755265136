import type { Complex } from "../terms";

/**
 * What is drawn for a neutral that the impedances of a model have folded in.
 *
 * - `return`: a conductor that can be cut, parted and grounded to, with next to no impedance: the drop of the return is
 *   inside the phases' matrix already. Rods are assumed. This holds for crews.
 * - `earth`: none; every neutral is perfect earth. This reproduces published results.
 * - `wires`: where the file has the wires themselves, the neutral is a wire with its own impedance; elsewhere `return`.
 * - `given`: neutrals, grounds and meters are those that the file has, and no others. This holds for drawings written as models.
 */
export type NeutralWay = "return" | "earth" | "wires" | "given";

/** The profile by which a model says in its header that it is a drawing: its neutrals, grounds, meters and ids are all there. */
export const DRAWING_PROFILE = "urn:stillhot:drawing:1";

/** Those ways; `return` is what holds where nobody chooses. */
export const NEUTRAL_WAYS: readonly NeutralWay[] = ["return", "earth", "wires", "given"];

/** The row of a return whose drop is counted elsewhere [Ω/km]: it must have next to none, and no coupling. */
export const RETURN_OHMS_PER_KM: Complex = [0.001, 0.001];
/** Driven ground at a pole and at a station [Ω]; common practice, no source. */
export const POLE_OHMS = 25;

/** Driven ground at a station [Ω]; common practice, no source. */
export const STATION_OHMS = 1;
/** Ohms that stand for perfect earth [Ω]. */
export const PERFECT_OHMS = 1e-6;

/** A matrix with one more row and column for the return. */
export function withReturn<Value>(matrix: readonly (readonly Value[])[], own: Value, none: Value): Value[][] {
  return [...matrix.map((row) => [...row, none]), [...matrix.map(() => none), own]];
}

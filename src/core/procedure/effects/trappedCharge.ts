/** Time after which a capacitor may be shorted [s]: 29 CFR 1910.269(w)(1), `procedure-rules.json` w1-capacitors. */
export const DISCHARGE_SECONDS = 300;

/** What the built-in resistor leaves after that time [V]: IEEE Std 18 for units over 600 V (`ferroresonance-and-backfeed.json`). */
const VOLTS_LEFT = 50;

/**
 * Volts that a capacitor still holds some time after it was left without supply: it starts at the crest of its rated
 * volts, and its resistor brings it to 50 V in 300 s, which fixes the one time constant.
 *
 * @param ratedVolts across the capacitor [V, rms]
 * @param seconds since it lost its supply, 0 or more [s]
 * @returns volts across it [V, dc]
 * @see IEEE Std 18 (clause from memory), `shared/reference/ferroresonance-and-backfeed.json`, capacitor
 */
export function trappedVolts(ratedVolts: number, seconds: number): number {
  const crest = Math.SQRT2 * ratedVolts;
  return crest <= VOLTS_LEFT ? crest : VOLTS_LEFT * (crest / VOLTS_LEFT) ** (1 - seconds / DISCHARGE_SECONDS);
}

/**
 * Energy that a charged capacitor lets go when it is shorted or touched.
 *
 * @param kvar of the capacitor at its rated volts [kvar]
 * @param ratedVolts across it [V, rms]
 * @param volts that it holds [V, dc]
 * @returns ½CV² [J], with C = Q / (ωV²)
 */
export const trappedJoules = (kvar: number, ratedVolts: number, volts: number, frequencyHz: number): number =>
  (0.5 * (kvar * 1000) * volts * volts) / (2 * Math.PI * frequencyHz * ratedVolts * ratedVolts);

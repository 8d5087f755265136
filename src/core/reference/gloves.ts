import table from "../../../shared/reference/gloves.json";

/** A class of gloves, with the volts of its use and of its proof test. */
export interface GloveClass {
  /** 00, 0, 1, 2, 3 or 4 */
  readonly name: string;
  readonly maxUseVolts: number;
  readonly proofTestVolts: number;
  readonly colour: string;
}

/** Classes of rubber insulating gloves, lightest first. Source: 29 CFR 1910.137, ASTM D120 (`gloves.json`). */
const GLOVE_CLASSES: readonly GloveClass[] = table.rows.map((row) => ({
  name: row.class,
  maxUseVolts: row.maxUseVoltsAc,
  proofTestVolts: row.proofTestVoltsAc,
  colour: row.colour,
}));

/**
 * The lightest glove class for a voltage; undefined above class 4.
 *
 * @param volts nominal, phase to phase, or to ground where nobody can come between two phases [V]
 * @see 29 CFR 1910.137 Table I-4, its note on phase to ground from memory
 */
export const gloveClassFor = (volts: number): GloveClass | undefined =>
  GLOVE_CLASSES.find(({ maxUseVolts }) => volts <= maxUseVolts);

import table from "../../../shared/reference/minimum-approach.json";

/** How near a person may come; `avoid-contact` from 50 to 300 V, nothing below. */
export type ApproachDistance =
  | { readonly rule: "none" }
  | { readonly rule: "avoid-contact" }
  | { readonly rule: "distance"; readonly phaseToGroundM: number; readonly phaseToPhaseM: number };

/**
 * Minimum approach distance by nominal volts, up to 900 m above the sea; undefined above 72.5 kV.
 *
 * @param nominalVolts phase to phase; on a single-phase system the volts to ground (footnote 2) [V]
 * @see 29 CFR 1910.269 Table R-6, `shared/reference/minimum-approach.json`. A voltage in the gap between two rows takes
 * the upper row.
 */
export function approachDistanceFor(nominalVolts: number): ApproachDistance | undefined {
  if (nominalVolts < table.rows[0]!.nominalVoltsPhaseToPhaseFrom) return { rule: "none" };
  const row = table.rows.find((it) => nominalVolts <= it.nominalVoltsPhaseToPhaseTo);
  if (row === undefined) return undefined;
  if (row.phaseToGroundMetres === null || row.phaseToPhaseMetres === null) return { rule: "avoid-contact" };
  return {
    rule: "distance",
    phaseToGroundM: row.phaseToGroundMetres,
    phaseToPhaseM: row.phaseToPhaseMetres,
  };
}

import { rows } from "../../../shared/reference/transformers.json";

/** Resistance and reactance of a unit, percent on its own rating. */
export interface UnitImpedance {
  readonly kva: number;
  readonly percentR: number;
  readonly percentX: number;
}

/** Single-phase units, percent on their own kVA. Source: EPRI test circuit 24 (public), as the file's `rowsAsGiven` say. */
const UNIT_IMPEDANCES: readonly UnitImpedance[] = rows;

/** The table's row nearest to a unit's kVA; of two equally near, the smaller. */
export function impedanceOfUnit(kva: number): UnitImpedance {
  return UNIT_IMPEDANCES.reduce((best, row) =>
    Math.abs(row.kva - kva) < Math.abs(best.kva - kva) ? row : best,
  );
}

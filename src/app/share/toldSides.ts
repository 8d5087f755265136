import type { LedgerEntry } from "../../core";

/** What is told of an import or an export, in this order. */
export const TOLD_SIDES = ["warnings", "assumed", "leftOut", "approximated"] as const;
/** What was done on the way to a drawing or from one, side by side; a side is left out where nothing was. */
export type ToldSides = Readonly<Partial<Record<(typeof TOLD_SIDES)[number], readonly LedgerEntry[]>>>;

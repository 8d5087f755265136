import type { StillhotDocument } from "../document";
import type { Ledger } from "./ledger";

/** What of a drawing no model and no map has a place for. */
export function notCarried(
  { system, job, scenario, settings, notes, log }: StillhotDocument,
  ledger: Ledger,
): void {
  if (job !== undefined) ledger.note("leftOut", "jobLost", "");
  if (scenario !== undefined) ledger.note("leftOut", "scenarioLost", "");
  if (settings !== undefined) ledger.note("leftOut", "settingsLost", "");
  if (notes !== undefined && notes !== "") ledger.note("leftOut", "notesLost", "");
  if (log !== undefined) ledger.note("leftOut", "logLost", "");
  for (const id of Object.keys(system.structures ?? {})) ledger.note("leftOut", "structureLost", id);
}

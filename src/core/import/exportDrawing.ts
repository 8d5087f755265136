import type { StillhotDocument } from "../document";
import { writeMap } from "./geojson/write";
import { Ledger, type LedgerEntry } from "./ledger";

/** A drawing written for other programs, and everything of it that is not in there. */
export interface Exported {
  readonly text: string;
  readonly leftOut: readonly LedgerEntry[];
  readonly approximated: readonly LedgerEntry[];
}

/** A drawing as a map: GeoJSON (RFC 7946) in the convention of docs/import.md, which `importMap` reads. */
export function exportMap(document: StillhotDocument): Exported {
  const ledger = new Ledger();
  const text = writeMap(document, ledger);
  return { text, leftOut: ledger.entries("leftOut"), approximated: ledger.entries("approximated") };
}

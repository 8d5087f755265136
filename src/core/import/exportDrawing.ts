import type { StillhotDocument } from "../document";
import { writeMap } from "./geojson/write";
import { writeModel } from "./cim/write/writeModel";
import { Ledger, type LedgerEntry } from "./ledger";

/** A drawing written for other programs, and everything of it that is not in there. */
export interface Exported {
  readonly text: string;
  readonly leftOut: readonly LedgerEntry[];
  readonly approximated: readonly LedgerEntry[];
}

/** A drawing as a map: GeoJSON (RFC 7946) in the convention of docs/import.md, which `importMap` reads. */
export const exportMap = (document: StillhotDocument): Exported => exported(document, writeMap);

/** A drawing as a utility's model: CIM (IEC 61970, 61968) in RDF/XML, which `ModelImport` reads. */
export const exportModel = (document: StillhotDocument): Exported => exported(document, writeModel);

function exported(
  document: StillhotDocument,
  write: (document: StillhotDocument, ledger: Ledger) => string,
): Exported {
  const ledger = new Ledger();
  const text = write(document, ledger);
  return { text, leftOut: ledger.entries("leftOut"), approximated: ledger.entries("approximated") };
}

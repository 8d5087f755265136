import {
  type Imported,
  importMap,
  type ImportRefused,
  isImportRefused,
  type LedgerEntry,
  ModelImport,
} from "../../core";
import { told } from "../words/words";
import type { Opened } from "./files";

/** What is told of an import or an export, in this order. */
export const TOLD_SIDES = ["warnings", "assumed", "leftOut", "approximated"] as const;
/** What was done on the way to a drawing or from one, side by side; a side is left out where nothing was. */
export type ToldSides = Readonly<Partial<Record<(typeof TOLD_SIDES)[number], readonly LedgerEntry[]>>>;

/** Whether a text begins as a map: GeoJSON, which is no drawing of ours. */
export const isMap = (start: string): boolean =>
  /^\s*\ufeff?\s*\{[^]*"type"\s*:\s*"FeatureCollection"/.test(start);
/** Whether a text begins as a model: RDF/XML. */
export const isModel = (start: string): boolean => /^\s*\ufeff?\s*<[^]*<?[\w.-]*:?RDF[\s>]/.test(start);

/** Reads a map or a utility's model. Everything that was done on the way to a drawing comes with it. */
export async function readModel(file: Blob, start: string): Promise<Opened> {
  const outcome = isMap(start) ? importMap(await file.text()) : await readPieces(file);
  if (isImportRefused(outcome)) return { problems: outcome.errors.map(told) };
  return { document: outcome.document, warnings: [], sides: outcome };
}

/** Piece by piece, so that the page can answer between two of them. */
async function readPieces(file: Blob): Promise<Imported | ImportRefused> {
  const model = new ModelImport();
  const reader = file.stream().pipeThrough(new TextDecoderStream()).getReader();
  for (;;) {
    const { done, value } = await reader.read();
    if (done || !model.write(value)) break;
  }
  model.endFile();
  return model.finish();
}

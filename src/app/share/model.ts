import { isImportRefused } from "../../core";
import { told } from "../words/words";
import type { ReadingAnswer } from "../worker/reading";
import { type Opened, openedOf } from "./files";
import { readWithPatience } from "./waiting.svelte";

/** Whether a text begins as a map: GeoJSON, which is no drawing of ours. */
export const isMap = (start: string): boolean =>
  /^\s*\ufeff?\s*\{[^]*"type"\s*:\s*"FeatureCollection"/.test(start);
/** Whether a text begins as a model: RDF/XML. */
export const isModel = (start: string): boolean => /^\s*\ufeff?\s*<[^]*<?[\w.-]*:?RDF[\s>]/.test(start);

/** Reads a large drawing. */
export async function readLargeDrawing(file: Blob, name: string): Promise<Opened> {
  return openedBy(await readWithPatience({ file, as: "drawing" }, name));
}

/** Reads a map, a utility's model or a large drawing. Everything that was done on the way to a drawing comes with it. */
export async function readLarge(file: Blob, start: string, name: string): Promise<Opened> {
  const as = isMap(start) ? "map" : isModel(start) ? "model" : "drawing";
  return openedBy(await readWithPatience({ file, as }, name));
}

function openedBy(answer: ReadingAnswer | undefined): Opened {
  if (answer === undefined) return { problems: [] };
  if ("failed" in answer) return { problems: [answer.failed] };
  if ("read" in answer) return openedOf(answer.read);
  if (isImportRefused(answer.imported)) return { problems: answer.imported.errors.map(told) };
  return { document: answer.imported.document, warnings: [], sides: answer.imported };
}

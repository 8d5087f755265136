import { later } from "../words/later";
import { t } from "../words/words";
import type { Opened } from "./files";

const LARGEST_BYTES = 20_000_000;

/** A drawing of more is read off the main thread, which would stand still over it. */
const LARGE_BYTES = 300_000;

/** Letters at the start that tell a map or a model from a drawing. */
const PEEK = 4000;

/** Reads a file that was chosen: a drawing, a map or a model, a link, or a photograph of a printed code. */
export async function readFile(file: File): Promise<Opened> {
  const start = await file.slice(0, PEEK).text();
  const isLargeDrawing = file.size > LARGE_BYTES && file.size <= LARGEST_BYTES && /^\s*\{/.test(start);
  if (isLargeDrawing || /"FeatureCollection"|:RDF[\s>]/.test(start)) {
    const { isMap, isModel, readLarge } = await later(() => import("./model"));
    if (isLargeDrawing || isMap(start) || isModel(start)) return readLarge(file, start, file.name);
  }
  if (file.size > LARGEST_BYTES) return { problems: [tooLarge(file.size)] };
  const { readBytes } = await later(() => import("./link"));
  const opened = await readBytes(new Uint8Array(await file.arrayBuffer()), file.name);
  if ("document" in opened || !/^image\/(?!svg)/.test(file.type)) return opened;
  // It may be a photograph of a printed code.
  const { readPhotograph } = await later(() => import("./scanned"));
  return (await readPhotograph(file)) ?? opened;
}

/** What is said of a file that is larger than any drawing. */
export const tooLarge = (bytes: number): string =>
  t("share.tooLarge", { megabytes: Math.round(bytes / 1e6), most: LARGEST_BYTES / 1e6 });

import {
  type Imported,
  importMap,
  type ImportRefused,
  isImportRefused,
  ModelImport,
  type ReadFile,
  readableImport,
  readDocument,
  say,
  type Unreadable,
} from "../../core";
import type { Progress } from "./elsewhere";
import type { Failed } from "./questions";

/** A large file, and what its beginning shows it to be. */
export interface ReadingQuestion {
  readonly file: Blob;
  readonly as: "drawing" | "map" | "model";
}

/** What came of it. */
export type ReadingAnswer =
  | { readonly read: ReadFile | Unreadable }
  | { readonly imported: Imported | ImportRefused }
  | Failed;

/** Told no oftener than this: a person sees no more [ms]. */
const TOLD_EVERY_MS = 100;

/** Reads a file and makes a drawing of it; `tell` hears how much of it is read. At the end the drawing is being made. */
export async function answerReading(
  { file, as }: ReadingQuestion,
  tell: (progress: Progress) => void,
): Promise<ReadingAnswer> {
  try {
    if (as === "model") return { imported: readable(await importPieces(file, tell)) };
    const pieces: string[] = [];
    await eachPiece(file, tell, (piece) => pieces.push(piece) > 0);
    const text = pieces.join("");
    return as === "map" ? { imported: readable(importMap(text)) } : { read: readDocument(text) };
  } catch (error) {
    if (error instanceof NotUtf8) return { imported: { errors: [say("importing.error.notUtf8")] } };
    return { failed: error instanceof Error ? error.message : String(error) };
  }
}

const readable = (outcome: Imported | ImportRefused): Imported | ImportRefused =>
  isImportRefused(outcome) ? outcome : readableImport(outcome);

async function importPieces(
  file: Blob,
  tell: (progress: Progress) => void,
): Promise<Imported | ImportRefused> {
  const model = new ModelImport();
  await eachPiece(file, tell, (piece) => model.write(piece));
  model.endFile();
  return model.finish();
}

/** Hands a file's text on piece by piece, as long as it is taken. */
async function eachPiece(
  file: Blob,
  tell: (progress: Progress) => void,
  take: (piece: string) => boolean,
): Promise<void> {
  const decoder = new TextDecoder("utf-8", { fatal: true });
  const reader = file.stream().getReader();
  let bytes = 0;
  let toldAt = 0;
  for (;;) {
    const { done, value } = await reader.read();
    if (done) break;
    if (!take(decoded(decoder, value))) return void reader.cancel();
    bytes += value.length;
    if (performance.now() - toldAt < TOLD_EVERY_MS) continue;
    toldAt = performance.now();
    tell({ share: bytes / file.size });
  }
  take(decoded(decoder));
  tell({ share: 1 });
}

class NotUtf8 extends Error {}

/** The text of the next bytes, or of what is left at the end. @throws NotUtf8 */
function decoded(decoder: TextDecoder, bytes?: Uint8Array): string {
  try {
    return decoder.decode(bytes, { stream: bytes !== undefined });
  } catch {
    throw new NotUtf8();
  }
}

import { createReadStream } from "node:fs";
import { type FileProblem, isUnreadable, type MessageGaps, readDocument, type ReadFile } from "../core";
import type { Io } from "./io";
import { unknownRules } from "./unknownRules";
import { type MessageKey, say } from "./words";

/** A file that was read, by the name that it was asked for. */
export interface InputFile extends ReadFile {
  readonly file: string;
}

/** A file that could not be used. */
export interface Refused {
  readonly file: string;
  readonly problems: readonly FileProblem[];
}

/** Whether a file could not be used. */
export const isRefused = (it: InputFile | Refused): it is Refused => "problems" in it;

/** More than any file that the reader lets through: 20 million letters of at most four bytes. */
const MOST_BYTES = 80_000_000;

/** Reads one file, or standard input for `-`. */
export async function readInput(file: string, io: Io): Promise<InputFile | Refused> {
  const refused = (key: MessageKey, gaps?: MessageGaps): Refused => ({
    file,
    problems: [{ path: "", message: say(key, gaps) }],
  });
  let bytes: Buffer | undefined;
  try {
    bytes = await gather(file === "-" ? io.stdin : createReadStream(file));
  } catch (error) {
    return refused(...reasonOf(error));
  }
  if (bytes === undefined) return refused("cli.tooManyBytes", { most: MOST_BYTES / 1e6 });
  const text = textOf(bytes);
  if (text === undefined) return refused(isUtf16(bytes) ? "cli.utf16" : "cli.notUtf8");
  const read = readDocument(text);
  if (isUnreadable(read)) return { file, problems: read.problems };
  const { document, warnings } = read;
  return { file, document, warnings: [...warnings, ...unknownRules(document)] };
}

/** All bytes of a stream, or nothing once there are too many: a device that never ends must not fill the memory. */
async function gather(stream: AsyncIterable<Uint8Array | string>): Promise<Buffer | undefined> {
  const pieces: Uint8Array[] = [];
  let size = 0;
  for await (const piece of stream) {
    const bytes = typeof piece === "string" ? Buffer.from(piece) : piece;
    size += bytes.length;
    if (size > MOST_BYTES) return undefined;
    pieces.push(bytes);
  }
  return Buffer.concat(pieces);
}

/** Why a file could not be read, as a sentence's key and gaps. */
export function reasonOf(error: unknown): [MessageKey, MessageGaps?] {
  const { code, message } = error as NodeJS.ErrnoException;
  switch (code) {
    case "ENOENT":
    case "ENOTDIR":
      return ["cli.noSuchFile"];
    case "EISDIR":
      return ["cli.isFolder"];
    case "EACCES":
    case "EPERM":
      return ["cli.mayNotRead"];
    default:
      return ["cli.notRead", { why: code ?? message }];
  }
}

function textOf(bytes: Buffer): string | undefined {
  try {
    return new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    return undefined;
  }
}

const isUtf16 = (bytes: Buffer): boolean =>
  (bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff);

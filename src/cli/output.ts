import { randomUUID } from "node:crypto";
import { statSync } from "node:fs";
import { access, constants, lstat, readFile, rename, rm, stat, writeFile } from "node:fs/promises";
import { basename, dirname, join } from "node:path";
import { type Call, UsageError } from "./command";
import { NotDone } from "./eachFile";
import { say, spell } from "./words";

/**
 * Where `-o OUT` puts what is made of each file: OUT itself, or a file of the same name in OUT where that is a folder.
 * Nothing where there is no `-o`, or it is `-`: then it goes to standard output.
 *
 * @param ending of the files in a folder, in place of `.stillhot.json`
 */
export function writeTo(
  flags: Call["flags"],
  files: readonly string[],
  ending: string,
): ((file: string) => string) | undefined {
  const out = flags.get("--out");
  if (typeof out !== "string" || out === "-") return undefined;
  if (isFolder(out)) {
    const placeOf = (file: string) => join(out, nameOf(file) + ending);
    refuseOneOverAnother(files, placeOf);
    return placeOf;
  }
  if (files.length > 1) throw new UsageError(spell(say("cli.oneOut", { out })));
  return () => out;
}

/** Two files of one name from two folders: the second would take the place of the first, which nobody asked for. */
function refuseOneOverAnother(files: readonly string[], placeOf: (file: string) => string): void {
  const firstAt = new Map<string, string>();
  for (const file of files) {
    const out = placeOf(file);
    const first = firstAt.get(out) ?? file;
    if (first !== file) throw new UsageError(spell(say("cli.sameOut", { first, second: file, out })));
    firstAt.set(out, first);
  }
}

/** What cannot be looked at is no folder: writing it then says why. */
function isFolder(path: string): boolean {
  try {
    return statSync(path).isDirectory();
  } catch {
    return false;
  }
}

const nameOf = (file: string): string =>
  file === "-" ? "drawing" : basename(file).replace(/(\.stillhot)?\.json$/i, "");

/**
 * Writes a file whole or not at all: what stood there before stays until the new one is complete, and what may be done with it
 * stays as it was. Never through a link: what it leads to may be anybody's.
 */
export async function write(out: string, text: string | Uint8Array): Promise<void> {
  const beside = join(dirname(out), `.${randomUUID()}.tmp`);
  try {
    const mode = await standing(out);
    if (mode === "device") return await writeFile(out, text);
    // Made anew or not at all: nobody can have put a link there before.
    await writeFile(beside, text, { flag: "wx", ...(mode === undefined ? {} : { mode }) });
    await rename(beside, out);
  } catch (error) {
    await rm(beside, { force: true }).catch(() => undefined);
    if (error instanceof NotDone) throw error;
    const { code, message } = error as NodeJS.ErrnoException;
    throw new NotDone(spell(say("cli.notWritten", { out, why: code ?? message })));
  }
}

/** Writes what is no drawing, as a picture or a page. Never onto a drawing, which would be gone. */
export async function writeBeside(out: string, text: string | Uint8Array): Promise<void> {
  if (await holdsDrawing(out)) throw new NotDone(spell(say("cli.overDrawing", { out })));
  await write(out, text);
}

/** How what stands at a place may be used; nothing where nothing stands. A pipe or a device is written into, not replaced. */
async function standing(out: string): Promise<number | "device" | undefined> {
  const there = await lstat(out).catch(nothingThere);
  if (there === undefined) return undefined;
  if (there.isSymbolicLink()) {
    const end = await stat(out).catch(nothingThere);
    if (end === undefined || end.isFile()) throw new NotDone(spell(say("cli.throughLink", { out })));
    return "device";
  }
  if (!there.isFile()) return "device";
  await access(out, constants.W_OK);
  return there.mode & 0o777;
}

function nothingThere(error: NodeJS.ErrnoException): undefined {
  if (error.code !== "ENOENT") throw error;
}

/** Whether a file is one of Stillhot's own: a drawing, a scenario, an attempt. */
async function holdsDrawing(path: string): Promise<boolean> {
  try {
    if (!(await stat(path)).isFile()) return false;
    const held = JSON.parse(await readFile(path, "utf8")) as { readonly format?: unknown } | null;
    return typeof held?.format === "string" && held.format.startsWith("stillhot");
  } catch {
    return false;
  }
}

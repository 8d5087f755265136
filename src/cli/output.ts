import { statSync } from "node:fs";
import { rename, rm, writeFile } from "node:fs/promises";
import { basename, join } from "node:path";
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

const isFolder = (path: string): boolean => statSync(path, { throwIfNoEntry: false })?.isDirectory() ?? false;

const nameOf = (file: string): string =>
  file === "-" ? "drawing" : basename(file).replace(/(\.stillhot)?\.json$/i, "");

/** Writes a file whole or not at all: what stood there before stays until the new one is complete. */
export async function write(out: string, text: string): Promise<void> {
  const beside = `${out}.${process.pid}.tmp`;
  try {
    const stands = statSync(out, { throwIfNoEntry: false });
    // A pipe or a device is written into; it cannot be replaced.
    if (stands !== undefined && !stands.isFile()) return await writeFile(out, text);
    await writeFile(beside, text);
    await rename(beside, out);
  } catch (error) {
    await rm(beside, { force: true }).catch(() => undefined);
    const { code, message } = error as NodeJS.ErrnoException;
    throw new NotDone(spell(say("cli.notWritten", { out, why: code ?? message })));
  }
}

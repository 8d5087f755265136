import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join, sep } from "node:path";
import { fileURLToPath } from "node:url";
import { LESSON_VERSIONS, lessonPackage, type PackagedVersion } from "../core";
import { type Call, type Command, UsageError } from "./command";
import { isRefused, readInput } from "./input";
import { writeBeside, writeTo } from "./output";
import { asText, jsonLine, refusedLines } from "./print";
import { say, spell } from "./words";

/** The built app stands beside the built command line, in a clone as in an installed package. */
const app = fileURLToPath(new URL("../dist", import.meta.url));

/** A scenario as a zip for learning systems. */
export const packageLesson: Command = {
  name: "package",
  summary: "cli.package.summary",
  help: "cli.package.help",
  flags: [
    { name: "--scorm", value: "1.2|2004" },
    { name: "--out", short: "-o", value: "OUT" },
  ],
  takesFiles: true,
  async run({ files, flags, json }, io) {
    const [file] = files;
    if (file === undefined || files.length > 1) throw new UsageError(spell(say("cli.package.oneFile")));
    const version = versionOf(flags);
    const out = writeTo(flags, files, `.scorm-${version}.zip`)?.(file);
    if (out === undefined) throw new UsageError(spell(say("cli.package.needsOut")));
    const input = await readInput(file, io);
    if (isRefused(input)) {
      io.err(asText(refusedLines(input)));
      return 2;
    }
    const why =
      input.document.scenario === undefined
        ? say("cli.variant.noScenario", { file })
        : existsSync(join(app, "index.html"))
          ? undefined
          : say("cli.serve.noApp");
    if (why !== undefined) {
      io.err(asText([spell(why)]));
      return 2;
    }
    const bytes = lessonPackage(input.document, version, builtApp());
    await writeBeside(out, bytes);
    const { title } = input.document;
    if (json) io.out(jsonLine({ file, scorm: version, out, bytes: bytes.length }));
    else io.out(asText([spell(say("cli.wrote", { file: title, out }))]));
    return 0;
  },
};

/** All files of the built app, by their paths within it. */
const builtApp = (): ReadonlyMap<string, Uint8Array> =>
  new Map(
    readdirSync(app, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) => {
        const file = join(entry.parentPath, entry.name);
        return [file.slice(app.length).split(sep).filter(Boolean).join("/"), readFileSync(file)];
      }),
  );

function versionOf(flags: Call["flags"]): PackagedVersion {
  const asked = flags.get("--scorm") ?? "2004";
  const found = LESSON_VERSIONS.find((it) => it === asked);
  if (found === undefined)
    throw new UsageError(
      spell(say("cli.package.noVersion", { version: String(asked), known: LESSON_VERSIONS.join(", ") })),
    );
  return found;
}

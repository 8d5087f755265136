import { generateTap, type Level, LEVELS, TAP_VERSIONS, writeDocument } from "../core";
import { type Call, type Command } from "./command";
import { wholeNumber } from "./numbers";
import { write, writeTo } from "./output";
import { asText, jsonLine } from "./print";
import { say, speech, spell } from "./words";

/** Seeds that a person can say over the radio, and a script can count through. */
export const MOST_SEED = 4_294_967_295;

/** The level that a line asks for. Throws a UsageError where it asks for none that there is. */
export const levelOf = (flags: Call["flags"]): Level =>
  wholeNumber(flags, "--level", { from: LEVELS[0]!, to: LEVELS.at(-1)! }) as Level;

/** A drawing to practise on, made from a level and a seed. */
export const generate: Command = {
  name: "generate",
  summary: "cli.generate.summary",
  help: "cli.generate.help",
  flags: [
    { name: "--level", value: "1…6" },
    { name: "--seed", value: "N" },
    { name: "--version", value: "V" },
    { name: "--out", short: "-o", value: "OUT" },
  ],
  takesFiles: false,
  async run({ flags, json }, io) {
    const level = levelOf(flags);
    const seed = wholeNumber(flags, "--seed", { from: 0, to: MOST_SEED });
    const version = wholeNumber(flags, "--version", VERSION);
    const document = generateTap({ level, seed, version, language: speech().language });
    const text = writeDocument(document);
    const name = `tap-${level}-${seed}`;
    const out = writeTo(flags, [name], ".stillhot.json")?.(name);
    if (out !== undefined) await write(out, text);
    const told = { level, seed, version, ...(out === undefined ? { drawing: document } : { out }) };
    if (json) io.out(jsonLine(told));
    else if (out === undefined) io.out(text);
    else io.out(asText([spell(say("cli.wrote", { file: document.title, out }))]));
    return 0;
  },
};

/** Every version from the first on; the newest where none is given. */
const VERSION = { from: TAP_VERSIONS[0]!, to: TAP_VERSIONS.at(-1)!, otherwise: TAP_VERSIONS.at(-1)! };

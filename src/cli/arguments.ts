import { REGION_IDS, type RegionId } from "../core";
import { type Call, type Command, type Flag, UsageError } from "./command";
import { type Manner, type Language, LANGUAGES, say, spell } from "./words";

const usage = (key: Parameters<typeof say>[0], gaps?: Parameters<typeof say>[1]) =>
  new UsageError(spell(say(key, gaps)));

/** What stands after the command's name. `--` ends the flags, `-` is a file. */
export function readArguments(command: Command, words: readonly string[]): Call {
  const files: string[] = [];
  const flags = new Map<string, string | true>();
  let json = false;
  for (let at = 0; at < words.length; at++) {
    const word = words[at]!;
    if (word === "--") {
      files.push(...words.slice(at + 1));
      break;
    }
    if (word === "-" || !word.startsWith("-")) files.push(word);
    else if (word === "--json") json = true;
    else {
      const [name, ...rest] = word.split("=");
      const flag = flagOf(command, name!, word);
      if (flags.has(flag.name)) throw usage("cli.flagTwice", { flag: flag.name });
      if (flag.value === undefined) {
        if (rest.length > 0) throw usage("cli.flagTakesNone", { flag: name! });
        flags.set(flag.name, true);
        continue;
      }
      const value = rest.length > 0 ? rest.join("=") : words[++at];
      if (value === undefined || value === "")
        throw usage("cli.flagNeedsValue", { flag: name!, value: flag.value });
      flags.set(flag.name, value);
    }
  }
  if (command.takesFiles === true && files.length === 0)
    throw usage("cli.needsFile", { command: command.name });
  if (!command.takesFiles && files.length > 0)
    throw usage("cli.takesNoFile", { command: command.name, file: files[0]! });
  if (files.includes("")) throw usage("cli.emptyName");
  if (files.filter((it) => it === "-").length > 1) throw usage("cli.stdinTwice");
  return { files, json, flags };
}

/** What is asked of any command, wherever it stands on the line: the language of the answer, and the region of its words. */
export function readSpeech(words: readonly string[]): { asked: Manner; rest: string[] } {
  const end = words.includes("--") ? words.indexOf("--") : words.length;
  const rest: string[] = [];
  const given = new Map<string, string>();
  for (let at = 0; at < end; at++) {
    const word = words[at]!;
    const [name, ...values] = word.split("=") as [string, ...string[]];
    const called = ANYWHERE.get(name);
    if (called === undefined) {
      rest.push(word);
      continue;
    }
    if (given.has(name)) throw usage("cli.flagTwice", { flag: name });
    const value = values.length > 0 ? values.join("=") : at + 1 < end ? words[++at]! : "";
    if (value === "") throw usage("cli.flagNeedsValue", { flag: name, value: called });
    given.set(name, value);
  }
  const language = languageCalled(given.get(LANGUAGE));
  const region = regionCalled(given.get(REGION));
  if (region !== undefined && language !== "en") throw usage("cli.regionOfEnglish", { region, language });
  return { asked: { language, region }, rest: [...rest, ...words.slice(end)] };
}

const LANGUAGE = "--language";
const REGION = "--region";
/** What may stand anywhere on the line, and what its value is called. */
const ANYWHERE: ReadonlyMap<string, string> = new Map([
  [LANGUAGE, "LANGUAGE"],
  [REGION, "REGION"],
]);

function languageCalled(value: string | undefined): Language {
  if (value === undefined) return "en";
  const language = LANGUAGES.find((it) => it === value);
  if (language !== undefined) return language;
  throw usage(/\.json$/i.test(value) ? "cli.fileForLanguage" : "cli.noLanguage", {
    language: value,
    known: LANGUAGES.join(", "),
    first: LANGUAGES[0]!,
  });
}

function regionCalled(value: string | undefined): RegionId | undefined {
  const region = REGION_IDS.find((it) => it === value);
  if (value !== undefined && region === undefined)
    throw usage("cli.noRegion", { region: value, known: REGION_IDS.join(", ") });
  return region;
}

function flagOf({ flags, name: command }: Command, name: string, word: string): Flag {
  const flag = flags.find((it) => it.name === name || it.short === name);
  if (flag !== undefined) return flag;
  const known = ["--json", ...ANYWHERE.keys(), ...flags.map((it) => it.name), "--help"].join(", ");
  throw usage("cli.unknownFlag", { flag: word, command, known });
}

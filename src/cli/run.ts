import { version } from "../../package.json";
import { readArguments, readSpeech } from "./arguments";
import { check } from "./check";
import { type Command, UsageError } from "./command";
import { cut } from "./cut";
import { draw } from "./draw";
import { drill } from "./drill";
import { exportFiles } from "./export";
import { generate } from "./generate";
import { importFiles } from "./import";
import type { ExitCode, Io } from "./io";
import { asText, wrapped } from "./print";
import { packageLesson } from "./package";
import { plan } from "./plan";
import { rehearse } from "./rehearse";
import { serve } from "./serve";
import { sheet } from "./sheet";
import { validate } from "./validate";
import { variant } from "./variant";
import { say, speaking, spell } from "./words";

/** Every command, in the order in which the help lists them. */
export const COMMANDS: readonly Command[] = [
  validate,
  check,
  rehearse,
  plan,
  draw,
  sheet,
  importFiles,
  exportFiles,
  generate,
  cut,
  drill,
  variant,
  packageLesson,
  serve,
];

/** Carries out one line of words. Never throws: whatever goes wrong is a sentence on standard error and a 2. */
export async function run(words: readonly string[], io: Io): Promise<ExitCode> {
  return answered(io, async () => {
    const { asked, rest } = readSpeech(words);
    return speaking(asked, () => answered(io, () => carryOut(rest, io)));
  });
}

async function answered(io: Io, doing: () => Promise<ExitCode>): Promise<ExitCode> {
  try {
    return await doing();
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    io.err(asText([error instanceof UsageError ? why : spell(say("cli.ourMistake", { why }))]));
    return 2;
  }
}

async function carryOut([name, ...rest]: readonly string[], io: Io): Promise<ExitCode> {
  if (name === undefined) {
    io.err(overview());
    return 2;
  }
  if (name === "--version" || name === "-V") return print(io, `${version}\n`);
  if (name === "--help" || name === "-h") return print(io, overview());
  if (name === "help") return print(io, rest[0] === undefined ? overview() : page(commandOf(rest[0])));
  const command = commandOf(name);
  const flags = rest.includes("--") ? rest.slice(0, rest.indexOf("--")) : rest;
  if (flags.includes("--help") || flags.includes("-h")) return print(io, page(command));
  try {
    return await command.run(readArguments(command, rest), io);
  } catch (error) {
    if (!(error instanceof UsageError)) throw error;
    io.err(
      asText([
        `stillhot ${command.name}: ${error.message}`,
        spell(say("cli.seeHelp", { command: command.name })),
      ]),
    );
    return 2;
  }
}

function print(io: Io, text: string): ExitCode {
  io.out(text);
  return 0;
}

function commandOf(name: string): Command {
  const command = COMMANDS.find((it) => it.name === name);
  if (command !== undefined) return command;
  const known = COMMANDS.map((it) => it.name).join(", ");
  const looksLikeFile = /\.json$/i.test(name);
  throw new UsageError(
    spell(say(looksLikeFile ? "cli.fileForCommand" : "cli.noCommand", { name: short(name), known })),
  );
}

const short = (text: string): string => (text.length > 60 ? `${text.slice(0, 59)}…` : text);

const overview = (): string =>
  spell(
    say("cli.overview", {
      commands: COMMANDS.map((it) => `  ${it.name.padEnd(10)}${spell(say(it.summary))}`).join("\n"),
      version,
      caution: spell(say("page.caution")),
    }),
  );

function page({ name, summary, help, flags, takesFiles }: Command): string {
  const usage = [
    `stillhot ${name}`,
    ...(takesFiles === false ? [] : [takesFiles === true ? "FILE…" : "[FILE…]"]),
    ...flags.map((it) => `[${it.short ?? it.name}${it.value === undefined ? "" : ` ${it.value}`}]`),
    "[--json]",
    "[--language LANGUAGE]",
    "[--region REGION]",
  ];
  return [
    `${wrapped("", usage.join(" "), "  ").join("\n")}\n`,
    `${spell(say(summary))}.`,
    spell(say(help)),
    ...(takesFiles ? [spell(say("cli.filesAndCodes"))] : []),
    "",
  ].join("\n");
}

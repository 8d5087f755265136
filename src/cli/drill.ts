import {
  drillOf,
  type DrillQuestion,
  letterOf,
  type Level,
  LEVELS,
  type Message,
  type StillhotDocument,
  worksheetHtml,
} from "../core";
import { type Call, type Command } from "./command";
import { levelOf, MOST_SEED } from "./generate";
import { isRefused, readInput, type Refused } from "./input";
import type { ExitCode, Io } from "./io";
import { wholeNumber } from "./numbers";
import { write, writeTo } from "./output";
import { asText, jsonLine, refusedLines } from "./print";
import { say, speech, spell } from "./words";

/** Questions of two minutes each: a worksheet, its key, or both as data. */
export const drill: Command = {
  name: "drill",
  summary: "cli.drill.summary",
  help: "cli.drill.help",
  flags: [
    { name: "--level", value: "1…6" },
    { name: "--seed", value: "N" },
    { name: "--count", value: "N" },
    { name: "--key" },
    { name: "--out", short: "-o", value: "OUT" },
  ],
  takesFiles: "optional",
  async run({ flags, files, json }, io) {
    const asked: DrillAsked = {
      level: files.length === 0 ? levelOf(flags) : levelOr(flags),
      seed: wholeNumber(flags, "--seed", { from: 0, to: MOST_SEED, otherwise: 1 }),
      count: wholeNumber(flags, "--count", { from: 1, to: 100, otherwise: 10 }),
    };
    const name = `drill-${asked.level}-${asked.seed}${flags.has("--key") ? "-key" : ""}`;
    const out = writeTo(flags, [name], ".html")?.(name);
    const { documents, refused } = await readAll(files, io);
    for (const it of refused) io.err(asText(refusedLines(it)));
    if (files.length > 0 && documents.length === 0) return 2;
    const questions = drillOf({
      ...asked,
      language: speech().language,
      ...(files.length === 0 ? {} : { documents }),
    });
    if (questions.length === 0) {
      io.err(asText([spell(say("cli.drill.none"))]));
      return 2;
    }
    await print(questions, { asked, out, isKey: flags.has("--key"), json, files }, io);
    if (questions.length < asked.count)
      io.err(asText([spell(say("cli.drill.fewer", { count: questions.length, asked: asked.count }))]));
    return refused.length > 0 ? 2 : 0;
  },
};

interface DrillAsked {
  readonly level: Level;
  readonly seed: number;
  readonly count: number;
}

/** Of drawings of one's own a level says nothing; it may be left out. */
const levelOr = (flags: Call["flags"]): Level => (flags.has("--level") ? levelOf(flags) : LEVELS[0]!);

async function readAll(
  files: readonly string[],
  io: Io,
): Promise<{ readonly documents: StillhotDocument[]; readonly refused: Refused[] }> {
  const documents: StillhotDocument[] = [];
  const refused: Refused[] = [];
  for (const file of files) {
    const input = await readInput(file, io);
    if (isRefused(input)) refused.push(input);
    else documents.push(input.document);
  }
  return { documents, refused };
}

interface Printing {
  readonly asked: DrillAsked;
  readonly out: string | undefined;
  readonly isKey: boolean;
  readonly json: boolean;
  readonly files: readonly string[];
}

async function print(
  questions: readonly DrillQuestion[],
  { asked, out, isKey, json, files }: Printing,
  io: Io,
): Promise<ExitCode> {
  const { level, seed } = asked;
  const made = files.length === 0 ? "cli.drill.made" : "cli.drill.madeOf";
  const html = () =>
    worksheetHtml(questions, {
      catalogue: speech().catalogue,
      language: speech().language,
      isKey,
      made: spell(say(made, { level, seed, files: files.join(", ") })),
    });
  if (out !== undefined) await write(out, html());
  if (json)
    io.out(
      jsonLine({ ...asked, ...(out === undefined ? {} : { out }), questions: questions.map(questionJson) }),
    );
  else if (out === undefined) io.out(html());
  else io.out(asText([spell(say("cli.drill.wrote", { count: questions.length, out }))]));
  return 0;
}

const questionJson = (question: DrillQuestion, index: number) => {
  const { kind, ask, answering, about, conductor: asked, options, answer, why, document } = question;
  return {
    n: index + 1,
    kind,
    text: textOf(ask),
    answering,
    ...(about === undefined ? {} : { about }),
    ...(asked === undefined ? {} : { conductor: asked }),
    options: options.map(({ text, at, conductor }, place) => ({
      key: letterOf(place),
      text: textOf(text),
      ...(at === undefined ? {} : { at }),
      ...(conductor === undefined ? {} : { conductor }),
    })),
    answer: answer.map(letterOf),
    why: why.map(textOf).join(" "),
    drawing: document,
  };
};

const textOf = (it: string | Message): string =>
  spell(typeof it === "string" ? say("name.plain", { name: it }) : it);

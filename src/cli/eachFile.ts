import { type StillhotDocument, type Finding } from "../core";
import type { Call, Command } from "./command";
import { type InputFile, isRefused, readInput, type Refused } from "./input";
import type { ExitCode, Io } from "./io";
import { asText, jsonLine, problemJson, refusedLines } from "./print";
import type { FileAnswer, FileOutcome } from "./fileAnswer";
import { jobsOf, sideBySide } from "./sideBySide";
import { say, spell } from "./words";

/** What a command asks of each file. */
export interface FileQuestion {
  readonly file: string;
  readonly document: StillhotDocument;
  readonly warnings: readonly Finding[];
  readonly call: Call;
}

interface FileCommand extends Omit<Command, "run" | "takesFiles"> {
  answer(question: FileQuestion): FileAnswer | Promise<FileAnswer>;
  /** what could not be done about a file, on standard error; the default is lines of text */
  refuse?(refused: Refused, call: Call): string;
  /** checks the whole line before any file is read; throws a usage error */
  before?(call: Call): void;
  /** the last lines for a person, after all files */
  readonly closing?: () => readonly string[];
}

/** A command that answers file by file: a bad one is reported and the others are still answered. */
export const eachFile = ({ answer, refuse, before, closing, ...rest }: FileCommand): Command => ({
  ...rest,
  takesFiles: true,
  async run(call, io) {
    before?.(call);
    let code: ExitCode = 0;
    let answered = 0;
    const helper = io.helper?.bind(io);
    let heard = 0;
    const tellProgress = () =>
      io.line?.(
        spell(say("cli.progress", { n: heard + 1, count: call.files.length, file: call.files[heard] ?? "" })),
      );
    tellProgress();
    const isAlone = helper === undefined || jobsOf(call) === 1 || call.files.length < 2;
    for await (const outcome of isAlone || call.files.includes("-")
      ? oneByOne(answer, call, io)
      : sideBySide(rest.name, call, helper)) {
      io.line?.("");
      heard++;
      if (io.take !== undefined) {
        io.take(outcome);
        continue;
      }
      if (!("json" in outcome)) {
        io.err(refuse?.(outcome, call) ?? asText(refusedLines(outcome)));
        code = 2;
      } else {
        print(outcome, call, io, answered++ > 0);
        if (!outcome.ok && code === 0) code = 1;
      }
      if (heard < call.files.length) tellProgress();
    }
    if (!call.json && answered > 0 && closing !== undefined) io.out(asText(closing()));
    return code;
  },
});

async function* oneByOne(answer: FileCommand["answer"], call: Call, io: Io): AsyncGenerator<FileOutcome> {
  for (const file of call.files) {
    const input = await readInput(file, io);
    yield isRefused(input) ? input : await answerOrRefuse(answer, input, call);
  }
}

function print({ json, lines, raw, aside = [] }: FileAnswer, call: Call, io: Io, isLater: boolean): void {
  if (call.json) io.out(jsonLine(json));
  else if (raw !== undefined) io.out(raw);
  else io.out(asText(isLater ? ["", ...lines] : lines));
  if (aside.length > 0) io.err(asText(aside));
}

/** A mistake of ours in one file must neither pass for an answer nor keep the other files from theirs. */
async function answerOrRefuse(
  answer: FileCommand["answer"],
  { file, document, warnings }: InputFile,
  call: Call,
): Promise<FileAnswer | Refused> {
  try {
    return await answer({ file, document, warnings, call });
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    const message = error instanceof NotDone ? say("cli.notDone", { why }) : say("cli.ourMistake", { why });
    return { file, problems: [{ path: "", message }] };
  }
}

/** The file was read, but what was asked could not be done: the reason goes to standard error, exit code 2. */
export class NotDone extends Error {}

/** Standard error as one JSON object a file, for scripts that read what is wrong. */
export const refuseAsJson = ({ file, problems }: Refused, { json }: Call): string =>
  json
    ? jsonLine({ file, ok: false, findings: [], errors: problems.map(problemJson) })
    : asText(refusedLines({ file, problems }));

/** The cautions that end everything a person reads. */
export const cautions = (): readonly string[] => ["", spell(say("page.caution"))];

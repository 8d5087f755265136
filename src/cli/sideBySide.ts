import { availableParallelism } from "node:os";
import { type Call, type Flag, UsageError } from "./command";
import type { FileOutcome } from "./fileAnswer";
import type { Refused } from "./input";
import type { Helper } from "./io";
import { say, speech, spell } from "./words";

/** The flag by which several files are answered at once. */
export const JOBS: Flag = { name: "--jobs", value: "N" };

/** More helpers than this are no faster, and each takes the memory of a whole program. */
const MOST_JOBS = 64;

/** How many files are answered at once; throws a usage error for anything but a whole number from 1 on. */
export function jobsOf({ flags }: Call): number {
  const asked = flags.get(JOBS.name);
  if (asked === undefined) return 1;
  const count = typeof asked === "string" && /^\d{1,4}$/.test(asked) ? Number(asked) : 0;
  if (count < 1) throw new UsageError(spell(say("cli.noJobs", { jobs: String(asked) })));
  return Math.min(count, MOST_JOBS, 2 * availableParallelism());
}

/**
 * What helpers say of each file, in the files' order. No more files are under way than there are helpers, and no more
 * answers wait for an earlier one, so that memory does not grow with the number of files.
 */
export async function* sideBySide(
  name: string,
  call: Call,
  startHelper: () => Helper,
): AsyncGenerator<FileOutcome> {
  const helpers = Array.from({ length: Math.min(jobsOf(call), call.files.length) }, startHelper);
  const free = [...helpers];
  const underWay: Promise<FileOutcome>[] = [];
  const waiting = [...call.files];
  const begin = (): void => {
    const helper = free.shift();
    const file = helper === undefined ? undefined : waiting.shift();
    if (helper === undefined || file === undefined) return;
    underWay.push(
      helper.ask(wordsFor(name, call, file)).then(
        (outcome) => outcome as FileOutcome,
        (error: unknown) => lost(file, error),
      ),
    );
    void underWay.at(-1)!.then(() => free.push(helper));
  };
  try {
    helpers.forEach(begin);
    while (underWay.length > 0) {
      yield await underWay.shift()!;
      while (free.length > 0 && waiting.length > 0) begin();
    }
  } finally {
    for (const helper of helpers) helper.end();
  }
}

/** The line that asks the same of one file alone. */
function wordsFor(name: string, { flags, json }: Call, file: string): string[] {
  const { language, region } = speech();
  return [
    name,
    ...[...flags].flatMap(([flag, value]) =>
      flag === JOBS.name ? [] : [value === true ? flag : `${flag}=${value}`],
    ),
    ...(json ? ["--json"] : []),
    `--language=${language}`,
    ...(region === undefined ? [] : [`--region=${region}`]),
    "--",
    file,
  ];
}

/** A helper that broke down has no answer for its file; the others go on. */
function lost(file: string, error: unknown): Refused {
  const why = error instanceof Error ? error.message : String(error);
  return { file, problems: [{ path: "", message: say("cli.ourMistake", { why }) }] };
}

import { isMainThread } from "node:worker_threads";
import { answerLines, startHelper } from "./helper";
import { run } from "./run";

/** The program itself: hands the words and the streams to `run`, and ends with its code. */
const ended = new AbortController();
/** Only what waits can end by itself. Whatever works has no time to hear a signal, and is ended by it as any program is. */
const listenToSignals = () => {
  for (const signal of ["SIGINT", "SIGTERM"] as const) process.once(signal, () => ended.abort());
  return ended.signal;
};

// Whoever read the output may be gone, as `head` is; the exit code is still the answer. Any other failure is told.
for (const stream of [process.stdout, process.stderr])
  stream.on("error", (error: NodeJS.ErrnoException) => {
    if (error.code === "EPIPE") return;
    process.stderr.write(`stillhot: the output could not be written: ${error.code ?? error.message}\n`);
    process.exit(2);
  });

/** Back to the beginning of the line, and nothing after what stands there (ECMA-48, EL). */
const ANEW = "\r\u001b[K";
const line = (text: string) => void process.stderr.write(`${ANEW}${text}`);

if (isMainThread)
  process.exitCode = await run(process.argv.slice(2), {
    out: (text) => void process.stdout.write(text),
    err: (text) => void process.stderr.write(text),
    ...(process.stderr.isTTY ? { line } : {}),
    stdin: process.stdin,
    untilStopped: listenToSignals,
    helper: () => startHelper(new URL(import.meta.url)),
  });
else answerLines();

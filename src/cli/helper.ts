import { parentPort, Worker } from "node:worker_threads";
import type { Helper } from "./io";
import { run } from "./run";

/** The program once more in a thread of its own, asked for one file after the other; one that broke down is started anew. */
export function startHelper(program: URL): Helper {
  let worker: Worker | undefined;
  return {
    ask: (words) =>
      new Promise((done, failed) => {
        worker ??= new Worker(program);
        const asked = worker;
        const broken = (why: unknown): void => {
          worker = undefined;
          failed(why instanceof Error ? why : new Error(`a helper ended (${String(why)})`));
        };
        asked.removeAllListeners();
        asked.once("message", done);
        asked.once("error", broken);
        asked.once("exit", broken);
        asked.postMessage(words);
      }),
    end: () => void worker?.removeAllListeners().terminate(),
  };
}

/** What a helper does: answers lines of one file each, until nobody asks any more. */
export function answerLines(): void {
  const port = parentPort!;
  port.on("message", (words: readonly string[]) => {
    let answer: unknown;
    let said = "";
    void run(words, {
      out: () => undefined,
      err: (text) => void (said += text),
      stdin: process.stdin,
      untilStopped: () => AbortSignal.abort(),
      take: (outcome) => (answer = outcome),
    }).then(() =>
      port.postMessage(
        answer ?? {
          file: words.at(-1)!,
          problems: [{ path: "", message: { key: "say.text", with: { text: said.trim() } } }],
        },
      ),
    );
  });
}

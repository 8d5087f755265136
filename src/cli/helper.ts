import { getHeapStatistics } from "node:v8";
import { parentPort, Worker } from "node:worker_threads";
import type { Helper } from "./io";
import { run } from "./run";

/**
 * A helper whose memory has grown to this is started anew before its next file [bytes]: what large drawings leave behind is
 * never all given back while it lives. A small drawing leaves a quarter of it, and starting takes a third of a second.
 */
const FULL_BYTES = 256 * 2 ** 20;

/** What a helper says: its answer, and how much memory it holds by then. */
interface Said {
  readonly answer: unknown;
  readonly heldBytes: number;
}

/**
 * The program once more in a thread of its own, asked for one file after the other; one that broke down, or is full, is
 * started anew.
 */
export function startHelper(program: URL, fullBytes = FULL_BYTES): Helper {
  let worker: Worker | undefined;
  let ending: Promise<unknown> = Promise.resolve();
  return {
    ask: async (words) => {
      await ending;
      return new Promise((done, failed) => {
        worker ??= new Worker(program);
        const asked = worker;
        const broken = (why: unknown): void => {
          worker = undefined;
          failed(why instanceof Error ? why : new Error(`a helper ended (${String(why)})`));
        };
        asked.removeAllListeners();
        asked.once("message", ({ answer, heldBytes }: Said) => {
          if (heldBytes > fullBytes) {
            worker = undefined;
            asked.removeAllListeners();
            ending = asked.terminate();
          }
          done(answer);
        });
        asked.once("error", broken);
        asked.once("exit", broken);
        asked.postMessage(words);
      });
    },
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
    }).then(() => {
      answer ??= {
        file: words.at(-1)!,
        problems: [{ path: "", message: { key: "say.text", with: { text: said.trim() } } }],
      };
      const { total_heap_size, external_memory } = getHeapStatistics();
      port.postMessage({ answer, heldBytes: total_heap_size + external_memory } satisfies Said);
    });
  });
}

import { buffersOf } from "../../core";
import { isAtOnce } from "./atOnce";
import { answeredBy, type Elsewhere } from "./elsewhere";
import type { Errand } from "./errands";
import { startWorker } from "./startWorker";
import type { Failed } from "./questions";
import { messageOf, type WritingQuestion, type WrittenForms, written } from "./writing";

/** what is written in turn waits for this */
let turn: Promise<unknown> = Promise.resolve();
/** Between two of them what the person presses comes first [ms]. */
const BETWEEN_TURNS_MS = 30;

/** Writes a drawing once those asked for before it are written: many of them take one worker at a time. */
export function writeInTurn<As extends keyof WrittenForms>(
  question: WritingQuestion<As>,
): Promise<WrittenForms[As] | Failed> {
  const own = turn.then(async () => {
    await new Promise((done) => setTimeout(done, BETWEEN_TURNS_MS));
    return (await writeElsewhere(question).answer)!;
  });
  turn = own.catch(() => undefined);
  return own;
}

/** Writes a drawing: a large one off the main thread, where there is another one. */
export function writeElsewhere<As extends keyof WrittenForms>(
  question: WritingQuestion<As>,
): Elsewhere<WrittenForms[As] | Failed> {
  if (typeof Worker === "undefined" || isAtOnce(question.document)) {
    return { answer: Promise.resolve(written(question)), stop: () => undefined };
  }
  const worker = startWorker();
  const writing = answeredBy<WrittenForms[As]>(worker);
  const errand = { to: "write", ...messageOf(question) } satisfies Errand;
  // What is known was made into columns just now; the drawing is copied in a task of its own, so that the page answers in between.
  setTimeout(() => worker.postMessage(errand, errand.columns === undefined ? [] : buffersOf(errand.columns)));
  return writing;
}

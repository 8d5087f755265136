import { buffersOf, elementCountOf } from "../../core";
import { answeredBy, type Elsewhere } from "./elsewhere";
import type { Errand } from "./errands";
import { startWorker } from "./startWorker";
import type { Failed } from "./questions";
import { messageOf, type WritingQuestion, type WrittenForms, written } from "./writing";

/** Drawings up to this many elements are written at once: a worker would take longer to begin. */
const AT_ONCE_UP_TO = 150;

/** Writes a drawing: a large one off the main thread, where there is another one. */
export function writeElsewhere<As extends keyof WrittenForms>(
  question: WritingQuestion<As>,
): Elsewhere<WrittenForms[As] | Failed> {
  if (typeof Worker === "undefined" || elementCountOf(question.document.system) <= AT_ONCE_UP_TO) {
    return { answer: Promise.resolve(written(question)), stop: () => undefined };
  }
  const worker = startWorker();
  const writing = answeredBy<WrittenForms[As]>(worker);
  const errand = { to: "write", ...messageOf(question) } satisfies Errand;
  // What is known was made into columns just now; the drawing is copied in a task of its own, so that the page answers in between.
  setTimeout(() => worker.postMessage(errand, errand.columns === undefined ? [] : buffersOf(errand.columns)));
  return writing;
}

import { answeredBy, type Elsewhere, type Progress } from "./elsewhere";
import type { Errand } from "./errands";
import { startWorker } from "./startWorker";
import { answerReading, type ReadingAnswer, type ReadingQuestion } from "./reading";

/** Reads a file off the main thread, where there is another one. */
export function readElsewhere(
  question: ReadingQuestion,
  tell: (progress: Progress) => void,
): Elsewhere<ReadingAnswer> {
  if (typeof Worker === "undefined") return { answer: answerReading(question, tell), stop: () => undefined };
  const worker = startWorker();
  const reading = answeredBy<ReadingAnswer>(worker, tell);
  worker.postMessage({ to: "read", ...question } satisfies Errand);
  return reading;
}

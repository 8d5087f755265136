import type { Failed } from "./questions";

/** What is worked out by a worker of its own, and ends with its answer. */
export interface Elsewhere<Answer> {
  /** nothing where it was stopped */
  readonly answer: Promise<Answer | undefined>;
  readonly stop: () => void;
}

/** How much is done, from 0 to 1; at 1 the last thing is under way. */
export interface Progress {
  readonly share: number;
}

/** Waits for a worker's one answer; `tell` hears how far it is. */
export function answeredBy<Answer extends object>(
  worker: Worker,
  tell: (progress: Progress) => void = () => undefined,
): Elsewhere<Answer | Failed> {
  let end: (answer: Answer | Failed | undefined) => void = () => undefined;
  const answer = new Promise<Answer | Failed | undefined>((done) => (end = done));
  const finish = (found: Answer | Failed | undefined) => {
    worker.terminate();
    end(found);
  };
  worker.addEventListener("message", ({ data }: MessageEvent<Progress | Answer>) =>
    "share" in data ? tell(data) : finish(data),
  );
  worker.addEventListener("error", ({ message }) => finish({ failed: message }));
  return { answer, stop: () => finish(undefined) };
}

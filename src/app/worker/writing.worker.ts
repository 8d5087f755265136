import { answerWriting, type WritingMessage } from "./writing";

/** Writes one drawing, and answers. */
self.addEventListener("message", ({ data }: MessageEvent<WritingMessage>) =>
  self.postMessage(answerWriting(data)),
);

import { assess } from "../../core";
import type { Answer, Question } from "./assessor";

/** Assesses drawings off the main thread. */
self.addEventListener("message", ({ data }: MessageEvent<Question>) => {
  let answer: Answer;
  try {
    answer = { n: data.n, assessment: assess(data.document) };
  } catch (error) {
    answer = { n: data.n, failed: error instanceof Error ? error.message : String(error) };
  }
  self.postMessage(answer);
});

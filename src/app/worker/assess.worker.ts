import { ampsLoadsOff, assess, marginMap, pointNumbers } from "../../core";
import type { Answer, Question } from "./assessor";

/** Works drawings out off the main thread. */
self.addEventListener("message", ({ data }: MessageEvent<Question>) => {
  let answer: Answer;
  try {
    answer = { n: data.n, ...answerTo(data) };
  } catch (error) {
    answer = { n: data.n, failed: error instanceof Error ? error.message : String(error) };
  }
  self.postMessage(answer);
});

function answerTo({ document, what }: Question) {
  if (what === undefined) return { assessment: assess(document) };
  if (what.of === "margins") return { margins: marginMap(document) };
  return what.of === "point"
    ? { numbers: pointNumbers(document, what.id) }
    : { ampsLoadsOff: ampsLoadsOff(document, what.id) };
}

import { controlsFor, plan } from "../../core";
import type { Answer, Question } from "./ask";
import { Player, stateAfter } from "./player";

const player = new Player();

/** Plans and tries acts off the main thread, so that the drawing stays under the hands meanwhile. */
self.addEventListener(
  "message",
  ({ data }: MessageEvent<{ readonly n: number; readonly question: Question }>) => {
    const { n, question } = data;
    let answer: Answer;
    try {
      answer =
        question.about === "plan"
          ? { about: "plan", plan: plan(question.document) }
          : {
              about: "controls",
              sheet: controlsFor(
                stateAfter(player.play(question.document), question.count),
                question.workPoint,
                question.ticked,
              ),
            };
    } catch (error) {
      answer = { about: "failed", why: error instanceof Error ? error.message : String(error) };
    }
    self.postMessage({ n, answer });
  },
);

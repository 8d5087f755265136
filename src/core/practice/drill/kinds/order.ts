import type { Step } from "../../../document";
import { beginJob, type JobState, play, stepSentence } from "../../../procedure";
import { type Message, say } from "../../../terms";
import { type DrillMaker, type DrillQuestion } from "../question";
import { firstWork, orderFor } from "../situation";

/** Steps to be put in order. */
const STEPS = 4;
const TRIES = 5;

/** Put these steps in order: some that follow one another, and only one order of them breaks no rule. */
export const order: DrillMaker = (document, chance) => {
  const steps = orderFor(document);
  const last = firstWork(document) + 1 - STEPS;
  if (last < 1) return undefined;
  for (let turn = 0; turn < TRIES; turn++) {
    const from = chance.between(1, last);
    const asked = steps.slice(from, from + STEPS);
    const state = steps.slice(0, from).reduce((it, step) => play(it, step).state, beginJob(document));
    const clean = cleanOrders(state, asked, steps[from + STEPS]);
    if (clean.length !== 1) continue;
    const shown = chance.shuffled(asked.map((_, index) => index));
    const words = asked.map((step) => stepSentence(document, step));
    if (new Set(words.map((it) => JSON.stringify(it))).size < STEPS) continue;
    return {
      kind: "order",
      document: { ...state.document, job: document.job! },
      ask: say("drill.ask.order"),
      options: shown.map((index) => ({ text: words[index]! })),
      answering: "order",
      answer: clean[0]!.map((index) => shown.indexOf(index)),
      why: whyNot(state, asked),
      lit: [],
    } satisfies DrillQuestion;
  }
  return undefined;
};

const isClean = ({ findings, state }: ReturnType<typeof play>): boolean =>
  state.notDone === undefined && findings.every(({ severity }) => severity === "note");

/** Every order of the steps that breaks no rule, the step after them included. */
function cleanOrders(state: JobState, steps: readonly Step[], next: Step | undefined): number[][] {
  const found: number[][] = [];
  const follow = (at: JobState, taken: readonly number[]): void => {
    if (taken.length === steps.length) {
      if (next === undefined || isClean(play(at, next))) found.push([...taken]);
      return;
    }
    steps.forEach((step, index) => {
      if (taken.includes(index)) return;
      const played = play(at, step);
      if (isClean(played)) follow(played.state, [...taken, index]);
    });
  };
  follow(state, []);
  return found;
}

/** What the rules say where a later step comes first. */
function whyNot(state: JobState, steps: readonly Step[]): Message[] {
  const said = steps.slice(1).flatMap((step) => {
    const { findings } = play(state, step);
    const first = findings.find(({ severity }) => severity !== "note");
    return first === undefined
      ? []
      : [
          say("drill.why.tooEarly", {
            step: stepSentence(state.document, step),
            why: first.message,
            citation: first.citation,
          }),
        ];
  });
  return said.length === 0 ? [say("drill.why.order")] : said;
}

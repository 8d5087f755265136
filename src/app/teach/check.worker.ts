import {
  answerTo,
  canBeSolved,
  type Message,
  planned,
  type ScenarioStep,
  type StillhotDocument,
  trapsOf,
} from "../../core";

export interface Checked {
  readonly solved: boolean;
  readonly why: readonly Message[];
  readonly traps: readonly { readonly id: string; readonly label: string; readonly closes: boolean }[];
  readonly answer: readonly ScenarioStep[];
  readonly failed?: string;
}

/** Plays the answer and every trap off the main thread: a planner's order on a long line takes its time. */
self.addEventListener("message", ({ data }: MessageEvent<StillhotDocument>) => {
  let checked: Checked;
  try {
    const answer = answerTo(data, planned);
    const { solved, why } = canBeSolved(data, planned);
    const traps = trapsOf(data, planned).map(({ trap, canBeFallenInto }) => ({
      id: trap.id,
      label: trap.label,
      closes: canBeFallenInto,
    }));
    checked = { solved, why, traps, answer };
  } catch (error) {
    checked = {
      solved: false,
      why: [],
      traps: [],
      answer: [],
      failed: error instanceof Error ? error.message : String(error),
    };
  }
  self.postMessage(checked);
});

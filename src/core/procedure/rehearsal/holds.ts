import { type HoldKind, isSwitching, type Step, stepOf } from "../../steps";

/**
 * Where two people stop before a step: one asks, the other answers from what is there. Before every ground and every
 * work; before the first operation of the job; before the first test after switching; and before the first of a run of
 * steps that energize.
 *
 * @param played the steps before it
 */
export function holdBefore(played: readonly Step[], step: Step): HoldKind | undefined {
  const kind = holdOf(step);
  switch (kind) {
    case undefined:
    case "ground":
    case "work":
      return kind;
    case "operate":
      return played.some((it) => holdOf(it) === kind) ? undefined : kind;
    case "test":
      return sinceSwitching(played).some((it) => holdOf(it) === kind) ? undefined : kind;
    case "energize": {
      const last = played.findLast(isSwitching);
      return last !== undefined && holdOf(last) === kind ? undefined : kind;
    }
  }
}

const holdOf = (step: Step): HoldKind | undefined => stepOf(step.do).hold;

const sinceSwitching = (played: readonly Step[]): readonly Step[] =>
  played.slice(played.findLastIndex(isSwitching) + 1);
